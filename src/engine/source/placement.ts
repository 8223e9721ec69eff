import type { Source } from "./entry.ts";

export const placementSources = {} as const satisfies Record<string, Source>;
