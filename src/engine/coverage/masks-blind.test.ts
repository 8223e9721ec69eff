import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  box,
  detectorLike,
  doorLike,
  dwellLike,
  flightLike,
  roomLike,
  roundModel,
  siteLike,
  sourceLike,
} from "../../../test/engine/records.ts";
import { facetBeam, maskContains, maskedFacets, maskForSource, masksForFloor } from "../detector/index.ts";
import { areaOf, intersection, type Point, type Region, regionOf } from "../geometry/index.ts";
import { degreesOf, radiansOf } from "../quantity/index.ts";
import { lookUp } from "../site/index.ts";
import {
  maskAgainstSource,
  maskLoss,
  masksAgainstFloor,
  prepareRoom,
  roomCoverage,
  seesSource,
  spillZone,
} from "./index.ts";
import { deviceOf } from "./watchers.ts";

const nothingKept = { body: 0, mounting: 0, person: 1.8, source: 0.15 };
const lens = { at: [0, 0] as Point, height: 2.7, turn: 0 };

describe("[MSK-1] values worked out by hand for a lens 2.7 m up", () => {
  const masks = masksForFloor(lens, regionOf(box(2, -0.6, 2, 1.2)), nothingKept)!;
  test("x 2 … 4, y ± 0.6 m, heads of 1.8 m: within ± 17°, from 36° to 78°, rounded outward", () => {
    const inner = Math.min(...masks.map((mask) => degreesOf(mask.inner)));
    const outer = Math.max(...masks.map((mask) => degreesOf(mask.outer)));
    // 36.53° and 77.46°, ± 16.70°.
    expect([inner, outer]).toEqual([expect.closeTo(36, 9), expect.closeTo(78, 9)]);
    expect(
      maskContains({ ...masks[0]!, inner: 0, outer: 2 }, { azimuth: radiansOf(343.4), offNadir: 1 }),
    ).toBe(true);
    for (const azimuth of [342.9, 17.1])
      expect(
        masks.some((mask) =>
          maskContains({ ...mask, inner: 0, outer: 2 }, { azimuth: radiansOf(azimuth), offNadir: 1 }),
        ),
      ).toBe(false);
  });
  test("a source at 3.0 m, 2.2 m high, radius 0.15 m: 80.54° ± 2.83°, azimuth ± 2.87°", () => {
    const mask = maskForSource(lens, { at: [3, 0], height: 2.2 }, nothingKept)!;
    expect(degreesOf(mask.inner)).toBeCloseTo(80.54 - 2.83, 1);
    expect(degreesOf(mask.outer)).toBeCloseTo(80.54 + 2.83, 1);
    expect(degreesOf(mask.to)).toBeCloseTo(2.87, 2);
    expect(degreesOf(mask.from)).toBeCloseTo(360 - 2.87, 2);
  });
  test("a source at or above the lens is above its horizon: no mask", () => {
    expect(maskForSource(lens, { at: [3, 0], height: 2.7 }, nothingKept)).toBeUndefined();
  });
  test("nothing blinds what lies straight below", () => {
    expect(masksForFloor(lens, regionOf(box(-1, -1, 2, 2)))).toBeUndefined();
    expect(maskForSource(lens, { at: [0.1, 0], height: 1 })).toBeUndefined();
  });
  test("a beam of 30° with w/2f 0.1 spans 23.58° to 36.87°, ± 11.54°", () => {
    const beam = facetBeam(radiansOf(30), 0.1);
    expect([beam.inner, beam.outer, beam.half].map(degreesOf)).toEqual([
      expect.closeTo(23.578, 3),
      expect.closeTo(36.87, 3),
      expect.closeTo(11.537, 3),
    ]);
  });
});

test("[MSK-2] a mask of one quarter meets one facet of four, and its neighbours as soon as it reaches into them", () => {
  const four = { shape: "dome", rings: [{ offNadir: radiansOf(45), facets: 4 }] } as const;
  const mask = (from: number, to: number) => [
    { from: radiansOf(from), to: radiansOf(to), inner: radiansOf(40), outer: radiansOf(50) },
  ];
  expect(maskedFacets(four, mask(80, 100)).map(({ facet }) => facet)).toEqual([2]);
  expect(maskedFacets(four, mask(44, 100)).map(({ facet }) => facet)).toEqual([1, 2]);
  expect(maskedFacets(four, mask(350, 10)).map(({ facet }) => facet)).toEqual([1]);
  expect(maskedFacets({ shape: "dome", rings: [] }, mask(0, 90))).toEqual([]);
});

test("[MSK-3] after its masks a lens sees no passer-by on the floor they were made for, wherever it hangs and however it is turned", () => {
  fc.assert(
    fc.property(
      fc.record({
        x: fc.double({ min: 0.6, max: 5.4, noNaN: true }),
        y: fc.double({ min: 0.8, max: 3.5, noNaN: true }),
        turn: fc.double({ min: 0, max: 6.2, noNaN: true }),
        door: fc.double({ min: 0.3, max: 4.7, noNaN: true }),
      }),
      ({ x, y, turn, door }) => {
        const site = siteWith({ x, y, turn, door });
        const device = deviceOf(site.detectors[0]!, site.models[0]!);
        const scene = prepareRoom(site, "room").open();
        const corridor: Region = regionOf(box(-2, -2.2, 10, 2));
        const seen = intersection(spillZone(scene, device), corridor);
        if (areaOf(seen) < 0.05) return;
        const masks = masksForFloor(device, seen)!;
        expect(areaOf(intersection(spillZone(scene, { ...device, masks }), corridor))).toBeLessThan(0.005);
      },
    ),
    { seed: 20_261, numRuns: 15 },
  );
});

