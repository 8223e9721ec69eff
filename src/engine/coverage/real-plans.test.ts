import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { detectorLike, doorLike, roomLike, siteLike } from "../../../test/engine/records.ts";
import { realFiles } from "../../../test/real-files.ts";
import { areaOf, contains, inset, type Outline, type Point, regionOf, ringsOf } from "../geometry/index.ts";
import { isUsableOutline, type Site } from "../site/index.ts";
import { coverageOf, prepareRoom } from "./index.ts";

const folder = realFiles("polygon");

/** Floor plans of houses as one room each, in metres; polygons of the art gallery literature, scaled to a tenth. */
function outlines(): readonly (readonly [name: string, outline: Outline])[] {
  if (!folder) return [];
  const houses = readdirSync(`${folder}/houseexpo`).map((name): [string, Outline] => [
    name,
    (JSON.parse(readFileSync(`${folder}/houseexpo/${name}`, "utf8")) as { verts: Point[] }).verts,
  ]);
  const galleries = readdirSync(`${folder}/agp`).map((name): [string, Outline] => {
    const numbers = readFileSync(`${folder}/agp/${name}`, "utf8")
      .trim()
      .split(/\s+/)
      .slice(1)
      .map((text) => {
        const [p, q = "1"] = text.split("/");
        return Number(p) / Number(q);
      });
    const corners = Array.from(
      { length: numbers.length / 2 },
      (_, i): Point => [numbers[2 * i] as number, numbers[2 * i + 1] as number],
    );
    // Bring each to a hall about 20 m across.
    const size = Math.max(...corners.map(([x]) => x)) - Math.min(...corners.map(([x]) => x));
    return [name, corners.map(([x, y]) => [(20 * x) / size, (20 * y) / size])];
  });
  return [...houses, ...galleries];
}

/** The outline as a room with a door in its longest wall and detectors every 4 m. */
function siteFor(outline: Outline): Site {
  const walls = outline.map((a, i) => [a, outline[(i + 1) % outline.length] as Point] as const);
  const [a, b] = walls.toSorted((one, other) => lengthOf(other) - lengthOf(one))[0] as readonly [
    Point,
    Point,
  ];
  const along = (t: number): Point => [
    a[0] + (t / lengthOf([a, b])) * (b[0] - a[0]),
    a[1] + (t / lengthOf([a, b])) * (b[1] - a[1]),
  ];
  const middle = lengthOf([a, b]) / 2;
  const width = Math.min(0.9, lengthOf([a, b]) * 0.8);
  const floor = inset(regionOf(outline), 0.3);
  const xs = ringsOf(floor).flatMap((ring) => ring.map(([x]) => x));
  const ys = ringsOf(floor).flatMap((ring) => ring.map(([, y]) => y));
  const places: Point[] = [];
  for (let x = Math.min(...xs) + 1; x < Math.max(...xs); x += 4)
    for (let y = Math.min(...ys) + 1; y < Math.max(...ys); y += 4)
      if (contains(floor, [x, y])) places.push([x, y]);
  return siteLike({
    rooms: [roomLike({ id: "house", outline })],
    openings: [
      doorLike({
        id: "door",
        rooms: ["house", null],
        from: along(middle - width / 2),
        to: along(middle + width / 2),
        opensInto: "house",
      }),
    ],
    detectors: places.map((at, i) => detectorLike({ id: `d${i}`, room: "house", at })),
  });
}

const lengthOf = ([a, b]: readonly [Point, Point]): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

describe.skipIf(!folder)("real outlines (skipped where the test files are not at hand)", () => {
  test.each(outlines())(
    "%s: covered and gaps make up the demand, every way leads somewhere, moving it 10 km changes nothing",
    (_, outline) => {
      expect(isUsableOutline(outline)).toBe(true);
      const site = siteFor(outline);
      const prepared = prepareRoom(site, "house");
      const { demanded, covered, gaps, demand, darkWalks } = coverageOf(prepared, site.detectors);
      // Doorways of these plans may be narrower than a body: what lies behind them is listed, not demanded.
      expect(demanded.walk + areaOf(demand.unreachable)).toBeGreaterThan(0.6 * areaOf(regionOf(outline)));
      expect(demanded.walk).toBeGreaterThan(0);
      expect(covered.walk + gaps.reduce((sum, gap) => sum + gap.area, 0)).toBeCloseTo(demanded.walk, 5);
      for (const gap of gaps) expect(contains(demand.standing, gap.at)).toBe(true);
      expect(darkWalks).toHaveLength(1);
      expect(darkWalks[0]?.metres).toBeGreaterThan(0);
      const far = (p: Point): Point => [p[0] + 10_000, p[1] - 10_000];
      // The same door and detectors: of two walls equally long rounding would choose another.
      const moved: Site = {
        ...site,
        rooms: site.rooms.map((room) => ({ ...room, outline: room.outline.map(far) })),
        openings: site.openings.map((one) => ({ ...one, from: far(one.from), to: far(one.to) })),
        detectors: site.detectors.map((detector) => ({ ...detector, at: far(detector.at) })),
      };
      const other = coverageOf(prepareRoom(moved, "house"), moved.detectors);
      expect(Math.abs(other.demanded.walk - demanded.walk) / demanded.walk).toBeLessThan(1e-4);
      expect(Math.abs(other.covered.walk - covered.walk) / demanded.walk).toBeLessThan(1e-4);
    },
  );
});
