import type { CatalogueEntry } from "./entry.ts";

export const placementProblems = {} as const satisfies Record<string, CatalogueEntry>;
