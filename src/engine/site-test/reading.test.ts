import { describe, expect, test } from "vitest";
import { box, detectorLike, roomLike, siteLike } from "../../../test/engine/records.ts";
import { row } from "../wiring/wiring.fixture.ts";
import { checkReading, checkStepReading, delayLimit, workOrder } from "./index.ts";

const site = siteLike({
  rooms: [roomLike({ id: "room", outline: box(0, 0, 6, 4) })],
  detectors: [detectorLike({ id: "d1", room: "room", at: [3, 2] })],
});
const insulation = workOrder(site, row()).steps.find((step) => step.name === "insulation")!;

describe("readings", () => {
  test("[WO-4] insulation below 1 MΩ fails, at 1 MΩ it passes, with its source", () => {
    expect(checkStepReading(insulation, 0.99).check).toMatchObject({
      verdict: "fail",
      actual: 0.99,
      limit: 1,
      unit: "MΩ",
      source: "IEC-60364-6-INSULATION",
    });
    expect(checkStepReading(insulation, 1).check.verdict).toBe("pass");
    expect(checkStepReading(insulation, undefined).check.verdict).toBe("not-proven");
  });

  test("[WO-4] a reading outside the instrument's range is questioned and kept", () => {
    const { check, problems } = checkStepReading(insulation, 450, [0, 200]);
    expect(check.verdict).toBe("pass");
    expect(problems.map(({ code }) => code)).toEqual(["reading-outside-instrument"]);
    expect(checkStepReading(insulation, 150, [0, 200]).problems).toEqual([]);
  });

  test("[WO-4] a height in millimetres, a time in seconds: unusual, and asked about", () => {
    expect(checkReading("height", { value: 2700 }).problems.map(({ code }) => code)).toEqual([
      "reading-unusual",
    ]);
    expect(checkReading("rcd-time", { value: 0.028 }).problems.map(({ code }) => code)).toEqual([
      "reading-unusual",
    ]);
    expect(checkReading("rcd-time", { value: 28 }).problems).toEqual([]);
  });

  test("what cannot be is refused and proves nothing", () => {
    for (const value of [-1, Number.NaN, Number.POSITIVE_INFINITY]) {
      const { check, problems } = checkReading("insulation", {
        value,
        limit: { least: 1, source: "COMMON-PRACTICE" },
      });
      expect(check.verdict).toBe("not-proven");
      expect(problems.map(({ code }) => code)).toEqual(["reading-impossible"]);
    }
  });

  test("a reading without a limit is not proven by the program", () => {
    expect(checkReading("continuity", { value: 0.8 }).check.verdict).toBe("not-proven");
  });

  test("a delay by stop-watch may be off by a tenth or 15 s, and never exceeds the code", () => {
    expect(delayLimit({ set: 600 })).toMatchObject({ least: 540, most: 660 });
    expect(delayLimit({ set: 60 })).toMatchObject({ least: 45, most: 75 });
    expect(delayLimit({ set: 1200, longest: 1200 })).toMatchObject({ least: 1080, most: 1200 });
  });
});
