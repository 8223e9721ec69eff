import { afterAll, describe, expect, test } from "vitest";
import { findRoomAt, lineIndex } from "#exchange";
import { pieceArea, regionArea, sharedOf } from "../../src/exchange/region.ts";
import { drawnPlan, folders, middleOf, overlapOf, piece, plans, roomsSeen } from "./counted-rooms.ts";

// Rooms of real plans as the finder sees them, against what was counted by eye before it existed (rooms-by-eye/README.md).

/** Found means this much overlap, intersection over union. */
const OVERLAP = 0.8;

/** How far the area of each room that was found is off the counted one, as a share of it. */
const areaErrors: { readonly file: string; readonly error: number }[] = [];
const total = { sure: 0, hit: 0, found: 0, wrong: 0 };

/** Share of the rooms of a printed plan, hatched all over and without layers, that a click into the middle finds. */
const leastClicked = 0.93;

test.skipIf(!folders.plan)(
  "A click into each room of a messy plan finds that room",
  async () => {
    const one = plans.find(({ file }) => file === "university-floor1.pdf")!;
    const { file, rooms } = one;
    const { linework, metres } = await drawnPlan(one);
    const index = lineIndex(linework);
    const sure = rooms.filter((room) => room.sure);
    const hits = sure.filter(({ outline }) => {
      const counted = piece([outline], metres, [0, 0]);
      const found = findRoomAt(linework, middleOf(counted.outline), { metres, index });
      return (
        found && overlapOf(piece([found.room.outline, ...found.room.holes], 1, [0, 0]), counted) >= OVERLAP
      );
    });
    console.info(`${file}: ${hits.length} of ${sure.length} rooms found by a click`);
    expect(hits.length / sure.length).toBeGreaterThanOrEqual(leastClicked);
  },
  120_000,
);

describe.skipIf(!folders.dxf || !folders.plan)("Rooms of real plans, against a count by eye", () => {
  test.each(plans.map((plan) => [plan.file, plan] as const))(
    "%s",
    async (file, { plan, unit, rooms }) => {
      const { found, metres } = await roomsSeen({ file, unit });
      const counted = rooms.map(({ outline, sure }) => ({ sure, piece: piece([outline], metres, [0, 0]) }));
      const known = new Set<number>();
      let [sure, hit] = [0, 0];
      for (const room of counted) {
        const overlaps = found.map((one) => overlapOf(one, room.piece));
        const best = Math.max(0, ...overlaps);
        if (room.sure) {
          sure++;
          if (best >= OVERLAP) {
            hit++;
            const area = pieceArea(found[overlaps.indexOf(best)]!);
            areaErrors.push({ file, error: Math.abs(area / pieceArea(room.piece) - 1) });
          }
        }
        // What shares half of it with a room, or lies in one that could be drawn otherwise, is no invention.
        overlaps.forEach((overlap, index) => {
          const inside = regionArea(sharedOf([found[index]!], [room.piece])) > 0.5 * pieceArea(found[index]!);
          if (overlap >= 0.5 || (!room.sure && inside)) known.add(index);
        });
      }
      const wrong = found.length - known.size;
      total.sure += sure;
      total.hit += hit;
      total.found += found.length;
      total.wrong += wrong;
      console.info(`${file}: ${hit} of ${sure} rooms found, ${wrong} of ${found.length} are none`);
      if (!plan) expect(found).toEqual([]);
      expect(hit).toBeGreaterThanOrEqual(Math.floor((leastFound[file] ?? 1) * sure));
    },
    60_000,
  );

  afterAll(() => {
    console.info(
      `All: ${total.hit} of ${total.sure} rooms found (${percent(total.hit / total.sure)}), ${total.wrong} of ${total.found} are none (${percent(total.wrong / total.found)}); wanted: 90 % and under 5 %`,
    );
    for (const [what, files] of [
      ["all plans", () => true],
      ["drawn faces", (file: string) => drawnFaces.includes(file)],
    ] as const) {
      const errors = areaErrors.filter(({ file }) => files(file)).map(({ error }) => error);
      console.info(
        `Areas, ${what}: off by ${percent1(quantile(errors, 0.5))} in the middle, ${percent1(quantile(errors, 0.95))} at most for 95 % of ${errors.length}`,
      );
      if (what === "drawn faces") {
        // 0.3 % and 2.0 % were measured; a finder that draws along the wrong face of a wall is off by 5 % and more.
        expect(quantile(errors, 0.5)).toBeLessThanOrEqual(0.005);
        expect(quantile(errors, 0.95)).toBeLessThanOrEqual(0.025);
      }
    }
    expect(total.hit / total.sure).toBeGreaterThanOrEqual(0.9);
    expect(total.wrong / total.found).toBeLessThanOrEqual(0.045);
  });
});

/** What was reached; a change of the finder must not lose it. 1 where absent. */
const leastFound: Readonly<Record<string, number>> = {
  "architecture-school-doors-r2010.dxf": 0.84,
  // Sliding doors and cased openings without leaf or wall end.
  "house-xref-layers-text-dims-r2004.dxf": 0.5,
  "iso-office-walkable-m-r2013.dxf": 0.75,
  "learning-center-mm-r2018.dxf": 0.96,
  "lines-only-inches-r2000.dxf": 0.8,
  "pavilion-plan-m-r2013.dxf": 0.5,
  "university-arts-cm-r2018.dxf": 0.75,
  "university-floor1.pdf": 0.9,
  "university-floor1.svg": 0.9,
  "university-floorB.pdf": 0.9,
  "university-lab-floor3-roomlayers-r2007.dxf": 0.94,
};

/** Plans whose count took the corners of closed outlines that the drawing carries. */
const drawnFaces: readonly string[] = ["university-lab-floor3-roomlayers-r2007.dxf"];

const percent1 = (share: number): string => `${(100 * share).toFixed(1)} %`;

/** The value that so large a share of them does not exceed. */
const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))] ??
  Number.NaN;

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;
