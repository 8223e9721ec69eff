import * as z from "zod";
import { degrees, extent, id, kept, length, metres, seconds, words } from "./values.ts";

export const declarations = ["standard-test", "data-sheet", "measured-on-site", "assumed"] as const;

const roundRow = kept({ height: extent, radius: extent });
const polarRow = kept({
  height: extent,
  outline: z
    .array(z.tuple([degrees, length]))
    .min(3)
    .max(720),
});
const rows = z.array(z.union([roundRow, polarRow])).min(1);

const lens = kept({
  shape: z.enum(["dome", "flat"]),
  rings: z.array(kept({ offNadir: degrees, facets: z.number().int().min(1).max(1000) })).default([]),
  sectors: z.number().int().min(1).max(360).optional(),
  radius: extent.optional(),
  elementOffset: metres.optional(),
});

export const loadKinds = ["resistive", "incandescent", "fluorescent", "led", "inductive"] as const;
export const fixings = ["box", "surface", "ceiling-panel"] as const;
export const outputKinds = ["switch", "two-level", "dimming-broadcast", "addressed-bus"] as const;
export const contactKinds = ["relay", "potential-free", "electronic"] as const;
export const terminalKinds = [
  "line-in",
  "neutral",
  "switched-line",
  "protective-conductor",
  "push-button",
  "extension-in",
  "extension-out",
  "control-plus",
  "control-minus",
] as const;

const quantity = z.number().positive().max(1_000_000);
const count = z.number().int().positive().max(100_000_000);
const byLoad = kept({
  resistive: quantity.optional(),
  incandescent: quantity.optional(),
  fluorescent: quantity.optional(),
  led: quantity.optional(),
  inductive: quantity.optional(),
});

/** The switched output as declared: amperes, watts, seconds, farads. */
const contact = kept({
  kind: z.enum(contactKinds).default("relay"),
  rated: byLoad.default({}),
  ratedPower: byLoad.optional(),
  makingPeak: quantity.optional(),
  makingWidth: quantity.optional(),
  makingIntegral: quantity.optional(),
  drivers: count.optional(),
  capacitance: quantity.optional(),
  life: count.optional(),
  zeroCross: z.boolean().optional(),
  backUp: quantity.optional(),
  joined: count.optional(),
  openLeakage: quantity.optional(),
});

const inputs = kept({
  pushButton: z.enum(["line", "neutral"]).optional(),
  holdOff: quantity.optional(),
  extension: z.boolean().optional(),
});

/** The data sheet of a detector on disk: metres, degrees from its notch. What is not known stays absent. */
export const model = kept({
  id,
  title: words.default(""),
  mounting: kept({ min: extent, max: extent }).default({ min: 2, max: 5 }),
  zones: kept({
    seated: rows.optional(),
    towards: rows.optional(),
    across: rows.optional(),
    sound: rows.optional(),
  }),
  declaration: z.enum(declarations).default("assumed"),
  declaredBy: words.default(""),
  onset: length.optional(),
  response: seconds.optional(),
  warmUp: seconds.optional(),
  deliveryState: words.optional(),
  lens: lens.optional(),
  cutOut: extent.optional(),
  fixing: z.enum(fixings).optional(),
  otherFixings: z.array(z.enum(fixings)).max(fixings.length).optional(),
  cableEntry: z.enum(["back", "side", "either"]).optional(),
  entrySeal: z.enum(["none", "grommet", "gland"]).optional(),
  indicators: z
    .array(kept({ sign: words, meaning: words }))
    .max(50)
    .optional(),
  depth: extent.optional(),
  ceilingThickness: kept({ min: length, max: extent }).optional(),
  waterProtection: z.number().int().min(0).max(9).optional(),
  /** low-voltage: fed by a relay pack; mains if absent. What it draws from the pack [A]. */
  supply: z.enum(["mains", "low-voltage"]).optional(),
  supplyCurrent: z.number().positive().max(10).optional(),
  contact: contact.optional(),
  outputKinds: z.array(z.enum(outputKinds)).max(outputKinds.length).optional(),
  terminals: z.array(z.enum(terminalKinds)).max(20).optional(),
  inputs: inputs.optional(),
  warmUpOutput: z.enum(["on", "off"]).optional(),
  standby: z.number().min(0).max(1000).optional(),
  leakage: z.number().min(0).max(10).optional(),
  cost: z.number().min(0).max(1_000_000).default(1),
  demo: z.boolean().optional(),
});
