import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  box,
  detectorLike,
  doorLike,
  dwellLike,
  flightLike,
  obstacleLike,
  roomLike,
  roundModel,
  siteLike,
  sourceLike,
} from "../../../test/engine/records.ts";
import type { coverageProblems as entries } from "../check/catalogue/coverage.ts";
import { english } from "../check/index.ts";
import type { Site } from "../site/index.ts";
import { orderedFindings, reviewPlan, reviewRoom, reviewSite } from "./index.ts";

const office = roomLike({ id: "office", name: "Office", outline: box(0, 0, 6, 4) });
const hall = roomLike({ id: "hall", name: "Hall", outline: box(0, -2.2, 6, 2) });
const door = doorLike({
  id: "door",
  rooms: ["office", "hall"],
  from: [1, 0],
  to: [1.9, 0],
  opensInto: "hall",
});
const middle = detectorLike({ id: "d1", room: "office", at: [3, 2] });
const plan = siteLike({ rooms: [office, hall], openings: [door], detectors: [middle] });
const rack = (footprint: ReturnType<typeof box>) =>
  obstacleLike({ id: "rack", name: "Rack 7", room: "office", kind: "rack", footprint, top: 2.5 });
const stair = roomLike({ id: "office", name: "Stair", outline: box(0, 0, 6, 4), use: "stair" });

/** For each code of the catalogue a plan in which the room "office" gives it, and a piece of the sentence. */
const cases: Readonly<Record<keyof typeof entries, readonly [given: Partial<Site>, named: string]>> = {
  "room-without-standing-area": [
    { openings: [], obstacles: [rack(box(0.1, 0.1, 5.8, 3.8))] },
    "Nobody can stand in room Office",
  ],
  "door-blocked": [
    { obstacles: [rack(box(0.8, 0.1, 1.4, 0.8))] },
    "through the door between Office and Hall",
  ],
  "cannot-be-walked-to": [{ obstacles: [rack(box(0, 2, 6, 0.5))] }, "m² of room Office cannot be walked to"],
  "dwell-place-taken": [
    { obstacles: [rack(box(2, 1, 2, 2))], dwellPlaces: [dwellLike({ id: "p", room: "office", at: [3, 2] })] },
    "A desk in room Office",
  ],
  "manual-override-needed": [{ rooms: [{ ...office, use: "plant" }, hall] }, "Room Office is a plant room"],
  "no-detector": [{ detectors: [] }, "Room Office has no detector"],
  "walk-gap": [{ obstacles: [rack(box(4, 1, 0.4, 2))] }, "are not seen: hidden behind Rack 7"],
  "hold-gap": [
    { dwellPlaces: [dwellLike({ id: "p", room: "office", at: [5.4, 2] })] },
    "of a desk in room Office are not seen: beyond the reach",
  ],
  "gaps-tolerated": [{ obstacles: [rack(box(5, 2, 0.03, 0.03))] }, "Small gaps in room Office"],
  "body-heat-weak": [{ rooms: [{ ...office, highestTemperature: 31 }, hall] }, "reaches 31 °C"],
  "bays-need-sound": [
    {
      rooms: [{ ...office, use: "sanitary" }, hall],
      obstacles: [
        obstacleLike({
          id: "c",
          room: "office",
          kind: "cubicle",
          top: 2.7,
          footprint: [
            [4, 2],
            [4.02, 2],
            [4.02, 3.98],
            [5.48, 3.98],
            [5.48, 2.02],
            [5.2, 2.02],
            [5.2, 2],
            [5.5, 2],
            [5.5, 4],
            [4, 4],
          ],
        }),
      ],
      dwellPlaces: [dwellLike({ id: "wc", room: "office", kind: "wc", at: [4.75, 3.5], radius: 0.3 })],
    },
    "no detector in it hears",
  ],
  "dark-walk-too-long": [
    { detectors: [{ ...middle, at: [5.5, 3.5] }] },
    "From the door between Office and Hall one walks",
  ],
  "dark-walk-unlit": [
    { models: [roundModel({ zones: { towards: [{ height: 2.7, radius: 0.2 }] } })] },
    "the light never comes on",
  ],
  "stair-lit-too-late": [
    {
      rooms: [stair, hall],
      floorPieces: [
        flightLike({
          id: "f",
          room: "office",
          footprint: box(1, 0.8, 1, 2),
          from: [1.5, 0.8],
          to: [1.5, 2.8],
        }),
      ],
    },
    "the first step; it must be 1 m before",
  ],
  "spill-into-room": [{ detectors: [{ ...middle, at: [1.45, 1] }] }, "D1 in room Office may see"],
  "source-in-view": [
    { interference: [sourceLike({ id: "h", room: "office", at: [5, 2] })] },
    "Detector D1 looks at a heater 2 m away",
  ],
  "source-too-near": [
    { interference: [sourceLike({ id: "h", room: "office", at: [4, 2], kind: "air-outlet" })] },
    "is 1 m from an air outlet",
  ],
};

