import { type HandoverInput, roomTitle } from "#engine";
import type { JobFile } from "../schema/job-file.ts";
import { installationOf } from "./installation-of.ts";
import { isDay, settingsOfJob } from "./settings-of.ts";
import { stationReadings } from "./station-readings.ts";

/** What of a job its papers are made from, beside its site. Plain data: it may be sent to a worker. */
export type JobForHandOver = Pick<
  JobFile,
  | "id"
  | "name"
  | "details"
  | "visit"
  | "detectors"
  | "boards"
  | "circuits"
  | "testEntries"
  | "openPoints"
  | "revisions"
  | "swaps"
  | "signatures"
> & { readonly rooms: readonly { readonly id: string; readonly number: string; readonly name: string }[] };

/**
 * What a job gives to its papers: to the engine what it collects from, and what is printed as it stands.
 *
 * @param job - A job that was read or that a document holds.
 * @returns `input` for the engine's record, without the notes of a reading; `printed` as papers take it.
 * @example A job without a date is stamped with a fixed day, so that the same job gives the same bytes
 */
export function handOverOf(job: JobForHandOver) {
  const { details } = job;
  const input: Omit<HandoverInput, "notes"> = {
    choices: settingsOfJob(job).choices,
    found: installationOf(job),
    entries: job.testEntries,
    readings: (room) => stationReadings(job.testEntries, room),
    revisions: job.revisions,
    swaps: job.swaps,
    today: details.date,
    sampling: details.sampling,
    inspectionYears: details.inspectionYears,
  };
  const rooms = new Map(job.rooms.map((room) => [room.id, room]));
  const printed = {
    details: {
      job: job.name,
      client: details.client ?? "",
      site: details.site ?? "",
      date: details.date ?? "",
      revision: details.revision ?? "",
      drawnBy: details.drawnBy ?? "",
      checkedBy: details.checkedBy ?? "",
    },
    call: details.call ?? "",
    asbestos: job.visit,
    deviceLabels: new Map(
      job.detectors.flatMap(({ id, deviceLabels }) => (deviceLabels ? [[id, deviceLabels] as const] : [])),
    ),
    by: new Map(job.testEntries.flatMap(({ id, by }) => (by ? [[id, by] as const] : []))),
    owed: job.openPoints.map(({ text, room, owner, due, closed }) => ({
      text,
      room: room === undefined ? "" : roomTitle(rooms.get(room)),
      owner: owner ?? "",
      due: due ?? "",
      closed: closed ?? "",
    })),
    signatures: job.signatures.map(({ name, role, time, strokes, for: purpose }) => ({
      name,
      role,
      day: time.slice(0, 10),
      for: purpose,
      strokes,
    })),
    identity: job.id ?? "",
    created: createdOf(details.date),
  };
  return { input, printed };
}

/** The job's own day, so that the same job gives the same bytes wherever it is printed; a fixed day where it has none, or writes it in words. */
function createdOf(date: string | undefined): Date {
  const day = new Date(isDay(date) ? date : "");
  return Number.isNaN(day.getTime()) ? new Date(Date.UTC(2000, 0, 1)) : day;
}
