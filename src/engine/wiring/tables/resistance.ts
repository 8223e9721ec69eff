import type { OhmsPerMetre, SquareMillimetres } from "../../quantity/index.ts";
import type { Table } from "./table.ts";

export type ConductorMaterial = "copper" | "aluminium";
export type ConductorClass = "solid" | "flexible";

type Resistances = Readonly<Record<SquareMillimetres, OhmsPerMetre>>;

const perKilometre = (rows: Readonly<Record<number, number>>): Resistances =>
  Object.fromEntries(Object.entries(rows).map(([section, ohms]) => [section, ohms / 1000]));

/** Largest resistance at 20 °C, plain copper classes 1 and 2 ("solid") and 5 ("flexible"), aluminium. [Ω/m] */
export const resistanceAt20: Table<{
  readonly copper: Readonly<Record<ConductorClass, Resistances>>;
  readonly tinned: Resistances;
  readonly aluminium: Resistances;
}> = {
  source: "IEC-60228",
  certainty: "seen",
  rows: {
    copper: {
      solid: perKilometre({
        0.5: 36.0,
        0.75: 24.5,
        1: 18.1,
        1.5: 12.1,
        2.5: 7.41,
        4: 4.61,
        6: 3.08,
        10: 1.83,
        16: 1.15,
      }),
      flexible: perKilometre({
        0.5: 39.0,
        0.75: 26.0,
        1: 19.5,
        1.5: 13.3,
        2.5: 7.98,
        4: 4.95,
        6: 3.3,
        10: 1.91,
        16: 1.21,
      }),
    },
    tinned: perKilometre({
      0.5: 36.7,
      0.75: 24.8,
      1: 18.2,
      1.5: 12.2,
      2.5: 7.56,
      4: 4.7,
      6: 3.11,
      10: 1.84,
      16: 1.16,
    }),
    aluminium: perKilometre({ 10: 3.08, 16: 1.91 }),
  },
};

/** Temperature coefficient of resistance at 20 °C. [1/K] */
export const temperatureCoefficient: Table<Readonly<Record<ConductorMaterial, number>>> = {
  source: "FROM-MEMORY",
  certainty: "from-memory",
  rows: { copper: 0.00393, aluminium: 0.00403 },
};

/** Resistivity in normal service, 1.25 × that at 20 °C [Ω·mm²/m], and reactance per length where it is unknown [Ω/m]. */
export const inService: Table<{
  readonly resistivity: Readonly<Record<ConductorMaterial, number>>;
  readonly reactance: OhmsPerMetre;
}> = {
  source: "IEC-60364-5-52-DROP",
  certainty: "from-memory",
  rows: { resistivity: { copper: 0.0225, aluminium: 0.036 }, reactance: 0.00008 },
};

/** Copper, two-core 70 °C thermoplastic: voltage drop by the tabulated method. [V/(A·m)] */
export const tabulatedDrop: Table<{
  readonly "single-phase": Readonly<Record<SquareMillimetres, number>>;
  readonly "three-phase": Readonly<Record<SquareMillimetres, number>>;
}> = {
  source: "BS-7671-4D",
  // 1.0 to 10 mm² single phase were seen; 16 mm² and the three-phase column are remembered.
  certainty: "from-memory",
  rows: {
    "single-phase": perKilometre({ 1: 44, 1.5: 29, 2.5: 18, 4: 11, 6: 7.3, 10: 4.4, 16: 2.8 }),
    "three-phase": perKilometre({ 1: 38, 1.5: 25, 2.5: 15, 4: 9.5, 6: 6.4, 10: 3.8, 16: 2.4 }),
  },
};

/** Cold to working temperature of the conductor, 20 → 70 °C, as the rule of the trade has it. */
export const warmFactor: Table<number> = { source: "FROM-MEMORY", certainty: "from-memory", rows: 1.2 };

/** Limits of the voltage drop from the origin, as a share of the voltage, and the supplement of long wiring. */
export const dropLimits: Table<{
  readonly public: { readonly lighting: number; readonly other: number };
  readonly private: { readonly lighting: number; readonly other: number };
  readonly supplement: { readonly beyond: number; readonly perMetre: number; readonly most: number };
}> = {
  source: "IEC-60364-5-52-DROP",
  certainty: "from-memory",
  rows: {
    public: { lighting: 0.03, other: 0.05 },
    private: { lighting: 0.06, other: 0.08 },
    supplement: { beyond: 100, perMetre: 0.00005, most: 0.005 },
  },
};
