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
  cost: z.number().min(0).max(1_000_000).default(1),
  demo: z.boolean().optional(),
});
