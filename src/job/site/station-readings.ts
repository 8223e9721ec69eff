import { countedEntries, type StationReading } from "#engine";
import type { JobTestEntry } from "../schema/job-file.ts";

/** Step under which stations of a walk test are entered; the station's id is the part. */
export const stationStep = "station";

/** What was found at the stations of a room. @returns Readings that count; an entry without the basis that it was read against proves nothing. */
export const stationReadings = (entries: readonly JobTestEntry[], room: string): readonly StationReading[] =>
  countedEntries(entries).flatMap(({ id, time, about, step, part, outcome, basis, value }) => {
    const isStation = step === stationStep && about.kind === "room" && about.id === room;
    if (!isStation || part === undefined || (outcome !== "seen" && outcome !== "not-seen")) return [];
    return [
      {
        id,
        station: part,
        basis: basis ?? "",
        seen: outcome === "seen",
        recorded: time,
        ...(value === undefined ? {} : { distance: value }),
      },
    ];
  });
