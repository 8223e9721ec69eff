import { type Follower, follower, type Heard } from "./follow.ts";
import type { SetQuestion, SettingsKnown } from "./set-protocol.ts";

/** What settings are derived from; as long as these are the same, so are they. */
const siteKinds = [
  "storeys",
  "rooms",
  "openings",
  "interference",
  "luminaires",
  "switches",
  "models",
  "detectors",
  "defaults",
] as const;
const fileKinds = ["details", "boards", "circuits"] as const;

/** Derives the settings of the open job beside the screen. */
export const followSettings = (hear: (heard: Heard<SettingsKnown>) => void): Follower =>
  follower<SetQuestion, SettingsKnown>(
    {
      newWorker: () =>
        new Worker(new URL("./set-worker.ts", import.meta.url), { type: "module", name: "set" }),
      parts: ({ id, site, file }) => [
        id,
        ...siteKinds.map((kind) => site[kind]),
        ...fileKinds.map((kind) => file[kind]),
      ],
      question: ({ site, file: { detectors, details, boards, circuits } }) => ({
        // What stands in the rooms has no part in the settings, and is left out of what is sent.
        site: { ...site, obstacles: [], dwellPlaces: [], ceilingThings: [], floorPieces: [] },
        file: { detectors, details, boards, circuits },
      }),
    },
    hear,
  );
