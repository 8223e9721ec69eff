import fc from "fast-check";
import { expect, test } from "vitest";
import { areaOf, type Point, signedArea } from "../geometry/index.ts";
import type { DwellPlace, Site } from "../site/index.ts";
import { motions, movedSite } from "./moved-site.fixture.ts";
import { dice, randomStorey } from "./random-storey.fixture.ts";
import { roomCoverage } from "./room-coverage.ts";
import { sceneOf } from "./scene.ts";
import { spillZone } from "./spill-zone.ts";
import { withAllKinds } from "./tested-places.fixture.ts";
import { zoneInScene } from "./zone.ts";

/** "Rotation, mirroring, translation by 10 km change areas by less than 1e-4": of the area, or of a square metre where it is smaller. */
const CHANGE = 1e-4;

/** A storey with a detector that has every kind of zone, and two desks in each room, which stand where they will. */
function furnished(seed: number): Site {
  const { site } = withAllKinds(randomStorey(seed), seed);
  const next = dice(seed + 3);
  const desks = site.rooms.flatMap(({ id, outline }) => {
    const [a, b, c] = outline as unknown as readonly [Point, Point, Point];
    return [0, 1].map((k): DwellPlace => {
      const [u, v] = [0.2 + 0.6 * next(), 0.2 + 0.6 * next()];
      const at: Point = [
        a[0] + u * (b[0] - a[0]) + v * (c[0] - b[0]),
        a[1] + u * (b[1] - a[1]) + v * (c[1] - b[1]),
      ];
      return { id: `desk-${id}-${k}`, room: id, kind: "desk", at, radius: 0.6 };
    });
  });
  return {
    ...site,
    models: site.models.map((model) => ({
      ...model,
      zones: { ...model.zones, sound: [{ height: 2.5, radius: 4 }] },
    })),
    dwellPlaces: desks,
    obstacles: site.obstacles.filter((one) => Math.abs(signedArea(one.footprint)) > 1e-6),
  };
}

/** All areas that a coverage consists of, by name. [m²] */
function areasOf(site: Site): ReadonlyMap<string, number> {
  const areas = new Map<string, number>();
  const [detector, model] = [site.detectors[0]!, site.models[0]!];
  const device = { ...detector, model };
  const scene = sceneOf(site, { storey: "ground", doors: "open" });
  for (const kind of ["towards", "across", "seated", "sound"] as const)
    areas.set(`zone ${kind}`, areaOf(zoneInScene(scene, { device, kind }).region()));
  areas.set("spill zone", areaOf(spillZone(scene, device)));
  for (const { id } of site.rooms) {
    const { demand, covered, gaps, spill } = roomCoverage(site, id);
    areas.set(`standing area of ${id}`, areaOf(demand.standing));
    areas.set(`unreachable in ${id}`, areaOf(demand.unreachable));
    for (const place of demand.dwell) areas.set(place.id, place.area);
    areas.set(`walk covered in ${id}`, covered.walk);
    areas.set(`hold covered in ${id}`, covered.hold);
    for (const kind of ["walk", "hold"] as const)
      areas.set(
        `gaps of ${kind} in ${id}`,
        gaps.filter((gap) => gap.demand === kind).reduce((sum, gap) => sum + gap.area, 0),
      );
    for (const one of spill) areas.set(`spill from ${id} to ${one.room}`, one.area);
  }
  return areas;
}

test("rotation, mirroring, translation by 10 km change areas by less than 1e-4: zones, standing areas, dwell places, what is covered, gaps, spill", () => {
  let covered = 0;
  fc.assert(
    fc.property(fc.nat(1_000_000), (seed) => {
      const site = furnished(seed);
      const plain = areasOf(site);
      for (const [name, area] of plain) if (name.startsWith("walk covered")) covered += area;
      for (const [motion, move] of Object.entries(motions)) {
        const there = areasOf(movedSite(site, move));
        expect([...there.keys()].toSorted()).toEqual([...plain.keys()].toSorted());
        for (const [name, area] of plain)
          expect(
            Math.abs((there.get(name) as number) - area) / Math.max(1, area),
            `${name}, ${motion}, storey ${seed}: ${area} and ${there.get(name)}`,
          ).toBeLessThan(CHANGE);
      }
    }),
    { seed: 60, numRuns: 20 },
  );
  // The test would be empty if nothing were covered.
  expect(covered).toBeGreaterThan(50);
});
