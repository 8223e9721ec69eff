import type { Amperes, OhmsPerMetre } from "../../quantity/index.ts";
import type { Table } from "./table.ts";

/** Conductor size by the American wire gauge. */
export type Gauge = 18 | 16 | 14 | 12 | 10 | 8 | 6;

/** Metres in 1000 ft. */
export const KILOFOOT = 304.8;

const perKilofoot = (
  rows: Readonly<Partial<Record<Gauge, number>>>,
): Readonly<Partial<Record<Gauge, OhmsPerMetre>>> =>
  Object.fromEntries(Object.entries(rows).map(([gauge, ohms]) => [gauge, ohms / KILOFOOT]));

/** Direct-current resistance at 75 °C, uncoated copper. [Ω/m] */
export const gaugeResistance: Table<
  Readonly<Record<"solid" | "stranded", Readonly<Partial<Record<Gauge, OhmsPerMetre>>>>>
> = {
  source: "NEC-CHAPTER-9",
  certainty: "seen",
  rows: {
    solid: perKilofoot({ 18: 7.77, 16: 4.89, 14: 3.07, 12: 1.93, 10: 1.21 }),
    stranded: perKilofoot({ 14: 3.14, 12: 1.98, 10: 1.24, 8: 0.778, 6: 0.491 }),
  },
};

/** Share of the voltage that a branch circuit may lose, and feeder and branch together: informational only. */
export const necDropLimits: Table<{ readonly branch: number; readonly total: number }> = {
  source: "NEC-CHAPTER-9",
  certainty: "from-memory",
  rows: { branch: 0.03, total: 0.05 },
};

/** Ampacity of copper by rating of insulation and terminals. [A] */
export const ampacities: Table<Readonly<Partial<Record<Gauge, Readonly<Record<60 | 75 | 90, Amperes>>>>>> = {
  source: "NEC-310",
  certainty: "seen",
  rows: {
    14: { 60: 15, 75: 20, 90: 25 },
    12: { 60: 20, 75: 25, 90: 30 },
    10: { 60: 30, 75: 35, 90: 40 },
  },
};

/** Largest overcurrent device of a small copper conductor. [A] */
export const smallConductorDevice: Table<Readonly<Partial<Record<Gauge, Amperes>>>> = {
  source: "NEC-240-4-D",
  certainty: "from-memory",
  rows: { 14: 15, 12: 20, 10: 30 },
};

/** Factor by number of current-carrying conductors, upper end included. */
export const conductorCountFactors: Table<readonly (readonly [upTo: number, factor: number])[]> = {
  source: "NEC-310",
  certainty: "seen",
  rows: [
    [3, 1],
    [6, 0.8],
    [9, 0.7],
    [20, 0.5],
    [30, 0.45],
    [40, 0.4],
    [Number.POSITIVE_INFINITY, 0.35],
  ],
};

/** Factor by ambient temperature, column 75 °C, upper end included. [°C] Cooler than 31 °C counts as 1. */
export const necAmbientFactors: Table<readonly (readonly [upTo: number, factor: number])[]> = {
  source: "NEC-310",
  certainty: "seen",
  rows: [
    [30, 1],
    [35, 0.94],
    [40, 0.88],
    [45, 0.82],
    [50, 0.75],
  ],
};

/** A continuous load counts this many times. */
export const continuousLoad: Table<number> = { source: "NEC-210-20-A", certainty: "seen", rows: 1.25 };

/** Least copper equipment grounding conductor by the rating of the device, upper end included. */
export const groundingConductors: Table<readonly (readonly [upTo: Amperes, gauge: Gauge])[]> = {
  source: "NEC-250",
  certainty: "from-memory",
  rows: [
    [15, 14],
    [20, 12],
    [60, 10],
  ],
};

/** Volume that one conductor needs in a box. [m³] */
export const boxVolumes: Table<Readonly<Record<Gauge, number>>> = {
  source: "NEC-314-16",
  certainty: "seen",
  rows: Object.fromEntries(
    Object.entries({ 18: 1.5, 16: 1.75, 14: 2, 12: 2.25, 10: 2.5, 8: 3, 6: 5 }).map(
      ([gauge, cubicInches]) => [gauge, cubicInches * 0.0254 ** 3],
    ),
  ) as Readonly<Record<Gauge, number>>,
};

/** Peaks that a control device must make by steady current; doubtful entries of the memory are left out. [A], [A], [A²s] */
export const requiredPeaks: Table<
  Readonly<
    Record<
      120 | 277,
      readonly { readonly steady: Amperes; readonly peak: Amperes; readonly integral?: number }[]
    >
  >
> = {
  source: "NEMA-410",
  certainty: "from-memory",
  rows: {
    120: [
      { steady: 0.5, peak: 75, integral: 11 },
      { steady: 1, peak: 107, integral: 24 },
      { steady: 2, peak: 144, integral: 41 },
      { steady: 3, peak: 166, integral: 51 },
      { steady: 5, peak: 192, integral: 74 },
      { steady: 8, peak: 221, integral: 98 },
      { steady: 10, peak: 230, integral: 106 },
      { steady: 12, peak: 235, integral: 110 },
      { steady: 15, peak: 239, integral: 114 },
      { steady: 16, peak: 242 },
    ],
    277: [
      { steady: 0.5, peak: 77, integral: 11 },
      { steady: 1, peak: 131, integral: 27 },
      { steady: 2, peak: 205, integral: 76 },
      { steady: 3, peak: 258, integral: 111 },
      { steady: 5, peak: 320, integral: 205 },
      { steady: 8, peak: 370, integral: 274 },
      { steady: 10, peak: 430, integral: 370 },
      { steady: 12, peak: 440, integral: 387 },
      { steady: 15, peak: 458 },
      { steady: 16, peak: 480 },
    ],
  },
};
