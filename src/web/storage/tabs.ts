import * as Y from "yjs";

/** What pages of one browser tell each other; the platform's BroadcastChannel, and a pair of ends in tests. */
export interface Channel {
  readonly post: (message: TabMessage) => void;
  readonly listen: (listener: (message: TabMessage) => void) => void;
  readonly close: () => void;
}

export type TabMessage =
  | { readonly kind: "hello"; readonly vector: Uint8Array }
  | { readonly kind: "update"; readonly update: Uint8Array };

const fromTab = { from: "tab" };

/** Keeps a job that is open in several tabs the same in all of them, also without a server. */
export function joinTabs(ydoc: Y.Doc, channel: Channel): () => void {
  const onUpdate = (update: Uint8Array, origin: unknown): void => {
    if (origin !== fromTab) channel.post({ kind: "update", update });
  };
  ydoc.on("update", onUpdate);
  channel.listen((message) => {
    if (message.kind === "update") Y.applyUpdate(ydoc, message.update, fromTab);
    else channel.post({ kind: "update", update: Y.encodeStateAsUpdate(ydoc, message.vector) });
  });
  channel.post({ kind: "hello", vector: Y.encodeStateVector(ydoc) });
  return () => {
    ydoc.off("update", onUpdate);
    channel.close();
  };
}
