import type { Problem } from "#engine";
import { readRecord } from "../parse/read-record.ts";
import type { JobRecords, RecordKind } from "../schema/job-file.ts";
import { lostReference } from "../site/references.ts";
import { fromSite } from "../site/to-site.ts";
import { underlayOf } from "../underlay/underlay-of.ts";
import type { Command, Edit } from "./command.ts";
import { put, recordOf } from "./record-edits.ts";
import type { SurveyRecords } from "./survey-records.ts";

const surveyed = [
  "storeys",
  "underlays",
  "rooms",
  "floorPieces",
  "openings",
  "obstacles",
  "dwellPlaces",
  "interference",
  "ceilingThings",
  "luminaires",
  "switches",
] as const satisfies readonly RecordKind[];

/** What a person decides about a room, and a second import of its file must not undo. */
const decided = ["use", "highestTemperature", "ceilingGrid", "demand", "noDevices"] as const;

/**
 * Takes what a reader of a foreign file found, in one step. A record whose id is already there is brought up to date.
 * A record that cannot be used is left out, with what refers to it, and the outcome says so.
 */
export const importSurvey = (survey: SurveyRecords): Command => ({
  name: "import-survey",
  edits: (job) => {
    const edits: Edit[] = [];
    const notes: Problem[] = [];
    const present = {} as Record<RecordKind, Set<string>>;
    for (const kind of surveyed) {
      present[kind] = new Set((job[kind] as readonly { readonly id: string }[]).map((record) => record.id));
      for (const found of kind === "underlays"
        ? (survey.drawings ?? []).map(underlayOf)
        : (survey[kind] ?? [])) {
        const record = {
          ...(kind === "underlays" ? found : (fromSite(kind, found as never) as object)),
          ...keptDecisions(kind, recordOf(job, kind, found.id)),
        };
        const read = readRecord(kind, record);
        if (!read.record) {
          notes.push(...read.problems);
          continue;
        }
        const lost = lostReference(kind, read.record, present);
        if (lost) continue;
        notes.push(...read.notes);
        present[kind].add(read.record.id);
        edits.push(put(kind, read.record));
      }
    }
    return edits.length === 0 && notes.length > 0 ? { problems: notes } : { edits, notes };
  },
});

function keptDecisions(kind: RecordKind, before: JobRecords[RecordKind] | undefined): object {
  if (kind !== "rooms" || !before) return {};
  const room = before as JobRecords["rooms"];
  return Object.fromEntries(
    decided.filter((name) => room[name] !== undefined).map((name) => [name, room[name]]),
  );
}
