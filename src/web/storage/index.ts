import type { Problem } from "#engine";
import { type JobFile, type JobStore, memoryStore } from "#job";
import type { JobShelf, ListedJob, StoredJob } from "./contract.ts";
import { indexedStore } from "./indexed-store.ts";
import { enterByToken, serverLink } from "./server-link.ts";
import { shelfOf } from "./shelf.ts";
import type { Channel, TabMessage } from "./tabs.ts";

export { JobNotHere, type JobShelf, type ListedJob, type StoredJob, type SyncState } from "./contract.ts";

let shelf: Promise<JobShelf> | undefined;

/** Jobs on this device and on the server, the latest changed first. */
export const listJobs = async (): Promise<readonly ListedJob[]> => (await browserShelf()).list();

/** Keeps a new job on this device and returns its id; opening it takes it to the server. */
export const createJob = async (job: JobFile): Promise<string> => (await browserShelf()).create(job);

/** Makes sure that the demo job is here and returns its id. */
export const demoJobId = async (): Promise<string> => (await browserShelf()).demo();

/** Opens a job; rejects with `JobNotHere` where neither this device nor a server in reach has it. */
export const openStoredJob = async (id: string): Promise<StoredJob> => (await browserShelf()).open(id);

export const removeJob = async (id: string): Promise<void> => (await browserShelf()).remove(id);

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
