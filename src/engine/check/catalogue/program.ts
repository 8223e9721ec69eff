import type { CatalogueEntry } from "./entry.ts";

export const programProblems = {} as const satisfies Record<string, CatalogueEntry>;
