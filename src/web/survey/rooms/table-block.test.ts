import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { planningDefaults, type Room, type Site } from "#engine";
import { applied } from "../../jobs/apply.ts";
import { columns, sorted } from "./columns.ts";
import { gridDeed } from "./grid-keys.ts";
import { withDoors } from "./storey-doors.ts";
import { type Block, cleared, copied, filledDown, pasted } from "./table-block.ts";

const storeys = [
  { id: "g", name: "Ground", elevation: 0 },
  { id: "f", name: "First", elevation: 3 },
];
const context = { site: { storeys }, units: "metric" } as const;
const room = (id: string, fields: Partial<Room>): Room => ({
  id,
  storey: "g",
  number: "",
  name: "",
  use: "other",
  outline: [
    [0, 0],
    [4, 0],
    [4, 3],
    [0, 3],
  ],
  holes: [],
  floor: 0,
  ceilingHeight: 2.7,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
  ...fields,
});
const siteOf = (rooms: readonly Room[], openings: Site["openings"] = []): Site => ({
  name: "",
  defaults: planningDefaults,
  storeys,
  rooms,
  floorPieces: [],
  openings,
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  switches: [],
  ceilingThings: [],
  luminaires: [],
  models: [],
  detectors: [],
});
const three = [
  room("a", { number: "2", name: "Office", use: "sitting", ceilingHeight: 2.5, highestTemperature: 31 }),
  room("b", { number: "10", name: "Store", storey: "f" }),
  room("c", { number: "1", name: "WC", use: "sanitary" }),
];
const block = (top: number, left: number, bottom = top, right = left): Block => ({
  from: { row: top, column: left },
  to: { row: bottom, column: right },
});
const roomsAfter = (rooms: readonly Room[], change: ReturnType<typeof pasted>): readonly Room[] => {
  if ("troubles" in change) throw new Error(change.troubles.join(" "));
  return applied(siteOf(rooms), change.steps).rooms;
};
const width = columns.length;

describe("pasting into the table of rooms", () => {
  test("puts a block of a spreadsheet into the cells, in the words and units of a person", () => {
    const text = "1.01\tBack office\toffice\t2,6 m\tFirst\t24\r\n1.02\tStair\tSTAIR\t8' 2\"\tground\t\r\n";
    const [a, b, c] = roomsAfter(three, pasted(text, three, { block: block(0, 0), context }));
    expect(a).toMatchObject({
      number: "1.01",
      name: "Back office",
      use: "sitting",
      ceilingHeight: 2.6,
      storey: "f",
      highestTemperature: 24,
    });
    expect(b).toMatchObject({ number: "1.02", use: "stair", storey: "g" });
    expect(b!.ceilingHeight).toBeCloseTo(2.4892, 9);
    expect(b).not.toHaveProperty("highestTemperature");
    expect(c).toBe(three[2]);
  });

  test("names every bad cell in a sentence of its own, and changes nothing at all", () => {
    const text = "1\tA\tsleeping\t270\n2\tB\toffice\t2.7\n3\tC\toffice\tlow";
    const change = pasted(text, three, { block: block(0, 0), context });
    expect(change).toEqual({
      troubles: [
        "2 Office, Use, “sleeping”: No use has this name.",
        "2 Office, Ceiling, “270”: Not a ceiling height between 1.80 m and 20.00 m.",
        "1 WC, Ceiling, “low”: Not a ceiling height between 1.80 m and 20.00 m.",
      ],
    });
  });

  test("that would run over the edge of the table is refused", () => {
    expect(pasted("a\nb\nc", three, { block: block(1, 1), context })).toEqual({
      troubles: ["The block is 1 row longer than the table from here on. Nothing was changed."],
    });
    expect(pasted("a\tb\tc", three, { block: block(0, width - 2), context })).toHaveProperty("troubles");
  });

  test("a single value fills every cell that is selected", () => {
    const rooms = roomsAfter(three, pasted("Plant room", three, { block: block(0, 2, 2, 2), context }));
    expect(rooms.map(({ use }) => use)).toEqual(["plant", "plant", "plant"]);
  });

  test("a calculated area is refused, unless it comes back as it was", () => {
    expect(pasted("13 m²", three, { block: block(0, width - 1), context })).toHaveProperty("troubles");
    expect(pasted("12.0 m²", three, { block: block(0, width - 1), context })).toEqual({ steps: [] });
  });

  test("what was copied and is pasted back where it was changes nothing", () => {
    const cell = fc.record({ row: fc.nat(2), column: fc.nat(width - 1) });
    fc.assert(
      fc.property(cell, cell, fc.double({ min: 1.8, max: 20, noNaN: true }), (from, to, ceilingHeight) => {
        const rooms = [{ ...three[0]!, ceilingHeight }, three[1]!, three[2]!];
        const at = { from, to };
        expect(pasted(copied(rooms, at, context), rooms, { block: at, context })).toEqual({ steps: [] });
      }),
      { seed: 51, numRuns: 300 },
    );
  });

  test("no text makes it throw, and either nothing is wrong or nothing is changed", () => {
    fc.assert(
      fc.property(
        fc.string({ unit: "binary", maxLength: 80 }),
        fc.nat(2),
        fc.nat(width - 1),
        (text, row, column) => {
          const change = pasted(text, three, { block: block(row, column), context });
          if ("troubles" in change) expect(change.troubles.length).toBeGreaterThan(0);
          else expect(applied(siteOf(three), change.steps).rooms.length).toBe(3);
        },
      ),
      { seed: 52, numRuns: 200 },
    );
  });
});

