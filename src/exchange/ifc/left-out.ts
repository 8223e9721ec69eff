import { english, type Words } from "#engine";
import type { LeftOut } from "../survey.ts";

/** Counts what was not read, by what it was and why. */
export interface LeftOutList {
  add(what: Words, why: Words): void;
  list(): readonly LeftOut[];
}

/** A new, empty list. */
export function leftOutList(): LeftOutList {
  const counts = new Map<string, LeftOut>();
  return {
    add: (what, why) => {
      const key = `${english(what)}\u0000${english(why)}`;
      counts.set(key, { what, why, count: (counts.get(key)?.count ?? 0) + 1 });
    },
    list: () => [...counts.values()],
  };
}
