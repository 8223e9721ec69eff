import type { Metres } from "#engine";
import type { LineBox, Linework } from "../linework/linework.ts";
import type { FoundPlan, FoundRoom } from "./found.ts";
import { layerChoices } from "./layer-choices.ts";
import { planLines } from "./plan-lines.ts";
import { roomsInLines } from "./rooms-in-lines.ts";

export interface FindRoomsOptions {
  /** Metres in one drawing unit; the drawing's own proposal if absent. */
  readonly metres?: Metres;
  /** Names of the layers to look at; the finder tries several choices if absent. */
  readonly layers?: readonly string[];
  /** Part of the drawing, in its own units. */
  readonly box?: LineBox;
  /** Ends closer than this belong together. [m] */
  readonly tolerance?: Metres;
}

/** Ends that a draughtsman missed by this much were meant to meet. [m] @source COMMON-PRACTICE */
const TOLERANCE: Metres = 0.015;

/**
 * Rooms of a plan from its lines.
 *
 * 1. lines of likely layers, in metres  2. ends joined, crossings cut  3. gaps of doors and passages shut  4. closed faces
 * 5. strips are walls, faces that only furniture parts are put together  6. names from lettering inside
 * Several choices of layers are tried, and the one whose rooms are the surest is kept.
 *
 * @param linework - The drawing. @param options - Unit, layers, part, tolerance.
 * @returns Rooms with their confidence, openings between them.
 * @source DERIVED-HERE
 */
export function findRooms(linework: Linework, options: FindRoomsOptions = {}): FoundPlan {
  const metres = options.metres ?? linework.unit.metres;
  const tolerance = options.tolerance ?? TOLERANCE;
  let best: FoundPlan | undefined;
  let most = Number.NEGATIVE_INFINITY;
  for (const layers of layerChoices(linework, options.layers)) {
    const plan = planLines(linework, {
      metres,
      layers: new Set(layers),
      ...(options.box === undefined ? {} : { box: options.box }),
    });
    const found = roomsInLines(plan, { names: linework.layers.map(({ name }) => name), tolerance });
    const worth = worthOf(found.rooms);
    if (worth > most) {
      most = worth;
      best = { ...found, layers: layers.map((index) => linework.layers[index]!.name) };
    }
  }
  return best ?? { rooms: [], openings: [], shift: [0, 0], layers: [] };
}

/** Sure rooms of ordinary size count; small faces with neither door nor name count against a choice: tiles are not rooms. */
const worthOf = (rooms: readonly FoundRoom[]): number =>
  rooms.reduce(
    (sum, { area, confidence }) =>
      sum + (area < TILE && confidence < SURE ? -0.15 : confidence * Math.min(1, area / 4)),
    0,
  );

/** Larger slabs are seldom drawn. [m²] */
const TILE = 2;
const SURE = 0.6;
