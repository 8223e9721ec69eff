import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { manualSwitchOn } from "./index.ts";

describe("switching on by hand on arrival [HUNT-1979] [REINHART-2003]", () => {
  // Certificate: computed from the published constants, printed to four digits; half a unit of the last one.
  test.each([
    [50, 0.6283, 0.6248],
    [100, 0.3204, 0.3923],
    [200, 0.111, 0.2009],
    [300, 0.0494, 0.1263],
    [500, 0.0106, 0.0667],
  ])("at %i lx: Hunt %f, Reinhart %f", (light, hunt, reinhart) => {
    expect(Math.abs(manualSwitchOn(light, "hunt-1979") - hunt)).toBeLessThanOrEqual(0.00005);
    expect(Math.abs(manualSwitchOn(light, "reinhart-2003") - reinhart)).toBeLessThanOrEqual(0.00005);
  });

  test("by Hunt everybody switches on below 7 lx and nobody above 657.7 lx", () => {
    expect([6.9, 658].map((light) => manualSwitchOn(light, "hunt-1979"))).toEqual([1, 0]);
  });

  test("it is a share, and falls with light", () => {
    const light = fc.double({ min: 0.1, max: 5000, noNaN: true });
    const study = fc.constantFrom("hunt-1979" as const, "reinhart-2003" as const);
    fc.assert(
      fc.property(light, light, study, (one, other, by) => {
        const [bright, dark] = [Math.max(one, other), Math.min(one, other)].map((at) =>
          manualSwitchOn(at, by),
        );
        expect(bright).toBeGreaterThanOrEqual(0);
        expect(dark).toBeLessThanOrEqual(1);
        expect(bright).toBeLessThanOrEqual(dark!);
      }),
      { seed: 61, numRuns: 300 },
    );
  });

  test("no light at all is refused by name", () => {
    expect(() => manualSwitchOn(0, "hunt-1979")).toThrow("Light must be greater than 0, not 0");
  });
});
