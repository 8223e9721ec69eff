import { useSyncExternalStore } from "react";
import type { DetectorModel, Problem } from "#engine";
import { fromSite, readRecord, toSite } from "#job";

const storageKey = "roomwake.models";
const format = "roomwake-models";

let known: readonly DetectorModel[] | undefined;
const listeners = new Set<() => void>();

/** The models that the firm keeps across jobs, in this browser. */
export function firmModels(): readonly DetectorModel[] {
  known ??= kept();
  return known;
}

/** Keeps a model in the firm's list; one with the same id gives way. Invented models of the demo are not kept. */
export function keepInFirm(models: readonly DetectorModel[]): void {
  const added = models.filter(({ demo }) => demo !== true);
  const ids = new Set(added.map(({ id }) => id));
  store([...firmModels().filter(({ id }) => !ids.has(id)), ...added]);
}

export const takeFromFirm = (id: string): void => store(firmModels().filter((model) => model.id !== id));

/** The firm's list, kept up to date in a component. */
export const useFirmModels = (): readonly DetectorModel[] =>
  useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    firmModels,
    () => [],
  );

/** The list as one file to pass on: metres and degrees, as in a job. */
export const firmListText = (models: readonly DetectorModel[]): string =>
  `${JSON.stringify({ format, version: 1, models: models.map((model) => fromSite("models", model)) }, null, 2)}\n`;

/** What a passed-on list came to: models, what is wrong with those that could not be used, or what is wrong with the whole. */
export interface ReadList {
  readonly models: readonly DetectorModel[];
  readonly problems: readonly Problem[];
  readonly wrong?: "not-json" | "other-format" | "empty";
}

/** Reads a passed-on list; nothing in it is trusted. */
export function readFirmList(text: string): ReadList {
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch {
    return { models: [], problems: [], wrong: "not-json" };
  }
  const file = typeof content === "object" && content !== null ? (content as Record<string, unknown>) : {};
  if (file.format !== format || !Array.isArray(file.models))
    return { models: [], problems: [], wrong: "other-format" };
  const read = (file.models as readonly unknown[]).map((raw) => readRecord("models", raw));
  const models = read.flatMap(({ record }) => (record === undefined ? [] : [toSite("models", record)]));
  const problems = read.flatMap((one) => (one.record === undefined ? one.problems : []));
  return read.length === 0 ? { models, problems, wrong: "empty" } : { models, problems };
}

function kept(): readonly DetectorModel[] {
  try {
    const text = localStorage.getItem(storageKey);
    return text === null ? [] : readFirmList(text).models;
  } catch {
    return [];
  }
}

function store(models: readonly DetectorModel[]): void {
  known = models;
  try {
    localStorage.setItem(storageKey, firmListText(models));
  } catch {
    // No storage in this window: the list lasts as long as the page, and can be saved as a file.
  }
  for (const listener of listeners) listener();
}
