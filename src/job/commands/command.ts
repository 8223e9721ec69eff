import type { Problem } from "#engine";
import type { JobDetails, JobFile, JobRecords, RecordInputs, RecordKind } from "../schema/job-file.ts";
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
  /** The planning numbers as a whole: what is absent follows the program again. */
  | { readonly do: "defaults"; readonly defaults: JobPlanning }
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
  readonly edits: (
    job: JobFile,
    world: CommandWorld,
  ) => { readonly edits: readonly Edit[] } | { readonly problems: readonly Problem[] };
}

/** What became of a command: ids of the records that it made, or why it was refused. */
export interface Outcome {
  readonly done: boolean;
  readonly made: readonly string[];
  readonly problems: readonly Problem[];
}
