import type { Metres, Point } from "#engine";

/** A quarter circle that a door leaf leaves on a plan, in metres. */
export interface SwingArc {
  readonly centre: Point;
  readonly radius: Metres;
  readonly ends: readonly [Point, Point];
}

/** A leaf between the jambs when shut. */
export interface DoorLeaf {
  readonly hinge: Point;
  /** Where the leaf's other edge is when shut. */
  readonly latch: Point;
  /** Where it is when open as drawn. */
  readonly open: Point;
}

/** Narrowest and widest leaf of a door that a person walks through. [m] @source COMMON-PRACTICE */
export const leafWidths: readonly [Metres, Metres] = [0.5, 1.4];

/** A quarter circle may be drawn a little short or long. [rad] */
export const sweeps: readonly [number, number] = [(55 * Math.PI) / 180, (125 * Math.PI) / 180];

/** Leaves of gates and wide entrances, where the name of the layer says that they are doors. [m] @source COMMON-PRACTICE */
export const widestNamedLeaf: Metres = 3;

/**
 * An arc of a plan as the swing of a door; undefined where its size or its sweep is none.
 *
 * @param drawing.metres - Metres in one drawing unit. @param drawing.widest - Widest leaf that may be meant. [m]
 */
export function swingArc(
  arc: { readonly centre: Point; readonly radius: number; readonly from: number; readonly to: number },
  drawing: { readonly metres: Metres; readonly widest: Metres },
): SwingArc | undefined {
  const { metres, widest } = drawing;
  const { centre, radius, from, to } = arc;
  const size = radius * metres;
  const sweep = (((to - from) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  if (size < leafWidths[0] || size > widest || sweep < sweeps[0] || sweep > sweeps[1]) return undefined;
  const at = (angle: number): Point => [
    (centre[0] + radius * Math.cos(angle)) * metres,
    (centre[1] + radius * Math.sin(angle)) * metres,
  ];
  return { centre: [centre[0] * metres, centre[1] * metres], radius: size, ends: [at(from), at(to)] };
}

/** A line near a place: how far its nearest point is, and which way the line runs. */
export interface Surroundings {
  /** Length of lines that run along a segment within a distance. [m] */
  readonly along: (a: Point, b: Point, within: Metres) => Metres;
  /** Distance of the nearest line that is not the arc's own. [m] */
  readonly nearest: (at: Point) => Metres;
}

/**
 * The leaf behind each quarter circle: the end that a line leads to from the hinge is the open one, the other lies on the wall.
 *
 * @param arcs - Quarter circles. @param around - Straight lines of the plan.
 * @returns One leaf an arc; arcs that float free of any wall are left out.
 */
export function doorLeaves(arcs: readonly SwingArc[], around: Surroundings): readonly DoorLeaf[] {
  return arcs.flatMap(({ centre, radius, ends: [p, q] }): DoorLeaf[] => {
    const drawn = [p, q].map((end) => around.along(centre, end, 0.07) / radius);
    // Both may be drawn (a threshold line), or neither: then the wall goes on behind the hinge of the one that is shut.
    const wall = [p, q].map((end) => wallBehind(centre, end, around));
    const open =
      Math.abs(drawn[0]! - drawn[1]!) > 0.3 ? (drawn[0]! > drawn[1]! ? 0 : 1) : wall[0]! < wall[1]! ? 0 : 1;
    const latch = open === 0 ? q : p;
    if (Math.min(around.nearest(latch), around.nearest(centre)) > 0.35) return [];
    return [{ hinge: centre, latch, open: open === 0 ? p : q }];
  });
}

/** Length of lines that go on beyond the hinge and beyond the latch, in the direction of a leaf. [m] */
function wallBehind(hinge: Point, end: Point, around: Surroundings): Metres {
  const away = (from: Point, share: number): Point => [
    from[0] + share * (end[0] - hinge[0]),
    from[1] + share * (end[1] - hinge[1]),
  ];
  return around.along(hinge, away(hinge, -0.5), 0.15) + around.along(end, away(end, 0.4), 0.15);
}
