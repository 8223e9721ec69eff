import { type Point, type Room, regionOf } from "#engine";
import { hatchStrokes } from "../drawing/hatching.ts";
import { hairline } from "../drawing/ink.ts";
import type { Mark, PaperPoint } from "../drawing/mark.ts";
import { onPaper, type Projection, paperLength, ringsOfRegion } from "../drawing/projection.ts";

/** The joints of the ceiling grid inside a room. */
export function gridMarks(room: Room, projection: Projection): readonly Mark[] {
  const grid = room.ceilingGrid;
  if (!grid) return [];
  const rings = ringsOfRegion(regionOf(room.outline, room.holes), projection);
  const origin = onPaper(grid.origin, projection);
  const degrees = (grid.turn * 180) / Math.PI;
  const pen = { width: 0.18, colour: hairline } as const;
  // Hatch lines pass through the sheet's corner: moved there and back they pass through the grid's origin.
  const moved = rings.map((ring) => ring.map(([x, y]): PaperPoint => [x - origin[0], y - origin[1]]));
  const joints = [
    { angle: degrees, spacing: paperLength(grid.tile[1], projection) },
    { angle: degrees + 90, spacing: paperLength(grid.tile[0], projection) },
  ];
  return joints.flatMap(({ angle, spacing }) =>
    hatchStrokes(moved, { kind: "hatch", angle, spacing, crossed: false, pen }).map(
      ([a, b]): Mark => ({ kind: "line", from: back(a, origin), to: back(b, origin), pen }),
    ),
  );
}

const back = (point: Point, origin: PaperPoint): PaperPoint => [point[0] + origin[0], point[1] + origin[1]];
