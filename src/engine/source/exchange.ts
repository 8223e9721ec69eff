import type { Source } from "./entry.ts";

export const exchangeSources = {} as const satisfies Record<string, Source>;
