import type { Calculated } from "../contract.ts";

/** What is known before anything was calculated. */
export const nothingCalculated: Calculated = {
  revision: 0,
  busy: false,
  rooms: new Map(),
  zones: new Map(),
  findings: [],
  trouble: undefined,
};
