import type { Problem } from "#engine";
import type {
  JobDetails,
  JobFile,
  JobRecords,
  JobVisit,
  RecordInputs,
  RecordKind,
} from "../schema/job-file.ts";
import type { JobPlanning } from "../schema/planning.ts";

/** One step of a change. `set` takes a field away where its value is undefined. */
export type Edit =
  | {
      [Kind in RecordKind]:
        | { readonly do: "put"; readonly kind: Kind; readonly record: RecordInputs[Kind] }
        | { readonly do: "set"; readonly kind: Kind; readonly id: string; readonly fields: Fields<Kind> }
        | { readonly do: "remove"; readonly kind: Kind; readonly id: string };
    }[RecordKind]
  | { readonly do: "name"; readonly name: string }
  | {
      readonly do: "details";
      readonly fields: { readonly [Name in keyof JobDetails]?: JobDetails[Name] | undefined };
    }
  | {
      readonly do: "visit";
      readonly fields: { readonly [Name in keyof JobVisit]?: JobVisit[Name] | undefined };
    }
  /** The planning numbers as a whole: what is absent follows the program again. */
  | { readonly do: "defaults"; readonly defaults: JobPlanning }
  /** Version of the file; a newer one than this program's makes the job one to look at only. */
  | { readonly do: "version"; readonly version: number }
  /** A field at the top of the file that this version does not know. */
  | { readonly do: "extra"; readonly name: string; readonly value: unknown };

export type Fields<Kind extends RecordKind> = {
  readonly [Name in Exclude<keyof JobRecords[Kind], "id">]?:
    | RecordInputs[Kind][Name & keyof RecordInputs[Kind]]
    | undefined;
};

export type EditOf<Do extends Edit["do"]> = Extract<Edit, { readonly do: Do }>;

/** What a command needs from outside: ids are dice. */
export interface CommandWorld {
  readonly newId: (kind: RecordKind) => string;
}

/** A command says what would change; the document does it, in one transaction, or refuses all of it. */
export interface Command {
  readonly name: string;
  readonly edits: (job: JobFile, world: CommandWorld) => CommandAnswer;
}

/** What is to be done, with notes on what was left out of it; or why nothing is. */
export type CommandAnswer =
  | { readonly edits: readonly Edit[]; readonly notes?: readonly Problem[] }
  | { readonly problems: readonly Problem[] };

/** Points at one record of a job. */
export interface RecordRef {
  readonly kind: RecordKind;
  readonly id: string;
}

/** What became of a command. */
export interface Outcome {
  readonly done: boolean;
  /** Ids of the records that it made. */
  readonly made: readonly string[];
  /** Why it was refused; or, where it was done, what was left out of it. */
  readonly problems: readonly Problem[];
}