describe("filling and emptying", () => {
  test("the uppermost cell fills those below it, without loss of what the screen rounds", () => {
    const rooms = [{ ...three[0]!, ceilingHeight: 2.4892 }, three[1]!, three[2]!];
    const filled = roomsAfter(rooms, filledDown(rooms, block(0, 2, 2, 5), context));
    for (const one of filled)
      expect(one).toMatchObject({
        use: "sitting",
        ceilingHeight: 2.4892,
        storey: "g",
        highestTemperature: 31,
      });
    expect(filled.map(({ name }) => name)).toEqual(["Office", "Store", "WC"]);
  });

  test("a single row takes what stands above it, and the first has nothing above", () => {
    expect(roomsAfter(three, filledDown(three, block(1, 1), context))[1]?.name).toBe("Office");
    expect(filledDown(three, block(0, 1), context)).toEqual({ steps: [] });
  });

  test("emptying takes away numbers, names and temperatures, and leaves what every room must have", () => {
    const rooms = roomsAfter(three, cleared(three, block(0, 0, 2, width - 1), context));
    expect(rooms[0]).toMatchObject({ number: "", name: "", use: "sitting", ceilingHeight: 2.5, storey: "g" });
    expect(rooms[0]).not.toHaveProperty("highestTemperature");
  });
});

test("sorting puts 2 before 10 and what is not known last or first, and leaves the job as it is", () => {
  const before = [...three];
  const ids = (key: string, down: boolean) =>
    sorted(three, { column: columns.find((one) => one.key === key)!, down }, context).map(({ id }) => id);
  expect(ids("number", false)).toEqual(["c", "a", "b"]);
  expect(ids("number", true)).toEqual(["b", "a", "c"]);
  expect(ids("ceilingHeight", false)[0]).toBe("a");
  expect(ids("highestTemperature", true)[0]).toBe("a");
  expect(ids("storey", true)[0]).toBe("b");
  expect(three).toEqual(before);
});

test("a room that goes to another storey takes no door along: each door leads to what lies behind it now", () => {
  const rooms = [
    room("a", {}),
    room("b", {
      outline: [
        [0, 3.1],
        [4, 3.1],
        [4, 6],
        [0, 6],
      ],
    }),
  ];
  const door = {
    id: "d",
    rooms: ["a", "b"],
    kind: "door",
    from: [1, 3],
    to: [1.9, 3],
    sill: 0,
    head: 2.1,
    thickness: 0.1,
    hinge: "from",
    opensInto: "b",
    angle: Math.PI / 2,
    state: "closed",
  } as const;
  const site = siteOf(rooms, [door]);
  const moved = (id: string) =>
    applied(site, withDoors(site, [{ do: "set", kind: "rooms", id, fields: { storey: "f" } }])).openings[0];
  expect(moved("b")).toMatchObject({ rooms: ["a", null], from: [1, 3] });
  const seen = moved("a");
  expect(seen?.rooms).toEqual(["b", null]);
  expect(seen?.from[1]).toBeCloseTo(3.1, 9);
});

test("no key leads out of the table but Tab at the end of a row and Escape", () => {
  const size = { rows: 5, columns: width, page: 3 };
  const keys = [
    "ArrowUp",
    "ArrowDown",
    "ArrowLeft",
    "ArrowRight",
    "Home",
    "End",
    "PageUp",
    "PageDown",
    "Tab",
  ];
  fc.assert(
    fc.property(
      fc.array(fc.record({ key: fc.constantFrom(...keys), shiftKey: fc.boolean(), ctrlKey: fc.boolean() }), {
        maxLength: 40,
      }),
      (pressed) => {
        let at = block(0, 0);
        for (const press of pressed) {
          const deed = gridDeed({ ...press, metaKey: false, altKey: false }, at, size);
          if (deed === undefined) {
            expect(press.key).toBe("Tab");
            expect(at.to.column).toBe(press.shiftKey ? 0 : width - 1);
            continue;
          }
          if (deed.do !== "go") throw new Error(deed.do);
          at = deed.block;
          for (const { row, column } of [at.from, at.to]) {
            expect(row >= -1 && row < size.rows).toBe(true);
            expect(column >= 0 && column < width).toBe(true);
          }
        }
      },
    ),
    { seed: 53, numRuns: 300 },
  );
});
