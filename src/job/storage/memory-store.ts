import type { JobStore } from "./job-store.ts";

interface Row {
  name: string;
  changed: number;
  updates: { readonly number: number; readonly update: Uint8Array }[];
}

/** A store that forgets at the end of the program: for tests, and where a browser denies storage. */
export function memoryStore(): JobStore {
  const rows = new Map<string, Row>();
  let last = 0;
  return {
    list: async () =>
      [...rows]
        .map(([id, { name, changed }]) => ({ id, name, changed }))
        .sort((a, b) => b.changed - a.changed),
    read: async (id) => {
      const row = rows.get(id);
      return (
        row && {
          updates: row.updates.map(({ update }) => update.slice()),
          last: row.updates[row.updates.length - 1]?.number ?? 0,
        }
      );
    },
    append: async (id, { update, at }) => {
      const row = rows.get(id) ?? { name: "", changed: at, updates: [] };
      row.updates.push({ number: ++last, update: update.slice() });
      row.changed = at;
      rows.set(id, row);
    },
    rename: async (id, name) => {
      const row = rows.get(id);
      if (row) row.name = name;
    },
    compact: async (id, { update, upTo }) => {
      const row = rows.get(id);
      if (!row) return;
      row.updates = [
        { number: upTo, update: update.slice() },
        ...row.updates.filter(({ number }) => number > upTo),
      ];
    },
    remove: async (id) => {
      rows.delete(id);
    },
    close: async () => {},
  };
}
