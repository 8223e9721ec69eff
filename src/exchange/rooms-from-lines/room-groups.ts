import type { Metres, Point } from "#engine";
import { boxOf } from "../region.ts";
import type { Arrangement } from "./arrangement.ts";
import { boxIndex } from "./box-index.ts";
import { type Face, type Faces, head, inRing, tail } from "./faces.ts";
import { liftShafts } from "./lift-shafts.ts";
import type { Stairs } from "./stair-flights.ts";

/** Faces that make one room together. */
export interface RoomGroup {
  readonly faces: readonly number[];
  /** Share of its edge that is wall or shut opening, 0 … 1. */
  readonly enclosed: number;
}

/** What the grouping knows of the lines. */
export interface EdgeFacts {
  /** A line that shuts an opening. */
  readonly shut: (edge: number) => boolean;
  /** A leaf that hangs in no wall, but in a screen: it may be a cubicle's. */
  readonly cubicle: (edge: number) => boolean;
  /** On a layer that is called a wall. */
  readonly named: (edge: number) => boolean;
  /** Places of labels: two rooms with a name each are two rooms. */
  readonly labels: readonly Point[];
  readonly stairs: Stairs;
}

/** Strips narrower than this are walls, linings and reveals, not rooms. [m] */
export const STRIP: Metres = 0.42;
/** Smaller faces are furniture where a line drawn through a room cuts them off. [m²] */
const FURNITURE = 3;
/** Cubicles with a door in a screen are a part of the room that they stand in up to here. [m²] */
const CUBICLE = 2.4;
/** Landings are no larger; what is larger at the end of a flight is a corridor or a hall. [m²] */
const LANDING = 14;
/** A stair with its landings is no larger. [m²] */
const STAIR = 45;
/** In plans of single lines only what nobody could stand in is. [m²] */
const CLUTTER = 0.9;

/**
 * Puts faces together that only furniture, treads and other lines within a room part.
 *
 * In plans with walls of two faces a wall has a strip behind it; a line with rooms on both sides is no wall unless it parts two large faces.
 *
 * @param graph - The arrangement. @param closed - Its faces. @param facts - What lines are.
 * @returns Groups of faces; strips belong to none.
 * @source DERIVED-HERE
 */
export function roomGroups(graph: Arrangement, closed: Faces, facts: EdgeFacts): readonly RoomGroup[] {
  const { faces, faceOf } = closed;
  const length = edgeLengths(graph);
  const strips = stripsAmong(faces, faceOf, length);
  if (facts.stairs.flights.length > 0)
    faces.forEach((face, index) => {
      if (strips[index] === 1 && facts.stairs.inWell(middleOf(face.outline))) strips[index] = 0;
    });
  const labels = labelsIn(faces, facts.labels);
  const double = isDouble(closed, { strips, length, shut: facts.shut });
  const parent = Int32Array.from(faces, (_, face) => face);
  const top = (face: number): number => {
    let at = face;
    while (parent[at] !== at) at = parent[at]!;
    parent[face] = at;
    return at;
  };
  const area = faces.map((face) => face.area);
  const named = labels.map((count) => count);
  const sealed = new Set<number>();
  for (const { round, car } of liftShafts(closed, { strips, length, shut: facts.shut }))
    for (const face of [round, ...car]) {
      sealed.add(face);
      strips[face] = 0;
      parent[face] = round;
    }
  const steps = stepEdges(graph, facts.stairs);
  const joins = thinJoins(closed, { strips, length, facts, sealed, steps });
  // The longest common line first: a desk goes to the room it stands in, not to the one behind.
  for (const { a, b, shared, screen, step } of joins) {
    const [p, q] = [top(a), top(b)];
    if (p === q) continue;
    const [small, large] = area[p]! <= area[q]! ? [p, q] : [q, p];
    if (named[small]! > 0 && named[large]! > 0 && area[small]! > CLUTTER) continue;
    const stair = step && area[small]! <= LANDING && area[small]! + area[large]! <= STAIR;
    if (!stair && area[small]! > (screen ? CUBICLE : double ? FURNITURE : CLUTTER)) continue;
    if (shared < 0.15) continue;
    parent[small] = large;
    area[large]! += area[small]!;
    named[large]! += named[small]!;
  }
  const groups = new Map<number, number[]>();
  faces.forEach((_, face) => {
    if (strips[face] === 1) return;
    const key = top(face);
    groups.set(key, [...(groups.get(key) ?? []), face]);
  });
  return [...groups.values()].map((members) => ({
    faces: members,
    enclosed: enclosedShare(closed, members, { strips, length, facts, sealed, steps }),
  }));
}

export const edgeLengths = (graph: Arrangement): Float64Array =>
  Float64Array.from(graph.from, (_, edge) => {
    const [v, w] = [tail(graph, 2 * edge), head(graph, 2 * edge)];
    return Math.hypot(graph.xy[2 * w]! - graph.xy[2 * v]!, graph.xy[2 * w + 1]! - graph.xy[2 * v + 1]!);
  });

