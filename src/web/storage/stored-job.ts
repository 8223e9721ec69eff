import * as Y from "yjs";
import type { Problem } from "#engine";
import { createJobDocument, type JobStore, keepDocument } from "#job";
import { JobNotHere, type StoredJob, type SyncState } from "./contract.ts";
import type { ServerLink } from "./server-link.ts";
import { type Channel, joinTabs } from "./tabs.ts";

/** Longest wait for a server that is there, when this device does not have the job yet. [ms] */
const firstSync = 10_000;
/** Longest pause between attempts to reach a server that is away. [ms] */
const longestPause = 5_000;

export interface StoredJobWorld {
  readonly store: JobStore;
  /** A server to sync with; absent on a static host. */
  readonly server?: ServerLink;
  readonly channel?: (name: string) => Channel;
  readonly now: () => number;
  /** Why nothing is kept on this device, where that is known from the start. */
  readonly trouble?: Problem;
}

/** Opens a job: filled from this device, kept on it at every change, synced with the server while there is one. */
export async function openStored(id: string, world: StoredJobWorld): Promise<StoredJob> {
  const ydoc = new Y.Doc();
  const listeners = new Set<() => void>();
  const tell = (): void => {
    for (const listener of [...listeners]) listener();
  };
  let trouble = world.trouble;
  const keeping = await keepDocument(ydoc, {
    store: world.store,
    id,
    now: world.now,
    failed: (error) => {
      trouble = {
        code: "storage-not-kept",
        values: { reason: error instanceof Error ? error.message : String(error) },
      };
      tell();
    },
  });
  const leaveTabs = world.channel && joinTabs(ydoc, world.channel(`roomwake-job-${id}`));
  const line = world.server && (await lineTo(world.server, { id, ydoc, tell }));
  const close = async (): Promise<void> => {
    line?.close();
    leaveTabs?.();
    await keeping.stop();
    ydoc.destroy();
  };
  const here = (): boolean => ydoc.store.clients.size > 0;
  if (!here() && line) await line.firstSync();
  if (!here()) {
    await close();
    throw new JobNotHere(id);
  }
  const document = createJobDocument(ydoc);
  return {
    id,
    document,
    sync: () => line?.state() ?? "none",
    trouble: () => trouble,
    onSync: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    settled: keeping.settled,
    close: async () => {
      document.close();
      await close();
    },
  };
}

interface Line {
  readonly state: () => SyncState;
  /** Resolves when the server has sent what it has, or when it does not answer. */
  readonly firstSync: () => Promise<void>;
  readonly close: () => void;
}

async function lineTo(
  server: ServerLink,
  job: { readonly id: string; readonly ydoc: Y.Doc; readonly tell: () => void },
): Promise<Line> {
  // Loaded only where there is a server: the first page stays small.
  const { HocuspocusProvider, HocuspocusProviderWebsocket, WebSocketStatus } = await import(
    "@hocuspocus/provider"
  );
  const socket = new HocuspocusProviderWebsocket({
    url: server.socketUrl,
    minDelay: 200,
    delay: 500,
    maxDelay: longestPause,
    ...(server.socket !== undefined && { WebSocketPolyfill: server.socket }),
  });
  const provider = new HocuspocusProvider({ name: job.id, document: job.ydoc, websocketProvider: socket });
  provider.attach();
  for (const event of ["synced", "unsyncedChanges", "close", "status"]) provider.on(event, job.tell);
  socket.on("status", job.tell);
  return {
    state: () => {
      if (socket.status !== WebSocketStatus.Connected) return "away";
      return provider.isSynced && provider.unsyncedChanges === 0 ? "synced" : "behind";
    },
    firstSync: () =>
      new Promise((done) => {
        if (provider.isSynced) return done();
        const timer = setTimeout(done, firstSync);
        provider.on("synced", () => {
          clearTimeout(timer);
          done();
        });
      }),
    close: () => {
      provider.destroy();
      socket.destroy();
    },
  };
}
