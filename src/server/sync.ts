import type { IncomingMessage } from "node:http";
import type { Duplex } from "node:stream";
import { Hocuspocus } from "@hocuspocus/server";
import { WebSocketServer } from "ws";
import * as Y from "yjs";
import { applyKept, type JobStore } from "#job";

/** Sync steps of the protocol that bring changes; step 1 only asks. */
const bringsChanges = new Set([1, 2]);
/** The largest message that is taken: a whole building with its history is a few megabytes. [bytes] */
const largestMessage = 64 * 1024 * 1024;
/** From this many updates on, reading them one by one costs more than writing them once as one. */
const manyUpdates = 500;

export const jobIdPattern = /^[\w-]{1,80}$/;

/** Syncs open jobs among pages and with the store. */
export interface Sync {
  /** Takes a request that the guard let pass to the socket. */
  readonly upgrade: (request: IncomingMessage, socket: Duplex, head: Buffer) => void;
  /** The job as it is now, with what open pages sent: undefined where it is unknown. */
  readonly read: (id: string) => Promise<Y.Doc | undefined>;
  /** Closes what pages have open of a job, so that removing it is final. */
  readonly dismiss: (id: string) => void;
  readonly stop: () => Promise<void>;
}

/**
 * A change is **acknowledged** when the server has answered it with a sync status. Before it is applied, broadcast and acknowledged,
 * it is written to the store and the store has said that it is on the disk: whatever happens to the server afterwards, it is there.
 * (The library would store whole documents, some seconds later: that is not used here.)
 */
export function syncOf(options: { readonly store: JobStore; readonly now: () => number }): Sync {
  const { store } = options;
  const hocuspocus = new Hocuspocus({
    quiet: true,
    onConnect: async ({ documentName }) => {
      if (!jobIdPattern.test(documentName)) throw new Error("No job has such an id");
    },
    onLoadDocument: async ({ document, documentName }) => {
      const kept = await store.read(documentName);
      if (!kept) return;
      applyKept(document, kept.updates);
      if (kept.updates.length > manyUpdates)
        await store.compact(documentName, { update: Y.encodeStateAsUpdate(document), upTo: kept.last });
    },
    beforeSync: async ({ type, payload, document, documentName }) => {
      if (!bringsChanges.has(type)) return;
      // Throws on bytes that are no update: they are refused before they could spoil the store.
      const { structs, ds } = Y.decodeUpdate(payload);
      if (structs.length === 0 && ds.clients.size === 0) return;
      if (type === 1 && Y.snapshotContainsUpdate(Y.snapshot(document), payload)) return;
      await store.append(documentName, { update: payload, at: options.now() });
    },
    onChange: async ({ document, documentName }) => {
      const name = document.getMap("head").get("name");
      if (typeof name !== "string" || names.get(documentName) === name) return;
      names.set(documentName, name);
      await store.rename(documentName, name);
    },
  });
  const names = new Map<string, string>();
  const sockets = new WebSocketServer({ noServer: true, maxPayload: largestMessage });

  return {
    upgrade: (request, socket, head) =>
      sockets.handleUpgrade(request, socket, head, (webSocket) => {
        const page = hocuspocus.handleConnection(
          webSocket as never,
          new Request(`http://${request.headers.host}${request.url ?? "/"}`),
        );
        webSocket.on("message", (data: Buffer) => page.handleMessage(new Uint8Array(data)));
        webSocket.on("close", (code, reason) => page.handleClose({ code, reason: reason.toString() }));
        // A close follows every error; without a listener the error would end the program.
        webSocket.on("error", () => {});
      }),
    read: async (id) => {
      const open = hocuspocus.documents.get(id);
      if (open) return open;
      const kept = await store.read(id);
      if (!kept) return undefined;
      const ydoc = new Y.Doc();
      applyKept(ydoc, kept.updates);
      return ydoc;
    },
    dismiss: (id) => hocuspocus.closeConnections(id),
    stop: async () => {
      for (const webSocket of sockets.clients) webSocket.terminate();
      hocuspocus.closeConnections();
      await Promise.all(
        [...hocuspocus.documents.values()].map((document) => hocuspocus.unloadDocument(document)),
      );
    },
  };
}