test("[MSK-4] after its mask a lens does not see the source that it was made for", () => {
  fc.assert(
    fc.property(
      fc.record({
        x: fc.double({ min: 0.3, max: 5.7, noNaN: true }),
        y: fc.double({ min: 0.3, max: 3.7, noNaN: true }),
        long: fc.double({ min: 0, max: 1.5, noNaN: true }),
        height: fc.double({ min: 0.1, max: 2.6, noNaN: true }),
        turn: fc.double({ min: 0, max: 6.2, noNaN: true }),
      }),
      ({ x, y, long, height, turn }) => {
        const site = siteWith({ x: 3, y: 2, turn, door: 1 });
        const source = sourceLike({
          id: "s",
          room: "room",
          at: [x, y],
          to: [x, Math.min(3.9, y + long)],
          height,
        });
        const scene = prepareRoom({ ...site, interference: [source] }, "room").open();
        const device = deviceOf(site.detectors[0]!, site.models[0]!);
        const mask = maskForSource(device, source);
        if (!mask || !seesSource(scene, { device, source })) return;
        expect(seesSource(scene, { device: { ...device, masks: [mask] }, source })).toBeUndefined();
      },
    ),
    { seed: 20_262, numRuns: 40 },
  );
});

test("[MSK-6] on floors of different heights a lens is blinded by how high it hangs above the floor that it looks at", () => {
  fc.assert(
    fc.property(
      fc.record({
        x: fc.double({ min: 0.6, max: 5.4, noNaN: true }),
        y: fc.double({ min: 0.8, max: 3.5, noNaN: true }),
        step: fc.double({ min: -1, max: 0.6, noNaN: true }),
        low: fc.double({ min: 0, max: 1.2, noNaN: true }),
      }),
      ({ x, y, step, low }) => {
        const plain = siteWith({ x, y, turn: 0.4, door: 2 });
        const [room, corridor] = plain.rooms;
        const site = {
          ...plain,
          rooms: [room!, { ...corridor!, floor: step }],
          // Stairs in the corridor, and a landing in the room on which a heater stands.
          floorPieces: [
            flightLike({
              id: "stairs",
              room: "corridor",
              footprint: box(3, -2.2, 3, 2),
              from: [3, -1.2],
              to: [6, -1.2],
              high: 0.5,
            }),
            {
              ...flightLike({
                id: "landing",
                room: "room",
                footprint: box(4, 0, 2, 0.7),
                from: [4, 0],
                to: [6, 0],
              }),
              kind: "landing" as const,
              low,
              high: low,
            },
          ],
          interference: [sourceLike({ id: "heater", room: "room", at: [5, 0.3], height: 0.8 })],
        };
        const look = lookUp(site);
        const [detector] = site.detectors;
        const device = deviceOf(detector!, site.models[0]!);
        const scene = prepareRoom(site, "room").open();
        const beyond: Region = regionOf(box(-2, -2.2, 10, 2));
        const seen = intersection(spillZone(scene, device), beyond);
        if (areaOf(seen) > 0.05) {
          const masks = masksAgainstFloor(look, detector!, { room: "corridor", region: seen })!;
          const left = intersection(spillZone(scene, { ...device, masks }), beyond);
          expect(areaOf(left)).toBeLessThan(0.005);
        }
        const [source] = site.interference;
        const mask = maskAgainstSource(look, detector!, source!);
        if (mask && seesSource(scene, { device, source: source! }))
          expect(
            seesSource(scene, { device: { ...device, masks: [mask] }, source: source! }),
          ).toBeUndefined();
      },
    ),
    { seed: 20_263, numRuns: 12 },
  );
});

test("[MSK-5] what a mask takes of the room is told in square metres and by the places, and equals the coverage", () => {
  const site = siteWith({ x: 3, y: 2, turn: 0, door: 2.5 });
  const [detector] = site.detectors;
  const mask = { from: radiansOf(-40), to: radiansOf(40), inner: radiansOf(20), outer: radiansOf(90) };
  const loss = maskLoss(prepareRoom(site, "room"), { detectors: site.detectors, device: "d", masks: [mask] });
  const masked = { ...site, detectors: [{ ...detector!, masks: [mask] }] };
  const [before, after] = [roomCoverage(site, "room"), roomCoverage(masked, "room")];
  expect(loss.walk).toBeCloseTo(before.covered.walk - after.covered.walk, 9);
  expect(loss.walk).toBeGreaterThan(1);
  expect(loss.places).toEqual(["east"]);
  // (2.7 − 1.0) · tan 20°
  expect(loss.from).toBeCloseTo(0.6187, 4);
  expect(maskLoss(prepareRoom(site, "room"), { detectors: site.detectors, device: "d", masks: [] })).toEqual({
    walk: 0,
    hold: 0,
    places: [],
    from: undefined,
  });
});

/** A room of 6 m by 4 m before a corridor, one detector, a desk to the east and one to the west of it. */
const siteWith = (given: {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
  readonly door: number;
}) =>
  siteLike({
    rooms: [
      roomLike({ id: "room", outline: box(0, 0, 6, 4) }),
      roomLike({ id: "corridor", outline: box(-2, -2.2, 10, 2) }),
    ],
    openings: [
      doorLike({ id: "door", rooms: ["room", "corridor"], from: [given.door, 0], to: [given.door + 1, 0] }),
    ],
    models: [roundModel()],
    dwellPlaces: [
      dwellLike({ id: "east", room: "room", at: [4.2, 2] }),
      dwellLike({ id: "west", room: "room", at: [1.8, 2] }),
    ],
    detectors: [
      detectorLike({ id: "d", room: "room", at: [given.x, given.y], height: 2.7, turn: given.turn }),
    ],
  });
