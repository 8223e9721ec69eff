import type { Station, StepSubject, WorkStep } from "#engine";
import { type JobTestEntry, stationStep } from "#job";
import type { OpenJob } from "../contract.ts";
import { momentOf } from "./local-time.ts";
import { tester } from "./tester.ts";

/** What somebody saw at a station. */
export interface Seen {
  readonly seen: boolean;
  readonly distance?: number | undefined;
  readonly remark?: string | undefined;
}

/** Records what was seen at a station: an entry more, whatever was recorded there before. */
export function enterStation(job: OpenJob, station: Station, { seen, distance, remark }: Seen): void {
  enter(job, "test.edit.station", {
    about: { kind: "room", id: station.room },
    step: stationStep,
    part: station.id,
    outcome: seen ? "seen" : "not-seen",
    basis: station.basis,
    ...(distance === undefined ? {} : { value: distance, unit: "m" }),
    ...(remark ? { remark } : {}),
  });
}

/** What came of a step, or of a part of it. */
export interface Done extends Pick<JobTestEntry, "outcome"> {
  readonly part?: string | undefined;
  readonly value?: number | undefined;
  readonly unit?: string | undefined;
  readonly remark?: string | undefined;
}

/** Records a step of the order of work. */
export function enterStep(job: OpenJob, step: WorkStep, { outcome, part, value, unit, remark }: Done): void {
  enter(job, "test.edit.step", {
    about: step.about,
    step: step.name,
    outcome,
    ...(part ? { part } : {}),
    ...(value === undefined ? {} : { value, unit: unit ?? "" }),
    ...(remark ? { remark } : {}),
  });
}

function enter(
  job: OpenJob,
  name: string,
  what: Omit<JobTestEntry, "id" | "time" | "about"> & { readonly about: StepSubject },
): void {
  const { name: by, role } = tester();
  const record: JobTestEntry = {
    id: job.newId("testEntries"),
    ...momentOf(new Date()),
    ...(by === "" ? {} : { by }),
    ...(role === "" ? {} : { role }),
    ...what,
  };
  job.keep(name, [{ do: "put", kind: "testEntries", record }]);
}