/** 1: too narrow for a room. Equal strips in a row are treads of a stair, and floor. */
function stripsAmong(faces: readonly Face[], faceOf: Int32Array, length: Float64Array): Uint8Array {
  const strips = Uint8Array.from(faces, (face) => (face.width < STRIP ? 1 : 0));
  const beside = faces.map((face, index): readonly number[] => {
    if (strips[index] === 0 || face.area < 0.1 || face.width < 0.12) return [];
    const longest = Math.max(...face.edges.map((h) => length[h >> 1]!));
    return face.edges.flatMap((h) => {
      const other = faceOf[h ^ 1]!;
      return other >= 0 &&
        strips[other] === 1 &&
        length[h >> 1]! > 0.8 * longest &&
        longest > 0.6 &&
        Math.abs(faces[other]!.area - face.area) < 0.15 * face.area
        ? [other]
        : [];
    });
  });
  const treads = new Set<number>();
  beside.forEach((list, face) => {
    if (list.length >= 2) for (const one of [face, ...list]) treads.add(one);
  });
  for (const face of treads) strips[face] = 0;
  return strips;
}

/** Whether walls are drawn with two faces: most of the edge of what is no strip has a strip behind it. */
function isDouble(
  { faces, faceOf }: Faces,
  of: {
    readonly strips: Uint8Array;
    readonly length: Float64Array;
    readonly shut: (edge: number) => boolean;
  },
): boolean {
  let [backed, bare] = [0, 0];
  faces.forEach((face, index) => {
    if (of.strips[index] === 1) return;
    for (const h of face.edges) {
      if (of.shut(h >> 1)) continue;
      const other = faceOf[h ^ 1]!;
      if (other >= 0 && of.strips[other] === 1) backed += of.length[h >> 1]!;
      else if (other >= 0 && other !== index) bare += of.length[h >> 1]! / 2;
    }
  });
  return backed > bare;
}

const middleOf = (ring: readonly Point[]): Point => {
  const [x1, y1, x2, y2] = boxOf(ring);
  return [(x1 + x2) / 2, (y1 + y2) / 2];
};

function labelsIn(faces: readonly Face[], labels: readonly Point[]): readonly number[] {
  const count = new Array<number>(faces.length).fill(0);
  const near = boxIndex(faces.map((face) => face.outline));
  for (const at of labels) {
    let found = -1;
    for (const index of near(at)) {
      const face = faces[index]!;
      if ((found < 0 || face.area < faces[found]!.area) && inRing(at, face.outline)) found = index;
    }
    if (found >= 0) count[found]! += 1;
  }
  return count;
}

interface Known {
  readonly strips: Uint8Array;
  readonly length: Float64Array;
  readonly facts: EdgeFacts;
  /** Faces of lift shafts: nothing is joined to them. */
  readonly sealed: ReadonlySet<number>;
  /** 1: the edge lies on a flight of stairs. */
  readonly steps: Uint8Array;
}

interface ThinJoin {
  readonly a: number;
  readonly b: number;
  readonly shared: Metres;
  /** A leaf in a screen is a part of that line. */
  readonly screen: boolean;
  /** A front edge of a step is. */
  readonly step: boolean;
}

/** Pairs of faces with nothing but a drawn line between them, by the length of that line. */
function thinJoins(
  { faces, faceOf }: Faces,
  { strips, length, facts, sealed, steps }: Known,
): readonly ThinJoin[] {
  const shared = new Map<string, { a: number; b: number; shared: Metres; screen: boolean; step: boolean }>();
  faces.forEach((face, a) => {
    if (strips[a] === 1 || sealed.has(a)) return;
    for (const h of [...face.edges, ...face.islands.flatMap((island) => island.edges)]) {
      const b = faceOf[h ^ 1]!;
      const screen = facts.cubicle(h >> 1);
      if (
        b <= a ||
        strips[b] === 1 ||
        sealed.has(b) ||
        (facts.shut(h >> 1) && !screen) ||
        facts.named(h >> 1)
      )
        continue;
      const key = `${a} ${b}`;
      const known = shared.get(key);
      if (known) {
        known.shared += length[h >> 1]!;
        known.screen ||= screen;
        known.step ||= steps[h >> 1] === 1;
      } else shared.set(key, { a, b, shared: length[h >> 1]!, screen, step: steps[h >> 1] === 1 });
    }
  });
  return [...shared.values()].sort((p, q) => q.shared - p.shared);
}

/** 1: an edge on a flight of stairs, or on the rail of a well. */
const stepEdges = (graph: Arrangement, stairs: Stairs): Uint8Array =>
  stairs.flights.length === 0
    ? new Uint8Array(graph.from.length)
    : Uint8Array.from(graph.from, (_, edge) => {
        const [v, w] = [tail(graph, 2 * edge), head(graph, 2 * edge)];
        const [x1, y1, x2, y2] = [
          graph.xy[2 * v]!,
          graph.xy[2 * v + 1]!,
          graph.xy[2 * w]!,
          graph.xy[2 * w + 1]!,
        ];
        const middle: Point = [(x1 + x2) / 2, (y1 + y2) / 2];
        return stairs.onFlight(middle, [x2 - x1, y2 - y1]) || stairs.inWell(middle) ? 1 : 0;
      });

function enclosedShare(
  { faces, faceOf }: Faces,
  members: readonly number[],
  { strips, length, facts }: Known,
): number {
  const own = new Set(members);
  let [wall, all] = [0, 0];
  for (const member of members)
    for (const h of faces[member]!.edges) {
      const other = faceOf[h ^ 1]!;
      if (own.has(other)) continue;
      all += length[h >> 1]!;
      if (facts.shut(h >> 1) || facts.named(h >> 1) || (other >= 0 && strips[other] === 1))
        wall += length[h >> 1]!;
    }
  return all === 0 ? 0 : wall / all;
}
