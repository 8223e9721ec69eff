import { describe, expect, test } from "vitest";
import { box, doorLike, dwellLike, obstacleLike, roomLike, siteLike } from "../../../test/engine/records.ts";
import { areaOf, contains } from "../geometry/index.ts";
import { planningDefaults, type Site } from "../site/index.ts";
import { roomDemand } from "./index.ts";

const room = roomLike({ id: "office", outline: box(0, 0, 4, 3) });
const door = doorLike({ id: "door", rooms: ["office", null], from: [1, 0], to: [1.9, 0] });
const office = (given: Partial<Site> = {}): Site => siteLike({ rooms: [room], openings: [door], ...given });

describe("standing area", () => {
  test("floor drawn in by the body radius, and the strip between the jambs", () => {
    // 3.6 × 2.6 and a strip of 0.9 − 2 · 0.2 by 0.2.
    expect(areaOf(roomDemand(office(), "office").standing)).toBeCloseTo(9.36 + 0.1, 3);
  });

  test("the room on the other side of a door has its strip on its own face", () => {
    const corridor = roomLike({ id: "corridor", outline: box(0, -2.2, 4, 2) });
    const site = office({ rooms: [room, corridor], openings: [{ ...door, rooms: ["office", "corridor"] }] });
    const { standing } = roomDemand(site, "corridor");
    expect(areaOf(standing)).toBeCloseTo(3.6 * 1.6 + 0.1, 3);
    expect(contains(standing, [1.45, -0.25])).toBe(true);
    expect(contains(standing, [0.5, -0.25])).toBe(false);
  });

  test("a low threshold and a high duct block nothing; a table does, with a body round it", () => {
    const [threshold, duct, table] = [
      obstacleLike({ id: "threshold", room: "office", footprint: box(0, 1, 4, 0.5), top: 0.1 }),
      obstacleLike({ id: "duct", room: "office", footprint: box(0, 1, 4, 0.5), base: 1.9, top: 2.4 }),
      obstacleLike({ id: "table", room: "office", footprint: box(1.5, 1.2, 1, 0.6) }),
    ];
    expect(areaOf(roomDemand(office({ obstacles: [threshold, duct] }), "office").standing)).toBeCloseTo(
      9.46,
      3,
    );
    // 1 × 0.6 grown by 0.2 with round corners; arcs are chords of at most 2 mm.
    const taken = 1 * 0.6 + 2 * (1 + 0.6) * 0.2 + Math.PI * 0.04;
    expect(areaOf(roomDemand(office({ obstacles: [table] }), "office").standing)).toBeCloseTo(
      9.46 - taken,
      2,
    );
  });

  test("what no door leads to is listed and not demanded", () => {
    const rack = obstacleLike({ id: "rack", room: "office", footprint: box(0, 1.5, 4, 0.5), top: 2 });
    const demand = roomDemand(office({ obstacles: [rack] }), "office");
    expect(areaOf(demand.standing)).toBeCloseTo(3.6 * 1.1 + 0.1, 3);
    expect(areaOf(demand.unreachable)).toBeCloseTo(3.6 * 0.6, 3);
    expect(demand.problems.map((problem) => problem.code)).toEqual(["cannot-be-walked-to"]);
  });

  test("a room without a door uses its largest part, with a finding", () => {
    const rack = obstacleLike({ id: "rack", room: "office", footprint: box(0, 1.5, 4, 0.5), top: 2 });
    const demand = roomDemand(office({ openings: [], obstacles: [rack] }), "office");
    expect(areaOf(demand.standing)).toBeCloseTo(3.6 * 1.1, 3);
    expect(demand.problems.map((problem) => problem.code)).toContain("room-without-door");
  });

  test("a door that something stands in front of is said to be blocked", () => {
    const crate = obstacleLike({ id: "crate", room: "office", footprint: box(0.8, 0.1, 1.4, 0.8) });
    const demand = roomDemand(office({ obstacles: [crate] }), "office");
    expect(demand.problems.map((problem) => problem.code)).toContain("door-blocked");
  });

  test("a room filled to the walls has no standing area, and says so", () => {
    const tank = obstacleLike({ id: "tank", room: "office", footprint: box(0.1, 0.1, 3.8, 2.8), top: 2 });
    const demand = roomDemand(office({ obstacles: [tank] }), "office");
    expect(areaOf(demand.standing)).toBeLessThan(0.06);
    expect(
      roomDemand(office({ openings: [], obstacles: [tank] }), "office").problems.map(
        (problem) => problem.code,
      ),
    ).toContain("room-without-standing-area");
  });
});

