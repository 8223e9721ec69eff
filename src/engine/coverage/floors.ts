import {
  difference,
  intersection,
  type Outline,
  outlineContains,
  type Point,
  type Region,
  regionOf,
  union,
} from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import { type FloorPiece, flightEdge, type Room } from "../site/index.ts";

/** A part of a room's floor that is level: what a person stands on. */
export interface FloorPatch {
  readonly region: Region;
  /** Above the finished floor of the storey. [m] */
  readonly height: Metres;
}

/** Highest riser of the steps that a flight is taken to consist of. [m] @source COMMON-PRACTICE */
export const HIGHEST_RISER: Metres = 0.18;

/**
 * The level parts of a room's floor; a flight is cut into steps of equal rise, each level at the middle of its rise.
 *
 * n = ⌈(high − low)/0.18⌉ steps; step k = 0 … n−1 lies at low + (high − low)(k + ½)/n. Where pieces overlap the highest counts.
 *
 * @param room - The room. @param pieces - Its floor pieces.
 * @returns Patches that together make up the room; one where the room has no pieces.
 * @source DERIVED-HERE
 * @example A flight from 0 to 0.9 m has five steps, at 0.09, 0.27, 0.45, 0.63 and 0.81 m
 */
export function floorPatches(room: Room, pieces: readonly FloorPiece[]): readonly FloorPatch[] {
  const whole = regionOf(room.outline, room.holes);
  if (pieces.length === 0) return [{ region: whole, height: room.floor }];
  const patches: FloorPatch[] = [];
  let taken: Region = [];
  const raised = pieces.flatMap(levelParts).toSorted((a, b) => b.height - a.height);
  for (const { region, height } of raised) {
    const free = difference(intersection(region, whole), taken);
    if (free.length === 0) continue;
    patches.push({ region: free, height: room.floor + height });
    taken = union([taken, free]);
  }
  const rest = difference(whole, taken);
  return rest.length === 0 ? patches : [...patches, { region: rest, height: room.floor }];
}

/**
 * Height on which a person stands at a place: as `floorPatches`, asked for one point.
 *
 * @param floor.room - The room. @param floor.pieces - Its floor pieces. @param at - Place on the plan. [m]
 * @returns Above the finished floor of the storey. [m]
 * @source DERIVED-HERE
 * @example Half-way up a flight from 0 to 0.9 m: on the third step, 0.45 m
 */
export function standingHeight(
  floor: { readonly room: Room; readonly pieces: readonly FloorPiece[] },
  at: Point,
): Metres {
  let highest: Metres | undefined;
  for (const piece of floor.pieces) {
    if (!outlineContains(piece.footprint, at)) continue;
    const here = piece.kind === "landing" ? piece.high : stepHeight(piece, stepAt(piece, at));
    if (highest === undefined || here > highest) highest = here;
  }
  return floor.room.floor + (highest ?? 0);
}

function levelParts(piece: FloorPiece): readonly FloorPatch[] {
  const whole = regionOf(piece.footprint);
  if (piece.kind === "landing") return [{ region: whole, height: piece.high }];
  const n = stepsOf(piece);
  const parts: FloorPatch[] = [];
  for (let k = 0; k < n; k++) {
    const above = k === 0 ? whole : intersection(whole, beyond(piece, k / n));
    const region = k === n - 1 ? above : difference(above, beyond(piece, (k + 1) / n));
    if (region.length > 0) parts.push({ region, height: stepHeight(piece, k) });
  }
  return parts;
}

const stepsOf = (piece: FloorPiece): number =>
  Math.max(1, Math.ceil(Math.abs(piece.high - piece.low) / HIGHEST_RISER - 1e-9));

const stepHeight = (piece: FloorPiece, step: number): Metres =>
  piece.low + ((piece.high - piece.low) * (step + 0.5)) / stepsOf(piece);

function stepAt(piece: FloorPiece, at: Point): number {
  const n = stepsOf(piece);
  const { foot, head } = slopeOf(piece);
  const [below, above] = [foot(at), head(at)];
  const share = below + above <= 0 ? 0 : below / (below + above);
  return Math.min(n - 1, Math.max(0, Math.floor(share * n)));
}

/** Distances to the lines of the lower and the upper edge, positive on the flight. */
function slopeOf(piece: FloorPiece): {
  readonly foot: (p: Point) => Metres;
  readonly head: (p: Point) => Metres;
} {
  const foot = lineOf(flightEdge(piece, "foot"));
  const head = lineOf(flightEdge(piece, "head"));
  const middle = (edge: readonly [Point, Point]): Point => [
    (edge[0][0] + edge[1][0]) / 2,
    (edge[0][1] + edge[1][1]) / 2,
  ];
  const footSign = Math.sign(foot(middle(flightEdge(piece, "head")))) || 1;
  const headSign = Math.sign(head(middle(flightEdge(piece, "foot")))) || 1;
  return { foot: (p) => footSign * foot(p), head: (p) => headSign * head(p) };
}

function lineOf([a, b]: readonly [Point, Point]): (p: Point) => Metres {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  return (p) => ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / length;
}

/** The half plane (as a big quad) where the share of the way up is above t: (1 − t)·d_foot − t·d_head > 0, a straight line. */
function beyond(piece: FloorPiece, t: number): Region {
  const { foot, head } = slopeOf(piece);
  const f = (p: Point): number => (1 - t) * foot(p) - t * head(p);
  const base = piece.footprint[0] as Point;
  const [c, gx, gy] = [f(base), f([base[0] + 1, base[1]]) - f(base), f([base[0], base[1] + 1]) - f(base)];
  const slope = Math.hypot(gx, gy);
  if (slope === 0) return c > 0 ? regionOf(piece.footprint) : [];
  const [nx, ny] = [gx / slope, gy / slope];
  const on: Point = [base[0] - (c / slope) * nx, base[1] - (c / slope) * ny];
  const far = 1000;
  const quad: Outline = [
    [on[0] + far * ny, on[1] - far * nx],
    [on[0] + far * ny + far * nx, on[1] - far * nx + far * ny],
    [on[0] - far * ny + far * nx, on[1] + far * nx + far * ny],
    [on[0] - far * ny, on[1] + far * nx],
  ];
  return [{ outline: quad, holes: [] }];
}
