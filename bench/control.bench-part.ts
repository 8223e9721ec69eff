import { type ControlTask, simulate, usualParameters } from "#engine";
import type { BenchRow } from "./bench.ts";

const DEVICES = 100;
const MINUTES = 365 * 24 * 60;
const RUNS = 3;

/**
 * A year of presence minute by minute for 100 controllers, each with its own load, faults looked for as well.
 *
 * @returns Seconds for the year, and its state changes a second
 */
export async function rows(): Promise<readonly BenchRow[]> {
  const task = year();
  const times: number[] = [];
  let changes = 0;
  for (let run = 0; run < RUNS; run++) {
    const start = performance.now();
    changes = simulate(task).stateChanges;
    times.push((performance.now() - start) / 1000);
  }
  const seconds = times.toSorted((a, b) => a - b)[1] as number;
  return [
    {
      what: `A year of one-minute presence for ${DEVICES} controllers: ${(changes / 1e6).toFixed(2)} million state changes`,
      ours: `${seconds.toFixed(2)} s`,
      other: "5 s",
      ratio: `${(5 / seconds).toFixed(1)} times faster, ${(changes / seconds / 1e6).toFixed(1)} million changes a second`,
      goal: "under 5 s",
    },
  ];
}

/** Presence in stretches of a fixed random row: about a twentieth of the minutes, as two changes each, make five million. */
function year(): ControlTask {
  let state = 20_260_401;
  const draw = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  const movements: Record<string, Float64Array> = {};
  const people: Record<string, [number, number][]> = {};
  for (let device = 0; device < DEVICES; device++) {
    const times: number[] = [];
    const stretches: [number, number][] = [];
    for (let minute = 0; minute < MINUTES; ) {
      minute += Math.ceil(-Math.log(1 - draw()) * 560);
      const stay = Math.ceil(-Math.log(1 - draw()) * 28);
      const end = Math.min(minute + stay, MINUTES);
      if (minute < end) stretches.push([minute * 60, end * 60]);
      for (; minute < end; minute++) times.push(minute * 60);
    }
    movements[`d${device}`] = Float64Array.from(times);
    people[`l${device}`] = stretches;
  }
  const each = <T>(make: (i: number) => T): T[] => Array.from({ length: DEVICES }, (_, i) => make(i));
  return {
    devices: each((i) => ({
      id: `d${i}`,
      parameters: { ...usualParameters, offDelay: 300 },
      output: { kind: "contact", load: `l${i}` },
    })),
    loads: each((i) => ({ id: `l${i}` })),
    events: [],
    movements,
    people,
    until: MINUTES * 60,
  };
}
