import type { PlanPicture } from "../contract.ts";

/** What this device remembers of a job beside the job itself. */
export interface ShelfNote {
  readonly id: string;
  /** Put aside: listed apart. */
  readonly archived?: boolean;
  /** Picture of the plan, with the change of the job that it shows. */
  readonly picture?: { readonly of: number; readonly drawn: PlanPicture };
}

/** Notes on the jobs of this device; losing them costs pictures that are made again, and which jobs were put aside. */
export interface ShelfNotes {
  readonly all: () => Promise<ReadonlyMap<string, ShelfNote>>;
  /** Changes some fields of a job's note. */
  readonly note: (id: string, fields: Omit<ShelfNote, "id">) => Promise<void>;
  readonly forget: (id: string) => Promise<void>;
}

/** Notes in this browser; in memory where it denies storage. */
export function shelfNotes(options: {
  readonly factory: IDBFactory | undefined;
  readonly name: string;
}): ShelfNotes {
  const opened = opening(options).catch(() => undefined);
  const memory = new Map<string, ShelfNote>();
  const store = async (mode: IDBTransactionMode): Promise<IDBObjectStore | undefined> =>
    (await opened)?.transaction("notes", mode).objectStore("notes");
  return {
    all: async () => {
      const notes = await store("readonly");
      const list = notes ? await answer<ShelfNote[]>(notes.getAll()) : [...memory.values()];
      return new Map(list.map((note) => [note.id, note]));
    },
    note: async (id, fields) => {
      const notes = await store("readwrite");
      if (!notes) return void memory.set(id, { ...memory.get(id), ...fields, id });
      // Both in one transaction: two fields that are noted at once are both kept.
      await new Promise<void>((resolve, reject) => {
        const found = notes.get(id);
        found.onsuccess = () => notes.put({ ...(found.result as ShelfNote | undefined), ...fields, id });
        notes.transaction.oncomplete = () => resolve();
        notes.transaction.onabort = () => reject(notes.transaction.error);
      });
    },
    forget: async (id) => {
      memory.delete(id);
      const notes = await store("readwrite");
      if (notes) await answer(notes.delete(id));
    },
  };
}

async function opening(options: {
  readonly factory: IDBFactory | undefined;
  readonly name: string;
}): Promise<IDBDatabase> {
  if (!options.factory) throw new Error("No storage");
  const request = options.factory.open(options.name, 1);
  request.onupgradeneeded = () => request.result.createObjectStore("notes", { keyPath: "id" });
  return answer(request);
}

const answer = <Result>(request: IDBRequest<Result>): Promise<Result> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
