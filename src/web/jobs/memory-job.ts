import type { Site } from "#engine";
import type { EditStep, JobDetails, OpenJob, RecordKind } from "../contract.ts";
import { applied } from "./apply.ts";

/** A job that lives in this page only, with undo: for trying things out and for tests of the tools. */
export interface JobSource {
  readonly current: () => OpenJob;
  readonly subscribe: (listener: () => void) => () => void;
}

const noDetails: JobDetails = {
  client: "",
  site: "",
  drawnBy: "",
  checkedBy: "",
  date: "",
  revision: "",
  currency: "",
  region: "",
};

export function memoryJob(id: string, start: Site): JobSource {
  let site = start;
  let details = noDetails;
  let revision = 1;
  let number = 0;
  const past: Site[] = [];
  const future: Site[] = [];
  const listeners = new Set<() => void>();
  const goTo = (next: Site): void => {
    site = next;
    revision += 1;
    current = snapshot();
    for (const listener of listeners) listener();
  };
  const change = (next: Site): void => {
    past.push(site);
    future.length = 0;
    goTo(next);
  };
  const ways = {
    edit: (_name: string, steps: readonly EditStep[]) => change(applied(site, steps)),
    setDetails: (next: Partial<JobDetails>) => {
      details = { ...details, ...next };
      goTo(site);
    },
    setName: (name: string) => change({ ...site, name }),
    setDefaults: (defaults: Site["defaults"]) => change({ ...site, defaults }),
    undo: () => {
      const before = past.pop();
      if (!before) return;
      future.push(site);
      goTo(before);
    },
    redo: () => {
      const after = future.pop();
      if (!after) return;
      past.push(site);
      goTo(after);
    },
    newId: (kind: RecordKind) => `${kind}-new-${++number}`,
  };
  const snapshot = (): OpenJob => ({
    id,
    site,
    details,
    revision,
    readOnly: false,
    canUndo: past.length > 0,
    canRedo: future.length > 0,
    ...ways,
  });
  let current = snapshot();
  return {
    current: () => current,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
