import type { ParseArgsConfig } from "node:util";
import type { Finding, Problem } from "#engine";
import type { PlaceRooms } from "./place-rooms.ts";

/** What the shell gets to know. */
export const exitCodes = {
  /** Nothing that must be mended. */
  fine: 0,
  /** Something must be mended. */
  mend: 1,
  /** The command, or a file that it names, is wrong. */
  badInput: 2,
  internal: 3,
  /** Stopped by the person; the best so far was kept. */
  cancelled: 130,
} as const;
export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

/** Everything outside of the program that a command may touch. */
export interface World {
  readonly folder: string;
  readonly print: (text: string) => void;
  /** Notes on the way; kept out of standard output. */
  readonly note: (text: string) => void;
  /** Whether somebody watches the notes. */
  readonly watched: boolean;
  readonly cancelled: AbortSignal;
  readonly placeRooms: PlaceRooms;
  readonly newId: () => string;
}

export type Values = Readonly<Record<string, string | boolean | readonly (string | boolean)[] | undefined>>;

/** A command line as parsed. */
export interface Call {
  readonly world: World;
  readonly words: readonly string[];
  readonly values: Values;
}

/** What a command has to say: once as data, once for a person. */
export interface Answer {
  readonly exit: ExitCode;
  readonly json: unknown;
  readonly text: string;
}

/** Why a command was refused. */
export interface Refusal {
  readonly problems: readonly Problem[];
  readonly exit?: ExitCode;
}

export interface Command {
  readonly name: string;
  /** What follows the name in the help. */
  readonly usage: string;
  readonly summary: string;
  /** Lines of help on the options of its own. */
  readonly help: readonly (readonly [option: string, meaning: string])[];
  readonly options: NonNullable<ParseArgsConfig["options"]>;
  readonly run: (call: Call) => Promise<Answer | Refusal>;
}

export const isRefusal = (outcome: object): outcome is Refusal =>
  "problems" in outcome && !("json" in outcome);

export const refused = (...problems: readonly Problem[]): Refusal => ({ problems });

/** 1 if something must be mended. */
export const exitOf = (findings: readonly Pick<Finding, "severity">[]): ExitCode =>
  findings.some((finding) => finding.severity === "must") ? exitCodes.mend : exitCodes.fine;

export const textValue = (values: Values, name: string): string | undefined => {
  const value = values[name];
  return typeof value === "string" ? value : undefined;
};

export const textValues = (values: Values, name: string): readonly string[] => {
  const value = values[name];
  return Array.isArray(value) ? value.filter((one): one is string => typeof one === "string") : [];
};
