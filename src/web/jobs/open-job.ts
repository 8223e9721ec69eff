import {
  chooseSettings,
  editBoth,
  editKept,
  editSite,
  type JobDocument,
  setDefaults,
  setDetails,
  setName,
  takeReading,
} from "#job";
import type { OpenJob } from "../contract.ts";
import { underlaysOf } from "./underlay.ts";

/** Where the screen finds the open job, and hears that it changed. */
export interface JobSource {
  readonly current: () => OpenJob;
  readonly subscribe: (listener: () => void) => () => void;
}

/** The open job document as the screen sees it. */
export function documentJob(id: string, document: JobDocument, newId: () => string): JobSource {
  const ways = {
    edit: (name, steps) => {
      document.run(editSite(name, steps as never));
    },
    take: (read, { file, choice }) =>
      document.run(
        takeReading({ survey: { ...read.site, drawings: read.drawings }, file, choice: { ...choice } }),
      ).problems,
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
      underlays: underlaysOf(file),
      kept: file,
      file,
      revision: document.revision(),
      readOnly: document.readOnly(),
      canUndo: document.canUndo(),
      canRedo: document.canRedo(),
      ...ways,
    };
  };
  let known: OpenJob | undefined;
  return {
    current: () => {
      if (known?.revision !== document.revision()) known = read();
      return known as OpenJob;
    },
    subscribe: (listener) => document.subscribe(listener),
  };
}

const noDetails: OpenJob["details"] = {
  client: "",
  site: "",
  drawnBy: "",
  checkedBy: "",
  date: "",
  revision: "",
  currency: "",
  region: "",
};
