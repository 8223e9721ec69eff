import { controlSources } from "./control.ts";
import { daySources } from "./day.ts";
import { detectionSources } from "./detection.ts";
import { exchangeSources } from "./exchange.ts";
import { faultSources } from "./faults.ts";
import { geometrySources } from "./geometry.ts";
import { paperSources } from "./papers.ts";
import { placementSources } from "./placement.ts";
import { practiceSources } from "./practice.ts";
import { ruleSources } from "./rules.ts";
import { siteTestSources } from "./site-test.ts";
import { wiringSources } from "./wiring.ts";

export type { Source } from "./entry.ts";

const all = {
  ...practiceSources,
  ...detectionSources,
  ...controlSources,
  ...daySources,
  ...geometrySources,
  ...placementSources,
  ...exchangeSources,
  ...wiringSources,
  ...paperSources,
  ...ruleSources,
  ...siteTestSources,
  ...faultSources,
} as const;

/** Permanent name of a source that a number, formula or check refers to. */
export type SourceId = keyof typeof all;

/** The register: every standard, handbook, paper or practice that numbers come from. SOURCES.md is printed from it. */
export const sources: Readonly<Record<SourceId, import("./entry.ts").Source>> = all;
