import { readdirSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { loadSolver } from "#solver";
import { realFiles } from "../../../test/real-files.ts";
import { areaOf, inset, type Outline, type Point, regionOf } from "../geometry/index.ts";
import { isUsableOutline } from "../site/index.ts";
import type { CoverSolver } from "./contract.ts";
import { placeRoom } from "./place-room.ts";
import { roomOf, roundModel, siteOf, worldOf } from "./rooms.fixture.ts";

const folder = realFiles("polygon");

/** Floor plans of houses as one room each, in metres; polygons of the art gallery literature, brought to 12 m across. */
function outlines(): readonly (readonly [name: string, outline: Outline])[] {
  if (!folder) return [];
  const houses = readdirSync(`${folder}/houseexpo`).map((name): [string, Outline] => [
    name,
    (JSON.parse(readFileSync(`${folder}/houseexpo/${name}`, "utf8")) as { verts: Point[] }).verts,
  ]);
  const galleries = readdirSync(`${folder}/agp`).map((name): [string, Outline] => {
    const [, ...numbers] = readFileSync(`${folder}/agp/${name}`, "utf8")
      .trim()
      .split(/\s+/)
      .map((text) => {
        const [p, q = "1"] = text.split("/");
        return Number(p) / Number(q);
      });
    const corners = Array.from(
      { length: numbers.length / 2 },
      (_, i): Point => [numbers[2 * i]!, numbers[2 * i + 1]!],
    );
    const size = Math.max(...corners.map(([x]) => x)) - Math.min(...corners.map(([x]) => x));
    return [name, corners.map(([x, y]) => [(12 * x) / size, (12 * y) / size])];
  });
  return [...houses, ...galleries];
}

describe.skipIf(!folder)("Real floor maps and art-gallery polygons as rooms", () => {
  let solver: CoverSolver;
  let covered = 0;
  let judged = 0;
  beforeAll(async () => {
    solver = await loadSolver();
  });

  test.each(outlines())(
    "%s is covered to the skin or says what is not, with a bound at or below its cost",
    async (_, drawn) => {
      const outline = drawn.filter((p, i) => {
        const next = drawn[(i + 1) % drawn.length]!;
        return p[0] !== next[0] || p[1] !== next[1];
      });
      expect(isUsableOutline(outline)).toBe(true);
      const site = siteOf(roomOf(outline), { models: [roundModel(5)] });
      const placed = await placeRoom(
        site,
        { room: "room", seconds: 4, seed: 1, bound: "candidates", alternatives: 0 },
        worldOf(solver),
      );
      judged++;
      const { best, bound, fewest, problems } = placed;
      if (best === undefined || best.gaps.length > 0) {
        expect(problems.map(({ code }) => code)).toEqual(
          expect.arrayContaining([
            expect.stringMatching(/cannot-be-watched|placing-stopped|no-place|nothing-to/),
          ]),
        );
        expect(fewest).toBe(false);
        return;
      }
      covered++;
      expect(bound).toBeLessThanOrEqual(best.cost + 1e-9);
      expect(fewest).toBe(best.cost - bound <= 1e-6);
      // No detector of this reach covers more floor than its disc.
      const floor = areaOf(inset(regionOf(outline), site.defaults.bodyRadius));
      expect(best.cost * Math.PI * 5 ** 2).toBeGreaterThan(floor);
    },
    30_000,
  );

  test("nearly all of them are covered to the skin", () => {
    expect(covered).toBeGreaterThanOrEqual(0.9 * judged);
  });
});
