import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Outline, Point } from "#engine";
import { applied } from "../../jobs/apply.ts";
import { keyDeed } from "../keys.ts";
import { besideBy, rowStep } from "./beside.ts";
import { resizeSteps, sizeOf } from "./room-size.ts";
import { wholeOf } from "./selected.ts";
import { box, pair, room, siteOf } from "./test-site.ts";

describe("the size of a rectangular room", () => {
  test("is known of rectangles only, also turned ones", () => {
    expect(sizeOf(room("a", box(0, 0, 5, 3)))).toEqual({ across: 5, up: 3 });
    const steep: Outline = [
      [0, 0],
      [3, 4],
      [-1, 7],
      [-4, 3],
    ];
    expect(sizeOf(room("a", steep))).toEqual({ across: 5, up: 5 });
    expect(sizeOf(room("a", [...box(0, 0, 5, 3).slice(0, 3), [0.1, 3]]))).toBeUndefined();
    expect(sizeOf(room("a", box(0, 0, 5, 3).slice(0, 3)))).toBeUndefined();
  });

  test("typed, moves the side without a room behind it", () => {
    const [west, east] = pair.rooms.map(({ id }) => id);
    const wide = (id: string, length: number) => {
      const own = pair.rooms.find((one) => one.id === id)!;
      return applied(pair, resizeSteps(pair, own, { way: "across", length })).rooms.map(
        ({ outline }) => outline,
      );
    };
    expect(wide(west!, 6)).toEqual([box(-1, 0, 5, 4), box(5.2, 0, 9, 4)]);
    expect(wide(east!, 3)).toEqual([box(0, 0, 5, 4), box(5.2, 0, 8.2, 4)]);
  });

  test("typed, is the size afterwards, to the millimetre, and the other size stays", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6.2, noNaN: true }),
        fc.integer({ min: 500, max: 20_000 }),
        fc.constantFrom("across" as const, "up" as const),
        (angle, millimetres, way) => {
          const [c, s] = [Math.cos(angle), Math.sin(angle)];
          const turned = box(0, 0, 5, 3).map(([x, y]): Point => [x * c - y * s, x * s + y * c]);
          const site = siteOf({ rooms: [room("a", turned)] });
          const before = sizeOf(site.rooms[0]!)!;
          const now = applied(site, resizeSteps(site, site.rooms[0]!, { way, length: millimetres / 1000 }));
          const sides = now.rooms[0]!.outline.map(([x, y], i, ring) => {
            const [nextX, nextY] = ring[(i + 1) % 4] as Point;
            return Math.hypot(nextX - x, nextY - y);
          });
          // Both ends of the moved side are rounded to the millimetre.
          const near = (length: number): number =>
            sides.filter((side) => Math.abs(side - length) < 1.5e-3).length;
          expect(near(millimetres / 1000)).toBeGreaterThanOrEqual(2);
          expect(near(before[way === "across" ? "up" : "across"])).toBeGreaterThanOrEqual(2);
        },
      ),
      { seed: 40, numRuns: 200 },
    );
  });
});

describe("where copies go", () => {
  test("rooms go next to their originals where nothing lies, with a wall between", () => {
    const by = (...ids: string[]) =>
      besideBy(
        pair,
        wholeOf(
          pair,
          ids.map((id) => ({ kind: "rooms" as const, id })),
        ),
      );
    expect(by("east")).toEqual([expect.closeTo(4, 9), 0]);
    expect(by("west")).toEqual([0, -4.2]);
    expect(by("west", "east")).toEqual([9.2, 0]);
  });

  test("rooms walled in on all sides go to the right of everything", () => {
    const cells = [-1, 0, 1].flatMap((i) => [-1, 0, 1].map((j) => [i, j] as const));
    const site = siteOf({
      rooms: cells.map(([i, j]) => room(`${i} ${j}`, box(i * 3, j * 3, i * 3 + 2.8, j * 3 + 2.8))),
    });
    expect(besideBy(site, wholeOf(site, [{ kind: "rooms", id: "0 0" }]))).toEqual([6, 0]);
  });

  test("things go a little aside, and in a row by their own width and some air", () => {
    const rack = wholeOf(pair, [{ kind: "obstacles", id: "rack" }]);
    expect(besideBy(pair, rack)).toEqual([0.6, -0.6]);
    expect(rowStep(pair, rack)).toBe(1.2);
    expect(rowStep(pair, wholeOf(pair, [{ kind: "luminaires", id: "lamp" }]))).toBe(1.4);
    expect(rowStep(pair, wholeOf(pair, [{ kind: "rooms", id: "west" }]))).toBe(5.2);
  });
});

test("Ctrl and A means everything; copy, cut and paste are left to the browser", () => {
  const press = (key: string) =>
    keyDeed({ key, shiftKey: false, altKey: false, ctrlKey: true, metaKey: false });
  expect(press("a")).toEqual({ do: "select-all" });
  for (const key of ["c", "x", "v"]) expect(press(key)).toBeUndefined();
});
