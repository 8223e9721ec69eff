/** A job as a store lists it. */
export interface KeptJob {
  readonly id: string;
  readonly name: string;
  /** Time of the last change. [ms since 1970] */
  readonly changed: number;
}

/** What a store holds of one job: Yjs updates in the order in which they came. */
export interface KeptUpdates {
  readonly updates: readonly Uint8Array[];
  /** Number of the last of them: `compact` replaces everything up to it. */
  readonly last: number;
}

/**
 * Where jobs are kept. Each promise resolves when what it did would survive the end of the program; the browser, the server's file and
 * memory hold to one contract (`storage-contract.ts`).
 */
export interface JobStore {
  /** The latest changed first. */
  readonly list: () => Promise<readonly KeptJob[]>;
  /** Undefined for a job that is not here. */
  readonly read: (id: string) => Promise<KeptUpdates | undefined>;
  /** Adds an update; the first one makes the job. @param change.at - Time of the change. [ms since 1970] */
  readonly append: (
    id: string,
    change: { readonly update: Uint8Array; readonly at: number },
  ) => Promise<void>;
  /** Sets the name under which a job is listed; no effect on a job that is not here. */
  readonly rename: (id: string, name: string) => Promise<void>;
  /** Puts one update in place of all up to `upTo`; later ones stay. */
  readonly compact: (
    id: string,
    merged: { readonly update: Uint8Array; readonly upTo: number },
  ) => Promise<void>;
  readonly remove: (id: string) => Promise<void>;
  readonly close: () => Promise<void>;
}
