import fc from "fast-check";
import { expect, test } from "vitest";
import { planningDefaults, type Site } from "#engine";
import { applied, difference } from "./apply.ts";

const empty: Site = {
  name: "",
  defaults: planningDefaults,
  storeys: [],
  rooms: [],
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  switches: [],
  ceilingThings: [],
  luminaires: [],
  models: [],
  detectors: [],
};

const places = fc
  .uniqueArray(fc.record({ id: fc.constantFrom("a", "b", "c", "d"), x: fc.integer({ min: 0, max: 9 }) }), {
    selector: (place) => place.id,
  })
  .map((list) =>
    list.map(({ id, x }) => ({ id, room: "r", kind: "desk" as const, at: [x, 0] as const, radius: 0.6 })),
  );

test("the difference of two snapshots, applied to the first, holds the records of the second", () => {
  fc.assert(
    fc.property(places, places, (before, after) => {
      const from = { ...empty, dwellPlaces: before };
      const to = { ...empty, dwellPlaces: after };
      const got = applied(from, difference(from, to)).dwellPlaces;
      expect(new Map(got.map((place) => [place.id, place]))).toEqual(
        new Map(after.map((place) => [place.id, place])),
      );
    }),
    { seed: 7, numRuns: 200 },
  );
});

test("a step leaves the records that it does not touch as they are", () => {
  const site = applied(empty, [
    { do: "put", kind: "dwellPlaces", record: { id: "a", room: "r", kind: "desk", at: [0, 0], radius: 0.6 } },
    { do: "put", kind: "dwellPlaces", record: { id: "b", room: "r", kind: "desk", at: [1, 0], radius: 0.6 } },
  ]);
  const next = applied(site, [{ do: "set", kind: "dwellPlaces", id: "a", fields: { radius: 1 } }]);
  expect(next.dwellPlaces[1]).toBe(site.dwellPlaces[1]);
  expect(next.rooms).toBe(site.rooms);
  expect(next.dwellPlaces[0]?.radius).toBe(1);
});

test("a field that is set to undefined is taken away", () => {
  const source = {
    id: "h",
    room: "r",
    kind: "heater" as const,
    at: [0, 0] as const,
    height: 1,
    clearance: 2,
  };
  const site = applied(empty, [{ do: "put", kind: "interference", record: source }]);
  const fields = { clearance: undefined } as unknown as { clearance: number };
  const next = applied(site, [{ do: "set", kind: "interference", id: "h", fields }]);
  expect(next.interference[0]).not.toHaveProperty("clearance");
});
