import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { driversOnBreaker, pulseFactor, scaledDrivers } from "./drivers-per-breaker.ts";
import { type InrushCircuit, inrushPulse, peakBesideZero, pulseIntegral } from "./inrush.ts";
import { mostByLeakage, standbyEnergy } from "./leakage.ts";

/** The circuit integrated step by step (fourth order), knowing nothing of the closed form: L·di/dt = V − R·i − q/C, blocked at i < 0. */
function integrated(
  { voltage, resistance, inductance, capacitance }: InrushCircuit,
  end: number,
  steps: number,
) {
  const step = end / steps;
  const slope = (i: number, q: number): readonly [number, number] => [
    (voltage - resistance * i - q / capacitance) / inductance,
    i,
  ];
  let [i, q, peak, integral] = [0, 0, 0, 0];
  for (let n = 0; n < steps; n++) {
    const a = slope(i, q);
    const b = slope(i + (step / 2) * a[0], q + (step / 2) * a[1]);
    const c = slope(i + (step / 2) * b[0], q + (step / 2) * b[1]);
    const d = slope(i + step * c[0], q + step * c[1]);
    const next = i + (step / 6) * (a[0] + 2 * b[0] + 2 * c[0] + d[0]);
    q += (step / 6) * (a[1] + 2 * b[1] + 2 * c[1] + d[1]);
    if (next < 0) break;
    integral += (step / 2) * (i * i + next * next);
    i = next;
    peak = Math.max(peak, i);
  }
  return { peak, integral, charged: q / capacitance };
}

describe("inrush, check values [D]", () => {
  test.each([
    [1, 0.0645, 58.46, 76.125, 81.2, 121.93, 0.35276],
    [2, 0.0913, 81.37, 103.623, 114.9, 172.79, 0.92495],
    [5, 0.1443, 124.8, 152.402, 182.0, 274.95, 3.16919],
    [10, 0.2041, 170.8, 199.621, 258.2, 393.04, 7.71291],
    [20, 0.2887, 231.19, 255.277, 367.5, 568.34, 17.94778],
  ])("%s drivers on 325 V, 0.5 Ω, 150 µH", (drivers, damping, peakTime, peak, half, base, integral) => {
    const pulse = inrushPulse({
      voltage: 325,
      resistance: 0.5,
      inductance: 150e-6,
      capacitance: drivers * 10e-6,
    });
    expect(pulse.kind).toBe("underdamped");
    expect(pulse.damping).toBeCloseTo(damping, 4);
    expect(pulse.peakTime * 1e6).toBeCloseTo(peakTime, 1);
    expect(pulse.peak).toBeCloseTo(peak, 2);
    expect(pulse.halfWidth * 1e6).toBeCloseTo(half, 0);
    expect(pulse.base * 1e6).toBeCloseTo(base, 1);
    expect(pulse.integral).toBeCloseTo(integral, 4);
  });
  test("single driver: ζ 0.3428, 142.828 A, 146.2 µs, 2.2352 A²s", () => {
    const pulse = inrushPulse({ voltage: 325.27, resistance: 1, inductance: 100e-6, capacitance: 47e-6 });
    expect(pulse.damping).toBeCloseTo(0.3428, 4);
    expect(pulse.peak).toBeCloseTo(142.828, 2);
    expect(pulse.halfWidth * 1e6).toBeCloseTo(146.2, 1);
    expect(pulse.integral).toBeCloseTo(2.2352, 3);
  });
  test("without inductance: 162.635 A, 30.5 µs, 0.58190 A²s", () => {
    const pulse = inrushPulse({ voltage: 325.27, resistance: 2, inductance: 0, capacitance: 22e-6 });
    expect(pulse.peak).toBeCloseTo(162.635, 3);
    expect(pulse.halfWidth * 1e6).toBeCloseTo(30.5, 1);
    expect(pulse.integral).toBeCloseTo(0.5819, 4);
  });
  test("30 A for 200 µs of half a sine is 0.1350 A²s; exponential 0.721, triangle 0.667", () => {
    expect(pulseIntegral({ peak: 30, width: 200e-6 })).toBeCloseTo(0.135, 12);
    expect(pulseIntegral({ peak: 1, width: 1 }, "exponential")).toBeCloseTo(0.721, 3);
    expect(pulseIntegral({ peak: 1, width: 1 }, "triangle")).toBeCloseTo(0.667, 3);
  });
  test("beside the zero of the voltage: 0.156, 0.309, 0.588", () => {
    expect([0.0005, 0.001, 0.002].map((miss) => peakBesideZero(miss, 50).toFixed(3))).toEqual([
      "0.156",
      "0.309",
      "0.588",
    ]);
  });
});

