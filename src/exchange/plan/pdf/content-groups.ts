/** Optional content of a file: what a drawing program calls layers. */
export interface ContentGroups {
  readonly names: ReadonlyMap<string, string>;
  isVisible(content: unknown): boolean;
}

/** One pair of begin and end in the content; `content` where it belongs to optional content. */
export interface GroupMark {
  readonly content?: unknown;
}

/** The layer that content within these marks belongs to, the innermost that has a name; shown when none of them is off. */
export function groupOf(
  groups: ContentGroups,
  marks: readonly GroupMark[],
): { readonly name: string | undefined; readonly shown: boolean } {
  let name: string | undefined;
  let shown = true;
  for (const mark of marks) {
    if (!mark.content) continue;
    name = nameIn(groups, mark.content) ?? name;
    shown &&= groups.isVisible(mark.content);
  }
  return { name, shown };
}

const nameIn = (groups: ContentGroups, content: unknown): string | undefined => {
  const { id, ids } = content as { id?: string; ids?: readonly string[] };
  return groups.names.get(id ?? "") ?? groups.names.get(ids?.[0] ?? "");
};
