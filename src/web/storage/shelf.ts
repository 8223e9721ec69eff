import { initialUpdate, type JobFile, type JobStore } from "#job";
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
  return {
    list: async () => {
      const [own, theirs] = await Promise.all([store.list(), server.jobs()]);
      const jobs = new Map<string, ListedJob>(own.map((job) => [job.id, { ...job, kept: "device" }]));
      for (const job of typeof theirs === "string" ? [] : theirs) {
        const mine = jobs.get(job.id);
        const newer = mine && mine.changed > job.changed ? mine : job;
        jobs.set(job.id, { ...newer, name: newer.name || job.name, kept: mine ? "both" : "server" });
      }
      return [...jobs.values()].sort((a, b) => b.changed - a.changed || (a.id < b.id ? -1 : 1));
    },
    create: (job) => kept(store, { id: world.newId(), job, at: world.now() }),
    demo: async () => {
      if (await store.read(demoId)) return demoId;
      // Loaded only when it is asked for: the first page stays small.
      const { demoJob } = await import("../jobs/demo.ts");
      return kept(store, { id: demoId, job: demoJob(), at: world.now() });
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
  made: { readonly id: string; readonly job: JobFile; readonly at: number },
): Promise<string> {
  await store.append(made.id, { update: initialUpdate(made.job), at: made.at });
  await store.rename(made.id, made.job.name);
  return made.id;
}
