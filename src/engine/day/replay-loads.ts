import { type ControlParameters, usualParameters } from "../control/index.ts";
import {
  type DelayWish,
  type LoggedPresence,
  type LogReplay,
  recommendedDelay,
  replayLog,
} from "../energy/index.ts";
import type { Seconds } from "../quantity/index.ts";
import type { SwitchedLoad } from "./switched-loads.ts";

/** Delays that are tried on a log beside those that are set. [s] */
const triedDelays: readonly Seconds[] = [0, 1, 5, 10, 15, 20, 30].map((minutes) => minutes * 60);

/** What people, lamps and contacts bear: ours, printed as assumptions wherever it decides. */
export const usualWish = { offPerDay: 0.2, cyclesPerYear: 10_000, yearsOfService: 10 } as const;

/** A pause of somebody who sits still, between two records of a log. Ours. [s] */
export const usualStill: Seconds = 600;

/** What was tried on a load, and which delay comes out of it. */
export interface ReplayedLoad {
  readonly load: SwitchedLoad;
  readonly run: LogReplay;
  readonly wish: DelayWish;
  readonly recommended: ReturnType<typeof recommendedDelay>;
}

/**
 * Runs a log of presence through loads, each with the usual delays and its own. Loads that are set alike do the same with the
 * same log: each kind is run once.
 *
 * @param loads - Of a site
 * @param log - Presence
 * @param still - A pause of up to so long is somebody who sits still [s]
 * @returns One result a load, in their order
 * @source LOG-REPLAY
 * @source CONTROL-MACHINE
 */
export function replayLoads(
  loads: readonly SwitchedLoad[],
  log: LoggedPresence,
  still: Seconds,
): readonly ReplayedLoad[] {
  const known = new Map<string, LogReplay>();
  return loads.map((load) => {
    const switching = load.devices.filter(({ role }) => role === "switches");
    const set = switching.flatMap(({ chosen }) => (chosen.offDelay === undefined ? [] : [chosen.offDelay]));
    const delays = [...new Set([...triedDelays, ...set])].sort((a, b) => a - b);
    // Two of the same kind on one load do what one does.
    const kinds = new Set(switching.map(({ parameters }) => JSON.stringify(kindOf(parameters))));
    const key = JSON.stringify([[...kinds].sort(), delays, load.background]);
    const run =
      known.get(key) ??
      replayLog({
        log,
        devices: [...kinds].map((kind, i) => ({ id: String(i), parameters: JSON.parse(kind) })),
        delays,
        still,
        background: load.background,
      });
    known.set(key, run);
    const wish = delayWish(load);
    return { load, run, wish, recommended: recommendedDelay(run.results, wish) };
  });
}

/**
 * What a delay of a load has to keep to.
 *
 * @param load - Its contacts' life counts, spread over the years of service; the usual cycles where a data sheet does not say
 * @returns Most switch-offs on somebody a day, most cycles a year
 */
export const delayWish = (load: SwitchedLoad): DelayWish => ({
  offPerDay: usualWish.offPerDay,
  cyclesPerYear:
    load.life === undefined ? usualWish.cyclesPerYear : Math.round(load.life / usualWish.yearsOfService),
});

/** What tells two controllers apart on a log: the delay is tried, light and sound are not in it. */
function kindOf({ threshold: _, sound: __, ...parameters }: ControlParameters): ControlParameters {
  return { ...parameters, offDelay: usualParameters.offDelay };
}
