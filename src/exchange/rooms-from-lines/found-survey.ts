import {
  distinct,
  english,
  joined,
  type Metres,
  type Opening,
  type Outline,
  type Point,
  type Problem,
  type Room,
} from "#engine";
import { identities } from "../identities.ts";
import { drawingBlocks } from "../linework/drawing-blocks.ts";
import type { LineBox, Linework } from "../linework/linework.ts";
import { roomUse } from "../room-use.ts";
import { soundRing } from "../sound-ring.ts";
import type { SurveyDrawing, SurveyRecords } from "../survey.ts";
import { tidy } from "../tidy.ts";
import { inBox } from "./box-index.ts";
import { type FoundOpening, type FoundPlan, type FoundRoom, SURE } from "./found.ts";

/** What a plan does not show and a survey needs. */
export interface PlanHeights {
  readonly storey: { readonly id: string; readonly name: string; readonly elevation: Metres };
  /** Metres in one drawing unit. */
  readonly metres: Metres;
  /** The part of the drawing that was taken, where it has several; all of it if absent. */
  readonly part?: { readonly index: number; readonly box: LineBox };
  /** Of all rooms, until somebody measures. [m] */
  readonly ceiling: Metres;
  /** Of all doors. [m] */
  readonly head: Metres;
}

/** Heights of ceilings, doors and windows where nobody has said anything. [m] @source COMMON-PRACTICE */
export const usualHeights = { ceiling: 2.5, head: 2.05, sill: 0.9, windowHead: 2.2 } as const;

/**
 * Survey records of a plan: its rooms, its doors joined to the rooms on both sides, its lines as an underlay.
 *
 * A room's name in the job stays the same when the plan is read again: it comes from the file and from where the room lies.
 *
 * @param found - What was found. @param linework - The drawing itself. @param heights - Storey, unit, heights.
 * @returns Records near the origin, and what was assumed.
 */
export function surveyOfPlan(
  found: FoundPlan,
  linework: Linework,
  heights: PlanHeights,
): { readonly survey: SurveyRecords; readonly notes: readonly Problem[] } {
  const names = identities();
  const part = heights.part === undefined ? "" : `-${heights.part.index + 1}`;
  const file = linework.file.replace(/[^A-Za-z0-9]+/g, "-").slice(0, 40) + part;
  const ids = found.rooms.map(({ outline }) => {
    const at = middleOf(outline);
    const place = at.map((v) => Math.round(v * 2)).join("-");
    return names.take("", `room-${file}-${place}`, "Room");
  });
  const rooms = found.rooms.map((room, index) => recordOf(room, { id: ids[index]!, heights, index }));
  const openings = found.openings.flatMap((opening): Opening[] => {
    const record = openingRecord(opening, {
      rooms,
      id: names.take("", `opening-${file}-${placeOf(opening)}`, "Opening"),
      head: heights.head,
    });
    return record ? [record] : [];
  });
  const drawing = drawingOf(linework, { found, heights, id: `plan-${file}` });
  const doors = openings.filter(({ kind }) => kind === "door").length;
  return {
    survey: {
      storeys: [heights.storey],
      rooms,
      floorPieces: [],
      openings,
      obstacles: [],
      dwellPlaces: [],
      interference: [],
      luminaires: [],
      looseLuminaires: [],
      drawings: [drawing],
      shift: found.shift,
    },
    notes: [
      ...(rooms.length > 0
        ? [
            {
              code: "plan-heights-assumed" as const,
              values: { ceiling: heights.ceiling, head: heights.head, rooms: rooms.length, doors },
            },
          ]
        : [{ code: "plan-no-rooms" as const, values: { file: linework.file } }]),
      ...unsure(found.rooms, rooms),
    ],
  };
}

/** Where an opening lies, in quarters of a metre: the same door has the same name when the plan is read again. */
const placeOf = ({ from, to }: FoundOpening): string =>
  [from[0] + to[0], from[1] + to[1]].map((sum) => Math.round(2 * sum)).join("-");

/** More names than this nobody reads in one sentence. */
const MOST_NAMED = 8;

/** One note for all rooms that want a second look, with what speaks against most of them. */
function unsure(found: readonly FoundRoom[], rooms: readonly Room[]): readonly Problem[] {
  const doubtful = found.flatMap((room, index) =>
    room.confidence < SURE ? [{ room, record: rooms[index]! }] : [],
  );
  if (doubtful.length === 0) return [];
  const named = doubtful
    .slice(0, MOST_NAMED)
    .map(({ room, record }) => `${record.name || record.number} (${room.area.toFixed(1)} m²)`);
  const doubts = distinct(doubtful.flatMap(({ room }) => room.doubts));
  return [
    {
      code: "plan-rooms-unsure",
      values: {
        count: doubtful.length,
        rooms: [...named, ...(doubtful.length > MOST_NAMED ? ["…"] : [])].join(", "),
        doubts: joined(doubts, ", "),
      },
      records: doubtful.map(({ record }) => record.id),
    },
  ];
}

const recordOf = (
  room: FoundRoom,
  of: { readonly id: string; readonly heights: PlanHeights; readonly index: number },
): Room => ({
  id: of.id,
  storey: of.heights.storey.id,
  number: room.number,
  name: room.name || (room.number === "" ? `Room ${of.index + 1}` : ""),
  use: roomUse(`${room.name} ${room.number}`),
  outline: soundRing(room.outline),
  holes: room.holes.map(soundRing).filter(({ length }) => length >= 3),
  floor: 0,
  ceilingHeight: of.heights.ceiling,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
  proposed: {
    confidence: Math.round(room.confidence * 100) / 100,
    // Kept in the job, in the words of the file.
    reason: room.doubts.length > 0 ? room.doubts.map(english).join(", ") : "walls on all sides",
  },
});

