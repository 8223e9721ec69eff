import type {
  Detector,
  DetectorModel,
  Finding,
  Layout,
  Outline,
  PlacementOptions,
  PlacementProgress,
  PlacementResult,
  Point,
  Problem,
  Region,
  RoomCoverage,
  Site,
  Words,
  ZoneKind,
} from "#engine";
import type { PlanChoice, PlanSurvey, SurveyDrawing } from "#exchange";
import type { JobFile, JobUnderlay, KeptKind, KeptStep, MergeCount, SettingsChange } from "#job";
import type { Told } from "./texts/told.ts";

/** Kinds of record that a job keeps, named as in the site snapshot. */
export type RecordKind = {
  [K in keyof Site]: Site[K] extends readonly { readonly id: string }[] ? K : never;
}[keyof Site];

/** One record of a kind. */
export type RecordOf<K extends RecordKind> = Site[K][number];

/** Points at one record of the open job. */
export interface RecordRef {
  readonly kind: RecordKind;
  readonly id: string;
}

/** One step of an edit. The steps of one edit happen in one transaction and are undone together. */
export type EditStep = {
  [K in RecordKind]:
    | { readonly do: "put"; readonly kind: K; readonly record: RecordOf<K> }
    | { readonly do: "set"; readonly kind: K; readonly id: string; readonly fields: Partial<RecordOf<K>> }
    | { readonly do: "remove"; readonly kind: K; readonly id: string };
}[RecordKind];

/** Names and sheet data of the job. */
export interface JobDetails {
  readonly client: string;
  readonly site: string;
  readonly drawnBy: string;
  readonly checkedBy: string;
  readonly date: string;
  readonly revision: string;
  readonly currency: string;
  readonly region: string;
  /** Whom the people in the rooms call. */
  readonly call: string;
}

/** Lines of a storey that were read from a foreign file, to draw the rooms over; they take no part in any calculation. */
export interface Underlay {
  readonly storey: string;
  /** x1 y1 x2 y2 of each line, in the plan. [m] */
  readonly lines: Float64Array;
}

/** The job that is open on the screen: an immutable snapshot and the ways to change it. A new object at every change. */
export interface OpenJob {
  readonly id: string;
  readonly site: Site;
  readonly details: JobDetails;
  /** Storey by storey; empty where nothing was read to draw over. */
  readonly underlays: readonly Underlay[];
  /** What calculations do not look at, as it stands in the file: drawings, boards, circuits, notes, photographs, the visit. */
  readonly kept: Pick<JobFile, KeptKind | "visit">;
  /** What people set on detectors, and what rules hang on, as it stands in the file. */
  readonly file: Pick<JobFile, "detectors" | "details" | "boards" | "circuits">;
  /** Counts up with every change, whoever made it. */
  readonly revision: number;
  /** Written by a newer program: may be looked at only. */
  readonly readOnly: boolean;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Changes records in one undoable transaction. `name` is a key of the text catalogue ("plan.edit.move"). */
  readonly edit: (name: string, steps: readonly EditStep[]) => void;
  /** Takes what was read from a file into the job: one undoable step; what was changed since the file was read before stays. */
  readonly take: (
    read: ModelRead,
    from: { readonly file: string; readonly choice: PlanWish },
  ) => Promise<readonly Problem[]>;
  /** The same for what stands in `kept`. */
  readonly keep: (name: string, steps: readonly KeptStep[]) => void;
  /** Both in one undoable step. */
  readonly editBoth: (
    name: string,
    steps: { readonly site: readonly EditStep[]; readonly kept: readonly KeptStep[] },
  ) => void;
  /** Sets what a person chose on detectors, by id: one undoable step. */
  readonly choose: (name: string, changes: Readonly<Record<string, SettingsChange>>) => void;
  readonly setDetails: (details: Partial<JobDetails>) => void;
  /** Packs of rules that a person switched on or off (the others follow the region), and a firm's own. */
  readonly setRules: (
    rules: {
      readonly [Name in "rulesOn" | "rulesOff" | "ownRules"]?: JobFile["details"][Name] | undefined;
    },
  ) => void;
  readonly setName: (name: string) => void;
  readonly setDefaults: (defaults: Site["defaults"]) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** A fresh record id. */
  readonly newId: (kind: RecordKind | KeptKind) => string;
}

