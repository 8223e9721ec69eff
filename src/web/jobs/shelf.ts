import { createJobDocument, type JobDocument, loadFile } from "#job";
import type { JobShelf, StoredJob } from "../storage/index.ts";

/** Jobs that last as long as the page: where a browser refuses storage, and in tests. */
export function memoryShelf(): JobShelf {
  const jobs = new Map<string, { readonly document: JobDocument; readonly changed: number }>();
  let number = 0;
  return {
    list: async () =>
      [...jobs].map(([id, { document, changed }]) => ({
        id,
        name: document.job().name,
        changed,
        kept: "device" as const,
      })),
    create: async (job) => {
      const id = `memory-${++number}`;
      const document = createJobDocument();
      document.run(loadFile(job));
      jobs.set(id, { document, changed: Date.now() });
      return id;
    },
    open: async (id): Promise<StoredJob> => {
      const found = jobs.get(id);
      if (!found) throw new Error(`There is no job ${id}`);
      return {
        id,
        document: found.document,
        sync: () => "none",
        onSync: () => () => {},
        settled: async () => {},
        close: async () => {},
      };
    },
    remove: async (id) => {
      jobs.delete(id);
    },
  };
}
