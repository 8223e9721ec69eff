import type { Problem, RulePack } from "#engine";
import { readRulePack } from "./read-rule-pack.ts";

/**
 * Reads several packs of one's own, as the texts of their files.
 *
 * @param texts - Files. @param taken - Codes that are taken, such as those of the shipped packs.
 * @returns What could be read, each code once, and what is wrong with the rest.
 * @example The same file twice: one pack, and the problem that its code is taken
 */
export function readRulePacks(
  texts: readonly string[],
  taken: readonly string[],
): { readonly packs: readonly RulePack[]; readonly problems: readonly Problem[] } {
  const packs: RulePack[] = [];
  const problems: Problem[] = [];
  const codes = new Set(taken);
  for (const text of texts) {
    const read = readRulePack(text);
    if ("problems" in read) problems.push(...read.problems);
    else if (codes.has(read.pack.code))
      problems.push({ code: "rule-pack-taken", values: { code: read.pack.code } });
    else {
      codes.add(read.pack.code);
      packs.push(read.pack);
    }
  }
  return { packs, problems };
}
