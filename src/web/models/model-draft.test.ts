import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { DetectorModel } from "#engine";
import { modelProblems } from "#engine";
import { draftOf, emptyDraft, limitsOf, missingIn, modelOf, withCell, withLens } from "./model-draft.ts";
import { metresPerPixel, pixelOf, polarOf, type Tracing, withPoint } from "./outline-tracing.ts";

const quick = withCell(
  withCell(
    { ...emptyDraft, title: "Round, 8 m" },
    { row: 0, kind: "towards" },
    { shape: "round", diameter: 8 },
  ),
  { row: 0, kind: "seated" },
  { shape: "round", diameter: 4 },
);

describe("a data sheet as it is filled in", () => {
  test("title, height and two diameters are enough for a sound model", () => {
    expect(missingIn(quick)).toEqual([]);
    const model = modelOf(quick, "own");
    expect(model.zones).toEqual({
      towards: [{ height: 2.5, radius: 4 }],
      seated: [{ height: 2.5, radius: 2 }],
    });
    expect(modelProblems(model)).toEqual([]);
  });

  test("what was not entered stays absent", () => {
    const model = modelOf(quick, "own");
    for (const name of ["onset", "response", "warmUp", "deliveryState", "cutOut", "lens", "demo"])
      expect(name in model).toBe(false);
  });

  test("without a title, or without a reach, there is no model yet", () => {
    expect(missingIn(emptyDraft)).toEqual(["title", "reach"]);
    expect(missingIn({ ...quick, lowest: 4, highest: 3 })).toEqual(["limits"]);
    expect(missingIn({ ...quick, heights: [quick.heights[0]!, quick.heights[0]!] })).toEqual(["heights"]);
  });

  test("limits that were not entered are assumed half a metre around the sheet's heights", () => {
    expect(limitsOf(quick)).toEqual({ min: 2, max: 3 });
    expect(limitsOf({ ...quick, lowest: 2.3, highest: 2.8 })).toEqual({ min: 2.3, max: 2.8 });
  });

  test("the size of a lens is entered, changed and taken away, and its rings are kept", () => {
    const lensOf = (draft: typeof quick) => modelOf(draft, "own").lens;
    const dome = withLens(withLens(quick, { shape: "dome" }), { radius: 0.022, elementOffset: 0.004 });
    expect(lensOf(dome)).toEqual({ shape: "dome", rings: [], radius: 0.022, elementOffset: 0.004 });
    expect(lensOf(withLens(dome, { elementOffset: undefined }))).toEqual({
      shape: "dome",
      rings: [],
      radius: 0.022,
    });
    const ringed = {
      ...quick,
      rest: { lens: { shape: "dome", rings: [{ offNadir: 0.5, facets: 8 }] } },
    } as const;
    expect(lensOf(withLens(ringed, { shape: "flat", radius: 0.01 }))).toEqual({
      shape: "flat",
      rings: [{ offNadir: 0.5, facets: 8 }],
      radius: 0.01,
    });
    expect("lens" in modelOf(withLens(dome, { shape: undefined }), "own")).toBe(false);
  });

  test("a model that is edited and not changed stays the same", () => {
    const model: DetectorModel = {
      id: "m",
      title: "Corridor",
      mounting: { min: 2.2, max: 3 },
      zones: {
        towards: [
          {
            height: 2.5,
            outline: [
              [0, 10],
              [1.5, 2],
              [3.1, 10],
              [4.7, 2],
            ],
          },
          { height: 3, radius: 8 },
        ],
        across: [{ height: 3, radius: 9 }],
        sound: [{ height: 2.5, radius: 5 }],
      },
      declaration: "standard-test",
      declaredBy: "sheet of 2024",
      warmUp: 30,
      lens: { shape: "flat", rings: [] },
      contact: { kind: "relay", rated: { resistive: 10, led: 2 }, makingPeak: 165, makingWidth: 0.0002 },
      terminals: ["line-in", "neutral", "switched-line", "push-button"],
      inputs: { pushButton: "line" },
      warmUpOutput: "on",
      standby: 0.5,
      cost: 12,
      demo: true,
    };
    expect(modelOf(draftOf(model), "m")).toEqual(model);
  });
});

describe("an outline traced over a picture", () => {
  const tracing: Tracing = { centre: [100, 100], mark: [200, 100], distance: 4, notch: 0 };

  test("100 pixels for 4 m: a point 50 pixels above the centre lies at 90° and 2 m", () => {
    expect(metresPerPixel(tracing)).toBeCloseTo(0.04, 9);
    const [angle, radius] = polarOf(tracing, [100, 50])!;
    expect(angle).toBeCloseTo(Math.PI / 2, 9);
    expect(radius).toBeCloseTo(2, 9);
  });

  test("a notch that points up in the picture makes that point 0°", () => {
    expect(polarOf({ ...tracing, notch: Math.PI / 2 }, [100, 50])![0]).toBeCloseTo(0, 9);
  });

  test("picture to polar and back is the same place", () => {
    const figure = fc.double({ min: -500, max: 500, noNaN: true });
    fc.assert(
      fc.property(figure, figure, fc.double({ min: 0, max: 6.28, noNaN: true }), (x, y, notch) => {
        const turned = { ...tracing, notch };
        const [backX, backY] = pixelOf(turned, polarOf(turned, [x, y])!)!;
        expect(backX).toBeCloseTo(x, 6);
        expect(backY).toBeCloseTo(y, 6);
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  test("there is no scale before centre and mark lie apart", () => {
    expect(metresPerPixel({ ...tracing, mark: [100, 100] })).toBeUndefined();
    expect(polarOf({ ...tracing, centre: undefined }, [1, 1])).toBeUndefined();
  });

  test("points stand in order of angle, and one more at the same angle replaces the older", () => {
    const points = withPoint(withPoint(withPoint([], [2, 5]), [1, 4]), [2.001, 6]);
    expect(points).toEqual([
      [1, 4],
      [2.001, 6],
    ]);
    expect(withPoint([[0.001, 3]], [2 * Math.PI - 0.001, 4])).toHaveLength(1);
  });
});
