import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaOf, intersection, type Outline, type Point, regionOf, type Site, selfCrossing } from "#engine";
import { applied } from "../../jobs/apply.ts";
import { ringArea, roomArea } from "../shapes.ts";
import { joinRooms } from "./join-rooms.ts";
import { splitRoom } from "./split-room.ts";
import { box, counting, device, door, pair, rack, room, siteOf } from "./test-site.ts";

/** Coordinates lie on the grain of the booleans; a room of the tests has a rim of less than 60 m. [m²] */
const byGrain = 60 * 1e-5;

const split = (site: Site, id: string, line: readonly [Point, Point], thickness: number) => {
  const made = splitRoom(site, id, { from: line[0], to: line[1] }, { thickness, newId: counting() });
  return "steps" in made ? { ...made, site: applied(site, made.steps) } : made;
};

const done = <T extends object>(made: T): Exclude<T, { readonly refused: string }> => {
  if ("refused" in made) throw new Error(`${made.refused}`);
  return made as Exclude<T, { readonly refused: string }>;
};

const ell: Outline = [
  [0, 0],
  [10, 0],
  [10, 3],
  [4, 3],
  [4, 8],
  [0, 8],
];

describe("splitting a room", () => {
  test("leaves a wall between two rooms, the larger of which stays what it was", () => {
    const made = done(
      split(
        siteOf({ rooms: [room("a", box(0, 0, 10, 4))] }),
        "a",
        [
          [6, 0],
          [6, 4],
        ],
        0.2,
      ),
    );
    expect(made.rooms).toEqual(["a", "rooms-1"]);
    expect(made.site.rooms.map(({ name }) => name)).toEqual(["a", "a 2"]);
    expect(made.site.rooms.map(({ outline }) => ringArea(outline))).toEqual([
      expect.closeTo(5.9 * 4, 9),
      expect.closeTo(3.9 * 4, 9),
    ]);
  });

  test("draws the line on to the walls, but not into another arm of the same room", () => {
    const u: Outline = [
      [0, 0],
      [9, 0],
      [9, 5],
      [6, 5],
      [6, 2],
      [3, 2],
      [3, 5],
      [0, 5],
    ];
    const made = done(
      split(
        siteOf({ rooms: [room("u", u)] }),
        "u",
        [
          [1, 4],
          [2, 4],
        ],
        0.1,
      ),
    );
    expect(made.site.rooms.map(roomArea)).toEqual([
      expect.closeTo(36 - 3 * 1.05, 9),
      expect.closeTo(3 * 0.95, 9),
    ]);
  });

  test("gives each part what lies in it", () => {
    const made = done(
      split(
        pair,
        "west",
        [
          [2.3, 0],
          [2.3, 4],
        ],
        0.1,
      ),
    );
    // East of the wall is the larger part.
    const of = (list: readonly { readonly room: string }[]) => list.map((one) => one.room);
    expect(of(made.site.obstacles)).toEqual(["west"]);
    expect(of(made.site.ceilingThings)).toEqual(["west"]);
    expect(of(made.site.switches)).toEqual(["west"]);
    expect(of(made.site.dwellPlaces)).toEqual(["rooms-1"]);
    expect(of(made.site.luminaires)).toEqual(["rooms-1"]);
    expect(of(made.site.floorPieces)).toEqual(["rooms-1"]);
    expect(of(made.site.interference)).toEqual(["rooms-1"]);
    expect(made.site.detectors[0]).toMatchObject({ room: "rooms-1", controls: ["rooms-1"] });
    // A device of the neighbour that switched the whole room switches both parts.
    expect(made.site.detectors[1]?.controls).toEqual(["east", "west", "rooms-1"]);
    expect(made.site.openings.map(({ rooms }) => rooms)).toEqual([
      ["west", "east"],
      ["rooms-1", null],
    ]);
    const [west, new1] = [made.site.rooms[0]!, made.site.rooms.find(({ id }) => id === "rooms-1")!];
    expect(west.holes).toEqual([]);
    expect(new1.holes).toEqual(pair.rooms[0]?.holes);
    expect(ringArea(west.noDevices[0]!) + ringArea(new1.noDevices[0]!)).toBeCloseTo(0.9, 9);
  });

  test("gives a door that leads in from another room to the part behind it", () => {
    const site = siteOf({
      rooms: pair.rooms,
      openings: [door("d", ["east", "west"], { from: [5.2, 3], to: [5.2, 3.8], opensInto: "west" })],
    });
    const made = done(
      split(
        site,
        "west",
        [
          [0, 2.5],
          [5, 2.5],
        ],
        0,
      ),
    );
    expect(made.site.openings[0]).toMatchObject({ rooms: ["east", "rooms-1"], opensInto: "rooms-1" });
  });

  test("is refused where the line does not part the floor, or the wall would end in a door", () => {
    expect(
      split(
        pair,
        "west",
        [
          [-3, 1],
          [-1, 1],
        ],
        0.1,
      ),
    ).toEqual({ refused: "across" });
    expect(
      split(
        pair,
        "west",
        [
          [2, 2],
          [2, 2],
        ],
        0.1,
      ),
    ).toEqual({ refused: "across" });
    expect(
      split(
        pair,
        "west",
        [
          [0, 1.5],
          [5, 1.5],
        ],
        0.1,
      ),
    ).toEqual({ refused: "opening" });
  });

  test("parts and wall make up the room; no outline crosses itself, nothing is in two parts", () => {
    const place = fc.tuple(
      fc.double({ min: 0.2, max: 9, noNaN: true }),
      fc.double({ min: 0.2, max: 7, noNaN: true }),
    );
    let parted = 0;
    fc.assert(
      fc.property(place, place, fc.constantFrom(0, 0.1, 0.24), fc.boolean(), (from, to, thickness, hole) => {
        const column: Outline[] = hole
          ? [
              [
                [1, 1],
                [1, 2],
                [2, 2],
                [2, 1],
              ],
            ]
          : [];
        const whole = room("a", ell, { holes: column });
        const made = split(siteOf({ rooms: [whole] }), "a", [from, to], thickness);
        if ("refused" in made) return;
        parted++;
        const floors = made.site.rooms.map(({ outline, holes }) => regionOf(outline, holes));
        const wall = roomArea(whole) - made.site.rooms.reduce((sum, one) => sum + roomArea(one), 0);
        for (const { outline, holes } of made.site.rooms) {
          expect(selfCrossing(outline)).toBeUndefined();
          expect(ringArea(outline)).toBeGreaterThan(0);
          for (const one of holes) expect(ringArea(one)).toBeLessThan(0);
        }
        floors.forEach((one, i) => {
          for (const other of floors.slice(i + 1))
            expect(areaOf(intersection(one, other))).toBeLessThan(byGrain);
        });
        // A wall without thickness takes no floor, nor does one take more than its strip and the niches that it fills.
        if (thickness === 0) expect(Math.abs(wall)).toBeLessThan(byGrain + 2 * 0.05);
        else expect(wall).toBeGreaterThan(0);
        expect(wall).toBeLessThan(thickness * 15 + 4 * 0.05 + byGrain);
      }),
      { seed: 36, numRuns: 300 },
    );
    expect(parted).toBeGreaterThan(200);
  });

  test("without thickness in a room without niches takes no floor at all", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 9, noNaN: true }),
        fc.double({ min: 1, max: 9, noNaN: true }),
        (low, high) => {
          const site = siteOf({ rooms: [room("a", box(0, 0, 10, 5))] });
          const made = done(
            split(
              site,
              "a",
              [
                [low, 0],
                [high, 5],
              ],
              0,
            ),
          );
          expect(made.site.rooms.reduce((sum, one) => sum + roomArea(one), 0)).toBeCloseTo(50, 3);
        },
      ),
      { seed: 37, numRuns: 100 },
    );
  });
});

