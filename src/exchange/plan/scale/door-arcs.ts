import { doorSwings } from "../../linework/door-swings.ts";
import type { LineArc } from "../../linework/linework.ts";
import { boxSearch } from "../../rooms-from-lines/box-index.ts";
import { chainsOfAnySize } from "../../rooms-from-lines/chain-arcs.ts";

/** Door leaves are 0.6 to 1.3 m wide; most near 0.85 m. [m] */
export const doorLeaf = { least: 0.6, most: 1.3, usual: 0.85 } as const;

/** Scales that doors can tell from each other; nearer ones they cannot. */
export const doorScales: readonly number[] = [25, 50, 75, 100, 150, 200, 250, 300, 400, 500, 750, 1000];

/** Arcs that could be the swings of doors: quarter circles, of the radii that come most often. */
export interface DoorArcs {
  readonly count: number;
  /** [drawing units] */
  readonly least: number;
  readonly middle: number;
  readonly most: number;
}

/** Arcs whose centres and radii differ by less than this share of the radius are one. */
const SAME = 0.05;
const TURN = 2 * Math.PI;

/** Fewer arcs say nothing of a plan. */
const fewest = 3;

/**
 * Sets of quarter circles whose radii lie within the range of door leaves to each other, the largest set first. Files
 * that know no curves draw them as chains of short lines; those count as well. Rounded
 * corners, basins and taps make such sets too: whoever uses one looks whether the building then has a size.
 */
export function doorArcsIn(drawing: {
  readonly arcs: readonly LineArc[];
  readonly lines: Float64Array;
}): readonly DoorArcs[] {
  const known = boxSearch(drawing.arcs.map(({ centre: [x, y] }) => [x, y, x, y]));
  const chains = chainsOfAnySize(drawing.lines).flatMap(({ centre, radius, ends }): LineArc[] => {
    const near = SAME * radius;
    const [x, y] = centre;
    // What was drawn as an arc is in the lines as a chain, too.
    const twins = known([x - near, y - near, x + near, y + near]);
    if (twins.some((index) => Math.abs(drawing.arcs[index]!.radius - radius) < near)) return [];
    const [a, b] = ends.map(([u, v]) => Math.atan2(v - y, u - x)) as [number, number];
    const turned = (((b - a) % TURN) + TURN) % TURN;
    const [from, sweep] = turned < Math.PI ? [a, turned] : [b, TURN - turned];
    return [{ centre, radius, from, to: from + sweep, layer: 0 }];
  });
  const { quarters, withLeaf } = doorSwings({ arcs: [...drawing.arcs, ...chains], lines: drawing.lines });
  const radii = [...(withLeaf.length >= fewest ? withLeaf : quarters)].sort((a, b) => a - b);
  const span = doorLeaf.most / doorLeaf.least;
  const sets: DoorArcs[] = [];
  let covered = 0;
  for (let first = 0, last = 0; first < radii.length; first++) {
    while (last < radii.length && radii[last]! <= radii[first]! * span) last++;
    const isNew = last > covered && last - first >= fewest;
    covered = Math.max(covered, last);
    if (!isNew) continue;
    const set = radii.slice(first, last);
    sets.push({ count: set.length, least: set[0]!, middle: set[set.length >> 1]!, most: set.at(-1)! });
  }
  return sets.sort((a, b) => b.count - a.count);
}
