import { type Problem, say } from "#engine";
import { migrated } from "../migrations/migrate.ts";
import {
  headSchemas,
  type JobFile,
  jobFormat,
  jobVersion,
  type RecordKind,
  recordKinds,
} from "../schema/job-file.ts";
import { mostCorners } from "../schema/values.ts";
import { readRecord } from "./read-record.ts";
import { nameOfRecord, quoted, reasonOf, shown } from "./sentences.ts";

/** A job that was read, with what was mended; or why it was refused. */
export type ParsedJob =
  | {
      readonly job: JobFile;
      readonly notes: readonly Problem[];
      /** Written by a newer program. */
      readonly readOnly: boolean;
      readonly problems?: undefined;
    }
  | { readonly job?: undefined; readonly problems: readonly Problem[] };

/** More problems than a person reads at once. */
const mostProblems = 50;

/**
 * Reads a job file, a hand-written one with rooms only as well as one that was saved.
 *
 * @param content - Text of the file, or what JSON.parse made of it.
 * @returns The job with every default filled in, or problems that name the place in the file. Never throws on any content.
 */
export function parseJob(content: unknown): ParsedJob {
  const opened = openedFile(content);
  if ("code" in opened) return { problems: [opened] };
  const { file, version } = opened;
  const readOnly = version > jobVersion;
  const problems: Problem[] = [];
  const notes: Problem[] = readOnly ? [{ code: "job-newer", values: { version, newest: jobVersion } }] : [];

  const job: Record<string, unknown> = {};
  for (const [name, schema] of Object.entries(headSchemas)) {
    const parsed = schema.safeParse(file[name]);
    if (parsed.success) {
      if (parsed.data !== undefined) job[name] = parsed.data;
    } else
      problems.push(
        ...parsed.error.issues.map(
          (issue): Problem => ({
            code: "job-field-wrong",
            values: {
              place: name,
              reason: reasonOf(issue, file[name]),
            },
          }),
        ),
      );
  }
  const corners = cornersOf(file);
  if (corners > mostCorners.job)
    return {
      problems: [
        { code: "job-too-large", values: { count: corners, what: say`corners`, most: mostCorners.job } },
      ],
    };
  for (const kind of recordKinds) {
    const read = readList(kind, file[kind]);
    job[kind] = read.records;
    problems.push(...read.problems);
    notes.push(...read.notes);
    if (problems.length >= mostProblems) break;
  }
  if (problems.length > 0) return { problems: problems.slice(0, mostProblems) };
  for (const [name, value] of Object.entries(file)) if (!(name in job)) job[name] = value;
  return { job: withGroundFloor(job as unknown as JobFile), notes, readOnly };
}

function openedFile(
  content: unknown,
): { readonly file: Readonly<Record<string, unknown>>; readonly version: number } | Problem {
  let file = content;
  if (typeof content === "string") {
    try {
      file = JSON.parse(content.replace(/^\uFEFF/, ""));
    } catch (error) {
      return {
        code: "job-not-json",
        values: { reason: error instanceof Error ? error.message : String(error) },
      };
    }
  }
  if (typeof file !== "object" || file === null || Array.isArray(file))
    return { code: "job-other-format", values: { reason: say`it holds ${shown(file)}` } };
  const fields = file as Readonly<Record<string, unknown>>;
  if (fields.format !== jobFormat)
    return { code: "job-other-format", values: { reason: say`its format is ${shown(fields.format)}` } };
  const version = fields.version ?? 1;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1)
    return { code: "job-version-unknown", values: { version: shown(version), newest: jobVersion } };
  return { file: migrated({ ...fields, version }), version };
}

function readList(
  kind: RecordKind,
  raw: unknown,
): {
  readonly records: readonly unknown[];
  readonly problems: readonly Problem[];
  readonly notes: readonly Problem[];
} {
  if (raw === undefined) return { records: [], problems: [], notes: [] };
  if (!Array.isArray(raw))
    return {
      records: [],
      problems: [
        { code: "job-field-wrong", values: { place: kind, reason: say`must be a list, not ${shown(raw)}` } },
      ],
      notes: [],
    };
  const records: unknown[] = [];
  const problems: Problem[] = [];
  const notes: Problem[] = [];
  const places = new Map<string, string>();
  for (const [index, entry] of raw.entries()) {
    const place = placeOf(kind, entry, index);
    const read = readRecord(kind, withId(kind, entry, index), place);
    if (!read.record) problems.push(...read.problems);
    else {
      const first = places.get(read.record.id);
      if (first !== undefined)
        problems.push({
          code: "job-id-twice",
          values: { place, id: read.record.id, first },
          records: [read.record.id],
        });
      places.set(read.record.id, place);
      records.push(read.record);
      notes.push(...read.notes);
    }
    if (problems.length >= mostProblems) break;
  }
  return { records, problems, notes };
}

/** Where a record stands in its file. @example rooms[3] “Drying room” */
function placeOf(kind: RecordKind, raw: unknown, index: number): string {
  const name = nameOfRecord(raw);
  return name === undefined ? `${kind}[${index}]` : `${kind}[${index}] ${quoted(name)}`;
}

/** A hand-written record may leave its id out: nothing refers to it then. */
const withId = (kind: RecordKind, entry: unknown, index: number): unknown =>
  typeof entry === "object" && entry !== null && !Array.isArray(entry) && !("id" in entry)
    ? { id: `${kind}-${index + 1}`, ...entry }
    : entry;

/** A file with rooms only has one storey that nobody wrote down. */
const withGroundFloor = (job: JobFile): JobFile =>
  job.storeys.length === 0 && job.rooms.some((room) => room.storey === "ground")
    ? { ...job, storeys: [{ id: "ground", name: "Ground floor", elevation: 0 }] }
    : job;

/** Corners of all outlines, counted before anything slow looks at them. */
function cornersOf(file: Readonly<Record<string, unknown>>): number {
  const lengthOf = (value: unknown): number => (Array.isArray(value) ? value.length : 0);
  const nested = (value: unknown): number =>
    Array.isArray(value) ? value.reduce<number>((sum, ring) => sum + lengthOf(ring), 0) : 0;
  let corners = 0;
  for (const kind of ["rooms", "floorPieces", "obstacles"] as const) {
    const list = file[kind];
    if (!Array.isArray(list)) continue;
    for (const entry of list as unknown[]) {
      if (typeof entry !== "object" || entry === null) continue;
      const fields = entry as Record<string, unknown>;
      corners +=
        lengthOf(fields.outline) +
        lengthOf(fields.footprint) +
        nested(fields.holes) +
        nested(fields.noDevices);
    }
  }
  return corners;
}
