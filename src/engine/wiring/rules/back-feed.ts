import type { Line } from "../model.ts";

/** Where a contact gets its line conductor from. */
export interface ContactFeed {
  readonly line: Line;
  /** Protective device. */
  readonly device: string;
}

/** What the common node of two joined contacts is in one of the four states. */
export interface JoinedState {
  readonly first: "open" | "closed";
  readonly second: "open" | "closed";
  /** Lines on the common node. */
  readonly node: readonly Line[];
  /** Two lines meet: 400 V between them. */
  readonly shortCircuit: boolean;
  /** The common node, and with it the output terminal of an open contact, is live from a circuit that is not its own. */
  readonly liveFromOther: boolean;
  /** Two protective devices feed the node: neither protects it alone. */
  readonly paralleledDevices: boolean;
}

/**
 * Truth table of two joined contacts: what the common node carries in each of the four states.
 *
 * @param first - Line and device of the first contact. @param second - Of the second.
 * @returns Four states, both open first.
 * @source DERIVED-HERE
 * @example L1 and L2, both closed: a short circuit between two lines
 */
export const joinedStates = (first: ContactFeed, second: ContactFeed): readonly JoinedState[] =>
  (["open", "closed"] as const).flatMap((one) =>
    (["open", "closed"] as const).map((two): JoinedState => {
      const feeds = [...(one === "closed" ? [first] : []), ...(two === "closed" ? [second] : [])];
      const both = feeds.length === 2;
      return {
        first: one,
        second: two,
        node: [...new Set(feeds.map(({ line }) => line))],
        shortCircuit: both && first.line !== second.line,
        liveFromOther: feeds.length > 0 && first.device !== second.device,
        paralleledDevices: both && first.line === second.line && first.device !== second.device,
      };
    }),
  );

/** Whether joining is allowed: no state may short, back-feed, or parallel two devices. @param first - First contact. @param second - Second contact. @returns True where all four states are harmless. @source DERIVED-HERE @example Same line, same device: true */
export const mayBeJoined = (first: ContactFeed, second: ContactFeed): boolean =>
  joinedStates(first, second).every(
    (state) => !state.shortCircuit && !state.liveFromOther && !state.paralleledDevices,
  );
