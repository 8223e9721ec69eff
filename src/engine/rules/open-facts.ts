import { type Check, english, first, joined, type Problem, type Said, say } from "../check/index.ts";
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
    { readonly missing: Said; readonly rooms: Map<string, string>; readonly rules: Map<string, Check> }
  >();
  for (const { room, title, results } of rooms)
    for (const { pack, rule, check, missing = [] } of results) {
      if (check.verdict !== "not-proven") continue;
      for (const name of missing) {
        const fact = facts.get(english(name)) ?? { missing: name, rooms: new Map(), rules: new Map() };
        fact.rooms.set(room, title);
        const key = `${pack} ${rule}`;
        if (!fact.rules.has(key)) fact.rules.set(key, check);
        facts.set(english(name), fact);
      }
    }
  return [...facts.values()].map((fact) => ({
    code: "rule-facts-missing",
    values: {
      missing: first(fact.missing),
      rooms: named([...fact.rooms.values()]),
      count: fact.rules.size,
    },
    ...(fact.rooms.size === 1 ? { room: [...fact.rooms.keys()][0]! } : {}),
    records: [...fact.rooms.keys()],
    evidence: [...fact.rules.values()],
  }));
}

function named(titles: readonly string[]): Said {
  const shown = titles.length > MOST_ROOMS ? titles.slice(0, MOST_ROOMS - 1) : titles;
  const rest = titles.length - shown.length;
  if (rest > 0) return say`${shown.join(", ")} and ${rest} more rooms`;
  return shown.length < 2 ? joined(shown, "") : say`${shown.slice(0, -1).join(", ")} and ${shown.at(-1)!}`;
}
