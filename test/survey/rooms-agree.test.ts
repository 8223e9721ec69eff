import { describe, expect, test } from "vitest";
import type { Piece, Point } from "#engine";
import { boxOf, pieceArea } from "../../src/exchange/region.ts";
import { folders, measuredScales, overlapOf, piece, plans, roomsSeen } from "./counted-rooms.ts";

// The same floor in two files: what is found in one must be found in the other, as large.

/** Two outlines of one room overlap by so much at least, intersection over union. */
const SAME = 0.9;

/** Areas of one room in two files are within so much. */
const AREA = 0.02;
/**
 * The pavilion's two toilets: one file draws their upper wall as glass in a frame and the room up to the glass, the other as
 * a wall as thick as its neighbours, 0.09 m nearer. A room there is 1.46 m deep.
 */
const drawnOtherwise = { rooms: 2, most: 0.07 };

const planOf = (file: string) => plans.find((one) => one.file === file)!;

/** Rooms of the first that are in the second, and how far their areas are apart as a share. */
function agreement(first: readonly Piece[], second: readonly Piece[]) {
  const differences = first.flatMap((room) => {
    const twin = second.find((other) => overlapOf(room, other) >= SAME);
    return twin ? [Math.abs(pieceArea(twin) / pieceArea(room) - 1)] : [];
  });
  return {
    share: differences.length / first.length,
    worst: Math.max(0, ...differences),
    apart: differences.filter((difference) => difference > AREA).length,
    alike: differences.length,
  };
}

const middle = (ring: readonly Point[]): Point => {
  const [left, bottom, right, top] = boxOf(ring);
  return [(left + right) / 2, (bottom + top) / 2];
};

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;

const say = (what: string, of: ReturnType<typeof agreement>, all: number): void =>
  console.info(
    `${what}: ${of.alike} of ${all} rooms alike, areas apart by ${(100 * of.worst).toFixed(2)} % at most`,
  );

describe.skipIf(!folders.plan || !folders.dxf)("One building in two files", () => {
  test("a printed floor as PDF and as SVG: the same rooms, as large", async () => {
    const [pdf, svg] = [
      await roomsSeen(planOf("university-floor1.pdf")),
      await roomsSeen(planOf("university-floor1.svg")),
    ];
    const one = agreement(pdf.found, svg.found);
    const other = agreement(svg.found, pdf.found);
    say("PDF in SVG", one, pdf.found.length);
    say("SVG in PDF", other, svg.found.length);
    expect(Math.min(one.share, other.share)).toBeGreaterThanOrEqual(0.95);
    expect(Math.max(one.worst, other.worst)).toBeLessThanOrEqual(AREA);
  }, 120_000);

  test("a pavilion as PDF and as DXF: the rooms that both readings offer are as large", async () => {
    const [sheet, model] = [planOf("pavilion-plan.pdf"), planOf("pavilion-plan-m-r2013.dxf")];
    // The sheet begins elsewhere than the model. The counts list the same rooms in the same order, and tell where.
    const offsets = sheet.rooms.map(({ outline }, index) => {
      const [x, y] = middle(outline);
      const [u, v] = middle(model.rooms[index]!.outline);
      const metres = measuredScales[sheet.file]!;
      return [u - x * metres, v - y * metres] as const;
    });
    const shift: Point = [median(offsets.map(([x]) => x)), median(offsets.map(([, y]) => y))];
    const pdf = (await roomsSeen(sheet)).found.map(({ outline, holes }) =>
      piece([outline, ...holes], 1, shift),
    );
    const dxf = (await roomsSeen(model)).found;
    const one = agreement(pdf, dxf);
    const other = agreement(dxf, pdf);
    say("PDF in DXF", one, pdf.length);
    say("DXF in PDF", other, dxf.length);
    expect(Math.min(one.alike, other.alike)).toBeGreaterThanOrEqual(4);
    for (const { apart, worst } of [one, other]) {
      expect(apart).toBe(drawnOtherwise.rooms);
      expect(worst).toBeLessThanOrEqual(drawnOtherwise.most);
    }
  }, 120_000);
});
