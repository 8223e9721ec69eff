import { type Metres, type Outline, type Piece, type Point, say } from "#engine";
import { boxOf, inPiece, pieceArea, pieceWidth, simplified, unionOf } from "../region.ts";
import { arrange } from "./arrangement.ts";
import { boxSearch, lineSearch } from "./box-index.ts";
import { doorLeaves } from "./door-arcs.ts";
import { type Faces, facesOf, inRing, ringArea } from "./faces.ts";
import { type FoundOpening, type FoundPlan, type FoundRoom, SURE } from "./found.ts";
import { hatching } from "./hatching.ts";
import { meaningOf } from "./layer-words.ts";
import { leafLines, likelyGaps, surroundings, withoutLeaves } from "./leaf-gaps.ts";
import { openingsOf } from "./openings.ts";
import type { PlanLines, PlanText } from "./plan-lines.ts";
import { CALLED, NAMELESS } from "./room-confidence.ts";
import { type RoomGroup, roomGroups, STRIP } from "./room-groups.ts";
import { mayName, roomName, withoutTypes } from "./room-names.ts";
import { shortEnds } from "./short-ends.ts";
import { slidingLeaves } from "./sliding-leaves.ts";
import { stairsIn } from "./stair-flights.ts";
import { type WallGap, wallGaps } from "./wall-ends.ts";
import { windowsOf } from "./windows.ts";

/** Nobody needs light in less. [m²] */
const LEAST_ROOM = 0.9;
/** A room is not larger than this. [m²] */
const MOST_ROOM = 20_000;
/** Islands with walls in them are shafts and cores from here on; smaller ones are columns, and floor all the same. [m²] */
const WALLED_ISLAND = 1.5;
/** Islands without walls are furniture up to here: a long table with its chairs. [m²] */
const PLAIN_ISLAND = 8;

/** A rail and the string beside it are no thicker. [m] */
const RAIL: Metres = 0.25;

/** Rooms and openings in lines of one choice of layers. */
export function roomsInLines(
  plan: PlanLines,
  options: { readonly names: readonly string[]; readonly tolerance: Metres },
): Omit<FoundPlan, "layers"> {
  const count = plan.layerOf.length;
  if (count === 0) return { rooms: [], openings: [], shift: plan.shift };
  const meaning = options.names.map(meaningOf);
  const search = lineSearch(plan.lines);
  const leaves = doorLeaves(plan.swings, surroundings(plan.lines, search));
  const strokes = hatching(plan.lines, plan.layerOf);
  const sliding = slidingLeaves(plan.lines, search);
  const solid = withoutLeaves(plan.lines, {
    leaves,
    search,
    hatched: (line) => strokes[line] === 1 || sliding.pocketed[line] === 1,
  });
  const kept = withLines(
    { lines: solid.lines, layerOf: Uint16Array.from(solid.kept, (i) => plan.layerOf[i]!) },
    sliding.ends.map(({ line, end }) => ({ layer: plan.layerOf[line]!, end })),
  );
  const searchKept = lineSearch(kept.lines);
  const first = arrange({ lines: kept.lines, rank: () => 0, tolerance: options.tolerance });
  const stairs = stairsIn(plan.lines);
  // The ends of two rails face each other as the ends of two walls do.
  const railGap = (gap: WallGap): boolean => gap.thickness < RAIL && stairs.atFlight(gap.middle);
  const gaps = likelyGaps(
    wallGaps(first).filter((gap) => !railGap(gap)),
    { leaves, lines: kept.lines, search: searchKept, slid: sliding.shuts },
  );
  const short = shortEnds(first, {
    lines: kept.lines,
    search: searchKept,
    wall: (line) => meaning[kept.layerOf[line]!] === "wall",
  });
  const shutLines = [...gaps.flatMap((gap) => gap.shut), ...short, ...leafLines(leaves, gaps)];
  const own = kept.layerOf.length;
  const all = new Float64Array(4 * (own + shutLines.length));
  all.set(kept.lines);
  shutLines.forEach(([a, b], i) => {
    all.set([a[0], a[1], b[0], b[1]], 4 * (own + i));
  });
  const graph = arrange({ lines: all, rank: (line) => (line < own ? 0 : 1), tolerance: options.tolerance });
  const closed = facesOf(graph);
  const shut = (edge: number): boolean => graph.lineOf[edge]! >= own;
  const gapLines = gaps.reduce((sum, gap) => sum + gap.shut.length, 0) + short.length;
  const cubicle = (edge: number): boolean => graph.lineOf[edge]! >= own + gapLines;
  const named = (edge: number): boolean => {
    const line = graph.lineOf[edge]!;
    return line < own && meaning[kept.layerOf[line]!] === "wall";
  };
  const texts = withoutTypes(plan.texts);
  const labels = texts.filter(({ text }) => mayName(text));
  const groups = roomGroups(graph, closed, {
    shut,
    cubicle,
    named,
    labels: labels.map(({ at }) => at),
    stairs,
  });
  const near = boxSearch(texts.map(({ at: [x, y] }) => [x, y, x, y]));
  const textsIn = (piece: Piece): readonly PlanText[] =>
    near(boxOf(piece.outline)).flatMap((index) => {
      const text = texts[index]!;
      return inPiece(text.at, piece) ? [text] : [];
    });
  const candidates = groups
    .flatMap((group) => roomOfGroup(group, { closed, textsIn }))
    .filter((room): room is Candidate => room !== undefined);
  const likely = withoutSurroundings(candidates);
  const doorLines: (readonly [Point, Point])[] = [];
  for (let i = 0; i < own; i++) {
    if (meaning[kept.layerOf[i]!] !== "door") continue;
    const [x1, y1, x2, y2] = kept.lines.subarray(4 * i, 4 * i + 4) as unknown as [
      number,
      number,
      number,
      number,
    ];
    doorLines.push([
      [x1, y1],
      [x2, y2],
    ]);
  }
  const pieces = likely.map(({ piece }) => piece);
  const doors = openingsOf({ gaps, leaves, ajar: plan.ajar, slid: sliding.shuts, doorLines, pieces });
  const glazed = (line: number): boolean => meaning[kept.layerOf[line]!] === "window";
  const windows = windowsOf({ lines: kept.lines, search: searchKept, glazed, pieces, doors });
  return { ...judged(likely, [...doors, ...windows]), shift: plan.shift };
}

