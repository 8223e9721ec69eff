import { type Said, say } from "../check/index.ts";
import type { CeilingThingKind, DwellKind, InterferenceKind, RoomUse } from "./site.ts";

/** What goes on in a room, in one word. */
export const useNames: Readonly<Record<RoomUse, Said>> = {
  passing: say`passing`,
  stair: say`stair`,
  moving: say`moving`,
  sitting: say`sitting`,
  sanitary: say`sanitary`,
  changing: say`changing`,
  plant: say`plant`,
  other: say`other`,
};

/** Kinds of dwell places, as they stand inside a sentence. */
export const dwellKindNames: Readonly<Record<DwellKind, Said>> = {
  desk: say`desk`,
  seat: say`seat`,
  wc: say`wc`,
  bench: say`bench`,
  basin: say`basin`,
  shower: say`shower`,
  bath: say`bath`,
  panel: say`panel`,
  machine: say`machine`,
};

/** A dwell place whose kind is not at hand. */
export const anyDwellPlace: Said = say`dwell place`;

/** Kinds of sources of false triggering, as they stand inside a sentence. */
export const interferenceKindNames: Readonly<Record<InterferenceKind, Said>> = {
  heater: say`heater`,
  "air-outlet": say`air outlet`,
  machine: say`machine`,
  "sunlit-window": say`sunlit window`,
  "door-curtain": say`door curtain`,
};

/** One source of a kind. */
export const anInterference: Readonly<Record<InterferenceKind, Said>> = {
  heater: say`a heater`,
  "air-outlet": say`an air outlet`,
  machine: say`a machine`,
  "sunlit-window": say`a sunlit window`,
  "door-curtain": say`a door curtain`,
};

/** Kinds of things on the ceiling, as they stand inside a sentence. */
export const ceilingThingKindNames: Readonly<Record<CeilingThingKind, Said>> = {
  "smoke-head": say`smoke head`,
  sprinkler: say`sprinkler`,
  speaker: say`speaker`,
  hatch: say`hatch`,
  "luminaire-emergency": say`emergency luminaire`,
  other: say`thing`,
};
