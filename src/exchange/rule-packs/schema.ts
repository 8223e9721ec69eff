import * as z from "zod";
import { type RuleMeasure, ruleMeasures, ruleSpaces } from "#engine";

const words = z.string().trim().min(1).max(300);
const code = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "lower-case words joined by hyphens")
  .max(60);
const amount = z.number().min(0).max(1e9);
const measure = z.enum(Object.keys(ruleMeasures) as [RuleMeasure, ...RuleMeasure[]]);

const predicate = z
  .strictObject({
    spaces: z.array(z.enum(ruleSpaces)).min(1),
    areaAbove: amount.describe("m²"),
    areaFrom: amount.describe("m²"),
    areaBelow: amount.describe("m²"),
    areaUpTo: amount.describe("m²"),
    plantAbove: amount.describe("W"),
    plantUpTo: amount.describe("W"),
    from: z.iso.date().describe("YYYY-MM-DD"),
  })
  .partial();

const rule = z.strictObject({
  code,
  clause: words,
  title: words,
  when: predicate.describe("Every part that is given must hold; empty: always"),
  limit: z.union([z.strictObject({ measure, most: amount }), z.strictObject({ measure, least: amount })]),
});

/** A firm's own pack, as its file holds it. Seconds, square metres, watts. */
export const rulePackSchema = z.strictObject({
  format: z.literal("roomwake-rules"),
  version: z.literal(1),
  code,
  title: words,
  jurisdiction: words,
  edition: words,
  rules: z.array(rule).min(1).max(500),
});
