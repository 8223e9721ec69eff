import type { DetectorModel, LensMask, ZoneRow } from "../detector/index.ts";
import type { Point } from "../geometry/index.ts";
import type { Site } from "../site/index.ts";
import { sees } from "./sees.ts";
import type { DeviceLike } from "./zone-types.ts";

/** Heights at which a passer-by may be seen, as the definition has them. [m] */
const PLANES = [0.2, 0.6, 1.0, 1.4, 1.8];
/** Share by which spill reaches further than declared. */
const FURTHER = 1.2;
/** Heights of a passer-by whose rays a mask must stop, every 5 mm from the floor up. [m] */
const BODY = Array.from({ length: 361 }, (_, i) => i * 0.005);

/**
 * Whether a passer-by at a point may set off a detector, by following one straight ray to each height: slow, and obviously right.
 *
 * What stands in the way of a ray is asked of the plain ray test, with a detector that reaches without end; reach and masks are put down here
 * once more, so that nothing is shared with the zone.
 *
 * @param site - With its doors, which are taken as open. @param question - The detector, its storey, and the floor at a point above the storey's. [m]
 */
export function spillsOnto(
  site: Site,
  question: {
    readonly device: DeviceLike;
    readonly storey: string;
    readonly floorAt: (point: Point) => number;
  },
): (point: Point) => boolean {
  const { device, storey, floorAt } = question;
  const endless: DetectorModel = {
    ...device.model,
    mounting: { min: 0, max: 1000 },
    zones: { towards: [{ height: 1e-3, radius: 1e6 }] },
  };
  const rays = PLANES.map((sightHeight) => ({
    sightHeight,
    clear: sees(site, {
      device: { ...device, model: endless, masks: [] },
      storey,
      kind: "towards",
      doors: "open",
      sightHeight,
    }),
  }));
  const { towards = [], across = [] } = device.model.zones;
  return (point) => {
    const [dx, dy] = [point[0] - device.at[0], point[1] - device.at[1]];
    const distance = Math.hypot(dx, dy);
    const azimuth = turned(Math.atan2(dy, dx) - device.turn);
    const height = floorAt(device.at) + device.height - floorAt(point);
    if (isMasked(device.masks, { azimuth, distance, height })) return false;
    return rays.some(
      ({ sightHeight, clear }) =>
        sightHeight < height &&
        [towards, across].some(
          (rows) => distance <= FURTHER * reach(rows, { height, sightHeight, azimuth }),
        ) &&
        clear(point),
    );
  };
}

const turned = (angle: number): number => ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);

/** Declared reach in one direction: linear between rows, the top row above it, in proportion below the lowest. */
function reach(
  rows: readonly ZoneRow[],
  at: { readonly height: number; readonly sightHeight: number; readonly azimuth: number },
): number {
  const [low, high] = [rows[0], rows.at(-1)];
  if (!low || !high) return 0;
  const lowest = rowReach(low, at.azimuth);
  if (at.height < low.height)
    return Math.max(0, (lowest * (at.height - at.sightHeight)) / (low.height - at.sightHeight));
  if (at.height >= high.height) return rowReach(high, at.azimuth);
  const share = (at.height - low.height) / (high.height - low.height);
  // Two outlines are mixed corner by corner on the union of their angles, with straight edges between.
  if (!("outline" in low) || !("outline" in high))
    return (1 - share) * lowest + share * rowReach(high, at.azimuth);
  const angles = [...low.outline, ...high.outline].map(([angle]) => turned(angle)).toSorted((a, b) => a - b);
  const outline = angles.map(
    (angle) => [angle, (1 - share) * rowReach(low, angle) + share * rowReach(high, angle)] as const,
  );
  return rowReach({ height: at.height, outline }, at.azimuth);
}

/** Where the ray from the detector meets the straight edge between the two corners beside it. */
function rowReach(row: ZoneRow, azimuth: number): number {
  if ("radius" in row) return row.radius;
  const ray: Point = [Math.cos(azimuth), Math.sin(azimuth)];
  const corners = row.outline.map(([angle, radius]) => ({ angle: turned(angle), radius }));
  const exact = corners.find((corner) => Math.abs(corner.angle - azimuth) < 1e-12);
  if (exact) return exact.radius;
  const sorted = corners.toSorted((a, b) => a.angle - b.angle);
  const after = sorted.findIndex((corner) => corner.angle > azimuth);
  const [b, a] = [sorted.at(after === -1 ? 0 : after)!, sorted.at(after === -1 ? -1 : after - 1)!];
  const [ax, ay] = [a.radius * Math.cos(a.angle), a.radius * Math.sin(a.angle)];
  const [ex, ey] = [b.radius * Math.cos(b.angle) - ax, b.radius * Math.sin(b.angle) - ay];
  const det = ray[0] * ey - ray[1] * ex;
  return det === 0 ? a.radius : (ax * ey - ay * ex) / det;
}

/** Gone only when every ray from the floor to 1.8 m, or to the lens, is masked. */
function isMasked(
  masks: readonly LensMask[],
  at: { readonly azimuth: number; readonly distance: number; readonly height: number },
): boolean {
  const facing = masks.filter(
    ({ from, to }) => to - from >= 2 * Math.PI - 1e-9 || turned(at.azimuth - from) <= turned(to - from),
  );
  return (
    facing.length > 0 &&
    BODY.filter((z) => z < at.height).every((z) => {
      const offNadir = Math.atan2(at.distance, at.height - z);
      return facing.some((mask) => offNadir >= mask.inner && offNadir <= mask.outer);
    })
  );
}