/** Lines and some more. */
function withLines(
  { lines, layerOf }: { readonly lines: Float64Array; readonly layerOf: Uint16Array },
  more: readonly { readonly layer: number; readonly end: readonly [Point, Point] }[],
): { readonly lines: Float64Array; readonly layerOf: Uint16Array } {
  if (more.length === 0) return { lines, layerOf };
  const all = new Float64Array(lines.length + 4 * more.length);
  all.set(lines);
  more.forEach(({ end: [[x1, y1], [x2, y2]] }, i) => {
    all.set([x1, y1, x2, y2], lines.length + 4 * i);
  });
  return { lines: all, layerOf: Uint16Array.from([...layerOf, ...more.map(({ layer }) => layer)]) };
}

interface Candidate {
  readonly room: FoundRoom;
  readonly piece: Piece;
  /** Share of its edge that is wall or shut opening, 0 … 1. */
  readonly enclosed: number;
}

function roomOfGroup(
  group: RoomGroup,
  of: {
    readonly closed: Faces;
    readonly textsIn: (piece: Piece) => readonly PlanText[];
  },
): Candidate | undefined {
  const { closed, textsIn } = of;
  const members = group.faces.map((face) => closed.faces[face]!);
  const rough = members.reduce((sum, face) => sum + face.area, 0);
  if (rough < LEAST_ROOM || rough > MOST_ROOM) return undefined;
  const [whole] = unionOf(members.map((face) => face.outline)).toSorted(
    (a, b) => pieceArea(b) - pieceArea(a),
  );
  if (!whole) return undefined;
  const piece: Piece = {
    outline: simplified(whole.outline, 0.004),
    holes: holesOf(whole, { members, closed, own: new Set(group.faces) }).map((hole) =>
      simplified(hole, 0.004),
    ),
  };
  const area = pieceArea(piece);
  if (area < LEAST_ROOM || pieceWidth({ ...piece, holes: [] }) < 0.35) return undefined;
  const { number, name } = roomName(textsIn(piece));
  return {
    room: { outline: piece.outline, holes: piece.holes, area, number, name, confidence: 0, doubts: [] },
    piece,
    enclosed: group.enclosed,
  };
}

/** Islands that are more than a column or a table; their outlines, clockwise as holes are. */
function holesOf(
  whole: Piece,
  {
    members,
    closed,
    own,
  }: { readonly members: Faces["faces"]; readonly closed: Faces; readonly own: ReadonlySet<number> },
): readonly Outline[] {
  const counts = (ring: Outline, edges: readonly number[]): boolean => {
    const size = Math.abs(ringArea(ring));
    // The car of a lift belongs to its shaft.
    if (edges.every((h) => own.has(closed.faceOf[h ^ 1]!))) return false;
    if (size > PLAIN_ISLAND) return true;
    const walled = edges.some((h) => {
      const face = closed.faces[closed.faceOf[h ^ 1]!];
      return face !== undefined && face.width < STRIP && face.area > 0.15;
    });
    return walled && size > WALLED_ISLAND;
  };
  const islands = members.flatMap((face) =>
    face.islands.flatMap(({ outline, edges }) => (counts(outline, edges) ? [outline] : [])),
  );
  return [
    ...whole.holes.filter((hole) => Math.abs(ringArea(hole)) > PLAIN_ISLAND),
    // An island at a hole of the union is that hole.
    ...islands.filter((ring) => !whole.holes.some((hole) => ring.some((p) => inRing(p, hole)))),
  ];
}