test.each(Object.entries(cases))("%s is found in a room that gives it", (code, [given, named]) => {
  const { findings } = reviewRoom({ ...plan, ...given }, "office");
  const finding = findings.find((one) => one.code === code && one.message.includes(named));
  expect(finding, findings.map((one) => `${one.code}: ${one.message}`).join("\n")).toBeDefined();
  expect(`${finding?.message} ${finding?.remedy}`).not.toMatch(/[{}]|undefined|NaN|Infinity/);
});

describe("the review of a site", () => {
  test("goes room by room and tells how far it is", () => {
    const steps: string[] = [];
    const review = reviewSite(plan, {
      progress: ({ done, total, room }) => steps.push(`${done}/${total} ${room}`),
    });
    expect(steps).toEqual(["1/2 office", "2/2 hall"]);
    expect(review.rooms.map((room) => room.room)).toEqual(["office", "hall"]);
  });

  test("equals plan and rooms reviewed one by one, so that a caller can keep what did not change", () => {
    const one = [
      ...reviewPlan(plan),
      ...reviewRoom(plan, "office").findings,
      ...reviewRoom(plan, "hall").findings,
    ];
    expect(reviewSite(plan).findings).toEqual(orderedFindings(plan, one));
  });

  test("says a missing door once, and must before should before note", () => {
    const { findings } = reviewSite({ ...plan, openings: [] });
    expect(findings.filter((finding) => finding.code === "room-without-door")).toHaveLength(2);
    const weight = { must: 0, should: 1, note: 2 };
    const order = findings.map((finding) => weight[finding.severity]);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
  });

  test("of what a merge may break there are findings and no crash", () => {
    const broken: Site = {
      ...plan,
      rooms: [
        {
          ...office,
          outline: [
            [0, 0],
            [1, 1],
          ],
        },
        hall,
        hall,
      ],
      detectors: [
        { ...middle, room: "gone" },
        { ...middle, model: "gone" },
      ],
      openings: [door, { ...door, rooms: ["gone", null] }],
    };
    const codes = reviewSite(broken).findings.map((finding) => finding.code);
    expect(codes).toEqual(
      expect.arrayContaining([
        "detector-in-deleted-room",
        "model-unknown",
        "duplicate-id",
        "outline-corners-missing",
        "opening-to-deleted-room",
      ]),
    );
  });

  test("every finding of a gap carries its check with actual value, limit and assumptions", () => {
    const { findings } = reviewRoom({ ...plan, obstacles: [rack(box(4, 1, 0.4, 2))] }, "office");
    const [check] = findings.find((finding) => finding.code === "walk-gap")?.evidence ?? [];
    expect(check).toMatchObject({ verdict: "fail", limit: 0, unit: "m²", source: "COMMON-PRACTICE" });
    expect(check?.actual).toBeGreaterThan(0.5);
    expect(check?.assumptions.map(english)).toContain("Reach towards less 15 %");
  });
});

test("no content makes the review throw, whatever numbers it holds (seed 31)", () => {
  const odd = fc.oneof(
    fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, 0, -1, 1e9),
    fc.double({ min: -8, max: 8, noNaN: true }),
  );
  const point = fc.tuple(odd, odd);
  const outline = fc.array(point, { maxLength: 6 });
  fc.assert(
    fc.property(outline, outline, point, point, odd, odd, (one, two, a, b, c, d) => {
      for (const ring of [office.outline, one]) {
        const site: Site = {
          ...plan,
          rooms: [{ ...office, outline: ring, noDevices: [two], ceilingHeight: c, floor: d }, hall],
          openings: [
            door,
            {
              ...door,
              id: "odd",
              from: a,
              to: b,
              sill: c,
              head: d,
              thickness: c,
              angle: d,
              opensInto: "office",
            },
          ],
          obstacles: [obstacleLike({ id: "o", room: "office", footprint: two, base: c, top: d })],
          floorPieces: [
            flightLike({ id: "f", room: "office", footprint: two, from: a, to: b, low: c, high: d }),
          ],
          dwellPlaces: [dwellLike({ id: "p", room: "office", at: a, radius: c })],
          interference: [sourceLike({ id: "s", room: "office", at: a, to: b, height: c })],
          detectors: [middle, { ...middle, id: "d2", at: a, height: c, turn: d }],
        };
        for (const finding of reviewSite(site).findings) expect(finding.message.length).toBeGreaterThan(10);
      }
    }),
    { seed: 31, numRuns: 150, endOnFailure: true },
  );
});
