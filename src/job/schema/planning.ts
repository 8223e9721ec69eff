import * as z from "zod";
import { dwellKinds } from "./records.ts";
import { extent, kept, length, seconds, share } from "./values.ts";

const maybe = <Schema extends z.ZodType>(names: readonly string[], schema: Schema) =>
  Object.fromEntries(names.map((name) => [name, schema.optional()]));

const margin = maybe(["seated", "towards", "across", "spill"], share);
const sightHeights = maybe(["walking", ...dwellKinds], length);
const clearances = maybe(
  ["wall", "wallLeast", "luminaireFlush", "luminaireHot", "airOutlet", "heater", "smokeHead"],
  length,
);

type Some<Names extends string> = { readonly [Name in Names]?: number | undefined };

/** The planning numbers that this job sets otherwise than the program; what is absent follows the program. */
export const planning = kept({
  margin: kept(margin).optional(),
  bodyRadius: extent.optional(),
  seatedRadius: extent.optional(),
  sightHeights: kept(sightHeights).optional(),
  speed: extent.optional(),
  onset: length.optional(),
  response: seconds.optional(),
  lampStart: seconds.optional(),
  darkWalkLimit: length.optional(),
  stairLead: length.optional(),
  gapArea: length.optional(),
  gapShare: share.optional(),
  spacing: extent.optional(),
  clearances: kept(clearances).optional(),
});

const keptFile = kept({ file: z.string().max(300), text: z.string().max(2_000_000) });
const packCodes = z.array(z.string().max(100)).max(200);

/** Who the job is for and who drew it; printed in the title block. */
export const details = kept({
  client: z.string().max(2_000).optional(),
  site: z.string().max(2_000).optional(),
  drawnBy: z.string().max(2_000).optional(),
  checkedBy: z.string().max(2_000).optional(),
  date: z.string().max(100).optional(),
  revision: z.string().max(100).optional(),
  currency: z.string().max(20).optional(),
  region: z.string().max(100).optional(),
  /** Rated output of heating and air conditioning of the building. [W] */
  plantPower: z.number().min(0).max(1e9).optional(),
  /** Packs of rules, by code, that a person switched on or off; the others follow the region. */
  rulesOn: packCodes.optional(),
  rulesOff: packCodes.optional(),
  /** The firm's price list, and the lines of the quote that was accepted, as their files read. */
  priceList: keptFile.optional(),
  acceptedQuote: keptFile.optional(),
  /** Terms of the quote that hold in this job before those of the price list: an hour, shares, days. */
  quoteTerms: kept({
    hour: z.number().min(0).max(1_000_000).optional(),
    overhead: z.number().min(0).max(10).optional(),
    tax: z.number().min(0).max(10).optional(),
    validity: z.number().int().min(1).max(3650).optional(),
  }).optional(),
  /** Whom the people in the rooms call; printed on their cards. */
  call: z.string().max(300).optional(),
  /** Code by which only a sample of the detectors is tested; absent: all of them. */
  sampling: z.enum(["iecc", "title-24"]).optional(),
  /** From one periodic inspection of the installation to the next. [a] */
  inspectionYears: z.number().min(0.5).max(40).optional(),
  /** A firm's own packs, each as the text of its file. */
  ownRules: z.array(z.string().max(500_000)).max(50).optional(),
});

export interface JobPlanning {
  readonly margin?: Some<"seated" | "towards" | "across" | "spill">;
  readonly bodyRadius?: number;
  readonly seatedRadius?: number;
  readonly sightHeights?: Some<"walking" | (typeof dwellKinds)[number]>;
  readonly speed?: number;
  readonly onset?: number;
  readonly response?: number;
  readonly lampStart?: number;
  readonly darkWalkLimit?: number;
  readonly stairLead?: number;
  readonly gapArea?: number;
  readonly gapShare?: number;
  readonly spacing?: number;
  readonly clearances?: Some<
    "wall" | "wallLeast" | "luminaireFlush" | "luminaireHot" | "airOutlet" | "heater" | "smokeHead"
  >;
}
