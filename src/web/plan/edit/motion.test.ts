import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Room, revealOf, type Site } from "#engine";
import type { RecordRef } from "../../contract.ts";
import { applied } from "../../jobs/apply.ts";
import { moveSteps } from "../change.ts";
import { openingShape, ringArea, roomArea } from "../shapes.ts";
import { mirrorSteps, rotateSteps } from "./motion.ts";
import { placedKinds } from "./selected.ts";
import { box, device, door, pair, room, siteOf } from "./test-site.ts";

const both: readonly RecordRef[] = [
  { kind: "rooms", id: "west" },
  { kind: "rooms", id: "east" },
];
const west: readonly RecordRef[] = [{ kind: "rooms", id: "west" }];
const everything: readonly RecordRef[] = [
  ...both,
  ...placedKinds.flatMap((kind) =>
    (pair[kind] as readonly { readonly id: string }[]).map(({ id }): RecordRef => ({ kind, id })),
  ),
  ...pair.openings.map(({ id }): RecordRef => ({ kind: "openings", id })),
];

/** All figures of a site, to compare it with another. */
function figures(site: Site): number[] {
  const found: number[] = [];
  const walk = (value: unknown): void => {
    if (typeof value === "number") found.push(value);
    else if (typeof value === "object" && value !== null) Object.values(value).forEach(walk);
  };
  walk({ ...site, defaults: undefined });
  return found;
}

const farthestApart = (a: Site, b: Site): number => {
  const [one, two] = [figures(a), figures(b)];
  expect(one.length).toBe(two.length);
  return Math.max(...one.map((figure, i) => Math.abs(figure - two[i]!)));
};

const way = fc.constantFrom("across" as const, "up" as const);
const chosen = fc.constantFrom(both, west, everything, [{ kind: "obstacles", id: "rack" }] as const);

describe("mirroring", () => {
  test("twice in the same line changes nothing", () => {
    fc.assert(
      fc.property(way, fc.constantFrom(both, everything), (line, refs) => {
        const once = applied(pair, mirrorSteps(pair, refs, line));
        expect(farthestApart(once, pair)).toBeGreaterThan(0.1);
        expect(farthestApart(applied(once, mirrorSteps(once, refs, line)), pair)).toBeLessThan(2e-6);
      }),
      { seed: 32, numRuns: 20 },
    );
  });

  test("keeps every area and the sense of every ring", () => {
    fc.assert(
      fc.property(way, chosen, (line, refs) => {
        const now = applied(pair, mirrorSteps(pair, refs, line));
        now.rooms.forEach((one, i) => {
          expect(roomArea(one)).toBeCloseTo(roomArea(pair.rooms[i] as Room), 6);
          expect(ringArea(one.outline)).toBeGreaterThan(0);
          for (const hole of one.holes) expect(ringArea(hole)).toBeLessThan(0);
        });
        expect(ringArea(now.obstacles[0]!.footprint)).toBeCloseTo(0.5, 6);
      }),
      { seed: 33, numRuns: 20 },
    );
  });

  test("keeps a door on its jamb: the open leaf is the mirrored leaf", () => {
    const now = applied(pair, mirrorSteps(pair, both, "across"));
    const leaf = (site: Site) => openingShape(site.openings[0]!, site.rooms[0]).leaf!;
    // The two rooms together reach from 0 to 9.
    for (const end of ["hinge", "closed", "open"] as const) {
      expect(leaf(now)[end][0]).toBeCloseTo(9 - leaf(pair)[end][0], 6);
      expect(leaf(now)[end][1]).toBeCloseTo(leaf(pair)[end][1], 6);
    }
    expect(now.openings[0]?.rooms).toEqual(["west", "east"]);
  });

  test("turns a masked sector over with the device", () => {
    const now = applied(pair, mirrorSteps(pair, both, "across"));
    const [before, after] = [pair.detectors[0]!, now.detectors[0]!];
    const [mask, over] = [before.masks[0]!, after.masks[0]!];
    const whole = (angle: number) => (angle + 4 * Math.PI) % (2 * Math.PI);
    expect(whole(after.turn + over.from)).toBeCloseTo(whole(Math.PI - before.turn - mask.to), 9);
    expect(whole(after.turn + over.to)).toBeCloseTo(whole(Math.PI - before.turn - mask.from), 9);
  });

  test("of one room leads its doors to what then lies behind them, or outside", () => {
    const now = applied(pair, mirrorSteps(pair, west, "across"));
    expect(now.openings[0]).toMatchObject({ rooms: ["west", null], opensInto: "west", from: [0, 1] });
    const [opening, first] = [now.openings[0]!, now.rooms[0]!];
    expect(revealOf(opening, first).through[0]).toBeCloseTo(-1, 9);
  });

  test("of a door alone hangs it on the other jamb", () => {
    const refs = [{ kind: "openings", id: "out" }] as const;
    const now = applied(pair, mirrorSteps(pair, refs, "across"));
    expect(now.openings[1]).toEqual({ ...pair.openings[1], hinge: "from" });
    expect(applied(now, mirrorSteps(now, refs, "across"))).toEqual(pair);
  });
});

