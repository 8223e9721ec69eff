import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { english, type LensMask, radiansOf } from "#engine";
import {
  box,
  detectorLike,
  dwellLike,
  roomLike,
  roundModel,
  siteLike,
} from "../../../test/engine/records.ts";
import { crossedTexts } from "../drawing/crossings.fixture.ts";
import { boxOf } from "../drawing/lettering.ts";
import type { Mark, PaperRing, Sheet, TextMark } from "../drawing/mark.ts";
import { svgOf } from "../svg/svg.ts";
import { lensFlower } from "./lens-flower.ts";
import { maskTemplates, templateSize } from "./mask-templates.ts";

const dome18 = { shape: "dome", rings: [], radius: 0.018, elementOffset: 0 } as const;
const mask = (from: number, to: number, inner: number, outer: number): LensMask => ({
  from: radiansOf(from),
  to: radiansOf(to),
  inner: radiansOf(inner),
  outer: radiansOf(outer),
});
const areaOf = (ring: PaperRing): number =>
  Math.abs(
    ring.reduce((sum, [x, y], i) => {
      const [u, v] = ring[(i + 1) % ring.length]!;
      return sum + x * v - u * y;
    }, 0) / 2,
  );
const away = ([x, y]: readonly [number, number]): number => Math.hypot(x, y);

describe("[MSK-6] a dome unwrapped at its true size, R 18 mm", () => {
  test("a ray of 36.53° lies at 11.476 mm, one of 77.46° at 24.335 mm from the pole", () => {
    // Within one petal, symmetrical about its middle.
    const [ring] = lensFlower(dome18, [mask(0, 0.001, 36.53, 77.46)])!.masked;
    expect(Math.min(...ring!.map(away))).toBeCloseTo(11.476, 2);
    expect(Math.max(...ring!.map(away))).toBeCloseTo(24.335, 2);
  });
  test.each([
    [36.53, 6.246],
    [77.46, 10.243],
  ])(
    "a mask 33.4° wide is %f° off straight down %f mm wide in all its petals together",
    (offNadir, width) => {
      const pieces = lensFlower(dome18, [mask(-16.7, 16.7, offNadir, offNadir + 0.01)])!.masked;
      // A band of 0.01° is so thin that its area is width times 0.00314 mm.
      const thin = (18 * Math.PI * 0.01) / 180;
      expect(pieces.length).toBe(3);
      expect(pieces.reduce((sum, ring) => sum + areaOf(ring), 0) / thin).toBeCloseTo(width, 1);
    },
  );
  test("what is masked all round is as large as that part of the dome: 2π R² (cos θ₁ − cos θ₂)", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 80, noNaN: true }),
        fc.double({ min: 3, max: 10, noNaN: true }),
        (inner, more) => {
          const pieces = lensFlower(dome18, [mask(0, 360, inner, inner + more)])!.masked;
          const found = pieces.reduce((sum, ring) => sum + areaOf(ring), 0);
          const true_ =
            2 * Math.PI * 18 ** 2 * (Math.cos(radiansOf(inner)) - Math.cos(radiansOf(inner + more)));
          // Edges across the petals are chords of at most 2° of arc.
          expect(Math.abs(found / true_ - 1)).toBeLessThan(0.01);
        },
      ),
      { seed: 20_263, numRuns: 50 },
    );
  });
  test("the element off the dome's centre moves a ray of 58°: 68.86°, 58.00°, 47.14° of dome for −4, 0, +4 mm", () => {
    for (const [offset, angle] of [
      [-0.004, 68.86],
      [0, 58],
      [0.004, 47.14],
    ] as const) {
      const [ring] = lensFlower({ ...dome18, elementOffset: offset }, [mask(0, 0.001, 58, 60)])!.masked;
      expect(Math.min(...ring!.map(away))).toBeCloseTo(18 * radiansOf(angle), 1);
    }
  });
  test("counter-clockwise from above is clockwise on the paper, which is seen from below: a quarter from the notch lies right", () => {
    const pieces = lensFlower(dome18, [mask(80, 100, 40, 60)])!.masked;
    for (const [x, y] of pieces.flat()) {
      expect(x).toBeGreaterThan(0);
      expect(Math.abs(y)).toBeLessThan(6);
    }
  });
  test("a flat lens 10 mm before its element: a ray of 45° at 10 mm, and no petals", () => {
    const flower = lensFlower({ shape: "flat", rings: [], radius: 0.01 }, [mask(0, 90, 45, 60)])!;
    expect(flower.petals.length).toBe(1);
    expect(Math.min(...flower.masked.flat().map(away))).toBeCloseTo(10, 6);
  });
  test("a lens of unknown size has no template", () => {
    expect(lensFlower({ shape: "dome", rings: [] }, [mask(0, 90, 45, 60)])).toBeUndefined();
  });
});

