import type { Problem } from "#engine";
import type { JobDocument, JobFile } from "#job";

/** A job as the start page lists it. */
export interface ListedJob {
  readonly id: string;
  readonly name: string;
  /** Last change that is known here. [ms since 1970] */
  readonly changed: number;
  /** Last change that this device has; absent where it has nothing of the job. [ms since 1970] */
  readonly here?: number;
  /** Where it is kept: on this device, on the server, or on both. */
  readonly kept: "device" | "server" | "both";
}

/**
 * How an open job stands with the server: `none` where there is no server (a static host), `away` while it cannot be reached,
 * `behind` while changes are on their way, `synced` once it has acknowledged all of them.
 */
export type SyncState = "none" | "away" | "behind" | "synced";

/** A job that is open: kept on this device at every change, and with the server whenever there is one. */
export interface StoredJob {
  readonly id: string;
  readonly document: JobDocument;
  readonly sync: () => SyncState;
  /** Why changes are not kept on this device, where that is so: the person must know. */
  readonly trouble: () => Problem | undefined;
  /** Called when sync or trouble change; returns the way to stop. */
  readonly onSync: (listener: () => void) => () => void;
  /** Resolves when every change made so far is on this device's disk. */
  readonly settled: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** The jobs of this device and, where there is one, of the server. */
export interface JobShelf {
  readonly list: () => Promise<readonly ListedJob[]>;
  /** Keeps a new job, with its history where it brings one, and returns its id. */
  readonly create: (job: JobFile, history?: Uint8Array) => Promise<string>;
  /** Keeps again what was removed, under its id. */
  readonly restore: (
    id: string,
    kept: { readonly name: string; readonly update: Uint8Array },
  ) => Promise<void>;
  /** Under which id a copy of the job with this identity is listed. */
  readonly known: (identity: string) => Promise<string | undefined>;
  /** The job as this device has it, without asking a server; undefined where it has nothing of it. */
  readonly look: (id: string) => Promise<JobFile | undefined>;
  /** Makes sure that the demo job is here and returns its id. */
  readonly demo: () => Promise<string>;
  /** Rejects with a `JobNotHere` where neither this device nor a server in reach has the job. */
  readonly open: (id: string) => Promise<StoredJob>;
  /** Removes a job from this device and from the server in reach. One that is open elsewhere comes back from there: nothing is lost by another's hand. */
  readonly remove: (id: string) => Promise<void>;
}

/** The job that was asked for is neither on this device nor on a server in reach. */
export class JobNotHere extends Error {
  readonly problem: Problem;
  constructor(id: string) {
    super(`Job ${id} is not here`);
    this.problem = { code: "server-job-unknown", values: { id } };
  }
}