/** Zone polygons of one device, doors as drawn, with the margins of the job. */
export type DeviceZones = Readonly<Partial<Record<ZoneKind, Region>>>;

/** What the calculation knows at the moment; kept while a newer one runs. */
export interface Calculated {
  /** Revision of the job that the newest part belongs to. */
  readonly revision: number;
  readonly busy: boolean;
  readonly rooms: ReadonlyMap<string, RoomCoverage>;
  readonly zones: ReadonlyMap<string, DeviceZones>;
  readonly findings: readonly Finding[];
  /** A calculation that failed, as a sentence for the person. */
  readonly trouble: string | undefined;
}

/** What a person settled of a plan; what is absent is proposed. */
export type PlanWish = PlanChoice & { readonly page?: number };

/** Result of reading a building model or a plan in its own worker. */
export interface ModelRead {
  readonly site: Pick<
    Site,
    | "storeys"
    | "rooms"
    | "openings"
    | "obstacles"
    | "dwellPlaces"
    | "interference"
    | "luminaires"
    | "floorPieces"
  >;
  /** Drawings read as lines, to lie under the plan. */
  readonly drawings: readonly SurveyDrawing[];
  /** What was taken off x and y to come near the origin. [m] */
  readonly shift: Point;
  /** Of a plan: what was assumed, and what else may be chosen. Absent for building models. */
  readonly plan?: PlanSurvey["plan"];
  /** A page with pictures beside its lines: it may lie under the plan as a picture instead. */
  readonly scan?: { readonly page: number };
  readonly leftOut: readonly { readonly what: Words; readonly why: Words; readonly count: number }[];
  readonly problems: readonly Told[];
}

/** Long calculations; each runs in a worker of its own that `signal` stops. */
export interface Calculations {
  readonly current: Calculated;
  /** Places one room. After an abort the promise still resolves, with the best so far and `cancelled: true`. */
  readonly place: (
    site: Site,
    options: PlacementOptions,
    watch: { readonly progress: (step: PlacementProgress) => void; readonly signal: AbortSignal },
  ) => Promise<PlacementResult>;
  /** Reads a building model, or a plan with what was chosen of it. Rejects with `AbortError` when stopped. */
  readonly readModel: (
    file: File,
    watch: {
      readonly progress: (text: string, share: number) => void;
      readonly signal: AbortSignal;
      readonly choice?: PlanWish;
    },
  ) => Promise<ModelRead>;
  /** Zones of a device that is not (yet) so in the job: newest question wins, older ones resolve to undefined. */
  readonly tryDevice: (site: Site, device: Detector) => Promise<DeviceZones | undefined>;
}

/** Start page: jobs and three ways to begin. */
export interface HomeProps {
  readonly shelf: HomeShelf;
  readonly calculations: Calculations;
  /** Goes to a stored job; of one that begins with a telephone call, to what is asked there. */
  readonly onOpen: (jobId: string, panel?: "visit") => void;
}

/** Place panel inside the floating card or bottom sheet. */
export interface PlacePanelProps {
  readonly job: OpenJob;
  readonly calculations: Pick<Calculations, "place">;
  /** Rooms to place, in reading order; one or all of a storey. */
  readonly rooms: readonly string[];
  /** Shows a layout on the plan without taking it; undefined takes the picture away. */
  readonly onPreview: (room: string, layout: Layout | undefined) => void;
  /** Goes to the detector models of the job. */
  readonly onModels: () => void;
  readonly onClose: () => void;
}

/** List of findings, called up from a stage's count. */
export interface FindingsListProps {
  readonly job: OpenJob;
  readonly findings: readonly Finding[];
  /** Index in `findings` of the flag that is highlighted on the plan. */
  readonly current: number | undefined;
  /** Brings a finding into view and selects its records. */
  readonly onShow: (index: number) => void;
  /** Opens what a finding is about, to be changed; absent where the plan itself is the place for that. */
  readonly onOpen?: (index: number) => void;
  /** Opens the place panel for a room: the remedy of gaps. */
  readonly onPlace: (room: string) => void;
  readonly onClose: () => void;
}

/** Editor of the models (data sheets) of the job and of the firm's list. */
export interface ModelsEditorProps {
  readonly job: OpenJob;
  /** Model to open first. */
  readonly model?: string;
  readonly onClose: () => void;
}

