import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { contains, distanceToRings, type Point, type Region, ringsOf } from "../geometry/index.ts";
import { dice, type RandomStorey, randomStorey } from "./random-storey.fixture.ts";
import type { DoorState } from "./results.ts";
import { sceneOf } from "./scene.ts";
import { sees } from "./sees.ts";
import { zoneInScene } from "./zone.ts";

/** Half of the points lie near an edge: there the zone may differ from the rays by this skin only. [m] */
const SKIN = 0.002;
const SCENES = 200;
const POINTS = 500;

/** Half of the points 2 to 50 mm from an edge of the zone, a room or a solid; half anywhere within 7 m. */
function places(
  storey: RandomStorey,
  options: { readonly region: Region; readonly seed: number },
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
  return Array.from({ length: POINTS }, (_, k): Point => {
    if (k % 2 === 0) {
      const [a, b] = edges[Math.floor(next() * edges.length)] as readonly [Point, Point];
      const along = next();
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const aside = ((0.002 + 0.048 * next()) * (next() < 0.5 ? 1 : -1)) / (Math.hypot(dx, dy) || 1);
      return [a[0] + along * dx - aside * dy, a[1] + along * dy + aside * dx];
    }
    const [r, f] = [7 * Math.sqrt(next()), 2 * Math.PI * next()];
    return [device.at[0] + r * Math.cos(f), device.at[1] + r * Math.sin(f)];
  });
}

describe("zones against plain rays", () => {
  test(`a point is in a zone polygon if and only if its ray says that it is seen: ${SCENES} scenes × ${POINTS} points`, () => {
    let seen = 0;
    let scenes = 0;
    fc.assert(
      fc.property(fc.nat(1_000_000), fc.constantFrom<DoorState>("closed", "open", "drawn"), (seed, doors) => {
        const storey = randomStorey(seed);
        const { site, device } = storey;
        const zone = zoneInScene(sceneOf(site, { storey: "ground", doors }), { device, kind: "towards" });
        const region = zone.region();
        const rings = ringsOf(region);
        const ray = sees(site, { device, storey: "ground", kind: "towards", doors });
        scenes++;
        for (const point of places(storey, { region, seed })) {
          const inside = contains(region, point);
          const bySight = ray(point);
          if (bySight) seen++;
          if (inside !== bySight)
            expect(distanceToRings(point, rings), `at ${point}`).toBeLessThanOrEqual(SKIN);
          // The quick test answers like the polygon, but for the grain of its corners.
          const quick = zone.has(point[0], point[1]);
          if (quick !== inside) expect(distanceToRings(point, rings), `quick at ${point}`).toBeLessThan(1e-4);
        }
      }),
      { seed: 20, numRuns: SCENES },
    );
    expect(scenes).toBeGreaterThanOrEqual(SCENES);
    // The test would be empty if hardly anything were in sight.
    expect(seen).toBeGreaterThan((SCENES * POINTS) / 20);
  });
});
