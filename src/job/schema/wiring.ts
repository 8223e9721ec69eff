import * as z from "zod";
import { id, kept, point, words } from "./values.ts";

/** How far something is known: nothing is guessed, and what is not known stays so until somebody looked. */
const known = z.enum(["yes", "no", "unknown"]);
/** Where a reading comes from. */
const origin = z.enum(["measured", "assumed", "to-be-measured"]);
const positive = z.number().positive().max(1_000_000);

export const supplySystems = ["TN-S", "TN-C-S", "TN-C", "TT", "IT", "unknown"] as const;
export const breakerTypes = ["B", "C", "D", "fuse-gG", "unknown"] as const;

/** A distribution board as found: what the circuits behind it start from. */
export const board = kept({
  id,
  name: words.default(""),
  storey: id.optional(),
  at: point.optional(),
  system: z.enum(supplySystems).default("unknown"),
  /** Line to neutral. [V] */
  voltage: positive.optional(),
  /** Impedance of the fault loop at the board. [Ω] */
  loopImpedance: positive.optional(),
  /** Prospective fault current at the board. [A] */
  faultCurrent: positive.optional(),
  /** Voltage drop already used up to the board, as a share of the nominal voltage. */
  dropUsed: z.number().min(0).max(1).optional(),
  readings: origin.default("to-be-measured"),
});

/** A lighting circuit as found. */
export const circuit = kept({
  id,
  board: id.optional(),
  name: words.default(""),
  breaker: z.enum(breakerTypes).default("unknown"),
  /** Rated current of the protective device. [A] */
  rating: positive.optional(),
  /** Rated residual current of the RCD; absent where there is none or nobody looked, see `rcd`. [A] */
  residualCurrent: positive.optional(),
  rcd: known.default("unknown"),
  protectiveConductor: known.default("unknown"),
  neutralAtSwitch: known.default("unknown"),
  twoWay: known.default("unknown"),
  sharedNeutral: known.default("unknown"),
  oldColours: known.default("unknown"),
  driversKnown: known.default("unknown"),
  remark: words.default(""),
});

/** What one asks on the telephone, and what must be known of the house before somebody drills. */
export const visit = kept({
  yearBuilt: z.number().int().min(1000).max(3000).optional(),
  complaint: z.string().max(20_000).optional(),
  contact: words.optional(),
  access: words.optional(),
  /** Register of asbestos seen: until "none" or "seen", setting-out sheets carry a warning. */
  asbestosRegister: z.enum(["none", "seen", "not-seen"]).optional(),
  asbestosRemark: words.optional(),
});
