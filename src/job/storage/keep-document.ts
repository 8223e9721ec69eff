import * as Y from "yjs";
import type { JobStore } from "./job-store.ts";

/** From this many updates on, reading them one by one costs more than writing them once as one. */
const manyUpdates = 200;

/** Marks what comes out of a store, so that it is not put in again. */
const fromStore = { from: "store" };

export interface KeptDocument {
  /** Resolves when every change made so far is in the store; rejects if one could not be kept. */
  readonly settled: () => Promise<void>;
  /** Stops keeping, once all is kept. */
  readonly stop: () => Promise<void>;
}

/**
 * Fills a document from a store and keeps every later change of it there, whoever made it.
 *
 * @param options.now - The clock. [ms since 1970]
 * @param options.failed - Called when a change could not be kept: the person must know.
 */
export async function keepDocument(
  ydoc: Y.Doc,
  options: {
    readonly store: JobStore;
    readonly id: string;
    readonly now: () => number;
    readonly failed?: (error: unknown) => void;
  },
): Promise<KeptDocument> {
  const { store, id } = options;
  let queue: Promise<void> = Promise.resolve();
  let name: unknown;
  const enqueue = (work: () => Promise<void>): void => {
    queue = queue.then(work);
    queue.catch((error: unknown) => options.failed?.(error));
  };
  const keepName = (): void => {
    const current = ydoc.getMap("head").get("name");
    if (typeof current !== "string" || current === name) return;
    name = current;
    enqueue(() => store.rename(id, current));
  };
  const onUpdate = (update: Uint8Array, origin: unknown): void => {
    if (origin === fromStore) return;
    enqueue(() => store.append(id, { update, at: options.now() }));
    keepName();
  };
  ydoc.on("update", onUpdate);

  const kept = await store.read(id);
  if (kept) {
    applyKept(ydoc, kept.updates);
    if (kept.updates.length > manyUpdates)
      enqueue(() => store.compact(id, { update: Y.encodeStateAsUpdate(ydoc), upTo: kept.last }));
  }
  keepName();
  return {
    settled: () => queue,
    stop: async () => {
      ydoc.off("update", onUpdate);
      await queue;
    },
  };
}

/** Brings updates out of a store into a document, in one transaction. */
export function applyKept(ydoc: Y.Doc, updates: readonly Uint8Array[]): void {
  ydoc.transact(() => {
    for (const update of updates) Y.applyUpdate(ydoc, update, fromStore);
  }, fromStore);
}
