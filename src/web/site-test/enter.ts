import { type CarePoint, countedEntries, type Station, type StepSubject, type WorkStep } from "#engine";
import { type JobOpenPoint, type JobTestEntry, type KeptStep, stationStep } from "#job";
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

/** A complaint with the cause that was found for it. */
export interface Fault {
  readonly room: string;
  readonly symptom: string;
  /** Absent: only asked about by now, on the telephone. */
  readonly cause?: string;
  readonly readings: readonly { readonly test: string; readonly outcome: string }[];
  readonly point: JobOpenPoint;
}

/** Records a complaint, the tests that were made, the cause that was found, and what is to be done, in one step. */
export function enterFault(job: OpenJob, { room, symptom, cause, readings, point }: Fault): void {
  const about = { kind: "room", id: room } as const;
  const entries = [
    { about, step: "symptom", part: symptom, outcome: "failed" as const },
    ...readings.map(({ test, outcome }) => ({
      about,
      step: "fault-test",
      part: test,
      outcome: "done" as const,
      remark: outcome,
    })),
    ...(cause === undefined ? [] : [{ about, step: "cause", part: cause, outcome: "done" as const }]),
  ].map((what): KeptStep => ({ do: "put", kind: "testEntries", record: entryOf(job, what) }));
  job.keep("test.edit.fault", [...entries, { do: "put", kind: "openPoints", record: point }]);
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

/** Step under which the air of a room is entered. */
const ambientStep = "ambient";

/** Records how warm the air in a room is on the day of its test. [°C] */
export const enterAmbient = (job: OpenJob, room: string, value: number): void =>
  enter(job, "test.edit.step", {
    about: { kind: "room", id: room },
    step: ambientStep,
    outcome: "read",
    value,
    unit: "°C",
  });

/** How warm the air in a room was when somebody last entered it. [°C] */
export const ambientIn = (entries: readonly JobTestEntry[], room: string): number | undefined =>
  countedEntries(entries).findLast(
    ({ step, about }) => step === ambientStep && about.kind === "room" && about.id === room,
  )?.value;

/** What was found at a point of a visit. */
export interface Cared extends Pick<JobTestEntry, "outcome"> {
  readonly occasion: string;
  readonly value?: number;
  readonly remark?: string;
  /** What is to be done where it failed: an open point of its own. */
  readonly point?: string;
  readonly room?: string | undefined;
}

/** Records what was found on a visit after hand-over; what failed becomes an open point in the same step. */
export function enterCare(job: OpenJob, at: CarePoint, cared: Cared): void {
  const { occasion, outcome, value, remark, point, room } = cared;
  const record = entryOf(job, {
    about: at.about,
    step: at.step,
    occasion,
    outcome,
    ...(value === undefined ? {} : { value, unit: at.result.kind === "reading" ? at.result.unit : "" }),
    ...(remark === undefined ? {} : { remark }),
  });
  const steps: KeptStep[] = [{ do: "put", kind: "testEntries", record }];
  if (point !== undefined)
    steps.push({
      do: "put",
      kind: "openPoints",
      record: {
        id: job.newId("openPoints"),
        text: point,
        ...(room === undefined ? {} : { room }),
        origin: "visit",
        photos: [],
      },
    });
  job.keep("after.edit.visit", steps);
}

type Entered = Omit<JobTestEntry, "id" | "time" | "about"> & { readonly about: StepSubject };

const enter = (job: OpenJob, name: string, what: Entered): void =>
  job.keep(name, [{ do: "put", kind: "testEntries", record: entryOf(job, what) }]);

function entryOf(job: OpenJob, what: Entered): JobTestEntry {
  const { name, role } = tester();
  return {
    id: job.newId("testEntries"),
    ...momentOf(new Date()),
    ...(name === "" ? {} : { by: name }),
    ...(role === "" ? {} : { role }),
    ...what,
  };
}
