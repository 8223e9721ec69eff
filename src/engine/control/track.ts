import type { Seconds } from "../quantity/index.ts";
import { type Cause, type ControlState, causes, controlStates } from "./states.ts";

/** What a controller did, as columns: row i holds from times[i] on. Codes index `controlStates` and `causes`. */
export interface StateTrack {
  readonly length: number;
  readonly times: Float64Array;
  readonly states: Uint8Array;
  /** 1 while the controller wants light. */
  readonly outputs: Uint8Array;
  readonly causes: Uint8Array;
  /** Starts of pulses, of an impulse output or of a slave. */
  readonly pulses: readonly Seconds[];
}

/** What a load did, as columns: lit from on[i] to off[i]; still lit at the end: off is the end. */
export interface LoadTrack {
  readonly length: number;
  readonly on: Float64Array;
  readonly off: Float64Array;
  readonly onCauses: Uint8Array;
  /** "start" where it was still lit at the end. */
  readonly offCauses: Uint8Array;
  /** Index of the device whose change switched it; 255 and up count too, −1: none. */
  readonly offBy: Int32Array;
}

export interface StateChange {
  readonly at: Seconds;
  readonly state: ControlState;
  readonly out: boolean;
  readonly cause: Cause;
}

/** The rows of a track as records, for those who look at a few of them. @param track - Columns @returns One record a row */
export const stateChanges = (track: StateTrack): StateChange[] =>
  Array.from({ length: track.length }, (_, i) => ({
    at: track.times[i]!,
    state: controlStates[track.states[i]!]!,
    out: track.outputs[i] === 1,
    cause: causes[track.causes[i]!]!,
  }));

/**
 * Row of a track that holds at a time, −1 before the first.
 *
 * @param track - Columns with ascending times
 * @param at - Time looked for [s]
 * @returns Index of the last row with times[i] ≤ at
 */
export function rowAt(track: Pick<StateTrack, "length" | "times">, at: Seconds): number {
  let low = 0;
  let high = track.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (track.times[middle]! <= at) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** Columns that grow; only the simulation writes to them. */
export interface GrowingTrack {
  length: number;
  times: Float64Array;
  states: Uint8Array;
  outputs: Uint8Array;
  causes: Uint8Array;
  readonly pulses: Seconds[];
}

/** An empty track. */
export const growingTrack = (): GrowingTrack => ({
  length: 0,
  times: new Float64Array(64),
  states: new Uint8Array(64),
  outputs: new Uint8Array(64),
  causes: new Uint8Array(64),
  pulses: [],
});

/** Doubles the room of a full track, so that a year costs a dozen copies. */
export function widen(track: GrowingTrack): void {
  const size = track.times.length * 2;
  const times = new Float64Array(size);
  times.set(track.times);
  track.times = times;
  for (const column of ["states", "outputs", "causes"] as const) {
    const wider = new Uint8Array(size);
    wider.set(track[column]);
    track[column] = wider;
  }
}

/** The columns without their spare room. */
export const closedTrack = (track: GrowingTrack): StateTrack => ({
  length: track.length,
  times: track.times.subarray(0, track.length),
  states: track.states.subarray(0, track.length),
  outputs: track.outputs.subarray(0, track.length),
  causes: track.causes.subarray(0, track.length),
  pulses: track.pulses,
});

/**
 * What a load did within a stretch of time, as if the stretch began at 0.
 *
 * @param track - Columns
 * @param from - Where the stretch begins [s]
 * @param to - Where it ends [s]
 * @returns Columns of a load; one that is lit over an edge is lit from there on, or until there, by "start"
 * @example Lit from 50 to 350, cut to 100 … 200: lit from 0 to 100
 */
export function cutLoad(
  track: LoadTrack,
  { from, to }: { readonly from: Seconds; readonly to: Seconds },
): LoadTrack {
  const rows = Array.from({ length: track.length }, (_, i) => i).filter(
    (i) => track.off[i]! > from && track.on[i]! < to,
  );
  const start = causes.indexOf("start");
  return {
    length: rows.length,
    on: Float64Array.from(rows, (i) => Math.max(track.on[i]!, from) - from),
    off: Float64Array.from(rows, (i) => Math.min(track.off[i]!, to) - from),
    onCauses: Uint8Array.from(rows, (i) => (track.on[i]! < from ? start : track.onCauses[i]!)),
    offCauses: Uint8Array.from(rows, (i) => (track.off[i]! > to ? start : track.offCauses[i]!)),
    offBy: Int32Array.from(rows, (i) => (track.off[i]! > to ? -1 : track.offBy[i]!)),
  };
}
