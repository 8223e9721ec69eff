import type { Source } from "./entry.ts";

export const detectionSources = {} as const satisfies Record<string, Source>;
