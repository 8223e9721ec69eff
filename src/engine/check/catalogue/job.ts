import type { CatalogueEntry } from "./entry.ts";

export const jobProblems = {} as const satisfies Record<string, CatalogueEntry>;