describe("laws of the inrush", () => {
  const circuits = fc.record({
    voltage: fc.double({ min: 100, max: 400, noNaN: true }),
    resistance: fc.double({ min: 0.2, max: 5, noNaN: true }),
    inductance: fc.double({ min: 2e-5, max: 5e-4, noNaN: true }),
    capacitance: fc.double({ min: 2e-6, max: 4e-4, noNaN: true }),
  });
  test("the closed form is what numerical integration gives, underdamped and overdamped", () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(circuits, (one) => {
        const pulse = inrushPulse(one);
        seen.add(pulse.kind);
        const end = Number.isFinite(pulse.base) ? pulse.base * 1.01 : 40 * one.resistance * one.capacitance;
        const found = integrated(one, end, 20_000);
        // A thousandth: the steps of the integration, and the last step before the rectifier blocks.
        expect(Math.abs(found.peak / pulse.peak - 1)).toBeLessThan(1e-3);
        expect(Math.abs(found.integral / pulse.integral - 1)).toBeLessThan(1e-3);
        expect(Math.abs(found.charged / pulse.charged - 1)).toBeLessThan(1e-3);
      }),
      { seed: 21, numRuns: 40 },
    );
    expect([...seen].sort()).toEqual(["overdamped", "underdamped"]);
  });
  test("N drivers on one line peak below N times one, and no lower than one", () => {
    fc.assert(
      fc.property(circuits, fc.integer({ min: 2, max: 50 }), (one, n) => {
        const many = inrushPulse({ ...one, capacitance: n * one.capacitance }).peak;
        const single = inrushPulse(one).peak;
        expect(many).toBeLessThanOrEqual(n * single);
        expect(many).toBeGreaterThanOrEqual(single * (1 - 1e-9));
      }),
      { seed: 22, numRuns: 300 },
    );
  });
  test("overdamped and underdamped meet where damping is critical", () => {
    const critical = (l: number) =>
      inrushPulse({ voltage: 325, resistance: 2, inductance: l, capacitance: 1e-4 }).peak;
    expect(critical(1e-4 * 1.0001) / critical(1e-4 * 0.9999)).toBeCloseTo(1, 3);
    expect(critical(1e-4)).toBeCloseTo(((325 / 1e-4) * 1e-4) / Math.E, 3);
  });
});

describe("drivers on a breaker", () => {
  const curve = [
    [0.0001, 20],
    [0.001, 4],
  ] as const;
  test("the factor is log-log between the entered points, 1 from 10 ms on, and unknown outside", () => {
    expect(pulseFactor(curve, 0.0001 * Math.sqrt(10))).toBeCloseTo(Math.sqrt(80), 9);
    expect(pulseFactor(curve, 0.0001)).toBeCloseTo(20, 9);
    expect(pulseFactor(curve, 0.02)).toBe(1);
    expect(pulseFactor(undefined, 0.02)).toBe(1);
    expect(pulseFactor(curve, 0.00005)).toBeUndefined();
    expect(pulseFactor(undefined, 0.0002)).toBeUndefined();
  });
  test("the least of inrush, steady current and leakage counts; without a curve there is no number", () => {
    const driver = { peak: 30, width: 0.0001, current: 0.2, leakage: 0.0007 };
    const found = driversOnBreaker({ type: "B", rating: 16, curve, residual: 0.03 }, driver, 0.8);
    expect(found).toEqual({ inrush: 32, steady: 64, leakage: 12, most: 12 });
    expect(driversOnBreaker({ type: "B", rating: 16 }, driver, 0.8).most).toBeUndefined();
  });
  test("scaled by habit [C]: C16 40 → C10 24, B16 24, B10 14", () => {
    const scaled = (type: "B" | "C" | "D", rating: number) =>
      scaledDrivers({ type: "C", rating: 16, count: 40 }, { type, rating });
    expect([scaled("C", 10), scaled("B", 16), scaled("B", 10), scaled("D", 10)]).toEqual([
      24,
      24,
      14,
      undefined,
    ]);
    expect([scaled("B", 20), scaled("C", 20)]).toEqual([30, 50]);
  });
});

describe("leakage and standby", () => {
  test("behind 30 mA [D]: 12 at 0.7 mA, 18 at 0.5 mA, 2 at 3.5 mA", () => {
    expect([0.0007, 0.0005, 0.0035].map((each) => mostByLeakage(0.03, each))).toEqual([12, 18, 2]);
  });
  test("half a watt is 4.38 kWh in a year, twenty are 87.6 [D]", () => {
    expect(standbyEnergy([0.5])).toBeCloseTo(4.38, 9);
    expect(standbyEnergy(Array(20).fill(0.5))).toBeCloseTo(87.6, 9);
  });
});
