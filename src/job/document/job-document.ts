import * as Y from "yjs";
import type { Problem } from "#engine";
import type { Outcome } from "../commands/command.ts";
import { type JobFile, jobVersion } from "../schema/job-file.ts";
import { siteOf } from "../site/site-of.ts";
import { judged, write } from "./apply-edits.ts";
import type { JobDocument, Snapshot } from "./contract.ts";
import { documentReader } from "./read-document.ts";
import { partsOf, shapeOf } from "./shape.ts";

/** Longer than anyone works on one thing: steps are told apart by commands, not by the clock. [ms] */
const oneStep = Number.MAX_SAFE_INTEGER;

export interface DocumentWorld {
  /** Makes ids that no one else makes; needed by commands that make records. */
  readonly newId: () => string;
}

/**
 * A job on top of a Yjs document, an empty one or one that a store or another person filled.
 *
 * @param ydoc - The document; a new one if absent.
 * @param world - Where ids come from; the platform's random ids if absent.
 */
export function createJobDocument(
  ydoc: Y.Doc = new Y.Doc(),
  world: DocumentWorld = { newId: randomId },
): JobDocument {
  const shape = shapeOf(ydoc);
  const reader = documentReader(shape);
  const person = { person: ydoc.clientID };
  const undoManager = new Y.UndoManager(partsOf(shape), {
    trackedOrigins: new Set([person]),
    captureTimeout: oneStep,
  });
  const listeners = new Set<() => void>();
  let revision = 0;
  let snapshot: { readonly job: JobFile; readonly value: Snapshot } | undefined;

  const watched = partsOf(shape).map((part) => {
    const observer = (events: Y.YEvent<Y.AbstractType<unknown>>[]) => reader.changed(events, part);
    part.observeDeep(observer as never);
    return () => part.unobserveDeep(observer as never);
  });
  const afterTransaction = (transaction: Y.Transaction) => {
    if (transaction.changed.size === 0) return;
    revision += 1;
    for (const listener of [...listeners]) listener();
  };
  ydoc.on("afterTransaction", afterTransaction);

  const readOnly = (): boolean => reader.job().version > jobVersion;

  return {
    ydoc,
    job: reader.job,
    snapshot: () => {
      const job = reader.job();
      if (snapshot?.job !== job) {
        const { site, problems } = siteOf(job);
        snapshot = { job, value: { site, problems: [...reader.problems(), ...problems] } };
      }
      return snapshot.value;
    },
    revision: () => revision,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    run: (command, options = { step: "new" }) => {
      if (readOnly()) return refused([{ code: "job-read-only", values: {} }]);
      const answer = command.edits(reader.job(), { newId: world.newId });
      if ("problems" in answer) return refused(answer.problems);
      const changes = judged(answer.edits, reader.job());
      if ("problems" in changes) return refused(changes.problems);
      if (options.step === "new") undoManager.stopCapturing();
      ydoc.transact(() => {
        if (!shape.head.has("version")) shape.head.set("version", jobVersion);
        write(shape, changes);
      }, person);
      return { done: true, made: changes.made, problems: answer.notes ?? [] };
    },
    undo: () => !readOnly() && undoManager.undo() !== null,
    redo: () => !readOnly() && undoManager.redo() !== null,
    canUndo: () => undoManager.undoStack.length > 0,
    canRedo: () => undoManager.redoStack.length > 0,
    readOnly,
    close: () => {
      ydoc.off("afterTransaction", afterTransaction);
      for (const stop of watched) stop();
      undoManager.destroy();
      listeners.clear();
    },
  };
}

const refused = (problems: readonly Problem[]): Outcome => ({ done: false, made: [], problems });

/** Short enough for a file that people read, long enough that two of a job's ids never meet: 80 bits. */
function randomId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(10));
  return Array.from(bytes, (byte) => byte.toString(32).padStart(2, "0")).join("");
}
