import type { DetectorModel, Site } from "#engine";
import {
  emptyJob,
  fromSite,
  historyOf,
  identityOf,
  type JobFile,
  ownPlanning,
  separateJob,
  setName,
  siteKinds,
} from "#job";
import type { HomeShelf, JobEntry, PlanPicture } from "../contract.ts";
import { firmModels } from "../models/firm-list.ts";
import type { JobShelf, ListedJob, ShelfNotes, StoredJob } from "../storage/index.ts";

/** What comes with the program, and what the device remembers. */
export interface Included {
  /** The invented models to start with. */
  readonly demoModels: readonly DetectorModel[];
  readonly notes: ShelfNotes;
}

const where: Readonly<Record<ListedJob["kept"], JobEntry["where"]>> = {
  device: "browser",
  server: "server",
  both: "both",
};

/** The start page's view of the stored jobs: what it does with a job as a whole. */
export function homeShelf(store: JobShelf, included: Included): HomeShelf {
  const { notes } = included;
  const whileOpen = async <Result>(
    id: string,
    look: (stored: StoredJob) => Result | Promise<Result>,
  ): Promise<Result> => {
    const stored = await store.open(id);
    try {
      return await look(stored);
    } finally {
      await stored.close();
    }
  };
  const jobOf = (id: string): Promise<JobFile> => whileOpen(id, ({ document }) => document.job());
  let drawing: Promise<unknown> = Promise.resolve();
  return {
    list: async () => {
      const [jobs, known] = await Promise.all([store.list(), notes.all()]);
      return jobs.map(({ id, name, changed, here, kept }) => ({
        id,
        name,
        changed,
        here,
        where: where[kept],
        archived: known.get(id)?.archived ?? false,
      }));
    },
    picture: (job) => {
      // One after the other: a long list must not hold up the page.
      const made = drawing.then(() => pictureOf(job, store, notes));
      drawing = made.catch(() => undefined);
      return made;
    },
    archive: (id, to) => notes.note(id, { archived: to === "aside" }),
    create: async (site, read, pictures = []) => {
      const job = jobOfSite(site);
      if (!read) return store.create({ ...job, underlays: [...job.underlays, ...pictures] });
      const { drawings, file, choice } = read;
      const { printsOf, underlayOf } = await import("../jobs/taken-reading.ts");
      // The file may be read again inside the job: what was written now is remembered with the first drawing.
      const underlays = drawings.map(underlayOf).map((drawing, index) => ({
        ...drawing,
        file,
        choice: { ...choice },
        ...(index === 0 ? { read: printsOf(job) } : {}),
      }));
      return store.create({ ...job, underlays: [...underlays, ...pictures] });
    },
    // Loaded only when it is asked for: the first page stays small.
    readFile: async (bytes) => (await import("./file-copies.ts")).fileJob(store, bytes),
    demo: store.demo,
    rename: (id, name) =>
      whileOpen(id, async (stored) => {
        stored.document.run(setName(name));
        await stored.settled();
      }),
    duplicate: async (id, name) => store.create({ ...separateJob(await jobOf(id)), name }),
    remove: async (id) => {
      const kept = await whileOpen(id, ({ document }) => ({
        name: document.job().name,
        update: historyOf(document),
      }));
      const note = (await notes.all()).get(id);
      await store.remove(id);
      await notes.forget(id);
      return {
        restore: async () => {
          await store.restore(id, kept);
          if (note?.archived) await notes.note(id, { archived: true });
        },
      };
    },
    fileText: async (id) => {
      const { jobText } = await import("../jobs/packed.ts");
      const job = await jobOf(id);
      return jobText({ ...job, id: job.id ?? identityOf(id) });
    },
    packed: async (id) => {
      const { writeJobArchive } = await import("../jobs/packed.ts");
      return whileOpen(id, ({ document }) =>
        writeJobArchive({ history: historyOf(document), id: identityOf(id) }),
      );
    },
    startModels: () => (firmModels().length > 0 ? firmModels() : included.demoModels),
  };
}

/** The picture that was made of the job as it is here, or a new one: never one of what it was before. */
async function pictureOf(
  { id, here }: JobEntry,
  store: JobShelf,
  notes: ShelfNotes,
): Promise<PlanPicture | undefined> {
  if (here === undefined) return undefined;
  const known = (await notes.all()).get(id)?.picture;
  if (known?.of === here) return known.drawn;
  const job = await store.look(id);
  const drawn = job && (await import("./plan-picture.ts")).planPicture(job);
  if (drawn) await notes.note(id, { picture: { of: here, drawn } });
  return drawn;
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
