import { distanceBetween, type Metres, type Point } from "#engine";
import type { LineArc, Linework } from "../linework/linework.ts";
import { boxSearch } from "./box-index.ts";
import { type DoorLeaf, leafWidths, sweeps } from "./door-arcs.ts";

/** Arcs of doors that are drawn by hand are not always struck from the hinge: their radius may be shorter than the leaf. [m] */
const LEAST_RADIUS: Metres = 0.3;
/** A leaf that stands ajar turns from its wall by so much. [rad] */
const angles: readonly [number, number] = [(5 * Math.PI) / 180, (45 * Math.PI) / 180];
/** An arc turns by more than this; less is a bent line. [rad] */
const LEAST_SWEEP = (8 * Math.PI) / 180;
/** An arc ends at its leaf or runs past it by a hand. [m] */
const PAST_LEAF: Metres = 0.15;
/** It ends on the wall, and the leaf begins there, this nearly. [m] */
const ON_WALL: Metres = 0.06;

/** Doors that stand ajar, and the numbers of the lines that draw them. */
export interface AjarDoors {
  /** In metres at their place in the drawing. */
  readonly doors: readonly DoorLeaf[];
  readonly lines: ReadonlySet<number>;
}

/**
 * Doors whose leaf stands a little open before a wall that is drawn through: no gap, a leaf at an angle, a short arc from its edge back to the wall.
 *
 * @param drawing - Lines and arcs, in the drawing's units. @param of.metres - Metres in one unit.
 * @param of.near - Whether a place, in drawing units, is in the part that is looked at.
 * @source DERIVED-HERE
 * @example A wall from (0, 0) to (5, 0), a leaf from (1, 0) to (1.77, 0.2), an arc from there to (1.8, 0): a door from (1, 0) to (1.8, 0)
 */
export function ajarDoors(
  drawing: Pick<Linework, "lines" | "arcOf" | "arcs">,
  of: { readonly metres: Metres; readonly near: (at: Point, reach: number) => boolean },
): AjarDoors {
  const { metres, near } = of;
  const arcs = drawing.arcs.flatMap((arc, index) => {
    const sweep = (((arc.to - arc.from) % TURN) + TURN) % TURN;
    const radius = arc.radius * metres;
    const fits =
      radius >= LEAST_RADIUS && radius <= leafWidths[1] && sweep >= LEAST_SWEEP && sweep < sweeps[0];
    return fits && near(arc.centre, arc.radius) ? [{ index, arc: inMetres(arc, metres) }] : [];
  });
  const doors: DoorLeaf[] = [];
  const lines = new Set<number>();
  if (arcs.length === 0) return { doors, lines };
  const straight = linesAbout(
    drawing,
    arcs.map(({ arc }) => arc.ends),
    metres,
  );
  const drawn = new Set<number>();
  arcs.forEach(({ index, arc }, place) => {
    // Both leaves of a double door meet at its arcs: each arc was struck from its own hinge, or near it.
    const door = [
      ...doorsAt(arc.ends, straight[place]!),
      ...doorsAt([arc.ends[1], arc.ends[0]], straight[place]!),
    ]
      .map((one) => ({ ...one, off: distanceBetween(one.leaf.hinge, arc.centre) }))
      .reduce<(Door & { off: Metres }) | undefined>(
        (best, one) => (best && best.off <= one.off ? best : one),
        undefined,
      );
    if (!door) return;
    doors.push(door.leaf);
    lines.add(door.line);
    drawn.add(index + 1);
  });
  if (drawn.size > 0)
    drawing.arcOf.forEach((arc, line) => {
      if (drawn.has(arc)) lines.add(line);
    });
  return { doors, lines };
}

const TURN = 2 * Math.PI;

const inMetres = (
  { centre, radius, from, to }: LineArc,
  metres: Metres,
): { readonly centre: Point; readonly ends: readonly [Point, Point] } => {
  const at = (angle: number, size: number): Point => [
    (centre[0] + size * Math.cos(angle)) * metres,
    (centre[1] + size * Math.sin(angle)) * metres,
  ];
  return { centre: at(0, 0), ends: [at(from, radius), at(to, radius)] };
};

interface Door {
  readonly leaf: DoorLeaf;
  /** The line that draws the leaf. */
  readonly line: number;
}

interface Straight {
  readonly line: number;
  readonly a: Point;
  readonly b: Point;
}

/** Straight lines that pass near either end of each arc. */
function linesAbout(
  { lines, arcOf }: Pick<Linework, "lines" | "arcOf">,
  ends: readonly (readonly [Point, Point])[],
  metres: Metres,
): readonly (readonly Straight[])[] {
  const about = boxSearch(
    ends.map(([[x1, y1], [x2, y2]]) => [
      Math.min(x1, x2) - PAST_LEAF,
      Math.min(y1, y2) - PAST_LEAF,
      Math.max(x1, x2) + PAST_LEAF,
      Math.max(y1, y2) + PAST_LEAF,
    ]),
  );
  const found: Straight[][] = ends.map(() => []);
  for (let line = 0; line < arcOf.length; line++) {
    if (arcOf[line]! > 0) continue;
    const [x1, y1, x2, y2] = [0, 1, 2, 3].map((k) => lines[4 * line + k]! * metres) as [
      number,
      number,
      number,
      number,
    ];
    const touched = about([Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2)]);
    for (const place of touched) found[place]!.push({ line, a: [x1, y1], b: [x2, y2] });
  }
  return found;
}

/** Leaves at the first end of an arc whose second lies on the wall. */
function doorsAt([edge, shut]: readonly [Point, Point], around: readonly Straight[]): readonly Door[] {
  return around.flatMap(({ line, a, b }): Door[] => {
    const length = distanceBetween(a, b);
    if (length < leafWidths[0] || length > leafWidths[1]) return [];
    const [open, hinge] = distanceBetween(a, edge) < distanceBetween(b, edge) ? [a, b] : [b, a];
    if (distanceBetween(open, edge) > PAST_LEAF) return [];
    return around.flatMap((wall): Door[] => {
      const latch = wall.line === line ? undefined : latchOn(wall, { hinge, open, shut, length });
      return latch ? [{ leaf: { hinge, latch, open }, line }] : [];
    });
  });
}

/** Where a leaf shuts on a wall that runs on behind it uncut; undefined where it does not hang on that wall. */
function latchOn(
  { a, b }: Straight,
  leaf: { readonly hinge: Point; readonly open: Point; readonly shut: Point; readonly length: Metres },
): Point | undefined {
  const size = distanceBetween(a, b);
  if (size < leaf.length) return undefined;
  const [ux, uy] = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
  const along = ([x, y]: Point): Metres => (x - a[0]) * ux + (y - a[1]) * uy;
  const off = ([x, y]: Point): Metres => Math.abs((x - a[0]) * uy - (y - a[1]) * ux);
  if (off(leaf.hinge) > ON_WALL || off(leaf.shut) > ON_WALL) return undefined;
  const turn = Math.asin(Math.min(1, off(leaf.open) / leaf.length));
  if (turn < angles[0] || turn > angles[1]) return undefined;
  const from = along(leaf.hinge);
  const to = from + leaf.length * Math.sign(along(leaf.open) - from);
  if (Math.min(from, to) < -ON_WALL || Math.max(from, to) > size + ON_WALL) return undefined;
  return [a[0] + to * ux, a[1] + to * uy];
}
