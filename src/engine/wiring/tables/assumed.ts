import type { Table } from "./table.ts";

/**
 * Power factor of a load of which nobody declared one: the usual one shows a current, and nothing passes that would not
 * pass by the worst too.
 */
export const assumedPowerFactor: Table<{ readonly usual: number; readonly worst: number }> = {
  source: "ASSUMED-POWER-FACTOR",
  certainty: "common-practice",
  rows: { usual: 0.8, worst: 0.4 },
};

/** Drop on the way to a board that nobody has measured, as a share of the voltage: enough to fail by, never to pass by. */
export const assumedDropUsed: Table<number> = {
  source: "COMMON-PRACTICE",
  certainty: "common-practice",
  rows: 0.01,
};
