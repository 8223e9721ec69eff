import fc from "fast-check";
import { expect, test } from "vitest";
import { doorLike, roomLike, siteLike } from "../../../test/engine/records.ts";
import type { Point } from "../geometry/index.ts";
import type { Site } from "../site/index.ts";
import { motions, movedSite } from "./moved-site.fixture.ts";
import { roomCoverage } from "./room-coverage.ts";

/** A standing area turns round a corner in chords, which fall otherwise in another frame; a corner left out is worth up to 0.25 m. [m] */
const SAME_WAY = 5e-3;

/** A room of 8 × 5 m whose far wall goes back in steps so small that their corners stand for each other. */
function stepped(steps: readonly (readonly [wide: number, deep: number])[], door: number): Site {
  const wall: Point[] = [[8, 5]];
  let [x, y] = [8, 5];
  for (const [wide, deep] of steps) {
    x -= wide;
    wall.push([x, y]);
    y += deep;
    wall.push([x, y]);
  }
  const outline: Point[] = [[0, 0], [8, 0], ...wall, [0, y]];
  return siteLike({
    rooms: [roomLike({ id: "store", outline, use: "moving" })],
    openings: [doorLike({ id: "door", rooms: ["store", null], from: [door, 0], to: [door + 0.9, 0] })],
    detectors: [],
  });
}

/** The room with its ring begun at another corner. */
const begunAt = (site: Site, corner: number): Site => ({
  ...site,
  rooms: site.rooms.map((room) => {
    const at = corner % room.outline.length;
    return { ...room, outline: [...room.outline.slice(at), ...room.outline.slice(0, at)] };
  }),
});

const darkWalk = (site: Site): number => roomCoverage(site, "store").darkWalks[0]?.metres ?? -1;

test("a walk in the dark is as long whichever corner a ring begins with, and however the plan is turned or mirrored", () => {
  const step = fc.tuple(fc.integer({ min: 5, max: 40 }), fc.integer({ min: 1, max: 25 }));
  fc.assert(
    fc.property(
      fc.array(step, { minLength: 1, maxLength: 6 }),
      fc.integer({ min: 3, max: 60 }),
      fc.nat(20),
      (steps, door, corner) => {
        const site = stepped(
          steps.map(([wide, deep]) => [wide / 100, deep / 100] as const),
          door / 10,
        );
        const plain = darkWalk(site);
        expect(plain).toBeGreaterThan(2);
        expect(Math.abs(darkWalk(begunAt(site, corner)) - plain)).toBeLessThan(SAME_WAY);
        for (const [motion, move] of Object.entries(motions))
          expect(Math.abs(darkWalk(movedSite(site, move)) - plain), motion).toBeLessThan(SAME_WAY);
      },
    ),
    { seed: 71, numRuns: 60 },
  );
});
