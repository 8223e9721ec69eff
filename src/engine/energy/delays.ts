import type { Problem } from "../check/index.ts";
import { type ControlTask, cutLoad, type Interval, simulate } from "../control/index.ts";
import type { Seconds, Share, Watts } from "../quantity/index.ts";
import { alwaysLit, type Consumption, consumption, litFor, saving } from "./consumption.ts";
import { type AlternatingPresence, type RenewalResult, renewal } from "./renewal.ts";

/** One off delay tried: the simulation, and the closed form where one exists. */
export interface DelayResult {
  readonly delay: Seconds;
  readonly used: Consumption;
  readonly saving: Share | undefined;
  readonly closedForm?: RenewalResult;
}

export interface DelayTask {
  /** What is before its `watchFrom` leads in and is not counted. */
  readonly control: ControlTask;
  readonly load: string;
  readonly power: Watts;
  readonly background?: Watts;
  readonly delays: readonly Seconds[];
  /** Lit hours to compare with, from the time that is watched on; the whole of it by default. */
  readonly reference?: readonly (readonly [Seconds, Seconds])[];
  /** Means of presence, where the closed form holds. */
  readonly presence?: AlternatingPresence;
}

/**
 * Runs the same presence with every delay: what it costs, what it spares, how often it leaves people in the dark. A stair
 * timer runs for the delay.
 *
 * @param task - Controllers, people, load, delays to try [s]
 * @returns One result a delay, in the order given
 * @source CONTROL-MACHINE
 */
export function compareDelays(task: DelayTask): DelayResult[] {
  const { control, load } = task;
  const from = control.watchFrom ?? 0;
  const span = control.until - from;
  const people = control.people?.[load]?.map(([begin, end]): Interval => [begin - from, end - from]);
  const measured = (track: Parameters<typeof consumption>[0]): Consumption =>
    consumption(track, {
      span,
      power: task.power,
      ...(task.background === undefined ? {} : { background: task.background }),
      ...(people === undefined ? {} : { people }),
    });
  const reference = measured(task.reference ? litFor(task.reference) : alwaysLit(span));
  return task.delays.map((delay) => {
    const devices = control.devices.map((device) => ({
      ...device,
      parameters: { ...device.parameters, offDelay: delay },
    }));
    const loads = control.loads.map((one) =>
      one.stairTimer ? { ...one, stairTimer: { ...one.stairTimer, time: delay } } : one,
    );
    const run = simulate({ ...control, devices, loads });
    const used = measured(cutLoad(run.loads[load]!, { from, to: control.until }));
    // A switch-off by hand or by daylight is no mistake of the delay: only the faults count.
    const early = run.faults.filter(
      (fault) => fault.load === load && fault.problem.code === "switched-off-while-occupied",
    );
    return {
      delay,
      used: { ...used, offWhileOccupied: early.length },
      saving: saving(used, reference),
      ...(task.presence ? { closedForm: renewal(task.presence, delay) } : {}),
    };
  });
}

/** What a recommended delay has to keep to. */
export interface DelayWish {
  /** Most switch-offs a day while somebody is there. */
  readonly offPerDay: number;
  /** Most switching cycles a year that lamps and contact bear. */
  readonly cyclesPerYear: number;
  /** Longest delay that a rule allows. [s] */
  readonly longest?: Seconds;
}

/**
 * The shortest delay that keeps to the wish: it spares most.
 *
 * @param results - Delays tried
 * @param wish - What it has to keep to
 * @returns Delay, and the reason as a note of the catalogue; or no delay and the reason why
 * @source DERIVED-HERE
 */
export function recommendedDelay(
  results: readonly DelayResult[],
  wish: DelayWish,
): { readonly delay: Seconds | undefined; readonly reason: Problem } {
  const perDay = ({ used }: DelayResult): number => (used.offWhileOccupied * 86_400) / used.span;
  const fitting = results
    .filter(({ delay }) => delay <= (wish.longest ?? Number.POSITIVE_INFINITY))
    .filter((result) => perDay(result) <= wish.offPerDay && result.used.cyclesPerYear <= wish.cyclesPerYear)
    .toSorted((a, b) => a.delay - b.delay);
  const best = fitting[0];
  const allowed = { most: wish.offPerDay, cycles: wish.cyclesPerYear };
  if (!best) {
    return {
      delay: undefined,
      reason: {
        code: "no-delay-fits",
        values: { ...allowed, longest: minutes(wish.longest ?? Math.max(0, ...results.map((r) => r.delay))) },
      },
    };
  }
  return {
    delay: best.delay,
    reason: {
      code: "delay-recommended",
      values: {
        minutes: minutes(best.delay),
        off: Math.round(perDay(best) * 100) / 100,
        cycles: Math.round(best.used.cyclesPerYear),
        percent: best.saving === undefined ? "?" : Math.round(best.saving * 100),
      },
    },
  };
}

const minutes = (delay: Seconds): number => Math.round((delay / 60) * 10) / 10;
