import { type Outline, type Problem, type Said, say, type Words } from "#engine";
import type { JobRecords, RecordKind } from "../schema/job-file.ts";
import { recordSchemas } from "../schema/records.ts";
import { faultsOf } from "./faults.ts";
import { mendedOutline } from "./mended-outline.ts";
import { placeSaid } from "./record-words.ts";
import { reasonOf, shown } from "./sentences.ts";

export type ReadRecord<Kind extends RecordKind> =
  | { readonly record: JobRecords[Kind]; readonly notes: readonly Problem[]; readonly problems?: undefined }
  | { readonly record?: undefined; readonly problems: readonly Problem[] };

/**
 * Reads one record of a job, whoever wrote it: fills what was left out, mends what can be mended without a doubt, and refuses the rest.
 *
 * @param raw - The record as written: metres, degrees.
 * @param place - Where it stands, to begin the sentences with; made from kind, name and id if absent.
 */
export function readRecord<Kind extends RecordKind>(
  kind: Kind,
  raw: unknown,
  place?: Words,
): ReadRecord<Kind> {
  const here = place ?? placeSaid(kind, raw);
  const parsed = recordSchemas[kind].safeParse(raw);
  if (!parsed.success)
    return {
      problems: parsed.error.issues.slice(0, 20).map((issue) => ({
        code: "job-field-wrong",
        values: {
          place: here,
          reason: issue.path.length > 0 ? reasonOf(issue, raw) : say`must be an object, not ${shown(raw)}`,
        },
        ...recordsOf(raw),
      })),
    };
  const record = parsed.data as JobRecords[Kind];
  const faults = faultsOf(kind, record);
  if (faults.length > 0)
    return {
      problems: faults.map((reason) => ({
        code: "job-field-wrong",
        values: { place: here, reason },
        records: [record.id],
      })),
    };
  return withMendedOutlines(kind, record, here);
}

const recordsOf = (raw: unknown): { readonly records?: readonly string[] } => {
  const id = typeof raw === "object" && raw !== null ? (raw as Record<string, unknown>).id : undefined;
  return typeof id === "string" ? { records: [id] } : {};
};

/** Which fields of a kind are outlines, and which way they run. */
const rings: Partial<
  Record<
    RecordKind,
    {
      readonly one?: string;
      readonly many?: Readonly<Record<string, "counter-clockwise" | "clockwise">>;
      readonly what: Said;
    }
  >
> = {
  rooms: { one: "outline", many: { holes: "clockwise", noDevices: "counter-clockwise" }, what: say`a room` },
  floorPieces: { one: "footprint", what: say`a piece of floor` },
  obstacles: { one: "footprint", what: say`an obstacle` },
};

function withMendedOutlines<Kind extends RecordKind>(
  kind: Kind,
  record: JobRecords[Kind],
  place: Words,
): ReadRecord<Kind> {
  const shape = rings[kind];
  if (!shape) return { record, notes: [] };
  const notes: Problem[] = [];
  const problems: Problem[] = [];
  const mended: Record<string, unknown> = { ...record };
  const mend = (
    ring: string,
    outline: Outline,
    turns: "counter-clockwise" | "clockwise",
    what: Said,
  ): Outline => {
    const result = mendedOutline(outline, { place, ring, what, turns });
    if ("problem" in result) {
      problems.push({ ...result.problem, records: [record.id] });
      return outline;
    }
    notes.push(...result.notes.map((note) => ({ ...note, records: [record.id] })));
    return result.outline;
  };
  if (shape.one)
    mended[shape.one] = mend(shape.one, mended[shape.one] as Outline, "counter-clockwise", shape.what);
  for (const [field, turns] of Object.entries(shape.many ?? {}))
    mended[field] = (mended[field] as readonly Outline[]).map((outline, index) =>
      mend(`${field}[${index}]`, outline, turns, say`an area`),
    );
  return problems.length > 0 ? { problems } : { record: mended as JobRecords[Kind], notes };
}
