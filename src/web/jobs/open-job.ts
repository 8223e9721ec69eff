import {
  chooseSettings,
  editBoth,
  editKept,
  editSite,
  type JobDocument,
  setDefaults,
  setDetails,
  setName,
} from "#job";
import type { OpenJob, Underlay } from "../contract.ts";

/** Where the screen finds the open job, and hears that it changed. */
export interface JobSource {
  readonly current: () => OpenJob;
  readonly subscribe: (listener: () => void) => () => void;
}

const noUnderlays: readonly Underlay[] = [];

/** The open job document as the screen sees it. What unpacks drawings is loaded with the first job that has one, and waited for. */
export async function documentJob(
  id: string,
  document: JobDocument,
  newId: () => string,
): Promise<JobSource> {
  const waiting = new Set<() => void>();
  let known: OpenJob | undefined;
  let unpacked: typeof import("./underlay.ts").underlaysOf | undefined;
  let loading: Promise<void> | undefined;
  const withUnderlays = (): Promise<void> => {
    loading ??= import("./underlay.ts").then(
      ({ underlaysOf }) => {
        unpacked = underlaysOf;
        known = undefined;
        for (const listener of [...waiting]) listener();
      },
      () => {
        // Looked for again with the next change.
        loading = undefined;
      },
    );
    return loading;
  };
  const underlaysIn = (file: ReturnType<JobDocument["job"]>): readonly Underlay[] => {
    if (unpacked) return unpacked(file);
    if (hasLines(file)) void withUnderlays();
    return noUnderlays;
  };
  const ways = {
    edit: (name, steps) => {
      document.run(editSite(name, steps as never));
    },
    take: async (read, { file, choice }) => {
      const [{ takeReading }] = await Promise.all([import("./taken-reading.ts"), withUnderlays()]);
      return document.run(
        takeReading({ survey: { ...read.site, drawings: read.drawings }, file, choice: { ...choice } }),
      ).problems;
    },
    keep: (name, steps) => {
      document.run(editKept(name, steps));
    },
    editBoth: (name, { site, kept }) => {
      document.run(editBoth(name, { site: site as never, kept }));
    },
    choose: (name, changes) => {
      document.run(chooseSettings(name, changes));
    },
    setDetails: (details) => {
      document.run(setDetails(details));
    },
    setRules: (rules) => {
      document.run(setDetails(rules));
    },
    setName: (name) => {
      document.run(setName(name));
    },
    setDefaults: (defaults) => {
      document.run(setDefaults(defaults));
    },
    undo: () => {
      document.undo();
    },
    redo: () => {
      document.redo();
    },
    newId,
  } satisfies Partial<OpenJob>;
  const read = (): OpenJob => {
    const { site } = document.snapshot();
    const file = document.job();
    return {
      id,
      site,
      details: { ...noDetails, ...file.details },
      underlays: underlaysIn(file),
      kept: file,
      file,
      revision: document.revision(),
      readOnly: document.readOnly(),
      canUndo: document.canUndo(),
      canRedo: document.canRedo(),
      ...ways,
    };
  };
  if (hasLines(document.job())) await withUnderlays();
  return {
    current: () => {
      if (known?.revision !== document.revision()) known = read();
      return known as OpenJob;
    },
    subscribe: (listener) => {
      waiting.add(listener);
      const stop = document.subscribe(listener);
      return () => {
        waiting.delete(listener);
        stop();
      };
    },
  };
}

const hasLines = ({ underlays }: ReturnType<JobDocument["job"]>): boolean =>
  underlays.some(({ lines }) => lines !== "");

const noDetails: OpenJob["details"] = {
  client: "",
  site: "",
  drawnBy: "",
  checkedBy: "",
  date: "",
  revision: "",
  currency: "",
  region: "",
  call: "",
};
