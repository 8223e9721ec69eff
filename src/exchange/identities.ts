import type { Problem, Words } from "#engine";

/** Gives every record an identity of its own, the file's GlobalId where that is unique. */
export interface Identities {
  /** @param wanted - GlobalId; @param otherwise - used where there is none; @param thing - for the note. */
  take(wanted: string, otherwise: string, thing: Words): string;
  readonly notes: readonly Problem[];
}

/** Identities of one reading. */
export function identities(): Identities {
  const taken = new Set<string>();
  const notes: Problem[] = [];
  return {
    notes,
    take: (wanted, otherwise, thing) => {
      const first = /^[\w$]{1,64}$/.test(wanted) ? wanted : otherwise;
      if (wanted !== "" && taken.has(first)) notes.push({ code: "ifc-identity-twice", values: { thing } });
      let id = first;
      for (let n = 2; taken.has(id); n++) id = `${first}-${n}`;
      taken.add(id);
      return id;
    },
  };
}
