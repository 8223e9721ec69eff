import {
  difference,
  inset,
  type Opening,
  type Outline,
  outset,
  type Point,
  type Region,
  type Room,
  regionOf,
  simplified,
  union,
} from "#engine";
import { ink } from "./ink.ts";
import type { Mark } from "./mark.ts";
import { type Projection, ringOnPaper, ringsOfRegion } from "./projection.ts";

/** Rooms at most this far apart have one wall between them. [m] */
const thickestWall = 0.6;

const wallColour = "#CDD0D6";

/** The walls of a storey: the body between the rooms, as thick as the rooms leave it, and every finished face as a 0.5 mm line. */
export function wallMarks(
  rooms: readonly Room[],
  openings: readonly Opening[],
  projection: Projection,
): readonly Mark[] {
  const pen = { width: 0.5, colour: ink } as const;
  const body = wallBody(rooms, openings);
  const faces = rooms.flatMap((room) => [room.outline, ...room.holes]);
  return [
    ...body.map(
      (piece): Mark => ({
        kind: "area",
        rings: ringsOfRegion([piece], projection),
        fills: [{ kind: "solid", colour: wallColour }],
        pen,
      }),
    ),
    // Where two rooms touch there is no body, and the common face is all that can be drawn.
    ...faces.map((ring): Mark => ({ kind: "area", rings: [ringOnPaper(ring, projection)], fills: [], pen })),
  ];
}

/** Openings to the outside drawn through the whole of the outer wall, which may be thicker than their frames. */
export const throughWalls = (openings: readonly Opening[]): readonly Opening[] => {
  const outer = outerThickness(openings);
  return openings.map((one) =>
    one.rooms[1] === null && one.thickness < outer ? { ...one, thickness: outer } : one,
  );
};

/**
 * What lies between rooms that are at most a wall apart, and round them an outer wall as thick as the storey's openings to
 * the outside say (the median); without such openings the outer faces are unknown and left out.
 */
export function wallBody(rooms: readonly Room[], openings: readonly Opening[]): Region {
  const floors = union(rooms.map((room) => regionOf(room.outline, room.holes)));
  // The offset's round corners leave specks of a few millimetres, which the simplification takes back.
  const closed = simplified(inset(outset(floors, thickestWall / 2), thickestWall / 2), 0.03);
  const outer = outerThickness(openings);
  const built = outer > 0 ? union([closed, ...closed.map((piece) => mitred(piece.outline, outer))]) : closed;
  return difference(built, floors).filter((piece) => piece.outline.length > 2);
}

function outerThickness(openings: readonly Opening[]): number {
  const known = openings
    .filter((opening) => opening.rooms[1] === null && opening.thickness > 0.02)
    .map((opening) => opening.thickness)
    .sort((a, b) => a - b);
  return known[Math.floor(known.length / 2)] ?? 0;
}

/** A counter-clockwise ring moved outwards with sharp corners; corners sharper than 60° are cut off. */
function mitred(outline: Outline, distance: number): Region {
  const edges = outline
    .map((a, i): readonly [Point, Point] => [a, outline[(i + 1) % outline.length]!])
    .filter(([a, b]) => Math.hypot(b[0] - a[0], b[1] - a[1]) > 1e-6);
  const ring = edges.flatMap(([a, b], i): readonly Point[] => {
    const before = edges[(i + edges.length - 1) % edges.length]!;
    const n = normalOf([a, b]);
    const m = normalOf(before);
    const dot = n[0] * m[0] + n[1] * m[1];
    const at = (v: Point, by: number): Point => [a[0] + v[0] * by, a[1] + v[1] * by];
    if (dot < -0.5) return [at(m, distance), at(n, distance)];
    return [at([n[0] + m[0], n[1] + m[1]], distance / (1 + dot))];
  });
  return regionOf(ring);
}

/** To the right of the way along an edge, which is outside for a counter-clockwise ring. */
function normalOf([a, b]: readonly [Point, Point]): Point {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return [(b[1] - a[1]) / length, (a[0] - b[0]) / length];
}