/** What surrounds other rooms without walls of its own round it is the paper, the frame, the ground round the house. */
function withoutSurroundings(candidates: readonly Candidate[]): readonly Candidate[] {
  const near = boxSearch(candidates.map(({ piece }) => boxOf(piece.outline)));
  return candidates.filter((one) => {
    const within = one.piece.holes.flatMap((hole) =>
      near(boxOf(hole)).flatMap((index) => {
        const other = candidates[index]!;
        return other !== one && inRing(other.piece.outline[0]!, hole) ? [other] : [];
      }),
    );
    if (within.length === 0) return true;
    const inner = within.reduce((sum, other) => sum + other.room.area, 0);
    return one.enclosed >= 0.5 && inner < 4 * one.room.area;
  });
}

/** Rooms with what speaks for and against them; what is none is dropped, and the openings follow. */
function judged(
  candidates: readonly Candidate[],
  openings: readonly FoundOpening[],
): { readonly rooms: readonly FoundRoom[]; readonly openings: readonly FoundOpening[] } {
  const entered = new Set(openings.flatMap(({ kind, rooms }) => (kind === "window" ? [] : rooms)));
  const rooms = candidates.map(({ room, enclosed }, index): FoundRoom => {
    const door = entered.has(index);
    const called = room.name + room.number !== "";
    const doubts = [
      ...(door ? [] : [say`no door found`]),
      ...(enclosed < 0.5 ? [say`bounded by single lines`] : []),
      ...(room.area < 1.5 ? [say`very small`] : []),
      ...(called ? [] : [NAMELESS]),
    ];
    // Weights by judgement, no source: a closed face is a third of a room; a door, walls and a name make the rest.
    const confidence = 0.35 + 0.25 * (door ? 1 : 0) + 0.25 * enclosed + (called ? CALLED : 0);
    return { ...room, confidence, doubts };
  });
  const [noNiche, noLegend] = [withoutNiches(rooms, entered), withoutLegends(rooms)];
  const kept = rooms.map((room, index) => noNiche(room, index) && noLegend(room));
  const place = new Map<number, number>([[-1, -1]]);
  kept.forEach((keep, index) => {
    if (keep) place.set(index, place.size - 1);
  });
  return {
    rooms: rooms.filter((_, index) => kept[index]),
    openings: openings.flatMap((opening): FoundOpening[] => {
      const [a, b] = [place.get(opening.rooms[0]) ?? -1, place.get(opening.rooms[1]) ?? -1];
      return a < 0 && b < 0 ? [] : [{ ...opening, rooms: [a, b] }];
    }),
  };
}

/** Where most rooms have doors and names, a bare rectangle is a legend's sample or a piece of the frame. */
function withoutLegends(rooms: readonly FoundRoom[]): (room: FoundRoom) => boolean {
  const sure = rooms.filter(({ confidence }) => confidence >= SURE).length;
  return sure * 2 < rooms.length ? () => true : ({ confidence }) => confidence >= BARE;
}

/** Below this a face is a rectangle with neither door nor name. */
const BARE = 0.4;

/** Where most rooms have a door, a small nameless face without one is a niche between columns, a shaft, or a piece of wall. */
function withoutNiches(
  rooms: readonly FoundRoom[],
  entered: ReadonlySet<number>,
): (room: FoundRoom, index: number) => boolean {
  const large = rooms.flatMap(({ area }, index) => (area >= ORDINARY ? [index] : []));
  const open = large.filter((index) => entered.has(index)).length;
  if (large.length < 3 || open < MOST_ENTERED * large.length) return () => true;
  return (room, index) => {
    const niche = room.area < NICHE || (room.area < LONG_NICHE && pieceWidth(room) < NARROW);
    return !niche || entered.has(index) || room.name + room.number !== "";
  };
}

/** Niches are smaller. [m²] */
const NICHE = 6;
/** Those that wind round columns and along walls may be larger. [m²] */
const LONG_NICHE = 30;
/** Corridors that people walk along are wider. [m] */
const NARROW: Metres = 0.8;
/** Rooms from here on are of ordinary size. [m²] */
const ORDINARY = 8;
/** Share of the rooms of ordinary size that have doors in a plan that shows doors. */
const MOST_ENTERED = 0.7;
