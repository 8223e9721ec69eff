import { installationOf } from "#job";
import { type Follower, follower, type Heard } from "./follow.ts";
import type { WireQuestion, WiringKnown } from "./wire-protocol.ts";

/** What the wiring is calculated from; as long as these are the same, so is what is known. */
const siteKinds = ["storeys", "rooms", "openings", "luminaires", "switches", "models", "detectors"] as const;

/** Calculates the wiring of the open job beside the screen; ways of cables only where the whole is wanted. */
export const followWiring = (hear: (heard: Heard<WiringKnown>) => void): Follower =>
  follower<WireQuestion, WiringKnown>(
    {
      newWorker: () =>
        new Worker(new URL("./wire-worker.ts", import.meta.url), { type: "module", name: "wire" }),
      parts: ({ id, site, kept }) => [id, ...siteKinds.map((kind) => site[kind]), kept.boards, kept.circuits],
      question: ({ site, kept }, whole) => ({
        // What stands in the rooms has no part in the wiring, and is left out of what is sent.
        site: {
          ...site,
          obstacles: [],
          dwellPlaces: [],
          interference: [],
          ceilingThings: [],
          floorPieces: [],
        },
        found: installationOf(kept),
        routes: whole,
      }),
    },
    hear,
  );
