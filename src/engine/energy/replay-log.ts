import {
  bridged,
  type ControlDevice,
  type ControlParameters,
  type ControlTask,
  type Interval,
  pressesInTheDark,
} from "../control/index.ts";
import type { Seconds, Share } from "../quantity/index.ts";
import { compareDelays, type DelayResult } from "./delays.ts";
import { presenceOf, type ReplayCount, replayRows } from "./replay.ts";

/** A log of presence as columns. */
export interface LoggedPresence {
  /** From the first row on, ascending. [s] */
  readonly times: readonly Seconds[];
  readonly occupied: readonly boolean[];
  /** Usual step from row to row, > 0. [s] */
  readonly step: Seconds;
  /** A longer step is a gap: nothing is known there. [s] */
  readonly longestStep: Seconds;
}

/** A log with controllers that switch one load together, and delays to try with it. */
export interface LogReplayTask {
  readonly log: LoggedPresence;
  readonly devices: readonly { readonly id: string; readonly parameters: ControlParameters }[];
  /** Off delays to try, each ≥ 0. [s] */
  readonly delays: readonly Seconds[];
  /** A pause of up to so long between two records is taken for somebody who sits still; 0 takes the log at its word. [s] */
  readonly still: Seconds;
  /** Drawn while the light is off, as a share of what is drawn while lit; 0 if absent. */
  readonly background?: Share;
}

/** One off delay tried on a log: the simulation for a load of one watt, and the plain count of rows beside it. */
export interface ReplayedDelay extends DelayResult {
  /** Where the delay is a whole number of rows. */
  readonly rows: ReplayCount | undefined;
}

export interface LogReplay {
  /** From the first row to the end of the last. [s] */
  readonly span: Seconds;
  /** The same without the gaps: the reference is lit for so long. [s] */
  readonly recorded: Seconds;
  readonly results: readonly ReplayedDelay[];
}

const LOAD = "light";

/** A controller knows no delay of nothing; any that is shorter than a movement acts as none. [s] */
const shortestDelay: Seconds = 0.001;

/** Of the usual step: rows that follow each other faster are too many to be told apart. */
const SHORTEST_ROW: Share = 0.01;

/** A row that is off the log's own step by less than this share of it was written by a clock that rounds. */
const CLOCK_ROUNDS: Share = 0.05;

/**
 * Runs controllers over a log with every delay: lit hours, switch-offs, and what is spared against light that burns while
 * the log runs. An occupied row counts as presence until the next row, seen all the while. A semi-automatic controller has
 * its button pressed by everybody who comes into the dark.
 *
 * @param task - Log, controllers on one load, delays [s]
 * @returns For a load of 1 W, so that energy in kWh times the power of a load is that load's energy
 * @source LOG-REPLAY
 * @source CONTROL-MACHINE
 * @example One occupied row of 60 s, then empty rows, delay 300 s: lit for 360 s
 */
export function replayLog(task: LogReplayTask): LogReplay {
  const { step, longestStep, occupied } = task.log;
  const times = onGrid(task.log.times, step);
  const span = (times.at(-1) ?? 0) + step;
  const recorded = presenceOf(
    times,
    times.map(() => true),
    { longestStep, lastsFor: step },
  );
  const present = presenceOf(times, occupied, { longestStep, lastsFor: step });
  const people = bridged(present, task.still);
  // An occupied row is a movement that goes on for as long as the row; one cut short must not outlast its stay.
  const shortest = present.reduce((least, [from, to]) => Math.min(least, to - from), step);
  const movementHold = Math.max(shortest, SHORTEST_ROW * step);
  const results = task.delays.map((delay): ReplayedDelay => {
    const offDelay = Math.max(delay, shortestDelay);
    const control = controlTask(task, { present, people, delay, movementHold, span });
    const [result] = compareDelays({
      control,
      load: LOAD,
      power: 1,
      delays: [offDelay],
      ...(task.background === undefined ? {} : { background: task.background }),
      reference: recorded,
    });
    const rows = delay / step;
    const whole = Math.abs(rows - Math.round(rows)) < 1e-6;
    return { ...result!, delay, rows: whole ? replayRows(occupied, Math.round(rows)) : undefined };
  });
  return { span, recorded: recorded.reduce((sum, [from, to]) => sum + to - from, 0), results };
}

interface Presence {
  readonly present: readonly Interval[];
  readonly people: readonly Interval[];
  readonly delay: Seconds;
  readonly movementHold: Seconds;
  readonly span: Seconds;
}

function controlTask(
  task: LogReplayTask,
  { present, people, delay, movementHold, span }: Presence,
): ControlTask {
  const offDelay = Math.max(delay, shortestDelay);
  const devices = task.devices.map(
    ({ id, parameters }): ControlDevice => ({
      id,
      // What a log says of light holds the lamps' own in it: it is no daylight, and is left out.
      parameters: { ...withoutLight(parameters), movementHold, offDelay },
      output: { kind: "contact", load: LOAD },
    }),
  );
  const seen = seenAllTheWhile(present, { movementHold, delay });
  const movements = Object.fromEntries(devices.map(({ id }) => [id, seen]));
  const control: ControlTask = {
    devices,
    loads: [{ id: LOAD }],
    movements,
    events: [],
    people: { [LOAD]: people },
    until: span,
  };
  return { ...control, events: pressesInTheDark(control, LOAD) };
}

function withoutLight({ threshold: _, ...parameters }: ControlParameters): ControlParameters {
  return parameters;
}

/** Movements so close together that neither a movement's own length nor the delay ends between two of them. */
function seenAllTheWhile(
  present: readonly Interval[],
  { movementHold, delay }: Pick<Presence, "movementHold" | "delay">,
): Float64Array {
  const times: number[] = [];
  // Half of what would do: rounding must not open a slit.
  const spacing = Math.max(movementHold, delay) / 2;
  // The last movement of a stay ends with the stay where no delay outlasts it.
  const early = Math.max(0, movementHold - delay);
  for (const [from, to] of present) {
    const last = Math.max(from, to - early);
    const count = Math.ceil((last - from) / spacing);
    for (let i = 0; i < count; i++) times.push(from + (i * (last - from)) / count);
    times.push(last);
  }
  return Float64Array.from(times);
}

/** Times of rows without the rounding of the clock that wrote them: 59 s and 61 s between rows are 60 s each. */
function onGrid(times: readonly Seconds[], step: Seconds): readonly Seconds[] {
  const settled = times.map((time) => {
    const whole = Math.round(time / step) * step;
    return Math.abs(whole - time) <= CLOCK_ROUNDS * step ? whole : time;
  });
  // Rows closer together than the usual step may fall onto one place: then the log is left as it is.
  return settled.every((time, i) => i === 0 || time > settled[i - 1]!) ? settled : times;
}
