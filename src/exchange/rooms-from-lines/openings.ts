import type { Metres, Piece, Point } from "#engine";
import { boxOf, inPiece } from "../region.ts";
import { boxIndex, boxSearch } from "./box-index.ts";
import type { DoorLeaf } from "./door-arcs.ts";
import type { FoundOpening } from "./found.ts";
import { gapFinder } from "./leaf-gaps.ts";
import type { WallGap } from "./wall-ends.ts";

/**
 * Openings between rooms: gaps with and without a leaf, leaves that hang in no wall, leaves ajar before an uncut one,
 * lines of a door layer that part two rooms.
 *
 * @param of.gaps - Gaps in walls. @param of.leaves - Leaves of doors. @param of.ajar - Leaves before walls that are drawn through. @param of.doorLines - Lines on layers that are called doors.
 * @param of.pieces - The rooms.
 */
export function openingsOf(of: {
  readonly gaps: readonly WallGap[];
  readonly leaves: readonly DoorLeaf[];
  readonly ajar: readonly DoorLeaf[];
  /** Whether a sliding leaf lies in a gap. */
  readonly slid: (gap: WallGap) => boolean;
  readonly doorLines: readonly (readonly [Point, Point])[];
  readonly pieces: readonly Piece[];
}): readonly FoundOpening[] {
  const { gaps, leaves, ajar, slid, doorLines, pieces } = of;
  const near = boxIndex(pieces.map(({ outline }) => outline));
  const roomAt = (p: Point): number => near(p).find((index) => inPiece(p, pieces[index]!)) ?? -1;
  const beside = (a: Point, b: Point, thickness: Metres): readonly [number, number] => {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const n: Point = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
    const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const off = thickness / 2 + 0.15;
    return [
      roomAt([middle[0] + off * n[0], middle[1] + off * n[1]]),
      roomAt([middle[0] - off * n[0], middle[1] - off * n[1]]),
    ];
  };
  // On the face of a wall, the room on its other side begins beyond the wall.
  const besideFace = (from: Point, to: Point): readonly [number, number] => {
    const [near, far] = [beside(from, to, 0), beside(from, to, 0.7)];
    return [near[0] < 0 ? far[0] : near[0], near[1] < 0 ? far[1] : near[1]];
  };
  const used = new Set<DoorLeaf>();
  const gapOf = gapFinder(gaps);
  const leafOf = new Map(
    leaves.flatMap((leaf): [WallGap, DoorLeaf][] => {
      const gap = gapOf(leaf);
      return gap ? [[gap, leaf]] : [];
    }),
  );
  const fromGaps = gaps.flatMap((gap): FoundOpening[] => {
    const [one, other = one] = gap.shut;
    const from: Point = [(one![0][0] + other![0][0]) / 2, (one![0][1] + other![0][1]) / 2];
    const to: Point = [(one![1][0] + other![1][0]) / 2, (one![1][1] + other![1][1]) / 2];
    const leaf = leafOf.get(gap);
    if (leaf) used.add(leaf);
    const sides = beside(from, to, gap.thickness);
    // On both sides the same room: two columns, two desks.
    if (sides[0] === sides[1]) return [];
    return [
      {
        kind: leaf || slid(gap) ? "door" : "passage",
        from,
        to,
        thickness: gap.thickness,
        rooms: sides,
        ...(leaf ? { leaf } : {}),
      },
    ];
  });
  const fromLeaves = leaves.flatMap((leaf): FoundOpening[] => {
    if (used.has(leaf)) return [];
    const sides = beside(leaf.hinge, leaf.latch, 0.2);
    if (sides[0] === sides[1]) return [];
    return [{ kind: "door", from: leaf.hinge, to: leaf.latch, thickness: 0, rooms: sides, leaf }];
  });
  const fromAjar = ajar.flatMap((leaf): FoundOpening[] => {
    const rooms = besideFace(leaf.hinge, leaf.latch);
    if (rooms[0] === rooms[1]) return [];
    return [{ kind: "door", from: leaf.hinge, to: leaf.latch, thickness: 0, rooms, leaf }];
  });
  const known = [...fromGaps, ...fromLeaves, ...fromAjar];
  const knownAt = boxSearch(known.map(({ from, to }) => boxOf([from, to])));
  const alone = standingAlone(doorLines);
  const fromLines = alone.flatMap(([from, to]): FoundOpening[] => {
    const width = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (width < doorWidths[0] || width > doorWidths[1]) return [];
    if (leaves.some((leaf) => drawsOpen(leaf, from, to))) return [];
    const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    if (knownAt([x - 0.3, y - 0.3, x + 0.3, y + 0.3]).length > 0) return [];
    const rooms = besideFace(from, to);
    return rooms[0] === rooms[1] ? [] : [{ kind: "door", from, to, thickness: 0, rooms }];
  });
  return [...known, ...fromLines];
}

/** Whether a line draws a leaf that stands open: it lies beside it, and is about as long. */
function drawsOpen({ hinge, open }: DoorLeaf, from: Point, to: Point): boolean {
  const length = Math.hypot(open[0] - hinge[0], open[1] - hinge[1]);
  const [ux, uy] = [(open[0] - hinge[0]) / length, (open[1] - hinge[1]) / length];
  return [from, to].every(([x, y]) => {
    const [dx, dy] = [x - hinge[0], y - hinge[1]];
    const along = dx * ux + dy * uy;
    return along > -LEAF && along < length + LEAF && Math.abs(dx * uy - dy * ux) < LEAF;
  });
}

/** A leaf is drawn beside its hinge by no more. [m] */
const LEAF: Metres = 0.15;

/** Narrowest and widest door that a line stands for. [m] @source COMMON-PRACTICE */
const doorWidths: readonly [Metres, Metres] = [0.6, 3];

/** Door lines without another along them: two side by side are the panels of a sliding door, a frame, the panes of a window. */
function standingAlone(lines: readonly (readonly [Point, Point])[]): readonly (readonly [Point, Point])[] {
  const near = boxSearch(lines.map(boxOf));
  return lines.filter(([a, b], index) => {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length === 0) return false;
    const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    const [x1, y1, x2, y2] = boxOf([a, b]);
    return !near([x1 - PAIR, y1 - PAIR, x2 + PAIR, y2 + PAIR]).some((other) => {
      if (other === index) return false;
      const ends = lines[other]!.map(([x, y]): Point => {
        const [dx, dy] = [x - a[0], y - a[1]];
        return [dx * ux + dy * uy, Math.abs(dy * ux - dx * uy)];
      });
      const shared =
        Math.min(length, Math.max(ends[0]![0], ends[1]![0])) -
        Math.max(0, Math.min(ends[0]![0], ends[1]![0]));
      // The same line drawn twice counts once, as the first of them.
      const same = ends.every(([, off]) => off < 0.005) && shared > 0.95 * length;
      return ends.every(([, off]) => off < PAIR) && shared > 0.4 * length && (!same || other < index);
    });
  });
}

/** Lines of one leaf, frame or window are no farther apart. [m] */
const PAIR: Metres = 0.4;
