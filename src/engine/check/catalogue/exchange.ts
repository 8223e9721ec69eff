import type { CatalogueEntry } from "./entry.ts";

export const exchangeProblems = {} as const satisfies Record<string, CatalogueEntry>;
