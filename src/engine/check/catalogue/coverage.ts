import type { CatalogueEntry } from "./entry.ts";

export const coverageProblems = {} as const satisfies Record<string, CatalogueEntry>;
