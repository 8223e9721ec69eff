import type { Problem } from "#engine";
import { type JobStore, memoryStore } from "#job";
import type { JobShelf } from "./contract.ts";
import { indexedStore } from "./indexed-store.ts";
import { enterByToken, serverLink } from "./server-link.ts";
import { shelfOf } from "./shelf.ts";
import { type ShelfNotes, shelfNotes } from "./shelf-notes.ts";
import type { Channel, TabMessage } from "./tabs.ts";

export { JobNotHere, type JobShelf, type ListedJob, type StoredJob, type SyncState } from "./contract.ts";
export type { ShelfNote, ShelfNotes } from "./shelf-notes.ts";

let shelf: Promise<JobShelf> | undefined;

/** The jobs of this browser and of the server behind the page; opened at the first use. */
export const jobs: JobShelf = {
  list: async () => (await browserShelf()).list(),
  create: async (job, history) => (await browserShelf()).create(job, history),
  restore: async (id, kept) => (await browserShelf()).restore(id, kept),
  known: async (identity) => (await browserShelf()).known(identity),
  look: async (id) => (await browserShelf()).look(id),
  demo: async () => (await browserShelf()).demo(),
  open: async (id) => (await browserShelf()).open(id),
  remove: async (id) => (await browserShelf()).remove(id),
};

/** What this browser remembers of its jobs beside them. */
export const browserNotes = (): ShelfNotes =>
  shelfNotes({ factory: globalThis.indexedDB as IDBFactory | undefined, name: "roomwake-shelf" });

function browserShelf(): Promise<JobShelf> {
  shelf ??= madeShelf();
  return shelf;
}

async function madeShelf(): Promise<JobShelf> {
  const plain = await enterByToken(location.href, fetch.bind(globalThis));
  if (plain !== undefined) history.replaceState(history.state, "", plain);
  const { store, trouble } = await deviceStore();
  return shelfOf({
    store,
    ...(trouble && { trouble }),
    server: serverLink({ origin: location.origin, fetch: fetch.bind(globalThis), known: knownServer }),
    channel: tabChannel,
    newId: () => crypto.randomUUID(),
    now: Date.now,
  });
}

async function deviceStore(): Promise<{ readonly store: JobStore; readonly trouble?: Problem }> {
  try {
    const store = await indexedStore({ factory: indexedDB, name: "roomwake" });
    // Asks the browser not to clear the jobs when the disk gets full; it may say no.
    void navigator.storage?.persist?.().catch(() => false);
    return { store };
  } catch (error) {
    const reason = error instanceof Error ? error.message : "this browser denies storage";
    return { store: memoryStore(), trouble: { code: "storage-not-kept", values: { reason } } };
  }
}

const knownServer = {
  get: (): boolean => {
    try {
      return localStorage.getItem("roomwake-server") !== null;
    } catch {
      return false;
    }
  },
  set: (): void => {
    try {
      localStorage.setItem("roomwake-server", "seen");
    } catch {
      // Without this note a server that is away looks like a static host: the job works all the same.
    }
  },
};

function tabChannel(name: string): Channel {
  const channel = new BroadcastChannel(name);
  return {
    post: (message) => channel.postMessage(message),
    listen: (listener) => {
      channel.onmessage = (event: MessageEvent<TabMessage>) => listener(event.data);
    },
    close: () => channel.close(),
  };
}
