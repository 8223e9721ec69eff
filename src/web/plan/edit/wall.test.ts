import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Outline, type Point, selfCrossing, signedArea } from "#engine";
import { applied } from "../../jobs/apply.ts";
import { box, device, door, pair, room, siteOf } from "./test-site.ts";
import { movedWall } from "./wall.ts";

const outlines = (site: ReturnType<typeof siteOf>): Record<string, Outline> =>
  Object.fromEntries(site.rooms.map(({ id, outline }) => [id, outline]));

/** Edge 1 of a box is its right side, 2 its upper one, 3 its left one. */
const moved = (site: ReturnType<typeof siteOf>, id: string, index: number, by: number) =>
  applied(site, movedWall(site, id, { index, by }));

describe("moving a wall", () => {
  test("moves the faces of both rooms and the door in it; things stay", () => {
    const now = moved(pair, "west", 1, 0.5);
    expect(outlines(now)).toEqual({ west: box(0, 0, 5.5, 4), east: box(5.7, 0, 9, 4) });
    expect(now.openings[0]).toMatchObject({ from: [5.5, 1], to: [5.5, 2], rooms: ["west", "east"] });
    expect(now.openings[1]).toEqual(pair.openings[1]);
    expect(now.detectors).toEqual(pair.detectors);
    expect(now.obstacles).toEqual(pair.obstacles);
  });

  test("is the same wall from its other side", () => {
    const [here, there] = [moved(pair, "west", 1, -0.5), moved(pair, "east", 3, 0.5)];
    expect(outlines(there)).toEqual(outlines(here));
    expect(there.openings).toEqual(here.openings);
  });

  test("gives what the wall passes over to the room on its other side", () => {
    const now = moved(pair, "west", 1, 2.4);
    expect(now.detectors[1]).toMatchObject({ id: "02", room: "west", at: [7, 2] });
    // It switched both rooms, and still does.
    expect(now.detectors[1]?.controls).toEqual(["east", "west"]);
  });

  test("of a longer face only the part behind moves, and the wall is as thick round the new corner", () => {
    const site = siteOf({
      rooms: [room("office", box(0, 0, 4, 3)), room("hall", box(0, 3.2, 12, 6))],
    });
    expect(outlines(moved(site, "office", 2, 0.5)).hall).toEqual([
      [0, 3.7],
      [4.2, 3.7],
      [4.2, 3.2],
      [12, 3.2],
      [12, 6],
      [0, 6],
    ]);
    expect(outlines(moved(site, "office", 2, -0.5)).hall).toEqual([
      [0, 2.7],
      [4, 2.7],
      [4, 3.2],
      [12, 3.2],
      [12, 6],
      [0, 6],
    ]);
  });

  test("of a long side all faces behind it move, also one whose rest would be shorter than 10 cm", () => {
    const site = siteOf({
      rooms: [
        room("corridor", box(0, 0, 10, 2)),
        room("one", box(0, 2.2, 4, 5)),
        room("two", box(4.2, 2.2, 10.05, 5)),
      ],
    });
    const now = outlines(moved(site, "corridor", 2, 0.3));
    expect(now.one).toEqual(box(0, 2.5, 4, 5));
    expect(now.two).toEqual(box(4.2, 2.5, 10.05, 5));
  });

  test("a room further behind, or further than 60 cm, stays", () => {
    const site = siteOf({
      rooms: [room("a", box(0, 0, 4, 3)), room("duct", box(0, 3.1, 4, 3.4)), room("b", box(0, 3.5, 4, 6))],
    });
    expect(outlines(moved(site, "a", 2, -0.2)).b).toEqual(box(0, 3.5, 4, 6));
    const far = siteOf({ rooms: [room("a", box(0, 0, 4, 3)), room("b", box(0, 3.7, 4, 6))] });
    expect(outlines(moved(far, "a", 2, 0.2)).b).toEqual(box(0, 3.7, 4, 6));
  });

  test("half of a side that goes on in one line gets a corner instead of slanting its neighbour", () => {
    const site = siteOf({
      rooms: [
        room("a", [
          [0, 0],
          [2, 0],
          [4, 0],
          [4, 3],
          [0, 3],
        ]),
      ],
    });
    expect(outlines(moved(site, "a", 0, 1)).a).toEqual([
      [0, -1],
      [2, -1],
      [2, 0],
      [4, 0],
      [4, 3],
      [0, 3],
    ]);
  });

  test("a door of the room behind goes along though it leads elsewhere", () => {
    const site = siteOf({
      rooms: pair.rooms,
      openings: [door("of-east", ["east", "west"], { from: [5.2, 1], to: [5.2, 2] })],
    });
    expect(moved(site, "west", 1, 0.5).openings[0]).toMatchObject({ from: [5.7, 1], to: [5.7, 2] });
  });

  test("stops before a room is pressed together", () => {
    const now = moved(pair, "west", 1, 50);
    const east = outlines(now).east as Outline;
    expect(signedArea(east)).toBeGreaterThanOrEqual(0.05);
    expect(signedArea(east)).toBeLessThan(0.06);
    expect(moved(pair, "west", 1, -50).rooms[0]?.outline[1]?.[0]).toBeGreaterThan(0);
  });

  test("every room stays a room whose outline does not cross itself, and the wall keeps its thickness", () => {
    const turned =
      (angle: number) =>
      (ring: Outline): Outline =>
        ring.map(
          ([x, y]): Point => [
            x * Math.cos(angle) - y * Math.sin(angle),
            x * Math.sin(angle) + y * Math.cos(angle),
          ],
        );
    fc.assert(
      fc.property(
        fc.double({ min: -6, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 6.2, noNaN: true }),
        fc.double({ min: 0.01, max: 0.6, noNaN: true }),
        fc.integer({ min: 0, max: 11 }),
        (by, angle, thickness, start) => {
          const turn = turned(angle);
          const site = siteOf({
            rooms: [
              room("a", turn(box(0, 0, 4, 3))),
              room("b", turn(box(start / 2 - 3, 3 + thickness, start / 2 + 2, 6))),
            ],
            detectors: [device("01", "a", { at: turn([[1, 1]])[0] as Point })],
          });
          const now = moved(site, "a", 2, by);
          for (const { outline } of now.rooms) {
            expect(selfCrossing(outline)).toBeUndefined();
            expect(signedArea(outline)).toBeGreaterThan(0.049);
          }
          // Corners are kept to the millimetre, so that a slanting face is as far off as that.
          const [c, d] = now.rooms[0]!.outline.slice(2, 4) as [Point, Point];
          const long = Math.hypot(d[0] - c[0], d[1] - c[1]);
          const away = now.rooms[1]!.outline.map(
            ([x, y]) => ((x - c[0]) * (d[1] - c[1]) - (y - c[1]) * (d[0] - c[0])) / long,
          );
          expect(Math.min(...away.map((one) => Math.abs(one - thickness)))).toBeLessThan(0.0015);
        },
      ),
      { seed: 31, numRuns: 300 },
    );
  });
});
