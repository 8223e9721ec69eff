import type { Station } from "#engine";
import { type JobTestEntry, stationStep } from "#job";
import type { OpenJob } from "../contract.ts";
import { localTime } from "./local-time.ts";
import { tester } from "./tester.ts";

/** What somebody saw at a station. */
export interface Seen {
  readonly seen: boolean;
  readonly distance?: number | undefined;
  readonly remark?: string | undefined;
}

/** Records what was seen at a station: an entry more, whatever was recorded there before. */
export function enterStation(job: OpenJob, station: Station, { seen, distance, remark }: Seen): void {
  const { name, role } = tester();
  const record: JobTestEntry = {
    id: job.newId("testEntries"),
    time: localTime(new Date()),
    ...(name === "" ? {} : { by: name }),
    ...(role === "" ? {} : { role }),
    about: { kind: "room", id: station.room },
    step: stationStep,
    part: station.id,
    outcome: seen ? "seen" : "not-seen",
    basis: station.basis,
    ...(distance === undefined ? {} : { value: distance, unit: "m" }),
    ...(remark === undefined || remark === "" ? {} : { remark }),
  };
  job.keep("test.edit.station", [{ do: "put", kind: "testEntries", record }]);
}
