import {
  causeInWords,
  type DarkWalk,
  first,
  type Gap,
  type InterferenceSeen,
  type Site,
  type Spill,
  type Words,
} from "#engine";
import { rounded } from "./words.ts";

/** Gaps, walks, spill and sources as data on standard output. Metres, square metres. */
export const gapJson = (gap: Gap, site: Site): unknown => ({
  area: rounded(gap.area),
  x: rounded(gap.at[0]),
  y: rounded(gap.at[1]),
  cause: gap.cause.kind,
  words: causeInWords(gap.cause, (id) => site.detectors.find((one) => one.id === id)?.tag ?? id),
  ...(gap.cause.kind === "hidden"
    ? { behind: { ...gap.cause.behind, name: nameJson(gap.cause.behind.name) } }
    : {}),
  ...("device" in gap.cause ? { device: gap.cause.device } : {}),
  demand: gap.demand,
  ...(gap.dwellPlace === undefined ? {} : { dwellPlace: gap.dwellPlace }),
  tolerated: gap.tolerated,
});

/** A name that the program makes up begins large, one that a person gave is kept. */
const nameJson = (name: Words): Words => (typeof name === "string" ? name : first(name));

export const darkWalkJson = (walk: DarkWalk): unknown => ({
  door: walk.opening,
  metres: rounded(walk.metres),
  lit: walk.lit,
  toward: walk.toward.id,
  ...(walk.device === undefined ? {} : { device: walk.device }),
});

export const spillJson = (spill: Spill): unknown => ({
  room: spill.room,
  area: rounded(spill.area),
  devices: spill.devices,
});

export const interferenceJson = (seen: InterferenceSeen): unknown => ({
  source: seen.source,
  device: seen.device,
  distance: rounded(seen.distance),
});
