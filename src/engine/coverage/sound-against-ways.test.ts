import fc from "fast-check";
import { expect, test } from "vitest";
import { contains, distanceToRings, ringsOf, signedArea } from "../geometry/index.ts";
import { wayOfSound } from "./hearing.fixture.ts";
import { dice, type RandomStorey, randomStorey } from "./random-storey.fixture.ts";
import type { DoorState } from "./results.ts";
import { sceneOf } from "./scene.ts";
import { testedPlaces } from "./tested-places.fixture.ts";
import { zoneInScene } from "./zone.ts";

/** Chords of arcs lie up to 2 mm inside; bends of the plain way keep off their corners and add less than 1 mm together. [m] */
const SKIN = 0.003;
const STOREYS = 50;
const POINTS = 100;

/** A storey on one level, with a detector that hears; solids without width are no part of a drawn plan. */
function heard(seed: number): RandomStorey {
  const { site, device } = randomStorey(seed);
  const radius = 2 + 7 * dice(seed + 5)();
  const model = {
    ...device.model,
    zones: {
      ...device.model.zones,
      sound: [
        { height: 2, radius },
        { height: 4, radius },
      ],
    },
  };
  return {
    site: {
      ...site,
      models: [model],
      rooms: site.rooms.map((room) => ({ ...room, floor: 0 })),
      floorPieces: [],
      obstacles: site.obstacles.filter(
        (one) => Math.abs(signedArea(one.footprint)) > 1e-6 && !one.seeThrough,
      ),
    },
    device: { ...device, model },
  };
}

test(`a place is in the sound zone if and only if the shortest way of sound to it is within the radius: ${STOREYS} storeys × ${POINTS} points`, () => {
  let near = 0;
  let round = 0;
  fc.assert(
    fc.property(fc.nat(1_000_000), fc.constantFrom<DoorState>("closed", "open", "drawn"), (seed, doors) => {
      const storey = heard(seed);
      const { site, device } = storey;
      const { radius } = device.model.zones.sound![0] as { readonly radius: number };
      const region = zoneInScene(sceneOf(site, { storey: "ground", doors }), {
        device,
        kind: "sound",
      }).region();
      const rings = ringsOf(region);
      const way = wayOfSound(site, { device, storey: "ground", doors, within: radius + 0.5 });
      for (const point of testedPlaces(storey, { region, seed, points: POINTS, within: 10 })) {
        const length = way(point);
        const inside = length <= radius;
        if (inside) near++;
        if (inside && length > 0.05 + Math.hypot(point[0] - device.at[0], point[1] - device.at[1])) round++;
        if (contains(region, point) !== inside)
          expect(
            distanceToRings(point, rings),
            `seed ${seed} ${doors}: way ${length} of ${radius} at ${point}`,
          ).toBeLessThanOrEqual(SKIN);
      }
    }),
    { seed: 50, numRuns: STOREYS },
  );
  // The test would be empty if hardly anything were heard, or nothing round a corner.
  expect(near).toBeGreaterThan((STOREYS * POINTS) / 10);
  expect(round).toBeGreaterThan(STOREYS);
});
