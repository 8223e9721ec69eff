import { describe, expect, test } from "vitest";
import type { DetectorModel, Finding, Site } from "#engine";
import { reviewPlan, reviewRoom } from "#engine";
import { siteBySizes } from "../home/room-by-sizes.ts";
import { applied } from "../jobs/apply.ts";
import { remedyActions } from "./remedy-actions.ts";

const model: DetectorModel = {
  id: "round",
  title: "Round",
  mounting: { min: 2.2, max: 3.5 },
  zones: { towards: [{ height: 2.5, radius: 4 }], seated: [{ height: 2.5, radius: 2 }] },
  declaration: "assumed",
  declaredBy: "",
  cost: 1,
};

/** Two rooms side by side: an office of 8 by 6 m and a store of 4 by 6 m. */
const whole: Site = (() => {
  const office = siteBySizes(
    { shape: "rectangle", length: 8, width: 6, leg: 2, height: 2.5, use: "sitting" },
    { models: [model], name: "Office", storey: "Ground floor" },
  );
  const room = office.rooms[0]!;
  const store = { ...room, id: "store", number: "2", name: "Store", use: "moving" as const };
  return {
    ...office,
    rooms: [
      room,
      {
        ...store,
        outline: [
          [8.15, 0],
          [12.15, 0],
          [12.15, 6],
          [8.15, 6],
        ],
      },
    ],
    detectors: [
      {
        id: "d1",
        tag: "B1.01",
        room: room.id,
        controls: [room.id],
        group: "",
        model: model.id,
        at: [4, 3],
        height: 2.5,
        turn: 0,
        masks: [],
        pinned: false,
      },
    ],
  };
})();

const detector = (change: Partial<Site["detectors"][number]>): Site => ({
  ...whole,
  detectors: [{ ...whole.detectors[0]!, ...change }],
});
const opening = (change: Partial<Site["openings"][number]>): Site => ({
  ...whole,
  openings: [{ ...whole.openings[0]!, ...change }],
});
const obstacle = (change: Partial<Site["obstacles"][number]>): Site => ({
  ...whole,
  obstacles: [
    {
      id: "o1",
      room: whole.rooms[0]!.id,
      kind: "rack",
      name: "Rack",
      footprint: [
        [1, 1],
        [2, 1],
        [2, 2],
        [1, 2],
      ],
      base: 0,
      top: 2,
      seeThrough: false,
      ...change,
    },
  ],
});
const inTheStore = [
  [9, 1],
  [10, 1],
  [10, 2],
  [9, 2],
] as const;

const broken: readonly (readonly [string, Site])[] = [
  ["detector-outside-room", detector({ at: [-1, 3] })],
  ["detector-outside-room", detector({ at: [10, 3] })],
  ["detector-in-deleted-room", detector({ room: "gone" })],
  ["controls-deleted-room", detector({ controls: ["gone", whole.rooms[0]!.id] })],
  ["detector-above-ceiling", detector({ height: 4 })],
  ["detector-height-missing", detector({ height: Number.NaN })],
  ["detector-outside-mounting-limits", detector({ height: 2 })],
  // Above the ceiling as well as above the limits: the ceiling has the last word.
  ["detector-outside-mounting-limits", detector({ height: 9 })],
  [
    "duplicate-tag",
    { ...whole, detectors: [...whole.detectors, { ...whole.detectors[0]!, id: "d2", at: [2, 2] as const }] },
  ],
  ["opening-upside-down", opening({ sill: 2, head: 0 })],
  ["opening-above-ceiling", opening({ head: 3 })],
  ["door-above-floor", opening({ sill: 0.5 })],
  ["door-swings-elsewhere", opening({ opensInto: "store" })],
  ["opening-to-deleted-room", opening({ rooms: [whole.rooms[0]!.id, "gone"] })],
  ["opening-to-deleted-room", opening({ rooms: ["gone", null] })],
  ["opening-joins-same-room", opening({ rooms: [whole.rooms[0]!.id, whole.rooms[0]!.id] })],
  ["obstacle-upside-down", obstacle({ base: 2, top: 0 })],
  ["obstacle-above-ceiling", obstacle({ top: 4 })],
  ["obstacle-outside-room", obstacle({ footprint: inTheStore })],
  ["record-in-deleted-room", obstacle({ room: "gone" })],
  [
    "dwell-place-outside-room",
    { ...whole, dwellPlaces: [{ ...whole.dwellPlaces[0]!, at: [10, 3] as const }] },
  ],
  ["dwell-place-without-size", { ...whole, dwellPlaces: [{ ...whole.dwellPlaces[0]!, radius: 0 }] }],
  [
    "thing-outside-room",
    {
      ...whole,
      ceilingThings: [{ id: "c", room: whole.rooms[0]!.id, kind: "speaker", at: [10, 3] as const }],
    },
  ],
  [
    "flight-does-not-rise",
    {
      ...whole,
      floorPieces: [
        {
          id: "f",
          room: whole.rooms[0]!.id,
          kind: "flight",
          footprint: [
            [1, 1],
            [3, 1],
            [3, 2],
            [1, 2],
          ],
          from: [1, 1.5],
          to: [3, 1.5],
          low: 1,
          high: 0,
        },
      ],
    },
  ],
  ["storey-missing", { ...whole, rooms: whole.rooms.map((room) => ({ ...room, storey: "gone" })) }],
  ["model-mounting-limits-crossed", { ...whole, models: [{ ...model, mounting: { min: 3, max: 2 } }] }],
];

const findingsOf = (site: Site, code: string): readonly Finding[] =>
  reviewPlan(site).filter((finding) => finding.code === code);

const remediesOf = (finding: Finding, site: Site) =>
  (remedyActions[finding.code]?.(finding, site) ?? []).filter((remedy) => remedy !== undefined);

describe("remedies that act", () => {
  test("the plan that the cases are made from is sound in itself", () => {
    expect(reviewPlan(whole).filter(({ severity }) => severity === "must")).toEqual([]);
  });

  test.each(broken)("%s is gone after its remedy (case %#)", (code, site) => {
    const before = findingsOf(site, code);
    expect(before.length).toBeGreaterThan(0);
    const remedies = remediesOf(before[0]!, site);
    expect(remedies.length).toBeGreaterThan(0);
    for (const remedy of remedies) {
      expect(remedy.do).toBe("edit");
      if (remedy.do !== "edit") continue;
      const after = findingsOf(applied(site, remedy.steps), code);
      expect(after.length, remedy.word).toBe(before.length - 1);
    }
  });

  test("a room without a detector is sent to placing", () => {
    const bare = { ...whole, detectors: [] };
    const finding = reviewRoom(bare, bare.rooms[0]!.id).findings.find(({ code }) => code === "no-detector");
    expect(remediesOf(finding!, bare)).toEqual([
      { do: "place", word: "findings.remedy.place", room: bare.rooms[0]!.id },
    ]);
  });

  test("a heater in view is out of view once the lens is masked there", () => {
    const heater = { id: "h", room: whole.rooms[0]!.id, kind: "heater", at: [6.5, 3], height: 1 } as const;
    const site: Site = { ...whole, interference: [heater] };
    const seen = (now: Site) =>
      reviewRoom(now, now.rooms[0]!.id).findings.filter(({ code }) => code === "source-in-view");
    const [finding] = seen(site);
    expect(finding).toBeDefined();
    const [remedy] = remediesOf(finding!, site);
    expect(remedy?.do === "edit" && seen(applied(site, remedy.steps))).toEqual([]);
  });
});