const join = (site: Site, ids: readonly string[]) => {
  const made = joinRooms(site, ids);
  return "steps" in made ? { ...made, site: applied(site, made.steps) } : made;
};

describe("joining rooms", () => {
  test("makes the wall between them floor, takes the door in it away and keeps the rest", () => {
    const made = done(join(pair, ["east", "west"]));
    expect(made.room).toBe("west");
    const joined = made.site.rooms[0]!;
    expect(made.site.rooms).toHaveLength(1);
    expect(new Set(joined.outline.map(String))).toEqual(new Set(box(0, 0, 9, 4).map(String)));
    expect(joined.holes).toEqual(pair.rooms[0]?.holes);
    expect(made.site.openings.map(({ id }) => id)).toEqual(["out"]);
    expect(made.site.detectors.map((one) => [one.room, one.controls])).toEqual([
      ["west", ["west"]],
      ["west", ["west"]],
    ]);
    expect(joined).toMatchObject({ name: "west", ceilingGrid: pair.rooms[0]?.ceilingGrid });
  });

  test("takes the wall only as far as the sides face each other", () => {
    const site = siteOf({ rooms: [room("a", box(0, 0, 10, 4)), room("b", box(3, 4.3, 6, 7))] });
    const made = done(join(site, ["b", "a"]));
    expect(roomArea(made.site.rooms[0]!)).toBeCloseTo(40 + 3 * 2.7 + 3 * 0.3, 6);
  });

  test("four rooms round a crossing of walls leave no pillar, but columns stay", () => {
    const column: Outline = [
      [1, 1],
      [1, 1.3],
      [1.3, 1.3],
      [1.3, 1],
    ];
    const site = siteOf({
      rooms: [
        room("a", box(0, 0, 4, 3), { holes: [column] }),
        room("b", box(4.2, 0, 8, 3)),
        room("c", box(0, 3.2, 4, 6)),
        room("d", box(4.2, 3.2, 8, 6)),
      ],
    });
    const made = done(join(site, ["a", "b", "c", "d"]));
    expect(roomArea(made.site.rooms[0]!)).toBeCloseTo(48 - 0.09, 6);
    expect(made.site.rooms[0]?.holes).toEqual([column]);
  });

  test("is refused for rooms that lie apart, or on different storeys", () => {
    const site = siteOf({
      rooms: [
        room("a", box(0, 0, 4, 3)),
        room("b", box(4.7, 0, 8, 3)),
        room("up", box(0, 0, 4, 3), { storey: "first" }),
      ],
    });
    expect(join(site, ["a", "b"])).toEqual({ refused: "apart" });
    expect(join(site, ["a", "up"])).toEqual({ refused: "storeys" });
    expect(join(site, ["a"])).toEqual({ refused: "apart" });
  });

  test("undoes a split: the same floor, the same contents, whatever the line", () => {
    const contents = {
      obstacles: [rack("r", "a", box(7, 1, 8, 2)), rack("s", "a", box(1, 3, 2, 4))],
      detectors: [device("01", "a", { at: [2, 2] }), device("02", "a", { at: [8, 4] })],
    };
    fc.assert(
      fc.property(
        fc.double({ min: 2.5, max: 6.5, noNaN: true }),
        fc.double({ min: 2.5, max: 6.5, noNaN: true }),
        fc.constantFrom(0, 0.1, 0.3),
        (low, high, thickness) => {
          const site = siteOf({ rooms: [room("a", box(0, 0, 10, 5))], ...contents });
          const parts = done(
            split(
              site,
              "a",
              [
                [low, 0],
                [high, 5],
              ],
              thickness,
            ),
          );
          const back = done(join(parts.site, parts.rooms));
          const slant = Math.abs(high - low) / 5;
          // At a slanting wall the faces are shifted against each other: a corner of thickness² × slope is left at either end.
          const corners = thickness ** 2 * slant;
          const area = roomArea(back.site.rooms[0]!);
          expect(area).toBeLessThan(50 + byGrain);
          expect(area).toBeGreaterThan(50 - corners - byGrain);
          for (const one of [...back.site.obstacles, ...back.site.detectors]) expect(one.room).toBe("a");
        },
      ),
      { seed: 38, numRuns: 100 },
    );
  });
});