describe("[MSK-7] the sheet", () => {
  const sheet = sheetOf(dome18, [mask(-20, 20, 30, 90)]);
  const bars = lines(sheet).filter(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1]) > 50);
  test("has a bar of 100 mm in each axis, and is to scale", () => {
    expect(bars.map(({ from, to }) => [Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1])])).toEqual([
      [100, 0],
      [0, 100],
    ]);
    expect(sheet.scale).toBe(1);
  });
  test("says that it is printed at actual size, and what the masks cost", () => {
    const said = texts(sheet)
      .map(({ text }) => text)
      .join(" ");
    expect(said).toContain("actual size");
    expect(said).toContain("99.5 to 100.5 mm");
    expect(said).toMatch(
      /The masks also take [\d.]+ m² of floor and [\d.]+ m² of places \(desk\) that nothing else sees/,
    );
  });
  test("keeps every word on the paper and off every line", () => {
    for (const text of texts(sheet)) {
      const { left, right, top, bottom } = boxOf(text);
      expect([left >= 5, right <= templateSize[0] - 5, top >= 5, bottom <= templateSize[1] - 3]).toEqual([
        true,
        true,
        true,
        true,
      ]);
    }
    expect(crossedTexts(sheet.marks)).toEqual([]);
  });
  test("is the same in bytes each time", () => {
    expect(svgOf(sheet)).toBe(svgOf(sheetOf(dome18, [mask(-20, 20, 30, 90)])));
  });
  test("without the lens's size says so and draws no bar to cut by", () => {
    const without = sheetOf({ shape: "dome", rings: [] }, [mask(-20, 20, 30, 90)]);
    expect(
      texts(without)
        .map(({ text }) => text)
        .join(" "),
    ).toContain("not entered");
    expect(lines(without)).toEqual([]);
  });
  test("names the facets to cover where the lens declares them", () => {
    const faceted = sheetOf({ ...dome18, rings: [{ offNadir: radiansOf(45), facets: 12 }] }, [
      mask(-20, 20, 30, 90),
    ]);
    expect(
      texts(faceted)
        .map(({ text }) => text)
        .join(" "),
    ).toContain("ring 1 (45°): 1–2, 12");
  });
  test("comes for detectors with masks only", () => {
    expect(
      maskTemplates({ site: siteOf(dome18, []), job: "Job", date: "", revision: "", speak: english }),
    ).toEqual([]);
  });
});

function siteOf(lens: NonNullable<ReturnType<typeof roundModel>["lens"]>, masks: readonly LensMask[]) {
  return siteLike({
    rooms: [roomLike({ id: "room", outline: box(0, 0, 6, 4), name: "Office" })],
    models: [roundModel({ lens })],
    dwellPlaces: [dwellLike({ id: "east", room: "room", at: [4.2, 2] })],
    detectors: [detectorLike({ id: "b3", room: "room", at: [3, 2], masks })],
  });
}

function sheetOf(
  lens: NonNullable<ReturnType<typeof roundModel>["lens"]>,
  masks: readonly LensMask[],
): Sheet {
  const [sheet] = maskTemplates({
    site: siteOf(lens, masks),
    job: "Job",
    date: "2026-11-26",
    revision: "A",
    speak: english,
  });
  return sheet!(1, 1);
}

function texts(sheet: Sheet): readonly TextMark[] {
  return sheet.marks.filter((one): one is TextMark => one.kind === "text");
}

function lines(sheet: Sheet): readonly Extract<Mark, { kind: "line" }>[] {
  return sheet.marks.filter((one) => one.kind === "line");
}
