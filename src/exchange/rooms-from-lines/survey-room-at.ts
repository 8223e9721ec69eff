import type { Metres, Opening, Point, Room } from "#engine";
import type { Linework } from "../linework/linework.ts";
import { findRoomAt, type LineIndex, lineIndex } from "./find-room-at.ts";
import { surveyOfPlan, usualHeights } from "./found-survey.ts";

/** Lines that lie where they belong in the plan. */
export interface LaidLines {
  readonly file: string;
  /** x1 y1 x2 y2 of each line. [m] */
  readonly lines: Float64Array;
  /** Index into `layers` of each line. */
  readonly layerOf: Uint16Array;
  readonly layers: readonly { readonly name: string; readonly shown: boolean }[];
}

/** A drawing that rooms are asked of, one after the other. */
export interface AskedDrawing {
  readonly linework: Linework;
  readonly index: LineIndex;
}

/** Prepares lines under the plan for being asked. */
export function askedDrawing({ file, lines, layerOf, layers }: LaidLines): AskedDrawing {
  const counts = new Uint32Array(layers.length);
  for (const layer of layerOf) if (layer < counts.length) counts[layer]! += 1;
  const linework: Linework = {
    file,
    format: "dxf",
    lines,
    layerOf,
    arcOf: new Uint32Array(layerOf.length),
    layers: layers.map(({ name, shown }, number) => ({ name, shown, lines: counts[number]! })),
    arcs: [],
    texts: [],
    blocks: [],
    unit: { metres: 1, name: "m", from: "declared", reason: "" },
    parts: [],
  };
  return { linework, index: lineIndex(linework) };
}

/**
 * The room round a place, as survey records: the room, and its openings in the direction of its outline.
 *
 * @param point - In the room. [m] @param of - Storey and ceiling that the room gets.
 * @returns Undefined where the lines close no room round the place.
 */
export function surveyRoomAt(
  { linework, index }: AskedDrawing,
  point: Point,
  of: {
    readonly storey: { readonly id: string; readonly name: string; readonly elevation: Metres };
    readonly ceiling: Metres;
  },
): { readonly room: Room; readonly openings: readonly Opening[] } | undefined {
  const found = findRoomAt(linework, point, { metres: 1, index });
  if (!found) return undefined;
  const { survey } = surveyOfPlan(
    { rooms: [found.room], openings: found.openings, shift: [0, 0], layers: found.layers },
    linework,
    { ...of, metres: 1, head: usualHeights.head },
  );
  const [room] = survey.rooms;
  return room && { room: { ...room, name: found.room.name }, openings: survey.openings };
}
