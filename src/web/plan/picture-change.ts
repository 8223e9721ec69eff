import type { Site } from "#engine";
import { applied, difference } from "../jobs/apply.ts";
import type { DrawnCoverage, DrawnResults } from "./drawn-results.ts";
import type { PictureChange, ResultsChange, SiteChange } from "./paint-asked.ts";
import type { Painted, Picture } from "./picture.ts";

/** What the worker gets as it is, where it is another than before. */
const plainFields = [
  "storey",
  "view",
  "units",
  "palette",
  "shown",
  "wires",
  "walk",
  "selection",
  "toolState",
  "preview",
  "held",
  "grips",
  "side",
  "planned",
  "tried",
  "lit",
  "flags",
  "focus",
  "insets",
] as const satisfies readonly (keyof Painted)[];

/** What differs between two pictures, as small as it can be sent: records and results that did not change stay where they are. */
export function changeBetween(before: Picture | undefined, now: Picture, density: number): PictureChange {
  const site = siteChange(before?.site, now.site);
  const results = resultsChange(before?.calculated, now.calculated);
  const fields = Object.fromEntries(
    plainFields.filter((key) => !before || before[key] !== now[key]).map((key) => [key, now[key]]),
  );
  return { density, ...(site && { site }), ...(results && { results }), fields };
}

/** The picture after a change; what did not change keeps its identity. */
export function changed(before: Painted | undefined, change: PictureChange): Painted {
  return {
    ...(before as Painted),
    ...change.fields,
    ...(change.site && { site: siteAfter(before?.site, change.site) }),
    ...(change.results && { calculated: resultsAfter(before?.calculated, change.results) }),
  };
}

function siteChange(before: Site | undefined, now: Site): SiteChange | undefined {
  if (before === now) return undefined;
  if (!before) return { whole: now };
  return {
    steps: difference(before, now),
    ...(before.defaults !== now.defaults && { defaults: now.defaults }),
  };
}

function siteAfter(before: Site | undefined, change: SiteChange): Site {
  if ("whole" in change) return change.whole;
  const site = applied(before as Site, change.steps);
  return change.defaults ? { ...site, defaults: change.defaults } : site;
}

function resultsChange(before: DrawnResults | undefined, now: DrawnResults): ResultsChange | undefined {
  if (before === now) return undefined;
  const zones = [...now.zones].filter(([id, one]) => before?.zones.get(id) !== one);
  const rooms = [...now.rooms].filter(([id, one]) => before?.rooms.get(id) !== one);
  const gone = {
    zones: [...(before?.zones.keys() ?? [])].filter((id) => !now.zones.has(id)),
    rooms: [...(before?.rooms.keys() ?? [])].filter((id) => !now.rooms.has(id)),
  };
  if (before && zones.length + rooms.length + gone.zones.length + gone.rooms.length === 0) return undefined;
  return { zones, rooms: rooms.map(([id, one]) => [id, drawnOf(one)]), gone };
}

const drawnOf = ({ room, gaps, spill, darkWalks }: DrawnCoverage): DrawnCoverage => ({
  room,
  gaps,
  spill,
  darkWalks,
});

const resultsAfter = (before: DrawnResults | undefined, change: ResultsChange): DrawnResults => ({
  zones: mapAfter(before?.zones, change.zones, change.gone.zones),
  rooms: mapAfter(before?.rooms, change.rooms, change.gone.rooms),
});

function mapAfter<T>(
  before: ReadonlyMap<string, T> | undefined,
  added: readonly (readonly [string, T])[],
  gone: readonly string[],
): ReadonlyMap<string, T> {
  const map = new Map(before);
  for (const id of gone) map.delete(id);
  for (const [id, one] of added) map.set(id, one);
  return map;
}
