import * as Y from "yjs";
import { applyKept, beginJob, createJobDocument, identityOf, initialUpdate, type JobStore } from "#job";
import type { JobShelf, ListedJob } from "./contract.ts";
import type { ServerLink } from "./server-link.ts";
import { openStored, type StoredJobWorld } from "./stored-job.ts";

/** Id of the demo job: the same everywhere, so that its copies on several devices are one job. */
const demoId = "saltmarsh";

export interface ShelfWorld extends Omit<StoredJobWorld, "server"> {
  readonly server: ServerLink;
  readonly newId: () => string;
}

/** The jobs of a device and of the server behind the page. */
export function shelfOf(world: ShelfWorld): JobShelf {
  const { store, server } = world;
  const list = async (): Promise<readonly ListedJob[]> => {
    const [own, theirs] = await Promise.all([store.list(), server.jobs()]);
    const jobs = new Map<string, ListedJob>(
      own.map((job) => [job.id, { ...job, here: job.changed, kept: "device" }]),
    );
    for (const job of typeof theirs === "string" ? [] : theirs) {
      const mine = jobs.get(job.id);
      const newer = mine && mine.changed > job.changed ? mine : job;
      jobs.set(job.id, {
        ...mine,
        ...newer,
        name: newer.name || job.name,
        kept: mine ? "both" : "server",
      });
    }
    return [...jobs.values()].sort((a, b) => b.changed - a.changed || (a.id < b.id ? -1 : 1));
  };
  return {
    list,
    create: async (job, history) => {
      const begun = beginJob({ job, ...(history && { history }) }, world.newId);
      await kept(store, { ...begun, name: job.name, at: world.now() });
      return begun.id;
    },
    restore: (id, { name, update }) => kept(store, { id, name, update, at: world.now() }),
    known: async (identity) => {
      const ids = (await list()).map(({ id }) => id).filter((id) => identityOf(id) === identity);
      return ids.find((id) => id === identity) ?? ids[0];
    },
    look: async (id) => {
      const found = await store.read(id);
      if (!found) return undefined;
      const ydoc = new Y.Doc();
      applyKept(ydoc, found.updates);
      const document = createJobDocument(ydoc);
      const job = document.job();
      document.close();
      ydoc.destroy();
      return job;
    },
    demo: async () => {
      if (await store.read(demoId)) return demoId;
      // Loaded only when it is asked for: the first page stays small.
      const { demoJob } = await import("../jobs/demo.ts");
      const job = demoJob();
      await kept(store, { id: demoId, name: job.name, update: initialUpdate(job), at: world.now() });
      return demoId;
    },
    open: async (id) => {
      const reachable = (await server.jobs()) !== "none";
      const { server: _, ...rest } = world;
      return openStored(id, reachable ? world : rest);
    },
    remove: async (id) => {
      await store.remove(id);
      if (typeof (await server.jobs()) !== "string") await server.remove(id);
    },
  };
}

async function kept(
  store: JobStore,
  made: { readonly id: string; readonly name: string; readonly update: Uint8Array; readonly at: number },
): Promise<void> {
  await store.append(made.id, { update: made.update, at: made.at });
  await store.rename(made.id, made.name);
}
