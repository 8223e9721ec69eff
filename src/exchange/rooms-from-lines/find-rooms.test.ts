import { describe, expect, test } from "vitest";
import { box, pencil, twoRoomsAndCorridor } from "./drawn-plan.fixture.ts";
import { findRooms } from "./find-rooms.ts";
import { largePlan } from "./large-plan.fixture.ts";

const named = (found: ReturnType<typeof findRooms>) =>
  found.rooms
    .map((room) => ({ name: room.name, number: room.number, area: Math.round(room.area * 100) / 100 }))
    .sort((a, b) => a.name.localeCompare(b.name));

describe("A plan with walls of two faces", () => {
  for (const [what, layers] of [
    ["layers that say what they are", { wall: "A-WALL", furniture: "A-FURN" }],
    ["everything on one layer", { wall: "0", furniture: "0" }],
  ] as const)
    for (const arcs of ["arcs", "chords"] as const)
      test(`${what}, doors as ${arcs}: three rooms with their names, areas and doors`, () => {
        const found = findRooms(twoRoomsAndCorridor(layers).linework({ arcs }));
        expect(named(found)).toEqual([
          { name: "Corridor", number: "", area: 12.3 },
          { name: "Office", number: "1.02", area: 20 },
          { name: "Store", number: "", area: 12 },
        ]);
        const at = (index: number): string => found.rooms[index]?.name ?? "outside";
        expect(
          found.openings.map(({ kind, rooms }) => `${kind} ${rooms.map(at).sort().join(" ")}`).sort(),
        ).toEqual(["door Corridor Office", "door Corridor Store", "door Corridor outside"]);
      });
});

test("A plan of single lines with gaps at its doors", () => {
  const p = pencil();
  const chain = (...points: readonly (readonly [number, number])[]): void => {
    for (let i = 0; i + 1 < points.length; i++) p.line(points[i]!, points[i + 1]!);
  };
  chain([4, 0], [0, 0], [0, 5], [4, 5], [4, 3]);
  chain([4, 2.1], [4, 0], [9, 0], [9, 5], [4, 5]);
  p.ring(box(1, 1, 0.8, 0.8));
  const found = findRooms(p.linework());
  expect(found.rooms.map(({ area }) => Math.round(area * 10) / 10).sort()).toEqual([20, 25]);
  expect(found.openings).toMatchObject([{ kind: "passage" }]);
});

test("Turned, scaled and moved a thousand kilometres, the same rooms come out", () => {
  const drawn = twoRoomsAndCorridor({ wall: "0", furniture: "0" });
  const plain = named(findRooms(drawn.linework()));
  for (const [turn, scale, shift] of [
    [0.3, 1000, [0, 0]],
    [Math.PI / 2, 39.37, [1e6, -2e6]],
    [-1.1, 1, [4_500_000, 5_300_000]],
    [2.5, 100, [-777, 333]],
  ] as const) {
    const found = named(findRooms(drawn.linework({ turn, scale, shift })));
    expect(found.map(({ name }) => name)).toEqual(plain.map(({ name }) => name));
    found.forEach(({ area }, i) => {
      expect(Math.abs(area - plain[i]!.area)).toBeLessThan(0.01 * plain[i]!.area);
    });
  }
});

test("A plan of 690 furnished rooms and more than 200 000 lines: every room and every door", () => {
  const large = largePlan(30, 23, 12);
  expect(large.layerOf.length).toBeGreaterThan(200_000);
  const found = findRooms(large);
  expect(found.rooms).toHaveLength(690);
  for (const { area } of found.rooms) expect(area).toBeCloseTo(20, 1);
  expect(found.openings.filter(({ kind }) => kind === "door").length).toBeGreaterThanOrEqual(29 * 23);
}, 120_000);

describe("Square pieces in a row, on a layer without meaning, with gaps between them as wide as a door", () => {
  const blocks = (p: ReturnType<typeof pencil>, y: number, apart = 1): void => {
    for (const x of [0, 1, 2, 3]) p.ring(box(1 + x * apart, y, 0.45, 0.45), "things");
  };

  // At a pitch of 1 m their sides are as evenly spaced as strokes of a hatch, at 1.3 m they are not.
  for (const apart of [1, 1.3])
    test(`that stand free in a room are furniture: the room keeps its floor, ${apart} m from one to the next`, () => {
      const p = pencil();
      p.ring(box(0, 0, 6, 4), "things");
      p.ring(box(-0.2, -0.2, 6.4, 4.4), "things");
      blocks(p, 0.5, apart);
      const found = findRooms(p.linework());
      expect(found.rooms.map(({ area }) => Math.round(area * 100) / 100)).toEqual([24]);
      expect(found.openings).toEqual([]);
    });

  test("that lead from one wall end to another are piers: they part two rooms", () => {
    const p = pencil();
    const inner = [
      [0, 0],
      [6, 0],
      [6, 3],
      [5.3, 3],
      [5.3, 3.45],
      [6, 3.45],
      [6, 7],
      [0, 7],
      [0, 3.45],
      [0.4, 3.45],
      [0.4, 3],
      [0, 3],
    ] as const;
    p.ring(inner, "things");
    p.ring(box(-0.2, -0.2, 6.4, 7.4), "things");
    blocks(p, 3);
    const found = findRooms(p.linework());
    expect(found.rooms.map(({ area }) => Math.round(area)).sort((a, b) => a - b)).toEqual([18, 21]);
  });
});

test("Figures that stand at many doors number no room; the number of a room stays", () => {
  const p = twoRoomsAndCorridor({ wall: "wall", furniture: "desk" });
  for (const at of [
    [2, 2],
    [6, 2.2],
    [7.5, 0.75],
  ] as const)
    p.text("2668", at, 0.25);
  const found = findRooms(p.linework());
  expect(found.rooms.map(({ number }) => number).sort()).toEqual(["", "", "1.02"]);
});
