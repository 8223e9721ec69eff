import * as z from "zod";
import { details, type JobPlanning, planning } from "./planning.ts";
import { recordSchemas } from "./records.ts";
import { kept, words } from "./values.ts";

export const jobFormat = "roomwake-job";
/** Version of the file that this program writes; see `migrations/`. */
export const jobVersion = 2;

export type RecordKind = keyof typeof recordSchemas;
export const recordKinds = Object.keys(recordSchemas) as readonly RecordKind[];
/** The kinds that calculations look at: a drawing under the plan is for eyes. */
export type SiteKind = Exclude<RecordKind, "underlays">;
export const siteKinds = recordKinds.filter((kind): kind is SiteKind => kind !== "underlays");

type Fixed<Value> = Value extends readonly unknown[] | object
  ? { readonly [Key in keyof Value]: Fixed<Value[Key]> }
  : Value;

/** Absent means absent: an optional field is left out, never stored as undefined. */
type Exact<Value> = Value extends readonly unknown[]
  ? { readonly [Key in keyof Value]: Exact<Value[Key]> }
  : Value extends object
    ? {
        readonly [Key in keyof Value]: Exact<
          undefined extends Value[Key] ? Exclude<Value[Key], undefined> : Value[Key]
        >;
      }
    : Value;

/** A record of each kind as it stands in the file: metres, degrees. */
export type JobRecords = {
  readonly [Kind in RecordKind]: Exact<Fixed<z.output<(typeof recordSchemas)[Kind]>>>;
};
/** The same with everything optional that has a default: what a hand may write. */
export type RecordInputs = {
  readonly [Kind in RecordKind]: Exact<Fixed<z.input<(typeof recordSchemas)[Kind]>>>;
};

export type JobStorey = JobRecords["storeys"];
export type JobUnderlay = JobRecords["underlays"];
export type JobRoom = JobRecords["rooms"];
export type JobFloorPiece = JobRecords["floorPieces"];
export type JobOpening = JobRecords["openings"];
export type JobObstacle = JobRecords["obstacles"];
export type JobDwellPlace = JobRecords["dwellPlaces"];
export type JobInterference = JobRecords["interference"];
export type JobCeilingThing = JobRecords["ceilingThings"];
export type JobLuminaire = JobRecords["luminaires"];
export type JobModel = JobRecords["models"];
export type JobDetector = JobRecords["detectors"];
export type JobDetails = Exact<Fixed<z.output<typeof details>>>;

/** A whole job as it stands on disk: metres, degrees counter-clockwise from +x. */
export type JobFile = {
  readonly format: typeof jobFormat;
  readonly version: number;
  readonly name: string;
  readonly details: JobDetails;
  readonly defaults: JobPlanning;
} & { readonly [Kind in RecordKind]: readonly JobRecords[Kind][] };

/** The parts of the file that are not records. */
export const headSchemas = {
  format: z.literal(jobFormat),
  version: z.number().int().min(1),
  name: words.default(""),
  details: details.default({}),
  defaults: planning.default({}),
} as const;

const list = <Kind extends RecordKind>(kind: Kind) => z.array(recordSchemas[kind]).default([]);

/** The whole file; printed as `docs/job.schema.json`. */
export const jobFileSchema = kept({
  ...headSchemas,
  storeys: list("storeys"),
  underlays: list("underlays"),
  rooms: list("rooms"),
  floorPieces: list("floorPieces"),
  openings: list("openings"),
  obstacles: list("obstacles"),
  dwellPlaces: list("dwellPlaces"),
  interference: list("interference"),
  ceilingThings: list("ceilingThings"),
  luminaires: list("luminaires"),
  models: list("models"),
  detectors: list("detectors"),
});

/** A job with nothing in it. @example emptyJob("Annex").rooms is [] */
export const emptyJob = (name: string): JobFile => ({
  format: jobFormat,
  version: jobVersion,
  name,
  details: {},
  defaults: {},
  storeys: [],
  underlays: [],
  rooms: [],
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  ceilingThings: [],
  luminaires: [],
  models: [],
  detectors: [],
});
