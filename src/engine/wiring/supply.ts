import type { Problem } from "../check/index.ts";
import type { Supply } from "./model.ts";

/** Supplies that the program covers: region, voltage to neutral, frequency. */
export const coveredSupplies = [
  { region: "IEC", voltage: 230, frequency: 50 },
  { region: "US", voltage: 120, frequency: 60 },
  { region: "US", voltage: 277, frequency: 60 },
] as const;

/**
 * What speaks against calculating with a supply.
 *
 * @param supply - What comes in.
 * @returns Problems: IT systems, no neutral, or a voltage that is not covered. Empty: go on.
 * @example 230 V, 50 Hz, TN-S with neutral: none
 */
export function supplyProblems(supply: Supply): readonly Problem[] {
  const { voltage, frequency } = supply;
  const covered = coveredSupplies.some(
    (known) => known.region === supply.region && known.voltage === voltage && known.frequency === frequency,
  );
  return [
    ...(supply.system === "IT" ? [{ code: "supply-it-system", values: {} } as const] : []),
    ...(supply.neutral === "no" ? [{ code: "supply-without-neutral", values: {} } as const] : []),
    ...(covered ? [] : [{ code: "supply-not-known", values: { voltage, frequency } } as const]),
  ];
}
