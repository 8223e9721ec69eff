import type { StationReading } from "#engine";
import type { JobTestEntry } from "../schema/job-file.ts";

/** The step under which stations of the walk test are recorded. */
export const stationStep = "station";

/** Entries that were not withdrawn, oldest first; of entries of one moment the one with the earlier id. */
export function entriesThatCount(entries: readonly JobTestEntry[]): readonly JobTestEntry[] {
  const withdrawn = new Set(
    entries.flatMap(({ outcome, of }) => (outcome === "withdrawn" && of !== undefined ? [of] : [])),
  );
  return entries
    .filter(({ id, outcome }) => outcome !== "withdrawn" && !withdrawn.has(id))
    .toSorted((a, b) => moment(a) - moment(b) || (a.id < b.id ? -1 : 1));
}

/** What was found at the stations of a room, as the engine takes it. @returns Readings; entries without a station are none. */
export function stationReadings(entries: readonly JobTestEntry[], room: string): readonly StationReading[] {
  return entriesThatCount(entries).flatMap((entry) => {
    const { id, about, step, part, outcome, basis, value } = entry;
    if (step !== stationStep || about.kind !== "room" || about.id !== room || part === undefined) return [];
    if (outcome !== "seen" && outcome !== "not-seen") return [];
    return [
      {
        id,
        station: part,
        basis: basis ?? "",
        seen: outcome === "seen",
        ...(value === undefined ? {} : { distance: value }),
        // Clocks of different zones are put into one order.
        recorded: new Date(moment(entry)).toISOString(),
      },
    ];
  });
}

/** When an entry was made; what cannot be read comes first. [ms] */
const moment = ({ time }: JobTestEntry): number => {
  const at = Date.parse(time);
  return Number.isNaN(at) ? 0 : at;
};
