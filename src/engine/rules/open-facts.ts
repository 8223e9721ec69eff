import type { Check, Problem } from "../check/index.ts";
import type { RuleResult } from "./evaluate.ts";

/** Rooms that a sentence names before it only counts the rest. */
const MOST_ROOMS = 6;

/** What rules say of one room. */
export interface RoomResults {
  readonly room: string;
  /** Name on paper. */
  readonly title: string;
  readonly results: readonly RuleResult[];
}

/**
 * What keeps rules from being judged: one problem for each fact that is missing, with all rooms that miss it.
 *
 * @param rooms - Rooms with their results.
 * @returns Facts in the order in which they first came; nothing for rules that are kept or broken. Each rule gives its evidence once, of the first room.
 * @source DERIVED-HERE
 * @example Thirty rooms whose kind of space nobody said, ten rules each: one problem that names five rooms and counts the others
 */
export function openFacts(rooms: readonly RoomResults[]): readonly Problem[] {
  const facts = new Map<
    string,
    { readonly rooms: Map<string, string>; readonly rules: Map<string, Check> }
  >();
  for (const { room, title, results } of rooms)
    for (const { pack, rule, check, missing = [] } of results) {
      if (check.verdict !== "not-proven") continue;
      for (const name of missing) {
        const fact = facts.get(name) ?? { rooms: new Map(), rules: new Map() };
        fact.rooms.set(room, title);
        const key = `${pack} ${rule}`;
        if (!fact.rules.has(key)) fact.rules.set(key, check);
        facts.set(name, fact);
      }
    }
  return [...facts].map(([missing, fact]) => ({
    code: "rule-facts-missing",
    values: {
      missing: missing.charAt(0).toUpperCase() + missing.slice(1),
      rooms: named([...fact.rooms.values()]),
      count: fact.rules.size,
    },
    ...(fact.rooms.size === 1 ? { room: [...fact.rooms.keys()][0]! } : {}),
    records: [...fact.rooms.keys()],
    evidence: [...fact.rules.values()],
  }));
}

function named(titles: readonly string[]): string {
  const shown = titles.length > MOST_ROOMS ? titles.slice(0, MOST_ROOMS - 1) : titles;
  const rest = titles.length - shown.length;
  const all = rest > 0 ? [...shown, `${rest} more rooms`] : shown;
  return all.length < 2 ? (all[0] ?? "") : `${all.slice(0, -1).join(", ")} and ${all.at(-1)}`;
}
