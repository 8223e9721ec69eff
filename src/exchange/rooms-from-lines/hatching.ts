import type { Metres } from "#engine";
import type { Box } from "../region.ts";
import { someLines } from "./box-index.ts";

/** Strokes of a hatch lie no farther apart. [m] */
const WIDEST: Metres = 0.9;
/** Fewest strokes in a row that are a pattern: walls come in pairs, frames in threes. */
const FEWEST = 5;
/** Distances to both sides may differ by this share. */
const EVEN = 0.2;
/** Walls run along one of two directions a right angle apart, in most plans; from here on a line slants. [rad] */
const SLANT = 0.12;
/** Directions within this are one. [rad] */
const PARALLEL = 0.02;

/**
 * Lines that are strokes of a hatch, treads of a stair or rows of tiles: many in a row on one layer, parallel, evenly spaced.
 *
 * @param lines - x1 y1 x2 y2 of each. [m] @param layerOf - Layer of each: strokes of one hatch share it.
 * @returns 1 for each stroke.
 * @source DERIVED-HERE
 * @example Ten lines at 45°, 0.3 m apart: all but perhaps the outer two
 */
export function hatching(lines: Float64Array, layerOf: Uint16Array): Uint8Array {
  const count = layerOf.length;
  const way = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const angle = Math.atan2(lines[4 * i + 3]! - lines[4 * i + 1]!, lines[4 * i + 2]! - lines[4 * i]!);
    way[i] = angle < 0 ? angle + Math.PI : angle >= Math.PI ? angle - Math.PI : angle;
  }
  const main = mainDirection(lines, way);
  const isSlanting = (i: number): boolean => {
    const off = Math.abs(way[i]! - main) % (Math.PI / 2);
    return Math.min(off, Math.PI / 2 - off) > SLANT;
  };
  const alike = linesByWay(lines, way);
  const above = new Int32Array(count).fill(-1);
  const below = new Int32Array(count).fill(-1);
  const step = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const { up, down, upBy, downBy } = neighbours(i);
    above[i] = up;
    below[i] = down;
    // Slanting strokes may come in pairs or dashes: there no wall is taken for one of them.
    const slanting = isSlanting(i);
    if (!slanting && (up < 0 || down < 0)) continue;
    if (!slanting && Math.abs(upBy - downBy) > EVEN * Math.max(upBy, downBy)) continue;
    if (up < 0 && down < 0) continue;
    step[i] = slanting ? 1 : (upBy + downBy) / 2;
  }
  return inRows();

  function neighbours(i: number): {
    readonly up: number;
    readonly down: number;
    readonly upBy: Metres;
    readonly downBy: Metres;
  } {
    const x1 = lines[4 * i]!;
    const y1 = lines[4 * i + 1]!;
    const x2 = lines[4 * i + 2]!;
    const y2 = lines[4 * i + 3]!;
    const ux = Math.cos(way[i]!);
    const uy = Math.sin(way[i]!);
    const a = (x2 - x1) * ux + (y2 - y1) * uy;
    const [least, most] = [Math.min(0, a), Math.max(0, a)];
    let [up, down] = [-1, -1];
    let [upBy, downBy] = [WIDEST, WIDEST];
    for (const j of alike(way[i]!, [
      Math.min(x1, x2) - WIDEST,
      Math.min(y1, y2) - WIDEST,
      Math.max(x1, x2) + WIDEST,
      Math.max(y1, y2) + WIDEST,
    ])) {
      if (j === i || layerOf[j] !== layerOf[i]) continue;
      const turn = Math.abs(way[j]! - way[i]!);
      if (Math.min(turn, Math.PI - turn) > PARALLEL) continue;
      const px = lines[4 * j]! - x1;
      const py = lines[4 * j + 1]! - y1;
      const off = -px * uy + py * ux;
      const s = px * ux + py * uy;
      const t = (lines[4 * j + 2]! - x1) * ux + (lines[4 * j + 3]! - y1) * uy;
      if (Math.abs(off) < 0.004) continue;
      const shared = Math.min(most, Math.max(s, t)) - Math.max(least, Math.min(s, t));
      if (shared < 0.25 * Math.min(most - least, Math.abs(t - s))) continue;
      if (off > 0 && off < upBy) [up, upBy] = [j, off];
      if (off < 0 && -off < downBy) [down, downBy] = [j, -off];
    }
    return { up, down, upBy, downBy };
  }

  /** Even lines that follow one another at the same step; the outermost strokes at both ends belong to them. */
  function inRows(): Uint8Array {
    const flags = new Uint8Array(count);
    const seen = new Uint8Array(count);
    for (let start = 0; start < count; start++) {
      if (seen[start] === 1 || step[start] === 0) continue;
      const row: number[] = [];
      const open = [start];
      seen[start] = 1;
      for (let i = open.pop(); i !== undefined; i = open.pop()) {
        row.push(i);
        for (const j of [above[i]!, below[i]!]) {
          if (j < 0 || seen[j] === 1 || step[j] === 0) continue;
          if (Math.abs(step[j]! - step[i]!) > EVEN * step[i]!) continue;
          seen[j] = 1;
          open.push(j);
        }
      }
      if (row.length < FEWEST) continue;
      for (const i of row) flags[i] = 1;
    }
    return withStragglers(flags);
  }

  /** Slanting lines of a layer whose like are nearly all strokes are strokes: the last ones in a corner. */
  function withStragglers(flags: Uint8Array): Uint8Array {
    const key = (i: number): number => layerOf[i]! * 200 + Math.round((way[i]! * 180) / Math.PI);
    const tally = new Map<number, { all: number; strokes: number }>();
    for (let i = 0; i < count; i++) {
      if (!isSlanting(i)) continue;
      const entry = tally.get(key(i)) ?? { all: 0, strokes: 0 };
      entry.all++;
      entry.strokes += flags[i]!;
      tally.set(key(i), entry);
    }
    for (let i = 0; i < count; i++) {
      const entry = isSlanting(i) ? tally.get(key(i)) : undefined;
      if (entry && entry.strokes > 20 && entry.strokes > 0.6 * entry.all) flags[i] = 1;
    }
    return flags;
  }
}

