import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { contains, distanceToRings, ringsOf } from "../geometry/index.ts";
import { randomStorey } from "./random-storey.fixture.ts";
import type { DoorState } from "./results.ts";
import { sceneOf } from "./scene.ts";
import { sees } from "./sees.ts";
import { testedPlaces, withAllKinds } from "./tested-places.fixture.ts";
import { zoneInScene } from "./zone.ts";

/** Half of the points lie near an edge: there the zone may differ from the rays by this skin only. [m] */
const SKIN = 0.002;
const SCENES = 200;
const POINTS = 500;
const OTHER_SCENES = 80;
const OTHER_POINTS = 300;

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
        for (const point of testedPlaces(storey, { region, seed, points: POINTS })) {
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

  test(`so it is for who sits at any height and for who walks across: ${OTHER_SCENES} scenes × ${OTHER_POINTS} points`, () => {
    const kinds = [
      ["seated", 0.6],
      ["seated", 0.8],
      ["seated", undefined],
      ["across", undefined],
    ] as const;
    const seen = new Map<string, number>();
    let index = 0;
    fc.assert(
      fc.property(fc.nat(1_000_000), fc.constantFrom<DoorState>("closed", "open", "drawn"), (seed, doors) => {
        const storey = withAllKinds(randomStorey(seed), seed);
        const { site, device } = storey;
        const [kind, sightHeight] = kinds[index++ % kinds.length] as (typeof kinds)[number];
        const sight = sightHeight === undefined ? {} : { sightHeight };
        const scene = sceneOf(site, { storey: "ground", doors });
        const region = zoneInScene(scene, { device, kind, ...sight }).region();
        const rings = ringsOf(region);
        const ray = sees(site, { device, storey: "ground", kind, doors, ...sight });
        for (const point of testedPlaces(storey, { region, seed, points: OTHER_POINTS })) {
          const bySight = ray(point);
          const name = `${kind} ${sightHeight}`;
          if (bySight) seen.set(name, (seen.get(name) ?? 0) + 1);
          if (contains(region, point) !== bySight)
            expect(distanceToRings(point, rings), `${name} at ${point}`).toBeLessThanOrEqual(SKIN);
        }
      }),
      { seed: 21, numRuns: OTHER_SCENES },
    );
    expect(seen.size).toBe(kinds.length);
    for (const [name, count] of seen)
      expect(count, name).toBeGreaterThan((OTHER_SCENES * OTHER_POINTS) / kinds.length / 20);
  });
});
