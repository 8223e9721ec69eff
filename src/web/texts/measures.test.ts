import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lengthIn, smallLengthIn } from "./lengths-in.ts";
import {
  areaText,
  degreesText,
  durationText,
  lengthFigure,
  lengthText,
  moneyText,
  percentText,
  smallLengthFigure,
  smallLengthText,
} from "./measures.ts";

describe("lengths as they are written", () => {
  test.each([
    [2.5, "2.50 m"],
    [0, "0.00 m"],
    [-0.001, "0.00 m"],
    [-1.25, "-1.25 m"],
    [12.345, "12.35 m"],
  ])("%d m is %s", (length, text) => expect(lengthText(length, "metric")).toBe(text));

  test.each([
    [2.4892, "8′ 2″"],
    [2.5, "8′ 2 3/8″"],
    [0.3048, "1′"],
    [0.0254, "1″"],
    [0.0127, "1/2″"],
    [0.0064, "1/4″"],
    [0, "0″"],
    [-0.3048, "-1′"],
    // 11 63/64 inches round up to a whole foot, never to 12 inches.
    [0.3044, "1′"],
  ])("%d m is %s", (length, text) => expect(lengthText(length, "imperial")).toBe(text));

  test("areas, angles, times, shares and money", () => {
    expect(areaText(12.44, "metric")).toBe("12.4 m²");
    expect(areaText(99.96, "metric")).toBe("100 m²");
    expect(areaText(10, "imperial")).toBe("108 ft²");
    expect(degreesText(Math.PI / 2)).toBe("90°");
    expect(durationText(0.44)).toBe("0.4 s");
    expect(durationText(125)).toBe("2 min 5 s");
    expect(percentText(0.15)).toBe("15 %");
    expect(moneyText(1234.5, "EUR")).toBe("1,234.50 EUR");
    expect(moneyText(3, "")).toBe("3.00");
  });
});

describe("lengths as they are typed", () => {
  test.each([
    ["2.5", 2.5],
    ["2,5 m", 2.5],
    ["2.", 2],
    [".5", 0.5],
    ["250 cm", 2.5],
    ["2500mm", 2.5],
    ["1 m 20 cm", 1.2],
    ["8' 2\"", 2.4892],
    ["8′ 2″", 2.4892],
    ["8’2”", 2.4892],
    ["8 ft 2 in", 2.4892],
    ["8' 2", 2.4892],
    ["8' 2 1/2\"", 2.5019],
    ["8'-2\"", 2.4892],
    ["8'-2 1/2\"", 2.5019],
    ["8' 2-1/2\"", 2.5019],
    ["8 ft. 2 in.", 2.4892],
    ["2.5 m.", 2.5],
    ["98 in", 2.4892],
    ["1/2 in", 0.0127],
    ["-0.5", -0.5],
    ["−2 m", -2],
  ])("%s is %d m", (typed, metres) => expect(lengthIn(typed, "metric")).toBeCloseTo(metres, 9));

  test("a bare figure counts in feet where lengths are shown in feet", () => {
    expect(lengthIn("8", "imperial")).toBeCloseTo(2.4384, 9);
    expect(lengthIn("2.5 m", "imperial")).toBe(2.5);
  });

  test.each([
    "",
    " ",
    "-",
    "wide",
    "2.5 x",
    "2 m 3",
    "2 cm 1 m",
    "8 in 2 ft",
    "1 m 2 ft",
    "1/0 in",
    "2.5.1",
    "1e3",
    "NaN",
    "8' 2' 3",
    "8'-",
    "2 m - 3 cm",
    "8' -- 2",
  ])("“%s” is not a length", (typed) => expect(lengthIn(typed, "metric")).toBeUndefined());

  test("every way of writing the same length in feet and inches, or in metres, reads as the same", () => {
    const whole = (most: number) => fc.integer({ min: 0, max: most });
    fc.assert(
      fc.property(whole(300), whole(11), whole(15), whole(99), (feet, inches, sixteenths, centimetres) => {
        const metres = feet * 0.3048 + (inches + sixteenths / 16) * 0.0254;
        const part = sixteenths === 0 ? `${inches}` : `${inches} ${sixteenths}/16`;
        for (const typed of [
          `${feet}' ${part}"`,
          `${feet}'-${part}"`,
          `${feet}′${part}″`,
          `${feet} ft ${part} in`,
          `${feet} ft. ${part} in.`,
          `${feet} feet ${part} inches`,
          `${feet}' ${part}`,
          `${feet * 12 + inches + sixteenths / 16} in`,
        ])
          for (const units of ["metric", "imperial"] as const)
            expect(lengthIn(typed, units), typed).toBeCloseTo(metres, 9);
        const tidy = `${feet}.${String(centimetres).padStart(2, "0")}`;
        for (const typed of [
          `${tidy} m`,
          `${tidy.replace(".", ",")} m`,
          `${tidy}m`,
          `${feet} m ${centimetres} cm`,
          `${feet * 100 + centimetres} cm`,
          `${(feet * 100 + centimetres) * 10} mm`,
        ])
          for (const units of ["metric", "imperial"] as const)
            expect(lengthIn(typed, units), typed).toBeCloseTo(feet + centimetres / 100, 9);
        expect(lengthIn(tidy, "metric")).toBeCloseTo(feet + centimetres / 100, 9);
      }),
      { seed: 21, numRuns: 200 },
    );
  });

  test("what is shown reads back within what was shown", () => {
    const units = fc.constantFrom("metric" as const, "imperial" as const);
    fc.assert(
      fc.property(fc.double({ min: -200, max: 200, noNaN: true }), units, (length, system) => {
        // Half of the last shown place: 5 mm, or a sixteenth of an inch.
        const shown = system === "metric" ? 0.005 : 0.0254 / 16;
        expect(Math.abs(lengthIn(lengthFigure(length, system), system)! - length)).toBeLessThanOrEqual(
          shown + 1e-9,
        );
      }),
      { seed: 20, numRuns: 500 },
    );
  });
});

describe("parts of some millimetres", () => {
  test("are shown and read in them, and any unit that is typed is understood", () => {
    expect(smallLengthText(0.0125, "metric")).toBe("12.5 mm");
    expect(smallLengthFigure(0.068, "metric")).toBe("68");
    expect(smallLengthFigure(0.0127, "imperial")).toBe("1/2″");
    expect(smallLengthIn("12,5", "metric")).toBeCloseTo(0.0125, 9);
    expect(smallLengthIn("6.8 cm", "metric")).toBeCloseTo(0.068, 9);
    expect(smallLengthIn("2 5/8", "imperial")).toBeCloseTo(0.066675, 9);
    expect(smallLengthIn("68 kg", "metric")).toBeUndefined();
  });
});
