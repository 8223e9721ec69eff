import type { Doc } from "yjs";
import type { Problem, Site } from "#engine";
import type { Command, Outcome } from "../commands/command.ts";
import type { JobFile } from "../schema/job-file.ts";

/** Immutable snapshot for the engine, with what had to be left out of it. */
export interface Snapshot {
  readonly site: Site;
  readonly problems: readonly Problem[];
}

/** A job that several people may change at once, offline too; nothing is lost when their changes meet. */
export interface JobDocument {
  /** The document that providers sync and stores keep. */
  readonly ydoc: Doc;
  /** The job as it would be saved. Unchanged parts keep their identity between calls. */
  readonly job: () => JobFile;
  /** The job for the engine. Unchanged parts keep their identity between calls. */
  readonly snapshot: () => Snapshot;
  /** Counts up with every change, whoever made it. */
  readonly revision: () => number;
  /** Called after every change, local or remote; returns the way to stop. */
  readonly subscribe: (listener: () => void) => () => void;
  /**
   * Runs a command in one transaction, as one step of undo; a refused command changes nothing.
   * `step: "same"` joins it to the step before (a drag that goes on).
   */
  readonly run: (command: Command, options?: { readonly step: "new" | "same" }) => Outcome;
  readonly undo: () => boolean;
  readonly redo: () => boolean;
  readonly canUndo: () => boolean;
  readonly canRedo: () => boolean;
  /** Written by a newer program: may be looked at only. */
  readonly readOnly: () => boolean;
  /** Stops listening; the Yjs document stays as it is. */
  readonly close: () => void;
}
