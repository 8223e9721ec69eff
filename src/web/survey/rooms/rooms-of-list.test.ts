import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { planningDefaults, type Room, type Site } from "#engine";
import { applied } from "../../jobs/apply.ts";
import { roomSteps } from "./rooms-of-list.ts";
import { packedInRows } from "./row-packing.ts";
import { readSizes } from "./sizes-list.ts";

const empty: Site = {
  name: "",
  defaults: planningDefaults,
  storeys: [],
  rooms: [],
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  switches: [],
  ceilingThings: [],
  luminaires: [],
  models: [],
  detectors: [],
};
const jobOf = (site: Site) => {
  let count = 0;
  return { site, underlays: [], newId: (kind: string) => `${kind}-${++count}` };
};
const side = fc.integer({ min: 3, max: 400 }).map((decimetres) => decimetres / 10);

describe("rooms that are laid out", () => {
  test("keep their sizes, do not touch each other, and stay clear of what is there", () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ length: side, width: side }), { minLength: 1, maxLength: 30 }),
        fc.option(
          fc.record({
            left: fc.integer({ min: -50, max: 0 }),
            right: side,
            bottom: fc.constant(-7),
            top: side,
          }),
          {
            nil: undefined,
          },
        ),
        (rectangles, there) => {
          const boxes = packedInRows(rectangles, there).map(([x, y], i) => ({
            left: x,
            right: x + rectangles[i]!.length,
            bottom: y,
            top: y + rectangles[i]!.width,
          }));
          const all = there ? [...boxes, there] : boxes;
          all.forEach((a, i) => {
            for (const b of all.slice(i + 1)) {
              const clear = Math.max(a.left - b.right, b.left - a.right, a.bottom - b.top, b.bottom - a.top);
              // A micrometre of rounding below the wall of 0.15 m.
              expect(clear).toBeGreaterThan(0.149);
            }
          });
          if (!there) {
            expect(Math.min(...boxes.map(({ left }) => left))).toBeCloseTo(0, 5);
            expect(Math.min(...boxes.map(({ bottom }) => bottom))).toBeCloseTo(0, 5);
          }
        },
      ),
      { seed: 41, numRuns: 300 },
    );
  });

  test("told one after the other do not become a strip: the whole stays between a third and three times a screen", () => {
    let there: { left: number; right: number; bottom: number; top: number } | undefined;
    for (let i = 0; i < 40; i += 1) {
      const size = { length: 3 + (i % 4), width: 2.5 + (i % 3) };
      const [corner] = packedInRows([size], there);
      const [x, y] = corner!;
      there = {
        left: Math.min(there?.left ?? x, x),
        right: Math.max(there?.right ?? x, x + size.length),
        bottom: Math.min(there?.bottom ?? y, y),
        top: Math.max(there?.top ?? y, y + size.width),
      };
    }
    const shape = (there!.right - there!.left) / (there!.top - there!.bottom);
    expect(shape).toBeGreaterThan(0.5);
    expect(shape).toBeLessThan(4.5);
  });

  test("take the use that was given, else the usual one of their name, and the ceiling of their storey", () => {
    const there = {
      id: "r",
      storey: "s",
      ceilingHeight: 3.1,
      outline: [
        [0, 0],
        [4, 0],
        [4, 3],
      ],
    } as unknown as Room;
    const site = { ...empty, storeys: [{ id: "s", name: "First", elevation: 0 }], rooms: [there] };
    const { rooms } = readSizes(
      "No\tName\tLength\tWidth\tHeight\tUse\n1\tWC\t2\t2\t\tStore\n2\tMens WC\t2\t2\t2.5\t",
      {
        units: "metric",
      },
    );
    const { steps } = roomSteps(rooms, { job: jobOf(site), storey: "s", storeyName: "Ground floor" });
    const made = applied(site, steps).rooms.slice(1);
    expect(
      made.map(({ number, use, ceilingHeight, storey }) => [number, use, ceilingHeight, storey]),
    ).toEqual([
      ["1", "moving", 3.1, "s"],
      ["2", "sanitary", 2.5, "s"],
    ]);
    expect(made[0]!.outline[0]).toEqual([5, 1]);
    expect(made.every((room) => room.proposed === undefined)).toBe(true);
  });

  test("bring a storey to a job without one, and say why somebody should look again", () => {
    const { steps, rooms } = roomSteps(readSizes("Office 3 4", { units: "metric" }).rooms, {
      job: jobOf(empty),
      storey: "",
      storeyName: "Ground floor",
      doubt: "As told",
    });
    const site = applied(empty, steps);
    expect(site.storeys.map(({ name }) => name)).toEqual(["Ground floor"]);
    expect(site.rooms.map(({ id }) => id)).toEqual(rooms);
    expect(site.rooms[0]).toMatchObject({ storey: site.storeys[0]!.id, proposed: { reason: "As told" } });
  });
});
