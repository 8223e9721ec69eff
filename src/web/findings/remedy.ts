import type { Finding, Site } from "#engine";
import type { EditStep, RecordKind, RecordOf } from "../contract.ts";
import type { TextKey } from "../texts/index.ts";

/** What a remedy button does. */
export type Remedy =
  | { readonly do: "place"; readonly word: TextKey; readonly room: string }
  | { readonly do: "edit"; readonly word: TextKey; readonly steps: readonly EditStep[] };

/** The ways to mend a finding that the program can take by itself; none where only a person knows. */
export type RemediesOf = (finding: Finding, site: Site) => readonly (Remedy | undefined)[];

/** The first record of a kind that a finding speaks of. */
export function recordIn<K extends RecordKind>(
  kind: K,
  finding: Finding,
  site: Site,
): RecordOf<K> | undefined {
  const records = site[kind] as readonly RecordOf<K>[];
  return finding.records
    .map((id) => records.find((record) => record.id === id))
    .find((record) => record !== undefined);
}

/** One change of one record's fields, as a remedy. */
export function setting<K extends RecordKind>(
  word: TextKey,
  change: { readonly kind: K; readonly id: string; readonly fields: Partial<RecordOf<K>> },
): Remedy {
  return { do: "edit", word, steps: [{ do: "set", ...change } as unknown as EditStep] };
}

export const removing = (word: TextKey, kind: RecordKind, id: string): Remedy => ({
  do: "edit",
  word,
  steps: [{ do: "remove", kind, id }],
});