describe("dwell places", () => {
  test("a desk in the open demands its disc, at 0.9 m", () => {
    const [desk] = roomDemand(
      office({ dwellPlaces: [dwellLike({ id: "desk", room: "office", at: [2, 1.5] })] }),
      "office",
    ).dwell;
    // The ring lies round the circle: at most 0.2 % more.
    expect(desk?.area).toBeGreaterThan(Math.PI * 0.36);
    expect(desk?.area).toBeLessThan(Math.PI * 0.36 * 1.002);
    expect(desk?.sightHeight).toBe(0.9);
    expect(desk?.inBay).toBe(false);
  });

  test("against a wall half of the disc is demanded; under a table all of it, under a cupboard nothing", () => {
    const at = (id: string, x: number, y: number) => dwellLike({ id, room: "office", at: [x, y] });
    const table = obstacleLike({ id: "table", room: "office", footprint: box(1, 0.5, 2, 2), top: 0.75 });
    const cupboard = obstacleLike({ id: "cupboard", room: "office", footprint: box(1, 0.5, 2, 2), top: 2 });
    const area = (id: string, site: Site) =>
      roomDemand(site, "office").dwell.find((place) => place.id === id)?.area;
    expect(area("wall", office({ dwellPlaces: [at("wall", 2, 3)] }))).toBeCloseTo((Math.PI * 0.36) / 2, 2);
    expect(area("desk", office({ dwellPlaces: [at("desk", 2, 1.5)], obstacles: [table] }))).toBeCloseTo(
      Math.PI * 0.36,
      2,
    );
    const taken = roomDemand(office({ dwellPlaces: [at("desk", 2, 1.5)], obstacles: [cupboard] }), "office");
    expect(taken.dwell[0]?.area).toBe(0);
    expect(taken.problems.map((problem) => problem.code)).toContain("dwell-place-taken");
  });

  test("a seat does not reach through a partition", () => {
    const panel = obstacleLike({
      id: "panel",
      room: "office",
      kind: "partition",
      footprint: box(2.2, 0, 0.05, 3),
      top: 1.8,
    });
    const [seat] = roomDemand(
      office({
        dwellPlaces: [dwellLike({ id: "seat", room: "office", kind: "seat", at: [2, 1.5] })],
        obstacles: [panel],
      }),
      "office",
    ).dwell;
    expect(seat && contains(seat.region, [2.4, 1.5])).toBe(false);
    expect(seat && contains(seat.region, [1.5, 1.5])).toBe(true);
  });
});

describe("bays", () => {
  // A comb: back panel along y = 3 and three panels 1.5 m deep, 1 m apart, all 0.02 m thick.
  const comb = obstacleLike({
    id: "cubicles",
    room: "office",
    kind: "cubicle",
    base: 0.15,
    top: 2,
    footprint: [
      [1, 1.5],
      [1.02, 1.5],
      [1.02, 2.98],
      [2, 2.98],
      [2, 1.5],
      [2.02, 1.5],
      [2.02, 2.98],
      [3, 2.98],
      [3, 1.5],
      [3.02, 1.5],
      [3.02, 3],
      [1, 3],
    ],
  });
  const wc = dwellLike({ id: "wc", room: "office", kind: "wc", at: [1.5, 2.5], radius: 0.3 });

  test("of a comb of panels are its hull less the panels, in sanitary and changing rooms", () => {
    const bays = (use: "sanitary" | "changing" | "sitting") =>
      roomDemand(office({ rooms: [{ ...room, use }], obstacles: [comb], dwellPlaces: [wc] }), "office");
    // Two bays 0.98 wide and 1.48 deep; the standing area in them is drawn in by 0.2 m from three panels.
    expect(areaOf(bays("sanitary").bays)).toBeCloseTo(2 * 0.58 * 1.28, 2);
    expect(bays("changing").dwell[0]?.inBay).toBe(true);
    expect(areaOf(bays("sitting").bays)).toBe(0);
    expect(bays("sitting").dwell[0]?.inBay).toBe(false);
  });
});

test("a plant room is told to need a manual switch", () => {
  const demand = roomDemand(office({ rooms: [{ ...room, use: "plant" }] }), "office");
  expect(demand.problems.map((problem) => problem.code)).toContain("manual-override-needed");
});

test("turning, mirroring and moving the plan by 10 km changes areas by less than 1e-4", () => {
  const table = obstacleLike({ id: "table", room: "office", footprint: box(1.5, 1.2, 1, 0.6) });
  const desk = dwellLike({ id: "desk", room: "office", at: [3.6, 1.5] });
  const plain = office({ obstacles: [table], dwellPlaces: [desk] });
  const angle = 0.7;
  const moves: ((p: readonly [number, number]) => [number, number])[] = [
    ([x, y]) => [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)],
    ([x, y]) => [-x, y],
    ([x, y]) => [x + 10_000, y - 10_000],
  ];
  const { standing, dwell } = roomDemand(plain, "office");
  for (const move of moves) {
    const moved: Site = {
      ...plain,
      rooms: plain.rooms.map((one) => ({ ...one, outline: one.outline.map(move) })),
      openings: plain.openings.map((one) => ({ ...one, from: move(one.from), to: move(one.to) })),
      obstacles: plain.obstacles.map((one) => ({ ...one, footprint: one.footprint.map(move) })),
      dwellPlaces: plain.dwellPlaces.map((one) => ({ ...one, at: move(one.at) })),
    };
    const other = roomDemand(moved, "office");
    expect(Math.abs(areaOf(other.standing) - areaOf(standing)) / areaOf(standing)).toBeLessThan(1e-4);
    // The ring of 56 chords turns with the axes, not with the plan: up to 0.2 % of the disc between two positions of its corners.
    expect(
      Math.abs((other.dwell[0]?.area ?? 0) - (dwell[0]?.area ?? 0)) / (dwell[0]?.area ?? 1),
    ).toBeLessThan(1e-3);
  }
});

test("a broken outline gives no demand and does not throw", () => {
  const broken = office({
    rooms: [
      {
        ...room,
        outline: [
          [0, 0],
          [4, 3],
          [4, 0],
          [0, 3],
        ],
      },
    ],
  });
  expect(roomDemand(broken, "office").standing).toEqual([]);
  expect(() => roomDemand(broken, "nowhere")).toThrow("No room nowhere");
  expect(planningDefaults.bodyRadius).toBe(0.2);
});
