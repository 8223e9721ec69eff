import type { Source } from "./entry.ts";

export const geometrySources = {} as const satisfies Record<string, Source>;
