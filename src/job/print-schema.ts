import { writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import * as z from "zod";
import { correctedDemoJob, demoJob } from "./demo/demo-job.ts";
import { jobFileSchema } from "./schema/job-file.ts";
import { model } from "./schema/model.ts";
import { jobText } from "./text/job-text.ts";

const schema = (title: string, of: z.ZodType): string =>
  `${JSON.stringify({ title, ...z.toJSONSchema(of, { io: "input" }) }, undefined, 2)}\n`;

/** Files of the repository that are printed from code, with what they must hold; `tsx src/job/print-schema.ts` writes them. */
export const printedFiles: Readonly<Record<string, () => string>> = {
  "docs/job.schema.json": () => schema("Roomwake job", jobFileSchema),
  "docs/detector-model.schema.json": () => schema("Data sheet of a detector", model),
  "examples/saltmarsh.job.json": () => jobText(demoJob()),
  "examples/saltmarsh-corrected.job.json": () => jobText(correctedDemoJob()),
};

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  for (const [path, text] of Object.entries(printedFiles))
    writeFileSync(new URL(`../../${path}`, import.meta.url), text());
