import { english, type Problem, say, type Words } from "#engine";
import type { UnitProposal } from "../linework/linework.ts";
import type { DeclaredUnit } from "./declared-unit.ts";
import type { Letters } from "./letters.ts";
import type { PuttingNotes } from "./put.ts";
import type { Sections } from "./sections.ts";
import { because, type Tally } from "./tally.ts";

/** What was read but is worth a look. */
export function notesOf(reading: {
  readonly sections: Sections;
  readonly letters: Letters;
  readonly counts: Tally;
  readonly put: PuttingNotes;
  readonly unit: UnitProposal;
  readonly declared: DeclaredUnit | undefined;
  readonly parts: number;
}): readonly Problem[] {
  const { sections, letters, counts, put, unit, declared } = reading;
  const notes: Problem[] = [];
  if (!sections.ended) notes.push({ code: "dxf-no-end-mark", values: {} });
  if (!letters.known) notes.push({ code: "dxf-code-page-unknown", values: { page: letters.page } });
  for (const block of put.loops) notes.push({ code: "dxf-block-loop", values: { block } });
  if (put.missing.size > 0)
    notes.push({
      code: "dxf-block-missing",
      values: { count: put.missing.size, blocks: someOf(put.missing) },
    });
  if (put.elsewhere.size > 0)
    notes.push({
      code: "dxf-block-elsewhere",
      values: { count: put.elsewhere.size, blocks: someOf(put.elsewhere) },
    });
  const lost = [...counts.reasons.values()]
    .filter(({ why }) => english(why) === english(because.noPlace))
    .reduce((sum, { count }) => sum + count, 0);
  if (lost > 0) notes.push({ code: "dxf-without-place", values: { count: lost } });
  if (declared && unit.metres !== declared.metres)
    notes.push({
      code: "dxf-unit-doubted",
      values: { declared: declared.name, unit: unit.name },
    });
  if (reading.parts > 1) notes.push({ code: "dxf-several-parts", values: { count: reading.parts } });
  return notes;
}

/** A few names, for a sentence. */
const someOf = (names: ReadonlySet<string>): Words => {
  const few = [...names].slice(0, 3).map((name) => `“${name.slice(0, 60)}”`);
  const told = few.join(", ");
  return names.size > few.length ? say`${told} and others` : told;
};
