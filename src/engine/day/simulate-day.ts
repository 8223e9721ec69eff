import type { ProblemCode } from "../check/index.ts";
import {
  type Cause,
  type ControlState,
  causes,
  cutLoad,
  type Hold,
  type Interval,
  type StateTrack,
  simulate,
  stateChanges,
} from "../control/index.ts";
import {
  type AlternatingPresence,
  type Consumption,
  compareDelays,
  consumption,
  type DelayResult,
  recommendedDelay,
} from "../energy/index.ts";
import type { Seconds } from "../quantity/index.ts";
import { type DayInput, dayTask } from "./day-task.ts";
import { delayWish } from "./replay-loads.ts";
import type { SwitchedLoad } from "./switched-loads.ts";

/** A controller in one state. */
export interface StateStretch {
  readonly from: Seconds;
  readonly to: Seconds;
  readonly state: ControlState;
}

/** The load lit, with what switched it on and off; "start": so it was before, or so it is still at the end. */
export interface LitStretch {
  readonly from: Seconds;
  readonly to: Seconds;
  readonly onCause: Cause;
  readonly offCause: Cause;
}

/** What people would complain about. */
export interface DayFault {
  readonly code: ProblemCode;
  readonly from: Seconds;
  readonly to: Seconds;
  readonly devices: readonly string[];
}

/** What a load and its controllers did in the days that were given, from 0 on. */
export interface DayRun {
  readonly devices: readonly {
    readonly id: string;
    readonly stretches: readonly StateStretch[];
    readonly movements: Float64Array;
  }[];
  readonly lit: readonly LitStretch[];
  readonly people: readonly Interval[];
  readonly faults: readonly DayFault[];
  readonly holds: readonly Hold[];
  /** For a load of one watt. */
  readonly used: Consumption;
}

/** Between two movements within so long the state is shown as one: nobody reads flickers of a second. [s] */
const shownAsOne: Seconds = 60;

/**
 * Simulates the days of a load.
 *
 * @param load - Detectors as they are set
 * @param input - The days
 * @returns States, lit stretches, faults, who holds whom
 * @source CONTROL-MACHINE
 * @example Somebody from 9:00 to 10:00, seen all the while, delay 10 min: lit from 9:00 to 10:10
 */
export function simulateDay(load: SwitchedLoad, input: DayInput): DayRun {
  const task = dayTask(load, input);
  const from = task.watchFrom ?? 0;
  const run = simulate(task);
  const cut = cutLoad(run.loads[load.id]!, { from, to: task.until });
  const people = (task.people?.[load.id] ?? [])
    .map(([begin, end]): Interval => [Math.max(0, begin - from), end - from])
    .filter(([, end]) => end > 0);
  return {
    devices: load.devices.map(({ id }) => ({
      id,
      stretches: stretchesOf(run.devices[id]!, { from, to: task.until }),
      movements: Float64Array.from(task.movements?.[id] ?? [], (at) => at - from).filter((at) => at >= 0),
    })),
    lit: Array.from({ length: cut.length }, (_, i) => ({
      from: cut.on[i]!,
      to: cut.off[i]!,
      onCause: causes[cut.onCauses[i]!]!,
      offCause: causes[cut.offCauses[i]!]!,
    })),
    people,
    faults: run.faults.map((fault) => ({
      code: fault.problem.code,
      from: Math.max(0, fault.from - from),
      to: fault.to - from,
      devices: fault.devices,
    })),
    holds: run.holds.map((hold) => ({ ...hold, from: hold.from - from })),
    used: consumption(cut, {
      span: task.until - from,
      power: 1,
      background: input.background ?? load.background,
      people,
    }),
  };
}

/** States one after the other; a short delay between two movements counts as movement. */
function stretchesOf(
  track: StateTrack,
  { from, to }: { readonly from: Seconds; readonly to: Seconds },
): readonly StateStretch[] {
  const stretches: { from: Seconds; to: Seconds; state: ControlState }[] = [];
  const rows = stateChanges(track);
  rows.forEach(({ at, state }, i) => {
    const end = Math.min(rows[i + 1]?.at ?? to, to);
    if (end <= from || end <= at) return;
    const begin = Math.max(at, from) - from;
    const [one, before] = [stretches.at(-1), stretches.at(-2)];
    if (one?.state === state) one.to = end - from;
    else if (
      state === "occupied" &&
      one?.state === "delay" &&
      before?.state === "occupied" &&
      one.to - one.from <= shownAsOne
    ) {
      stretches.pop();
      before.to = end - from;
    } else stretches.push({ from: begin, to: end - from, state });
  });
  return stretches;
}

/** Delays tried on the same days. */
export interface DayDelays {
  /** For a load of one watt. */
  readonly results: readonly DelayResult[];
  readonly recommended: ReturnType<typeof recommendedDelay>;
}

/** Delays that are tried beside the one that is set. [s] */
const triedDelays: readonly Seconds[] = [1, 3, 5, 10, 15, 20, 30].map((minutes) => minutes * 60);

/**
 * Tries delays on the same days: what each costs and how often it leaves somebody in the dark.
 *
 * @param load - Detectors as they are set
 * @param input - The days
 * @param options.beside - Delays to try beside the usual ones [s]
 * @param options.presence - Means of presence, where the closed form holds
 * @param options.longest - Longest delay that a rule allows [s]
 * @returns Results by delay, and the one that is recommended
 * @source CONTROL-MACHINE
 * @source ALTERNATING-RENEWAL
 */
export function compareDayDelays(
  load: SwitchedLoad,
  input: DayInput,
  options: {
    readonly beside: readonly Seconds[];
    readonly presence?: AlternatingPresence;
    readonly longest?: Seconds;
  },
): DayDelays {
  const delays = [...new Set([...triedDelays, ...options.beside])].sort((a, b) => a - b);
  const results = delays.flatMap((delay) =>
    compareDelays({
      control: dayTask(load, { ...input, offDelay: delay }),
      load: load.id,
      power: 1,
      background: input.background ?? load.background,
      delays: [delay],
      ...(options.presence ? { presence: options.presence } : {}),
    }),
  );
  const wish = delayWish(load);
  return {
    results,
    recommended: recommendedDelay(
      results,
      options.longest === undefined ? wish : { ...wish, longest: options.longest },
    ),
  };
}
