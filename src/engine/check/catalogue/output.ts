import type { CatalogueEntry } from "./entry.ts";

export const outputProblems = {} as const satisfies Record<string, CatalogueEntry>;
