import type { DetectorModel, ZoneRow } from "../detector/index.ts";
import { type Point, type Region, ringsOf } from "../geometry/index.ts";
import { dice, type RandomStorey } from "./random-storey.fixture.ts";

/** Half of the points 2 to 50 mm from an edge of the zone, a room or a solid; half anywhere within a distance of the detector, 7 m if absent. */
export function testedPlaces(
  storey: RandomStorey,
  options: {
    readonly region: Region;
    readonly seed: number;
    readonly points: number;
    readonly within?: number;
  },
): readonly Point[] {
  const next = dice(options.seed + 77);
  const { site, device } = storey;
  const rings = [
    ...ringsOf(options.region),
    ...site.rooms.map((r) => r.outline),
    ...site.obstacles.map((o) => o.footprint),
  ];
  const edges = rings.flatMap((ring) =>
    ring.map((a, i) => [a, ring[(i + 1) % ring.length] as Point] as const),
  );
  return Array.from({ length: options.points }, (_, k): Point => {
    if (k % 2 === 0) {
      const [a, b] = edges[Math.floor(next() * edges.length)] as readonly [Point, Point];
      const along = next();
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const aside = ((0.002 + 0.048 * next()) * (next() < 0.5 ? 1 : -1)) / (Math.hypot(dx, dy) || 1);
      return [a[0] + along * dx - aside * dy, a[1] + along * dy + aside * dx];
    }
    const [r, f] = [(options.within ?? 7) * Math.sqrt(next()), 2 * Math.PI * next()];
    return [device.at[0] + r * Math.cos(f), device.at[1] + r * Math.sin(f)];
  });
}

/** A storey's detector with rows for seated and across as well, made from its rows for towards; at times with other corners. */
export function withAllKinds(storey: RandomStorey, seed: number): RandomStorey {
  const next = dice(seed + 991);
  const rows = (factor: number): readonly ZoneRow[] =>
    (storey.device.model.zones.towards ?? []).map((row): ZoneRow => {
      if ("radius" in row) return { height: row.height, radius: row.radius * factor };
      const outline = row.outline.map(
        ([angle, radius]) => [angle + 0.2, radius * factor * (0.8 + 0.4 * next())] as const,
      );
      return { height: row.height, outline };
    });
  const zones = { ...storey.device.model.zones, seated: rows(0.7 + 0.3 * next()), across: rows(1.2) };
  const model: DetectorModel = { ...storey.device.model, zones };
  return {
    site: { ...storey.site, models: [model] },
    device: { ...storey.device, model },
  };
}