/** Lines of about one direction in a box: an index for each three degrees, since most lines about a stroke run across it. */
function linesByWay(lines: Float64Array, way: Float64Array): (angle: number, box: Box) => readonly number[] {
  const members: number[][] = Array.from({ length: WAYS }, () => []);
  const binOf = (angle: number): number => Math.floor((angle / Math.PI) * WAYS);
  way.forEach((angle, i) => {
    members[Math.min(WAYS - 1, binOf(angle))]!.push(i);
  });
  const searches = members.map((bin) => someLines(lines, bin));
  return (angle, box) => {
    const [from, to] = [binOf(angle - PARALLEL), binOf(angle + PARALLEL)];
    const first = searches[(from + WAYS) % WAYS]!(box);
    return from === to ? first : [...first, ...searches[to % WAYS]!(box)];
  };
}

/** Classes of directions; each is wider than what counts as parallel. */
const WAYS = 60;

/** The direction that, with the one across it, has the most length of lines. [rad] */
function mainDirection(lines: Float64Array, way: Float64Array): number {
  const bins = new Float64Array(90);
  way.forEach((angle, i) => {
    const length = Math.hypot(lines[4 * i + 2]! - lines[4 * i]!, lines[4 * i + 3]! - lines[4 * i + 1]!);
    const bin = Math.round((angle * 180) / Math.PI) % 90;
    // A hatch is one direction, walls are two: what has no partner across counts for little.
    bins[bin]! += Math.min(length, 12);
  });
  const across = new Float64Array(180);
  way.forEach((angle, i) => {
    across[Math.round((angle * 180) / Math.PI) % 180]! += Math.min(
      12,
      Math.hypot(lines[4 * i + 2]! - lines[4 * i]!, lines[4 * i + 3]! - lines[4 * i + 1]!),
    );
  });
  let best = 0;
  let most = -1;
  for (let bin = 0; bin < 90; bin++) {
    const worth = Math.min(across[bin]!, across[bin + 90]!) + bins[bin]! * 1e-3;
    if (worth > most) [best, most] = [bin, worth];
  }
  return (best * Math.PI) / 180;
}
