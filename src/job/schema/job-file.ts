import * as z from "zod";
import { details, type JobPlanning, planning } from "./planning.ts";
import { recordSchemas } from "./records.ts";
import { identity, kept, words } from "./values.ts";
import { visit } from "./wiring.ts";

export const jobFormat = "roomwake-job";
/** Version of the file that this program writes; see `migrations/`. */
export const jobVersion = 5;

export type RecordKind = keyof typeof recordSchemas;
export const recordKinds = Object.keys(recordSchemas) as readonly RecordKind[];
/** Kinds that the plan's calculations do not look at: drawings and pictures are for eyes, boards and circuits for the wiring, the rest for the test. */
export const keptKinds = [
  "underlays",
  "boards",
  "circuits",
  "photos",
  "notes",
  "instruments",
  "testEntries",
  "openPoints",
  "signatures",
  "revisions",
  "swaps",
] as const;
/** Kinds whose records are only ever added: what was recorded on site stands, and two people's records always meet. */
export const addedKinds = [
  "testEntries",
  "signatures",
  "revisions",
  "swaps",
] as const satisfies readonly KeptKind[];
export type KeptKind = (typeof keptKinds)[number];
export type SiteKind = Exclude<RecordKind, KeptKind>;
export const isSiteKind = (kind: RecordKind): kind is SiteKind =>
  !(keptKinds as readonly string[]).includes(kind);
export const siteKinds = recordKinds.filter(isSiteKind);

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
export type JobSwitch = JobRecords["switches"];
export type JobBoard = JobRecords["boards"];
export type JobCircuit = JobRecords["circuits"];
export type JobPhoto = JobRecords["photos"];
export type JobNote = JobRecords["notes"];
export type JobInstrument = JobRecords["instruments"];
export type JobTestEntry = JobRecords["testEntries"];
export type JobOpenPoint = JobRecords["openPoints"];
export type JobSignature = JobRecords["signatures"];
export type JobRevision = JobRecords["revisions"];
export type JobSwap = JobRecords["swaps"];
export type JobModel = JobRecords["models"];
export type JobDetector = JobRecords["detectors"];
/** What a person chose to set on a detector. */
export type JobSettings = NonNullable<JobDetector["settings"]>;
export type JobDetails = Exact<Fixed<z.output<typeof details>>>;
export type JobVisit = Exact<Fixed<z.output<typeof visit>>>;

/** A whole job as it stands on disk: metres, degrees counter-clockwise from +x. */
export type JobFile = {
  readonly format: typeof jobFormat;
  readonly version: number;
  /** The same in every copy of the job, by which copies find each other; absent in a file that a hand wrote. */
  readonly id?: string;
  readonly name: string;
  readonly details: JobDetails;
  readonly defaults: JobPlanning;
  readonly visit: JobVisit;
} & { readonly [Kind in RecordKind]: readonly JobRecords[Kind][] };

/** The parts of the file that are not records. */
export const headSchemas = {
  format: z.literal(jobFormat),
  version: z.number().int().min(1),
  id: identity.optional(),
  name: words.default(""),
  details: details.default({}),
  defaults: planning.default({}),
  visit: visit.default({}),
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
  switches: list("switches"),
  models: list("models"),
  detectors: list("detectors"),
  boards: list("boards"),
  circuits: list("circuits"),
  photos: list("photos"),
  notes: list("notes"),
  instruments: list("instruments"),
  testEntries: list("testEntries"),
  openPoints: list("openPoints"),
  signatures: list("signatures"),
  revisions: list("revisions"),
  swaps: list("swaps"),
});

/** A job with nothing in it. @example emptyJob("Annex").rooms is [] */
export const emptyJob = (name: string): JobFile => ({
  format: jobFormat,
  version: jobVersion,
  name,
  details: {},
  defaults: {},
  visit: {},
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
  switches: [],
  models: [],
  detectors: [],
  boards: [],
  circuits: [],
  photos: [],
  notes: [],
  instruments: [],
  testEntries: [],
  openPoints: [],
  signatures: [],
  revisions: [],
  swaps: [],
});
