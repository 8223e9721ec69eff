import type { DetectorModel, Site } from "#engine";
import {
  emptyJob,
  fromSite,
  type JobFile,
  jobText,
  ownPlanning,
  parseJob,
  printsOf,
  setName,
  siteKinds,
  underlayOf,
} from "#job";
import type { HomeShelf, JobEntry } from "../contract.ts";
import { firmModels } from "../models/firm-list.ts";
import type { JobShelf, ListedJob } from "../storage/index.ts";

/** What comes with the program: the invented models to start with. */
export interface Included {
  readonly demoModels: readonly DetectorModel[];
}

const where: Readonly<Record<ListedJob["kept"], JobEntry["where"]>> = {
  device: "browser",
  server: "server",
  both: "both",
};

/** The start page's view of the stored jobs: what it does with a job as a whole. */
export function homeShelf(store: JobShelf, included: Included): HomeShelf {
  const jobOf = async (id: string): Promise<JobFile> => {
    const stored = await store.open(id);
    const job = stored.document.job();
    await stored.close();
    return job;
  };
  return {
    list: async () =>
      (await store.list()).map(({ id, name, changed, kept }) => ({ id, name, changed, where: where[kept] })),
    create: (site, read) => {
      const job = jobOfSite(site);
      if (!read) return store.create(job);
      const { drawings, file, choice } = read;
      // The file may be read again inside the job: what was written now is remembered with the first drawing.
      const underlays = drawings.map(underlayOf).map((drawing, index) => ({
        ...drawing,
        file,
        choice: { ...choice },
        ...(index === 0 ? { read: printsOf(job) } : {}),
      }));
      return store.create({ ...job, underlays });
    },
    createFromFile: async (text) => {
      const { job, problems } = parseJob(text);
      return job === undefined ? { problems } : { id: await store.create(job) };
    },
    demo: store.demo,
    rename: async (id, name) => {
      const stored = await store.open(id);
      stored.document.run(setName(name));
      await stored.settled();
      await stored.close();
    },
    duplicate: async (id, name) => store.create({ ...(await jobOf(id)), name }),
    remove: async (id) => {
      const job = await jobOf(id);
      await store.remove(id);
      return { restore: async () => void (await store.create(job)) };
    },
    fileText: async (id) => jobText(await jobOf(id)),
    startModels: () => (firmModels().length > 0 ? firmModels() : included.demoModels),
  };
}

/** A job file of a site that was made here, not read: planning numbers that equal the program's are left to it. */
export function jobOfSite(site: Site): JobFile {
  const records = Object.fromEntries(
    siteKinds.map((kind) => [
      kind,
      (site[kind] as readonly object[]).map((record) => fromSite(kind, record as never)),
    ]),
  );
  return { ...emptyJob(site.name), defaults: ownPlanning(site.defaults), ...records };
}
