import { commandLineProblems } from "./command-line.ts";
import { controlProblems } from "./control.ts";
import { coverageProblems } from "./coverage.ts";
import type { CatalogueEntry } from "./entry.ts";
import { exchangeProblems } from "./exchange.ts";
import { jobProblems } from "./job.ts";
import { jobArchiveProblems } from "./job-archive.ts";
import { logProblems } from "./logs.ts";
import { outputProblems } from "./output.ts";
import { placementProblems } from "./placement.ts";
import { planFileProblems } from "./plan-files.ts";
import { planRoomProblems } from "./plan-rooms.ts";
import { priceListProblems } from "./price-lists.ts";
import { programProblems } from "./program.ts";
import { ruleProblems } from "./rules.ts";
import { settingProblems } from "./settings.ts";
import { siteProblems } from "./site.ts";
import { siteTestProblems } from "./site-test.ts";
import { wiringProblems } from "./wiring.ts";
import { wiringRuleProblems } from "./wiring-rules.ts";

export type { CatalogueEntry } from "./entry.ts";

const all = {
  ...siteProblems,
  ...coverageProblems,
  ...controlProblems,
  ...ruleProblems,
  ...settingProblems,
  ...placementProblems,
  ...jobProblems,
  ...jobArchiveProblems,
  ...exchangeProblems,
  ...planFileProblems,
  ...planRoomProblems,
  ...logProblems,
  ...priceListProblems,
  ...outputProblems,
  ...programProblems,
  ...commandLineProblems,
  ...wiringProblems,
  ...wiringRuleProblems,
  ...siteTestProblems,
} as const;

/** Permanent code of a problem; codes are never reused. */
export type ProblemCode = keyof typeof all;

/** Every problem that the program can report. */
export const catalogue: Readonly<Record<ProblemCode, CatalogueEntry>> = all;
