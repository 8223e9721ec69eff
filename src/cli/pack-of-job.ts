import { handoverOf } from "#engine";
import { installationOf, type JobFile, settingsOfJob, stationReadings } from "#job";
import type { JobSheetDetails, PackInput } from "#output";
import type { OpenedJob } from "./open-job.ts";

/** What a job gives to its pack, without what the world adds: fonts, prices, what is wanted. */
export function packOfJob(
  { site, job, notes }: Pick<OpenedJob, "site" | "job" | "notes">,
  { progress }: { readonly progress?: Parameters<typeof handoverOf>[1]["progress"] },
): Omit<PackInput, "fonts"> {
  const rooms = new Map(job.rooms.map((room) => [room.id, room]));
  return {
    handover: handoverOf(site, {
      choices: settingsOfJob(job).choices,
      found: installationOf(job),
      entries: job.testEntries,
      readings: (room) => stationReadings(job.testEntries, room),
      notes,
      ...(progress ? { progress } : {}),
    }),
    details: detailsOf(job),
    asbestos: job.visit,
    deviceLabels: new Map(
      job.detectors.flatMap(({ id, deviceLabels }) => (deviceLabels ? [[id, deviceLabels]] : [])),
    ),
    by: new Map(job.testEntries.flatMap(({ id, by }) => (by ? [[id, by]] : []))),
    owed: job.openPoints.map(({ text, room, owner, due, closed }) => ({
      text,
      room:
        room === undefined ? "" : [rooms.get(room)?.number, rooms.get(room)?.name].filter(Boolean).join(" "),
      owner: owner ?? "",
      due: due ?? "",
      closed: closed ?? "",
    })),
    revisions: job.revisions.map(({ letter, date, by, reason }) => ({
      letter,
      date,
      by: by ?? "",
      reason,
    })),
    identity: job.id ?? "",
    created: createdOf(job),
  };
}

function detailsOf({ name, details }: JobFile): JobSheetDetails {
  return {
    job: name,
    client: details.client ?? "",
    site: details.site ?? "",
    date: details.date ?? "",
    revision: details.revision ?? "",
    drawnBy: details.drawnBy ?? "",
    checkedBy: details.checkedBy ?? "",
  };
}

/** The job's own date, so that the same job gives the same bytes; a fixed day where it has none. */
function createdOf({ details }: JobFile): Date {
  const date = new Date(details.date ?? "");
  return Number.isNaN(date.getTime()) ? new Date(Date.UTC(2000, 0, 1)) : date;
}
