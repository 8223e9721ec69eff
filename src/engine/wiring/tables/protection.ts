import type { Amperes, Seconds, Volts } from "../../quantity/index.ts";
import type { Insulation } from "./capacity.ts";
import type { ConductorMaterial } from "./resistance.ts";
import type { Table } from "./table.ts";

export type BreakerType = "B" | "C" | "D";

/** Instantaneous band of a breaker as multiples of its rating: it may trip from `least`, and surely trips at `most`. */
export const tripBands: Table<
  Readonly<Record<BreakerType, { readonly least: number; readonly most: number }>>
> = {
  source: "IEC-60898-1",
  certainty: "seen",
  rows: { B: { least: 3, most: 5 }, C: { least: 5, most: 10 }, D: { least: 10, most: 20 } },
};

/** Current at which such a breaker surely trips within an hour, as a multiple of its rating. */
export const conventionalTrip: Table<{ readonly none: number; readonly sure: number }> = {
  source: "IEC-60898-1",
  certainty: "from-memory",
  rows: { none: 1.13, sure: 1.45 },
};

/** Longest disconnection time of final circuits by voltage to earth, upper edge included [V], and of distribution circuits. [s] */
export const disconnectionTimes: Table<{
  readonly final: readonly {
    readonly above: Volts;
    readonly upTo: Volts;
    readonly TN: Seconds;
    readonly TT: Seconds;
  }[];
  readonly distribution: { readonly TN: Seconds; readonly TT: Seconds };
  readonly finalUpTo: { readonly fixed: Amperes; readonly sockets: Amperes };
}> = {
  source: "IEC-60364-4-41",
  certainty: "seen",
  rows: {
    final: [
      { above: 50, upTo: 120, TN: 0.8, TT: 0.3 },
      { above: 120, upTo: 230, TN: 0.4, TT: 0.2 },
      { above: 230, upTo: 400, TN: 0.2, TT: 0.07 },
      { above: 400, upTo: Number.POSITIVE_INFINITY, TN: 0.1, TT: 0.04 },
    ],
    distribution: { TN: 5, TT: 1 },
    finalUpTo: { fixed: 32, sockets: 63 },
  },
};

type Factors = Readonly<Record<Insulation, number>>;

/** Factor k of the adiabatic equation. [A·√s/mm²] */
export const adiabaticFactors: Table<{
  readonly line: Readonly<Record<ConductorMaterial, Factors>>;
  readonly separateProtective: Factors;
  readonly protectiveCore: Factors;
}> = {
  source: "IEC-60364-4-43",
  certainty: "from-memory",
  rows: {
    line: { copper: { PVC: 115, XLPE: 143 }, aluminium: { PVC: 76, XLPE: 94 } },
    separateProtective: { PVC: 143, XLPE: 176 },
    protectiveCore: { PVC: 115, XLPE: 143 },
  },
};

/** Highest touch voltage of a TT installation [V], and the earth resistance above which it is called unreliable. [Ω] */
export const touchVoltage: Table<{ readonly most: Volts; readonly unreliable: number }> = {
  source: "IEC-60364-4-41",
  certainty: "seen",
  rows: { most: 50, unreliable: 200 },
};

/** Share of the rated residual current that may stand all the time, and the share from which it may trip. */
export const leakageShares: Table<{ readonly standing: number; readonly mayTrip: number }> = {
  source: "LEAKAGE-SHARE",
  certainty: "seen",
  rows: { standing: 0.3, mayTrip: 0.5 },
};

/** Protective-conductor current of a luminaire of class I that nobody has declared: the most that its standard allows. [A] */
export const unknownLeakage: Table<Amperes> = { source: "IEC-60598-1", certainty: "seen", rows: 0.0035 };

/** Protective-conductor current above which the conductor must be of high integrity. [A] */
export const highIntegrity: Table<Amperes> = { source: "BS-7671-543-7", certainty: "seen", rows: 0.01 };
