import type { Problem } from "#engine";
import { type JobFile, loadFile, mergeCopy, readJobFile, separateJob } from "#job";
import type { FileJob, MergedCopy } from "../contract.ts";
import type { JobShelf, StoredJob } from "../storage/index.ts";

/** Reads a job out of a file's bytes, and finds the job that is here of which it is a copy. */
export async function fileJob(
  store: JobShelf,
  bytes: Uint8Array,
): Promise<FileJob | { readonly problems: readonly Problem[] }> {
  const read = readJobFile(bytes);
  if (!read.job) return { problems: read.problems };
  const { job, history } = read;
  const id = job.id === undefined ? undefined : await store.known(job.id);
  const listed = id === undefined ? undefined : (await store.list()).find((one) => one.id === id);
  return {
    name: job.name,
    notes: read.notes,
    copyOf: listed && { id: listed.id, name: listed.name },
    keep: () => store.create(job, history),
    keepApart: () => store.create(separateJob(job)),
    merge: async () => {
      if (id === undefined) throw new Error("No job is here that it could be merged into");
      return mergedInto(await store.open(id), { job, ...(history && { history }) });
    },
  };
}

/** Merges a copy into an open job, which stays open as long as the merge can be undone. */
async function mergedInto(
  stored: StoredJob,
  copy: { readonly job: JobFile; readonly history?: Uint8Array },
): ReturnType<FileJob["merge"]> {
  const { document } = stored;
  const before = document.job();
  const merged = mergeCopy(document, copy);
  if (merged.problems) {
    await stored.close();
    return { problems: merged.problems };
  }
  await stored.settled();
  let closed: Promise<void> | undefined;
  const close = (): Promise<void> => {
    closed ??= stored.close();
    return closed;
  };
  return {
    ...merged,
    undo: async () => {
      // What came change by change is taken back as one step of its own.
      if (merged.how === "difference") document.undo();
      else document.run(loadFile(before));
      await stored.settled();
      await close();
    },
    close,
  } satisfies MergedCopy;
}