/** The detector's own eye: polar view of a device, masks drawn by dragging. */
export interface EyeViewProps {
  readonly job: OpenJob;
  readonly device: string;
  readonly calculated: Calculated;
  readonly onClose: () => void;
}

/** Job details, defaults, units, theme. */
export interface SettingsProps {
  readonly job: OpenJob | undefined;
  readonly onClose: () => void;
}

export type { Detector, DetectorModel, Finding, Layout, Outline, Region, RoomCoverage, Site, ZoneKind };

/** A small still picture of a plan, as data: drawn in the colours of the theme. */
export interface PlanPicture {
  readonly width: number;
  readonly height: number;
  /** Outlines of the rooms of one storey, the one with the most floor; as a path. */
  readonly rooms: string;
  readonly doors: string;
  readonly devices: readonly (readonly [x: number, y: number])[];
  /** Rooms of the whole job. */
  readonly count: number;
}

/** A stored job as the start page lists it. */
export interface JobEntry {
  readonly id: string;
  readonly name: string;
  /** Last change, milliseconds since 1970; undefined if unknown. */
  readonly changed: number | undefined;
  /** Last change that this browser has; undefined where it has nothing of the job. */
  readonly here: number | undefined;
  /** Where it is kept: in this browser, on the server, or both. */
  readonly where: "browser" | "server" | "both";
  /** Put aside on this device. */
  readonly archived: boolean;
}

/** What a merge of a copy came to, and the way back. */
export interface MergedCopy {
  readonly how: "history" | "difference" | "nothing-new";
  readonly count: MergeCount;
  readonly notes: readonly Problem[];
  readonly undo: () => Promise<void>;
  /** Once it is not to be undone any more. */
  readonly close: () => Promise<void>;
}

/** A job that was read from a file, and what may be done with it. */
export interface FileJob {
  readonly name: string;
  /** What was mended or left aside on the way in. */
  readonly notes: readonly Problem[];
  /** The job that is here already, of which it is a copy. */
  readonly copyOf: { readonly id: string; readonly name: string } | undefined;
  /** Keeps it and returns its id: of one that is no copy. */
  readonly keep: () => Promise<string>;
  /** Keeps it as a job of its own and returns its id. */
  readonly keepApart: () => Promise<string>;
  /** Merges it into the job that is here. */
  readonly merge: () => Promise<MergedCopy | { readonly problems: readonly Problem[] }>;
}

/** All jobs that this browser can reach, and what may be done with them as wholes. */
export interface HomeShelf {
  readonly list: () => Promise<readonly JobEntry[]>;
  /** Picture of a job's plan as this browser has it; undefined where it has nothing of it. */
  readonly picture: (job: JobEntry) => Promise<PlanPicture | undefined>;
  /** Puts a job aside on this device, or brings it back. */
  readonly archive: (id: string, where: "aside" | "back") => Promise<void>;
  /** Keeps a new job and returns its id. */
  readonly create: (
    site: Site,
    read?: { readonly drawings: readonly SurveyDrawing[]; readonly file: string; readonly choice: PlanWish },
    /** What lies under its plan besides. */
    pictures?: readonly JobUnderlay[],
  ) => Promise<string>;
  /** Reads `NAME.job.json` or `NAME.job.zip`; a file that is no job comes back as problems. Nothing is kept yet. */
  readonly readFile: (bytes: Uint8Array) => Promise<FileJob | { readonly problems: readonly Problem[] }>;
  /** Opens the demo job, putting it in first where it is not there yet. */
  readonly demo: () => Promise<string>;
  readonly rename: (id: string, name: string) => Promise<void>;
  /** Returns the id of the copy. */
  readonly duplicate: (id: string, name: string) => Promise<string>;
  /** Deletes a job; the returned way back restores it as it was. */
  readonly remove: (id: string) => Promise<{ readonly restore: () => Promise<void> }>;
  /** The job as the text of its file. */
  readonly fileText: (id: string) => Promise<string>;
  /** The job packed, with its pictures and its history. */
  readonly packed: (id: string) => Promise<Uint8Array>;
  /** Models to start with: the firm's own list, else the invented ones of the demo. */
  readonly startModels: () => readonly DetectorModel[];
}
