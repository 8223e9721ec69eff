import type { Storey } from "#engine";

/** A name as a part of a file name that every file system takes; "" where nothing of it is left. @example slugOf("Café, 1st floor") is "cafe-1st-floor" */
export const slugOf = (name: string): string =>
  name
    .normalize("NFD")
    .replace(/\p{Mark}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 40);

/** Names of storeys as parts of file names, all different. */
export function slugsOf(storeys: readonly Storey[]): ReadonlyMap<string, string> {
  const used = new Set<string>();
  return new Map(
    storeys.map((storey, i) => {
      const plain = slugOf(storey.name);
      const name = plain === "" || used.has(plain) ? [plain, String(i + 1)].filter(Boolean).join("-") : plain;
      used.add(name);
      return [storey.id, name];
    }),
  );
}
