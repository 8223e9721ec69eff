import fc from "fast-check";
import { expect, test } from "vitest";
import { demoJob, siteOf } from "#job";
import { applied } from "../jobs/apply.ts";
import type { Painted, Picture } from "./picture.ts";
import { changeBetween, changed } from "./picture-change.ts";

const { site } = siteOf(demoJob());
const room = site.rooms[0]!.id;
const zone = [
  {
    outline: [
      [0, 0],
      [1, 0],
      [0, 1],
    ],
    holes: [],
  },
] as const;

const first = {
  site,
  storey: site.storeys[0]!.id,
  underlays: [],
  view: { scale: 30, x: 0, y: 0, width: 800, height: 600 },
  units: "metric",
  palette: {},
  shown: {},
  calculated: { zones: new Map(), rooms: new Map() },
  selection: [],
  toolState: { on: "rest" },
  preview: [],
  held: undefined,
  grips: [],
  tried: undefined,
  flags: [],
  focus: new Set(),
  insets: { left: 0, right: 0, top: 0, bottom: 0 },
} as unknown as Picture;

type Deed = (picture: Picture) => Picture;
const index = fc.nat(site.detectors.length + 3);
const known = (one: number): string => site.detectors[one]?.id ?? `new-${one}`;
const deed: fc.Arbitrary<Deed> = fc.oneof(
  fc.tuple(index, fc.double({ min: 0, max: 9, noNaN: true })).map(
    ([one, x]): Deed =>
      (picture) => ({
        ...picture,
        site: applied(picture.site, [
          { do: "put", kind: "detectors", record: { ...site.detectors[0]!, id: known(one), at: [x, 1] } },
        ]),
      }),
  ),
  index.map(
    (one): Deed =>
      (picture) => ({
        ...picture,
        site: applied(picture.site, [{ do: "remove", kind: "detectors", id: known(one) }]),
      }),
  ),
  fc.double({ min: 1, max: 100, noNaN: true }).map(
    (speed): Deed =>
      (picture) => ({
        ...picture,
        site: { ...picture.site, defaults: { ...picture.site.defaults, speed } },
      }),
  ),
  index.map(
    (one): Deed =>
      (picture) => ({
        ...picture,
        calculated: {
          zones: new Map(picture.calculated.zones).set(known(one), { seated: [...zone] as never }),
          rooms: new Map(picture.calculated.rooms).set(room, { room, gaps: [], spill: [], darkWalks: [] }),
        },
      }),
  ),
  fc.constant<Deed>((picture) => ({ ...picture, calculated: { zones: new Map(), rooms: new Map() } })),
  fc.nat(50).map(
    (scale): Deed =>
      (picture) => ({ ...picture, view: { ...picture.view, scale } }),
  ),
  fc.constant<Deed>((picture) => ({ ...picture, held: { devices: new Set(["a"]), rooms: new Set(["b"]) } })),
  fc.constant<Deed>((picture) => ({ ...picture, held: undefined })),
  fc.constantFrom(undefined, ["a"], ["a", "b"]).map(
    (lit): Deed =>
      (picture) => ({ ...picture, lit }),
  ),
);

const byId = (picture: Painted) => ({
  ...picture,
  site: {
    ...picture.site,
    detectors: [...picture.site.detectors].sort((a, b) => a.id.localeCompare(b.id)),
  },
});

test("whatever is done to a picture, the changes that are sent one by one give the same picture", () => {
  fc.assert(
    fc.property(fc.array(deed, { minLength: 1, maxLength: 12 }), (deeds) => {
      let before: Picture | undefined;
      let received: Painted | undefined;
      let now = first;
      for (const one of [(picture: Picture) => picture, ...deeds]) {
        now = one(now);
        const change = changeBetween(before, now, 1);
        received = changed(received, structuredClone(change));
        before = now;
      }
      const { underlays: _, ...wanted } = now;
      expect(byId(received!)).toEqual(byId(wanted));
    }),
    { seed: 20, numRuns: 200 },
  );
});

test("what did not change is not sent again, and keeps its identity", () => {
  const sent = changed(undefined, changeBetween(undefined, first, 1));
  const next = { ...first, view: { ...first.view, scale: 31 } };
  const change = changeBetween(first, next, 1);
  expect(Object.keys(change.fields)).toEqual(["view"]);
  expect(change.site).toBeUndefined();
  expect(change.results).toBeUndefined();
  const after = changed(sent, change);
  expect(after.site).toBe(sent.site);
  expect(after.calculated).toBe(sent.calculated);
});
