import { type Said, say } from "../check/index.ts";
import type { Amperes, Celsius, Metres, Share, SquareMillimetres } from "../quantity/index.ts";
import {
  type Arrangement,
  ambientFactors,
  capacities,
  groupingFactors,
  harmonicFactors,
  hottest,
  type InstallationMethod,
  type Insulation,
  insulationFactors,
  type LoadedConductors,
} from "./tables/capacity.ts";
import {
  ampacities,
  conductorCountFactors,
  type Gauge,
  necAmbientFactors,
  smallConductorDevice,
} from "./tables/united-states.ts";

/** Current-carrying capacity with every factor that went into it, or why there is none. */
export type Capacity =
  | {
      readonly kind: "capacity";
      /** Iz. [A] */
      readonly value: Amperes;
      readonly tabulated: Amperes;
      readonly ambient: number;
      readonly grouping: number;
      readonly insulation: number;
      readonly harmonic: number;
    }
  | { readonly kind: "unknown"; readonly why: Said };

/**
 * Current-carrying capacity of copper conductors in a building.
 *
 * Iz = It · Ca · Cg · Ci, and the factor of third harmonics
 *
 * @param cable - Section [mm²], insulation, loaded conductors, method, ambient [°C], grouping, length in insulation [m], third harmonic.
 * @returns Capacity with its factors; "unknown" outside the tables.
 * @source IEC-60364-5-52-CAPACITY, IEC-60364-5-52-AMBIENT, IEC-60364-5-52-GROUPING
 * @example 1.5 mm² PVC clipped direct at 40 °C, three circuits bunched: 19.5 · 0.87 · 0.70 = 11.8755 A
 */
export function currentCarryingCapacity(cable: {
  readonly section: SquareMillimetres;
  readonly material: "copper" | "aluminium";
  readonly insulation: Insulation;
  readonly loaded: LoadedConductors;
  readonly method: InstallationMethod;
  readonly ambient: Celsius;
  readonly grouping: { readonly arrangement: Arrangement; readonly circuits: number };
  readonly inInsulation?: Metres;
  readonly thirdHarmonic?: Share;
}): Capacity {
  if (cable.material !== "copper")
    return { kind: "unknown", why: say`No capacities of aluminium are on record` };
  const tabulated = capacities.rows[cable.insulation][cable.loaded][cable.section]?.[cable.method];
  if (tabulated === undefined)
    return { kind: "unknown", why: say`No capacity for ${cable.section} mm² is on record` };
  const ambient = ambientFactor(cable.insulation, cable.ambient);
  if (ambient === undefined)
    return { kind: "unknown", why: say`No factor for ${cable.ambient} °C is on record` };
  const grouping = groupingFactor(cable.grouping.arrangement, cable.grouping.circuits);
  if (grouping === undefined)
    return { kind: "unknown", why: say`No factor for ${cable.grouping.circuits} circuits is on record` };
  const insulation = insulationFactor(cable.inInsulation ?? 0);
  const harmonic = cable.loaded === 3 ? harmonicFactor(cable.thirdHarmonic ?? 0) : 1;
  return {
    kind: "capacity",
    value: tabulated * ambient * grouping * insulation * harmonic,
    tabulated,
    ambient,
    grouping,
    insulation,
    harmonic,
  };
}

/**
 * Factor by ambient temperature; between entries the next hotter counts.
 *
 * @param insulation - PVC or XLPE. @param ambient - Temperature of the air. [°C]
 * @returns Factor; undefined above the table.
 * @source IEC-60364-5-52-AMBIENT
 * @example PVC at 37 °C takes the entry of 40 °C: 0.87
 */
export const ambientFactor = (insulation: Insulation, ambient: Celsius): number | undefined =>
  ambientFactors.rows[insulation].find(([temperature]) => ambient <= temperature)?.[1];

/**
 * Factor by ambient temperature from the heat balance: the check of the table.
 *
 * Ca = √((Tmax − Ta) / (Tmax − 30))
 *
 * @param insulation - PVC or XLPE. @param ambient - Temperature of the air. [°C]
 * @returns Factor.
 * @source DERIVED-HERE
 * @example PVC at 30 °C: 1
 */
export const ambientFactorByHeat = (insulation: Insulation, ambient: Celsius): number =>
  Math.sqrt((hottest[insulation] - ambient) / (hottest[insulation] - 30));

/**
 * Factor by number of circuits; between listed counts the next higher.
 *
 * @param arrangement - How they lie. @param circuits - Circuits, not conductors, this one included.
 * @returns Factor; undefined beyond the table.
 * @source IEC-60364-5-52-GROUPING
 * @example Ten circuits bunched take the entry of twelve: 0.45
 */
export const groupingFactor = (arrangement: Arrangement, circuits: number): number | undefined =>
  groupingFactors.rows[arrangement].find(([count]) => circuits <= count)?.[1];

/** Factor by length inside thermal insulation; between entries the next longer. @param length [m] @source BS-7671-INSULATION @example 0.15 m → 0.63 */
export const insulationFactor = (length: Metres): number =>
  (insulationFactors.rows.find(([upTo]) => length <= upTo) ?? [0, 0.5])[1];

/** Factor by third harmonic: on the line up to 33 %, on a neutral that carries three times the harmonic above. @param share of the line current @source IEC-60364-5-52-HARMONICS @example 40 %: 0.86 / (3 · 0.4) */
export function harmonicFactor(share: Share): number {
  const row = harmonicFactors.rows.find(({ upTo }) => share <= upTo) ?? harmonicFactors.rows[0];
  const factor = row?.factor ?? 1;
  return row?.decides === "neutral" ? factor / (3 * share) : factor;
}

/**
 * Ampacity and largest overcurrent device of a small conductor, United States.
 *
 * @param conductor - Gauge, temperature rating of the terminals, current-carrying conductors together, ambient [°C].
 * @returns Ampacity with factors, and the device's limit [A]; undefined outside the tables.
 * @source NEC-310, NEC-240-4-D
 * @example 12 AWG, 75 °C, three conductors at 30 °C: 25 A, device at most 20 A
 */
export function ampacityOf(conductor: {
  readonly gauge: Gauge;
  readonly terminals: 60 | 75;
  readonly conductors: number;
  readonly ambient: Celsius;
}): { readonly ampacity: Amperes; readonly device: Amperes } | undefined {
  const row = ampacities.rows[conductor.gauge];
  const device = smallConductorDevice.rows[conductor.gauge];
  const count = conductorCountFactors.rows.find(([upTo]) => conductor.conductors <= upTo)?.[1];
  const ambient = necAmbientFactors.rows.find(([upTo]) => conductor.ambient <= upTo)?.[1];
  if (!row || device === undefined || count === undefined || ambient === undefined) return undefined;
  return { ampacity: row[conductor.terminals] * count * ambient, device };
}
