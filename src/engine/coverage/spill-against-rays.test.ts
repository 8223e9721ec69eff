import fc from "fast-check";
import { expect, test } from "vitest";
import { contains, distanceToRings, type Point, ringsOf } from "../geometry/index.ts";
import { standingHeight } from "./floors.ts";
import { randomStorey } from "./random-storey.fixture.ts";
import { sceneOf } from "./scene.ts";
import { spillsOnto } from "./spill-rays.fixture.ts";
import { spillZone } from "./spill-zone.ts";
import { testedPlaces, withAllKinds } from "./tested-places.fixture.ts";

/** Half of the points lie near an edge: there zone and rays may differ by this skin only. [m] */
const SKIN = 0.002;
const SCENES = 120;
const POINTS = 200;

test(`a passer-by is in the spill zone if and only if a ray to one of five heights reaches him with the doors open: ${SCENES} scenes × ${POINTS} points`, () => {
  let seen = 0;
  let elsewhere = 0;
  fc.assert(
    fc.property(fc.nat(1_000_000), (seed) => {
      const storey = withAllKinds(randomStorey(seed), seed);
      const { site, device } = storey;
      const region = spillZone(sceneOf(site, { storey: "ground", doors: "open" }), device);
      const rings = ringsOf(region);
      const roomAt = (point: Point) =>
        site.rooms.find((room) => contains([{ outline: room.outline, holes: room.holes }], point));
      const floorAt = (point: Point): number => {
        const room = roomAt(point);
        const pieces = site.floorPieces.filter((piece) => piece.room === room?.id);
        return room ? standingHeight({ room, pieces }, point) : 0;
      };
      const isLevel = site.floorPieces.length === 0 && site.rooms.every((room) => room.floor === 0);
      const rays = spillsOnto(site, { device, storey: "ground", floorAt });
      const home = roomAt(device.at);
      for (const point of testedPlaces(storey, { region, seed, points: POINTS, within: 9 })) {
        // Where floors differ, a reveal has the floor of its first room: that rule is the zone's own, and not asked here.
        if (!isLevel && !roomAt(point)) continue;
        const byRays = rays(point);
        if (byRays) seen++;
        if (byRays && roomAt(point) !== home) elsewhere++;
        if (contains(region, point) !== byRays)
          expect(distanceToRings(point, rings), `at ${point}`).toBeLessThanOrEqual(SKIN);
      }
    }),
    { seed: 40, numRuns: SCENES },
  );
  // The test would be empty if hardly anything were in sight, or nothing through a door.
  expect(seen).toBeGreaterThan((SCENES * POINTS) / 20);
  expect(elsewhere).toBeGreaterThan(SCENES);
});
