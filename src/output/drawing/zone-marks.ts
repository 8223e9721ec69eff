import { type Detector, type Gap, type Region, type Spill, union, type ZoneKind } from "#engine";
import { type Hue, lookOf, type Variant } from "./ink.ts";
import type { Mark, PaperRing } from "./mark.ts";
import { type Projection, ringsOf, ringsOfRegion } from "./projection.ts";

/** A device's zone of one kind, as coverage computed it. */
export interface DeviceZone {
  readonly device: Detector["id"];
  readonly kind: ZoneKind;
  readonly region: Region;
}

const order: readonly ZoneKind[] = ["towards", "across", "sound", "seated"];

/** The zones of all devices, joined by kind: what counts on a plan is what is seen, not by how many. */
export function zoneMarks(
  zones: readonly DeviceZone[],
  drawn: { readonly variant: Variant; readonly projection: Projection },
): readonly Mark[] {
  return order.flatMap((kind) => {
    const joined = union(zones.filter((zone) => zone.kind === kind).map((zone) => zone.region));
    return regionMarks(joined, kind, drawn);
  });
}

export const spillMarks = (
  spill: readonly Spill[],
  drawn: { readonly variant: Variant; readonly projection: Projection },
): readonly Mark[] => spill.flatMap((one) => regionMarks(one.region, "spill", drawn));

export const gapMarks = (
  gaps: readonly Gap[],
  drawn: { readonly variant: Variant; readonly projection: Projection },
): readonly Mark[] => gaps.flatMap((gap) => regionMarks(gap.region, "gap", drawn));

function regionMarks(
  region: Region,
  hue: Hue,
  drawn: { readonly variant: Variant; readonly projection: Projection },
): readonly Mark[] {
  if (region.length === 0) return [];
  const look = lookOf(hue, drawn.variant);
  const rings = ringsOfRegion(region, drawn.projection);
  const edges: readonly Mark[] =
    hue === "sound"
      ? region.map((piece) => ({
          kind: "area",
          rings: ringsOf(piece, drawn.projection).map(wavy),
          fills: [],
          pen: look.edge,
        }))
      : region.map((piece) => ({
          kind: "area",
          rings: ringsOf(piece, drawn.projection),
          fills: [],
          pen: look.edge,
        }));
  return [...(look.fills.length > 0 ? [{ kind: "area", rings, fills: look.fills } as const] : []), ...edges];
}

/** The ring as a wave of 0.5 mm to either side. */
export function wavy(ring: PaperRing): PaperRing {
  const total = ring.reduce((sum, a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return sum + Math.hypot(b[0] - a[0], b[1] - a[1]);
  }, 0);
  const waves = Math.max(3, Math.round(total / 2.4));
  const step = 0.3;
  let walked = 0;
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length === 0) return [];
    const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    const count = Math.max(1, Math.floor(length / step));
    const points = Array.from({ length: count }, (_, k): readonly [number, number] => {
      const along = (k * length) / count;
      const swing = 0.5 * Math.sin((2 * Math.PI * waves * (walked + along)) / total);
      return [a[0] + ux * along - uy * swing, a[1] + uy * along + ux * swing];
    });
    walked += length;
    return points;
  });
}