describe("turning", () => {
  test("four quarter turns end where they began, to the millimetre", () => {
    fc.assert(
      fc.property(fc.constantFrom(both, everything, west), fc.constantFrom(1, -1), (refs, sign) => {
        let now = pair;
        for (let n = 0; n < 4; n++) now = applied(now, rotateSteps(now, refs, (sign * Math.PI) / 2));
        const moved = refs === west ? { ...now, openings: [] } : now;
        const start = refs === west ? { ...pair, openings: [] } : pair;
        expect(farthestApart(moved, start)).toBeLessThan(1e-3);
      }),
      { seed: 34, numRuns: 20 },
    );
  });

  test("by any angle keeps every area", () => {
    fc.assert(
      fc.property(fc.double({ min: -4, max: 4, noNaN: true }), (angle) => {
        const now = applied(pair, rotateSteps(pair, both, angle));
        now.rooms.forEach((one, i) => {
          // Corners are kept to a thousandth of a millimetre, along walls of 18 m.
          expect(Math.abs(roomArea(one) - roomArea(pair.rooms[i] as Room))).toBeLessThan(18e-6);
        });
        expect(now.openings[0]?.rooms).toEqual(["west", "east"]);
      }),
      { seed: 35, numRuns: 50 },
    );
  });
});

describe("moving", () => {
  test("a room carries all that is in it once, also when everything was chosen", () => {
    for (const refs of [both, everything]) {
      const now = applied(pair, moveSteps(pair, refs, [1, 0.5]));
      expect(now.detectors.map(({ at }) => at)).toEqual([
        [2, 1.5],
        [8, 2.5],
      ]);
      expect(now.detectors.map((one) => one.room)).toEqual(["west", "east"]);
      expect(now.switches[0]?.at).toEqual([5.9, 1.3]);
      expect(now.openings[0]).toMatchObject({ from: [6, 1.5], to: [6, 2.5], rooms: ["west", "east"] });
    }
  });

  test("the door of a room behind goes with the room that moves", () => {
    const site = siteOf({
      rooms: [room("a", box(0, 0, 5, 4)), room("b", box(5.2, 0, 9, 4))],
      openings: [door("d", ["a", "b"])],
    });
    const now = applied(site, moveSteps(site, [{ kind: "rooms", id: "b" }], [3, 0]));
    expect(now.openings[0]).toMatchObject({ rooms: ["b", null], from: [8.2, 1], to: [8.2, 2] });
  });

  test("a door high up in a stair goes on leading to the storey above", () => {
    const site = siteOf({
      storeys: [
        { id: "ground", name: "", elevation: 0 },
        { id: "first", name: "", elevation: 3 },
      ],
      rooms: [...pair.rooms, room("up", box(5.2, 0, 9, 4), { storey: "first" })],
      openings: [door("d", ["west", "up"])],
    });
    const now = applied(site, moveSteps(site, west, [-0.1, 0]));
    expect(now.openings[0]).toMatchObject({ rooms: ["west", "up"], from: [4.9, 1] });
  });

  test("a detector that switched its own room alone switches the room it is carried to", () => {
    const site = siteOf({ rooms: pair.rooms, detectors: [device("01", "west"), pair.detectors[1]!] });
    const now = applied(site, moveSteps(site, [{ kind: "detectors", id: "01" }], [6, 0]));
    expect(now.detectors[0]).toMatchObject({ room: "east", controls: ["east"] });
    const other = applied(site, moveSteps(site, [{ kind: "detectors", id: "02" }], [-5, 0]));
    expect(other.detectors[1]).toMatchObject({ room: "west", controls: ["east", "west"] });
  });
});
