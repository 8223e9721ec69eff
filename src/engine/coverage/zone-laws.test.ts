import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaOf, difference, inset, type Region } from "../geometry/index.ts";
import type { Obstacle, Site } from "../site/index.ts";
import { motions, movedDirection, movedSite } from "./moved-site.fixture.ts";
import { randomStorey } from "./random-storey.fixture.ts";
import { sceneOf } from "./scene.ts";
import { zoneInScene } from "./zone.ts";
import type { DeviceLike } from "./zone-types.ts";

const zone = (site: Site, device: DeviceLike): Region =>
  zoneInScene(sceneOf(site, { storey: "ground", doors: "open" }), { device, kind: "towards" }).region();

/** Parts of one zone outside another that hold more than the 2 mm skin. */
const outside = (a: Region, b: Region): number => areaOf(inset(difference(a, b), 0.0021));

const seeds = fc.nat(1_000_000);
const withRadius = (device: DeviceLike, radius: number): DeviceLike => ({
  ...device,
  model: { ...device.model, zones: { towards: [{ height: 2.5, radius }] } },
});

describe("laws of zones", () => {
  test("nested reaches give nested zones", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { site, device } = randomStorey(seed);
        expect(outside(zone(site, withRadius(device, 3)), zone(site, withRadius(device, 4)))).toBe(0);
      }),
      { seed: 31, numRuns: 30 },
    );
  });

  test("an added solid never enlarges a zone", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { site, device } = randomStorey(seed);
        const fewer = { ...site, obstacles: site.obstacles.slice(1) };
        expect(outside(zone(site, device), zone(fewer, device))).toBe(0);
      }),
      { seed: 32, numRuns: 40 },
    );
  });

  test("an added mask never enlarges a zone", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { site, device } = randomStorey(seed);
        const mask = { from: 1, to: 2.5, inner: 0.3, outer: 1.0 };
        expect(outside(zone(site, { ...device, masks: [...device.masks, mask] }), zone(site, device))).toBe(
          0,
        );
      }),
      { seed: 33, numRuns: 40 },
    );
  });

  test("a partition raised to the lens hides like a wall", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { site, device } = randomStorey(seed);
        const raised = (top: number): Site => ({
          ...site,
          obstacles: site.obstacles.map((one): Obstacle => ({ ...one, base: 0, top })),
        });
        // Floors differ by at most 0.9 m: 4.2 m is above every lens, 99 m is a wall.
        expect(areaOf(zone(raised(4.2), device))).toBeCloseTo(areaOf(zone(raised(99), device)), 9);
      }),
      { seed: 34, numRuns: 30 },
    );
  });

  test("turning, mirroring and moving by 10 km change no area by 1e-4", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { site, device: hung } = randomStorey(seed);
        const device = { ...withRadius(hung, 4), masks: [] };
        const plain = areaOf(zone(site, device));
        for (const move of Object.values(motions)) {
          // The notch goes with the plan, so that the chords of the reach do too.
          const notch = movedDirection(device.turn, move);
          const there = movedSite(site, move);
          const area = areaOf(zone(there, { ...device, at: move(device.at), turn: notch }));
          expect(Math.abs(area - plain)).toBeLessThan(1e-4);
        }
      }),
      { seed: 35, numRuns: 20 },
    );
  });
});
