import { type Detector, type Outline, outlineContains, type Problem, poleOf } from "#engine";
import { readRecord } from "../parse/read-record.ts";
import type { JobFile, JobRecords, JobUnderlay, RecordKind } from "../schema/job-file.ts";
import { lostReference } from "../site/references.ts";
import { fromSite } from "../site/to-site.ts";
import { underlayOf } from "../underlay/underlay-of.ts";
import type { Command, Edit } from "./command.ts";
import { deletion } from "./delete-records.ts";
import { put, recordOf } from "./record-edits.ts";
import { printOf } from "./record-print.ts";
import type { SurveyRecords } from "./survey-records.ts";

/** The kinds that a survey consists of, what is referred to first. */
const surveyKinds = [
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
/** The kinds that a reading writes beside its drawing. */
const readKinds = [...surveyKinds, "detectors"] as const;
type ReadKind = (typeof readKinds)[number];

/** What hangs or stands in a room. */
const contents = readKinds.slice(1);

/** A file that was read, and what was chosen for it. */
export interface Reading {
  readonly survey: SurveyRecords;
  readonly file: string;
  readonly choice: Readonly<Record<string, unknown>>;
}

/**
 * Takes what was read from a file into a job that is being worked on, in one step.
 *
 * - [IMP-1] What a person changed since the same file was read before stays as the person left it; a room in which something was set down counts as changed.
 * - [IMP-2] What a person removed stays removed.
 * - [IMP-3] What this reading no longer finds goes, unless a person changed it.
 * - [IMP-4] A found room that lies on a room that stays is left out, with what is in it.
 */
export const takeReading = (reading: Reading): Command => ({
  name: "take-reading",
  edits: (job) => {
    const notes: Problem[] = [];
    const survey = { ...reading.survey, detectors: detectorsOf(job, reading, notes) };
    const drawings = drawingsOf(reading);
    const known = knownPrints(job, drawings);
    const staying = stayingRooms(job, known);
    const found = new Set(readKinds.flatMap((kind) => (survey[kind] ?? []).map(({ id }) => `${kind}/${id}`)));
    const gone = [...known.keys()].filter((key) => !found.has(key) && isUntouched(job, key, known, staying));
    const removed = deletion(
      job,
      gone.map((key) => refOf(key)),
    );
    if ("problems" in removed) return removed;
    const edits: Edit[] = [...removed.edits];
    const prints: Record<string, string> = {};
    const changed: string[] = [];
    let missing = 0;
    const present = { storeys: new Set(job.storeys.map(({ id }) => id)) } as Record<RecordKind, Set<string>>;
    for (const storey of survey.storeys) {
      if (present.storeys.has(storey.id)) continue;
      edits.push(put("storeys", fromSite("storeys", storey)));
      present.storeys.add(storey.id);
    }
    present.models = new Set(job.models.map(({ id }) => id));
    const floor = outlinesByStorey(job, new Set(gone));
    for (const kind of readKinds) {
      present[kind] = new Set(
        (job[kind] as readonly { readonly id: string }[])
          .map(({ id }) => id)
          .filter((id) => !gone.includes(`${kind}/${id}`)),
      );
      for (const record of survey[kind] ?? []) {
        const key = `${kind}/${record.id}`;
        const now = recordOf(job, kind, record.id);
        const before = known.get(key);
        const kept = before !== undefined && (!now || !isUntouched(job, key, known, staying));
        if (kept || (before === undefined && now)) {
          if (before !== undefined) {
            prints[key] = before;
            if (now) changed.push(nameOf(now));
            else missing++;
          }
          continue;
        }
        const read = readRecord(kind, fromSite(kind, record as never));
        if (!read.record) {
          notes.push(...read.problems);
          continue;
        }
        if (kind === "rooms" && before === undefined && liesOn(read.record as JobRecords["rooms"], floor))
          continue;
        if (lostReference(kind, read.record, present)) continue;
        notes.push(...read.notes);
        present[kind].add(record.id);
        prints[key] = printOf(read.record);
        edits.push(put(kind, read.record));
      }
    }
    edits.push(
      ...drawings.map((drawing, index) =>
        put("underlays", {
          ...withPlace(drawing, recordOf(job, "underlays", drawing.id)),
          choice: { ...reading.choice },
          ...(index === 0 ? { read: prints } : {}),
        }),
      ),
    );
    if (changed.length + missing > 0)
      notes.push({
        code: "plan-changed-stays",
        values: { changed: changed.length, names: namesOf(changed), removed: missing },
      });
    return { edits, notes };
  },
});

/** What a record is called on the plan, where it has a name. */
const nameOf = (record: object): string => {
  const { name = "", number = "" } = record as { readonly name?: string; readonly number?: string };
  return [number, name].filter((part) => part !== "").join(" ");
};

/** Names in one sentence, a few of many. */
function namesOf(all: readonly string[]): string {
  const named = [...new Set(all.filter((name) => name !== ""))];
  if (named.length === 0) return "–";
  return [...named.slice(0, MOST_NAMED), ...(named.length > MOST_NAMED ? ["…"] : [])].join(", ");
}

/** More names than this nobody reads in one sentence. */
const MOST_NAMED = 4;

/** Detectors of the file whose model the job knows: of the others nobody could say what they see. */
function detectorsOf(job: JobFile, { survey }: Reading, notes: Problem[]): readonly Detector[] {
  const found = survey.detectors ?? [];
  const models = new Set(job.models.map(({ id }) => id));
  for (const model of new Set(found.map((detector) => detector.model))) {
    if (models.has(model)) continue;
    const tags = found.filter((detector) => detector.model === model).map(({ tag }) => tag);
    const named = [...tags.slice(0, 3), ...(tags.length > 3 ? ["…"] : [])].join(", ");
    notes.push({ code: "detectors-of-unknown-model", values: { count: tags.length, tags: named, model } });
  }
  return found
    .filter(({ model }) => models.has(model))
    .map((detector) => ({ ...detector, controls: [], group: "", masks: [], pinned: true }));
}

/** The drawings of a reading; a model without lines still leaves a record, to remember what was read. */
function drawingsOf({ survey, file }: Reading): readonly JobUnderlay[] {
  if (survey.drawings && survey.drawings.length > 0) return survey.drawings.map(underlayOf);
  return [
    {
      id: `plan-${file.replace(/[^A-Za-z0-9]+/g, "-").slice(0, 40)}`,
      storey: survey.storeys[0]?.id ?? "ground",
      name: file,
      file,
      shown: true,
      layers: [],
      origin: [0, 0],
      turn: 0,
      lines: "",
    },
  ];
}

/** A drawing that is read again lies where a person moved it to, and shows the layers that it showed. */
const withPlace = (drawing: JobUnderlay, before: JobUnderlay | undefined): JobUnderlay =>
  before
    ? {
        ...drawing,
        shown: before.shown,
        origin: before.origin,
        turn: before.turn,
        layers: drawing.layers.map((layer) => before.layers.find(({ name }) => name === layer.name) ?? layer),
      }
    : drawing;

const knownPrints = (job: JobFile, drawings: readonly JobUnderlay[]): ReadonlyMap<string, string> =>
  new Map(drawings.flatMap(({ id }) => Object.entries(recordOf(job, "underlays", id)?.read ?? {})));

/** Rooms that a person has made one's own: changed, or with something in them that no reading wrote. */
function stayingRooms(job: JobFile, known: ReadonlyMap<string, string>): ReadonlySet<string> {
  const staying = new Set<string>();
  for (const room of job.rooms) if (known.get(`rooms/${room.id}`) !== printOf(room)) staying.add(room.id);
  for (const kind of contents)
    for (const record of job[kind])
      if (known.get(`${kind}/${record.id}`) !== printOf(record))
        for (const room of roomsOf(record)) if (room !== null) staying.add(room);
  return staying;
}

function isUntouched(
  job: JobFile,
  key: string,
  known: ReadonlyMap<string, string>,
  staying: ReadonlySet<string>,
): boolean {
  const { kind, id } = refOf(key);
  const now = recordOf(job, kind, id);
  if (!now || known.get(key) !== printOf(now)) return false;
  if (kind === "rooms") return !staying.has(id);
  // What stands in a room that stays belongs to it now.
  return !roomsOf(now).some((room) => room !== null && staying.has(room));
}

const roomsOf = (record: object): readonly (string | null)[] => {
  const placed = record as { readonly room?: string; readonly rooms?: readonly (string | null)[] };
  return placed.rooms ?? [placed.room ?? null];
};

function refOf(key: string): { readonly kind: ReadKind; readonly id: string } {
  const at = key.indexOf("/");
  return { kind: key.slice(0, at) as ReadKind, id: key.slice(at + 1) };
}

function outlinesByStorey(job: JobFile, gone: ReadonlySet<string>): ReadonlyMap<string, readonly Outline[]> {
  const floor = new Map<string, Outline[]>();
  for (const { id, storey, outline } of job.rooms)
    if (!gone.has(`rooms/${id}`)) floor.set(storey, [...(floor.get(storey) ?? []), outline]);
  return floor;
}

/** Whether the place of a room that is farthest from its walls lies in a room that stays. */
function liesOn(room: JobRecords["rooms"], floor: ReadonlyMap<string, readonly Outline[]>): boolean {
  const { at } = poleOf({ outline: room.outline, holes: room.holes }, 0.05);
  return (floor.get(room.storey) ?? []).some((other) => outlineContains(other, at));
}

/** Prints of all that a job holds of what a reading writes: for a job that was made of one reading. */
export function printsOf(job: JobFile): Readonly<Record<string, string>> {
  return Object.fromEntries(
    surveyKinds.flatMap((kind) =>
      job[kind].flatMap((raw) => {
        const { record } = readRecord(kind, raw);
        return record ? [[`${kind}/${record.id}`, printOf(record)]] : [];
      }),
    ),
  );
}
