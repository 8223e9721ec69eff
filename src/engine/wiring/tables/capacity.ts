import type { Amperes, Celsius, SquareMillimetres } from "../../quantity/index.ts";
import type { Table } from "./table.ts";

/** A1, A2: in conduit in an insulated wall, single cores or a cable · B1, B2: in conduit on a wall · C: clipped direct. */
export type InstallationMethod = "A1" | "A2" | "B1" | "B2" | "C";
export type Insulation = "PVC" | "XLPE";
export type LoadedConductors = 2 | 3;

type ByMethod = Readonly<Record<InstallationMethod, Amperes>>;
type BySection = Readonly<Record<SquareMillimetres, ByMethod>>;

const bySection = (
  rows: Readonly<Record<number, readonly [number, number, number, number, number]>>,
): BySection =>
  Object.fromEntries(
    Object.entries(rows).map(([section, [A1, A2, B1, B2, C]]) => [section, { A1, A2, B1, B2, C }]),
  );

/** Current-carrying capacity, copper, 30 °C air. [A] Two columns were seen elsewhere; the tables are remembered. */
export const capacities: Table<Readonly<Record<Insulation, Readonly<Record<LoadedConductors, BySection>>>>> =
  {
    source: "IEC-60364-5-52-CAPACITY",
    certainty: "from-memory",
    rows: {
      PVC: {
        2: bySection({
          1.5: [14.5, 14, 17.5, 16.5, 19.5],
          2.5: [19.5, 18.5, 24, 23, 27],
          4: [26, 25, 32, 30, 36],
          6: [34, 32, 41, 38, 46],
          10: [46, 43, 57, 52, 63],
          16: [61, 57, 76, 69, 85],
        }),
        3: bySection({
          1.5: [13.5, 13, 15.5, 15, 17.5],
          2.5: [18, 17.5, 21, 20, 24],
          4: [24, 23, 28, 27, 32],
          6: [31, 29, 36, 34, 41],
          10: [42, 39, 50, 46, 57],
          16: [56, 52, 68, 62, 76],
        }),
      },
      XLPE: {
        2: bySection({
          1.5: [19, 18.5, 23, 22, 24],
          2.5: [26, 25, 31, 30, 33],
          4: [35, 33, 42, 40, 45],
          6: [45, 42, 54, 51, 58],
          10: [61, 57, 75, 69, 80],
          16: [81, 76, 100, 91, 107],
        }),
        3: bySection({
          1.5: [17, 16.5, 20, 19.5, 22],
          2.5: [23, 22, 28, 26, 30],
          4: [31, 30, 37, 35, 40],
          6: [40, 38, 48, 44, 52],
          10: [54, 51, 66, 60, 71],
          16: [73, 68, 88, 80, 96],
        }),
      },
    },
  };

/** Highest working temperature of the insulation. [°C] */
export const hottest: Readonly<Record<Insulation, Celsius>> = { PVC: 70, XLPE: 90 };

/** Factor by temperature of the air around. XLPE and PVC from 50 °C were seen, the rest is remembered. */
export const ambientFactors: Table<Readonly<Record<Insulation, readonly (readonly [Celsius, number])[]>>> = {
  source: "IEC-60364-5-52-AMBIENT",
  certainty: "from-memory",
  rows: {
    PVC: [
      [10, 1.22],
      [15, 1.17],
      [20, 1.12],
      [25, 1.06],
      [30, 1],
      [35, 0.94],
      [40, 0.87],
      [45, 0.79],
      [50, 0.71],
      [55, 0.61],
      [60, 0.5],
    ],
    XLPE: [
      [10, 1.15],
      [15, 1.12],
      [20, 1.08],
      [25, 1.04],
      [30, 1],
      [35, 0.96],
      [40, 0.91],
      [45, 0.87],
      [50, 0.82],
      [55, 0.76],
      [60, 0.71],
      [65, 0.65],
      [70, 0.58],
      [75, 0.5],
      [80, 0.41],
    ],
  },
};

/** bunched: touching, in air, on a surface or enclosed · the others: a single layer. */
export type Arrangement = "bunched" | "layer-on-wall" | "layer-under-ceiling" | "perforated-tray" | "ladder";

type ByCount = readonly (readonly [circuits: number, factor: number])[];
const counted = (counts: readonly number[], factors: readonly number[]): ByCount =>
  factors.map((factor, i) => [counts[i] as number, factor]);
const toNine = [1, 2, 3, 4, 5, 6, 7, 8, 9];

/** Factor by number of circuits, not of conductors; between listed counts the next higher counts. */
export const groupingFactors: Table<Readonly<Record<Arrangement, ByCount>>> & {
  readonly remembered: readonly Arrangement[];
} = {
  source: "IEC-60364-5-52-GROUPING",
  certainty: "seen",
  remembered: ["layer-under-ceiling", "ladder"],
  rows: {
    bunched: counted(
      [...toNine, 12, 16, 20],
      [1, 0.8, 0.7, 0.65, 0.6, 0.57, 0.54, 0.52, 0.5, 0.45, 0.41, 0.38],
    ),
    "layer-on-wall": counted(toNine, [1, 0.85, 0.79, 0.75, 0.73, 0.72, 0.72, 0.71, 0.7]),
    "layer-under-ceiling": counted(toNine, [0.95, 0.81, 0.72, 0.68, 0.66, 0.64, 0.63, 0.62, 0.61]),
    "perforated-tray": counted(toNine, [1, 0.88, 0.82, 0.77, 0.75, 0.73, 0.73, 0.72, 0.72]),
    ladder: counted(toNine, [1, 0.87, 0.82, 0.8, 0.8, 0.79, 0.79, 0.78, 0.78]),
  },
};

/** Factor by length of cable inside thermal insulation. [m] */
export const insulationFactors: Table<readonly (readonly [length: number, factor: number])[]> = {
  source: "BS-7671-INSULATION",
  certainty: "from-memory",
  rows: [
    [0, 1],
    [0.05, 0.88],
    [0.1, 0.78],
    [0.2, 0.63],
    [0.4, 0.51],
    [0.5, 0.5],
  ],
};

/** Factor by third harmonic, up to and including a share of the line current, and the conductor that then decides. */
export const harmonicFactors: Table<
  readonly { readonly upTo: number; readonly factor: number; readonly decides: "line" | "neutral" }[]
> = {
  source: "IEC-60364-5-52-HARMONICS",
  certainty: "from-memory",
  rows: [
    { upTo: 0.15, factor: 1, decides: "line" },
    { upTo: 0.33, factor: 0.86, decides: "line" },
    { upTo: 0.45, factor: 0.86, decides: "neutral" },
    { upTo: Number.POSITIVE_INFINITY, factor: 1, decides: "neutral" },
  ],
};

/** Smallest copper section by use. [mm²] */
export const smallestSections: Table<{
  readonly lighting: number;
  readonly signalling: number;
  readonly lightingUk: number;
}> = {
  source: "IEC-60364-5-52-SECTION",
  certainty: "from-memory",
  rows: { lighting: 1.5, signalling: 0.5, lightingUk: 1.0 },
};
