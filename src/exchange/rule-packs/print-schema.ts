import { writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import * as z from "zod";
import { rulePackSchema } from "./schema.ts";

/** What docs/rule-pack.schema.json holds; `tsx src/exchange/rule-packs/print-schema.ts` writes it. */
export const printedRulePackSchema = (): string =>
  `${JSON.stringify({ title: "A firm's own rules for lighting control", ...z.toJSONSchema(rulePackSchema, { io: "input" }) }, undefined, 2)}\n`;

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  writeFileSync(new URL("../../../docs/rule-pack.schema.json", import.meta.url), printedRulePackSchema());
