import type { Storey } from "#engine";

/** Names of storeys as parts of file names, all different. */
export function slugsOf(storeys: readonly Storey[]): ReadonlyMap<string, string> {
  const used = new Set<string>();
  return new Map(
    storeys.map((storey, i) => {
      const plain = storey.name
        .normalize("NFD")
        .replace(/\p{Mark}/gu, "")
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, "-")
        .replace(/^-+|-+$/g, "")
        .slice(0, 40);
      const name = plain === "" || used.has(plain) ? [plain, String(i + 1)].filter(Boolean).join("-") : plain;
      used.add(name);
      return [storey.id, name];
    }),
  );
}
