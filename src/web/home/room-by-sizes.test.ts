import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { doorsOf, dwellPlacesOf, outlineOf, type RoomSizes, siteBySizes, usualLeg } from "./room-by-sizes.ts";

const sizes: fc.Arbitrary<RoomSizes> = fc
  .record({
    shape: fc.constantFrom("rectangle" as const, "l" as const, "corridor" as const),
    length: fc.double({ min: 1.5, max: 60, noNaN: true }),
    width: fc.double({ min: 1.5, max: 60, noNaN: true }),
    height: fc.constantFrom(2.4, 3, 6),
    use: fc.constantFrom("passing", "moving", "sitting", "sanitary", "changing", "plant", "other" as const),
  })
  .map((room) => ({ ...room, leg: usualLeg(room.length, room.width) }) as RoomSizes);

const area = (outline: ReturnType<typeof outlineOf>): number =>
  outline.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = outline[(index + 1) % outline.length]!;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);

const example: RoomSizes = { shape: "l", length: 8, width: 6, leg: 2, height: 2.5, use: "sitting" };

describe("one room by its sizes", () => {
  test("an L of 8 by 6 m with legs of 2 m has 24 m², counter-clockwise", () => {
    expect(area(outlineOf(example))).toBeCloseTo(8 * 2 + 4 * 2, 9);
  });

  test("every room turns counter-clockwise and its doors lie on the outline", () => {
    fc.assert(
      fc.property(sizes, (room) => {
        const outline = outlineOf(room);
        expect(area(outline)).toBeGreaterThan(0);
        for (const { from, to } of doorsOf(room))
          for (const [x, y] of [from, to]) {
            const onSomeWall = outline.some(([ax, ay], index) => {
              const [bx, by] = outline[(index + 1) % outline.length]!;
              const along = Math.hypot(bx - ax, by - ay);
              const off = Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / along;
              const share = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / along ** 2;
              return off < 1e-9 && share > -1e-9 && share < 1 + 1e-9;
            });
            expect(onSomeWall).toBe(true);
          }
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  test("people stay inside the room, at least 0.2 m from its walls", () => {
    fc.assert(
      fc.property(sizes, (room) => {
        for (const { at } of dwellPlacesOf(room)) {
          expect(at[0]).toBeGreaterThan(0.2);
          expect(at[1]).toBeGreaterThan(0.2);
          expect(at[0]).toBeLessThan(room.length - 0.2);
          expect(at[1]).toBeLessThan(room.width - 0.2);
          if (room.shape === "l") expect(Math.min(at[0], at[1])).toBeLessThan(room.leg);
        }
      }),
      { seed: 8, numRuns: 200 },
    );
  });

  test("a corridor has a door at each end and nobody sits in it", () => {
    const corridor: RoomSizes = {
      shape: "corridor",
      length: 20,
      width: 2,
      leg: 1.2,
      height: 2.5,
      use: "passing",
    };
    expect(doorsOf(corridor).map(({ from }) => from[0])).toEqual([0, 20]);
    expect(dwellPlacesOf(corridor)).toEqual([]);
  });

  test("an office of 8 by 6 m gets desks, a store none", () => {
    const office: RoomSizes = { ...example, shape: "rectangle" };
    expect(dwellPlacesOf(office).map(({ kind }) => kind)).toEqual(Array(6).fill("desk"));
    expect(dwellPlacesOf({ ...office, use: "moving" })).toEqual([]);
  });

  test("the job holds the one room with its height, use and the models given", () => {
    const site = siteBySizes(example, { models: [], name: "Back office", storey: "Ground floor" });
    expect(site.rooms).toHaveLength(1);
    expect(site.rooms[0]).toMatchObject({ name: "Back office", ceilingHeight: 2.5, use: "sitting" });
    expect(site.openings).toHaveLength(2);
  });
});