/** An opening put on the face of its first room, in the direction of that room's outline; undefined where it lies on none. */
function openingRecord(
  opening: FoundOpening,
  of: { readonly rooms: readonly Room[]; readonly id: string; readonly head: Metres },
): Opening | undefined {
  const [one, other] = opening.rooms;
  const first = of.rooms[one < 0 ? other : one];
  const second = one < 0 ? undefined : of.rooms[other];
  if (!first || first === second) return undefined;
  const face = nearestFace(first, opening);
  if (!face) return undefined;
  const across = second ? nearestFace(second, opening) : undefined;
  const thickness = across ? distance(face.middle, across.middle) : Math.max(opening.thickness, 0.1);
  if (thickness > 1.5) return undefined;
  const { leaf } = opening;
  const hinge = leaf && distance(leaf.hinge, face.to) < distance(leaf.hinge, face.from) ? "to" : "from";
  const into = leaf ? sideOf(leaf.open, face) : 1;
  return {
    id: of.id,
    rooms: [first.id, second?.id ?? null],
    kind: opening.kind,
    from: face.from,
    to: face.to,
    sill: opening.kind === "window" ? usualHeights.sill : 0,
    head: Math.min(opening.kind === "window" ? usualHeights.windowHead : of.head, first.ceilingHeight),
    thickness: tidy(thickness),
    hinge,
    opensInto: into > 0 ? first.id : (second?.id ?? null),
    angle: Math.PI / 2,
    state: opening.kind === "passage" ? "open" : "closed",
  };
}

interface FaceOfRoom {
  readonly from: Point;
  readonly to: Point;
  readonly middle: Point;
}

/** The opening's width on the nearest edge of a room that runs along it. */
function nearestFace(room: Room, opening: FoundOpening): FaceOfRoom | undefined {
  const middle: Point = [(opening.from[0] + opening.to[0]) / 2, (opening.from[1] + opening.to[1]) / 2];
  const width = distance(opening.from, opening.to);
  const u: Point = [(opening.to[0] - opening.from[0]) / width, (opening.to[1] - opening.from[1]) / width];
  let best: FaceOfRoom | undefined;
  let nearest = opening.thickness / 2 + 0.4;
  for (const ring of [room.outline, ...room.holes])
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      const size = distance(a, b);
      const d: Point = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
      if (Math.abs(d[0] * u[0] + d[1] * u[1]) < 0.985) return;
      const off = Math.abs((middle[0] - a[0]) * -d[1] + (middle[1] - a[1]) * d[0]);
      const s = (middle[0] - a[0]) * d[0] + (middle[1] - a[1]) * d[1];
      const [from, to] = [Math.max(0, s - width / 2), Math.min(size, s + width / 2)];
      if (off > nearest || to - from < 0.4) return;
      nearest = off;
      const at = (t: Metres): Point => [tidy(a[0] + t * d[0]), tidy(a[1] + t * d[1])];
      best = { from: at(from), to: at(to), middle: at((from + to) / 2) };
    });
  return best;
}

/** Positive on the left of a face: inside the room whose outline it runs along. */
const sideOf = (at: Point, { from, to }: FaceOfRoom): number =>
  (to[0] - from[0]) * (at[1] - from[1]) - (to[1] - from[1]) * (at[0] - from[0]);

const distance = (a: Point, b: Point): Metres => Math.hypot(b[0] - a[0], b[1] - a[1]);

const middleOf = (ring: Outline): Point => {
  const [xs, ys] = [ring.map((p) => p[0]), ring.map((p) => p[1])];
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
};

/** The drawing's lines in metres, moved as the rooms were. */
function drawingOf(
  linework: Linework,
  of: { readonly found: FoundPlan; readonly heights: PlanHeights; readonly id: string },
): SurveyDrawing {
  const { shift } = of.found;
  const { metres, storey, part } = of.heights;
  const within = linesWithin(linework, part?.box);
  const box = part?.box;
  const blocks = drawingBlocks(linework, { metres, shift, ...(box === undefined ? {} : { box }) });
  return {
    id: of.id,
    storey: storey.id,
    name: linework.file,
    file: linework.file,
    lines: within.lines.map((value, i) => value * metres - shift[(i & 1) as 0 | 1]),
    layerOf: within.layerOf,
    layers: linework.layers.map(({ name, shown, colour }) => ({
      name,
      shown,
      ...(colour === undefined ? {} : { colour }),
    })),
    ...(blocks.length === 0 ? {} : { blocks }),
  };
}

/** Lines that begin or end in a box. */
function linesWithin(
  { lines, layerOf }: Linework,
  box: LineBox | undefined,
): { readonly lines: Float64Array; readonly layerOf: Uint16Array } {
  if (box === undefined) return { lines, layerOf };
  const kept: number[] = [];
  for (let i = 0; i < layerOf.length; i++)
    if (inBox(box, lines[4 * i]!, lines[4 * i + 1]!) || inBox(box, lines[4 * i + 2]!, lines[4 * i + 3]!))
      kept.push(i);
  return {
    lines: Float64Array.from(kept.flatMap((i) => [...lines.subarray(4 * i, 4 * i + 4)])),
    layerOf: Uint16Array.from(kept, (i) => layerOf[i]!),
  };
}
