import type {
  AlternatingPresence,
  DayDelays,
  DayInput,
  DayRun,
  Problem,
  ReplayedLoad,
  Seconds,
  Stay,
  SwitchedLoad,
} from "#engine";

/** A log of presence, small enough to go between screen and worker. */
export interface DayLog {
  readonly times: Float64Array;
  /** 1: somebody is there. */
  readonly occupied: Uint8Array;
  readonly step: Seconds;
  readonly longestStep: Seconds;
  /** First time as written. */
  readonly begins: string;
  /** The same as a time of its day. [s] */
  readonly timeOfDay: Seconds;
  /** Days that it touches. */
  readonly days: number;
  /** From midnight before the first row on. */
  readonly stays: readonly Stay[];
  readonly notes: readonly Problem[];
}

export type DayQuestion =
  | { readonly ask: "day"; readonly load: SwitchedLoad; readonly input: DayInput }
  | {
      readonly ask: "delays";
      readonly load: SwitchedLoad;
      readonly input: DayInput;
      readonly beside: readonly Seconds[];
      readonly presence: AlternatingPresence | undefined;
      readonly longest: Seconds | undefined;
    }
  | { readonly ask: "replay"; readonly load: SwitchedLoad; readonly log: DayLog; readonly still: Seconds }
  | { readonly ask: "log"; readonly bytes: ArrayBuffer };

export type DayAnswer =
  | { readonly tell: "day"; readonly run: DayRun }
  | { readonly tell: "delays"; readonly delays: DayDelays }
  | { readonly tell: "replay"; readonly replayed: ReplayedLoad }
  | { readonly tell: "log"; readonly log: DayLog }
  | { readonly tell: "refused"; readonly problems: readonly Problem[] };
