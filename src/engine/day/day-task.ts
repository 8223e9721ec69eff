import { say } from "../check/index.ts";
import {
  bridged,
  type ControlDevice,
  type ControlEvent,
  type ControlLoad,
  type ControlOutput,
  type ControlTask,
  type Interval,
  pressesInTheDark,
} from "../control/index.ts";
import type { Lux, Seconds, Share } from "../quantity/index.ts";
import { type DayCurve, daylightAt, daylightStep } from "./daylight.ts";
import { movementsOf, peopleOf, type Stay } from "./stays.ts";
import type { LoadDevice, SwitchedLoad } from "./switched-loads.ts";

/** A day. [s] */
export const daySeconds: Seconds = 86_400;

/** Slaves report to their master at most so often. Ours; a data sheet says. [s] @source CONTROL-MACHINE */
export const slaveInterval: Seconds = 30;

/** One or more days as they are to be simulated. */
export interface DayInput {
  /** Stays by detector, from 0 on. */
  readonly rows: Readonly<Record<string, readonly Stay[]>>;
  readonly days: number;
  /** every-day: the day before was like the last one, so that light and delays carry over midnight · once: nobody was there before. */
  readonly before: "every-day" | "once";
  /** Longest time that somebody stays without a visible movement. [s] */
  readonly still: Seconds;
  /** A pause of up to so long between two stays is somebody who was not recorded: for logs. [s] */
  readonly bridge: Seconds;
  readonly seed: number;
  /** Absent: no daylight. */
  readonly daylight: DayCurve | undefined;
  readonly lamps: {
    /** What they add at each detector. */
    readonly lightAt: Lux;
    readonly compensation: "learned" | "none";
  };
  /** Background level tried instead of the one that is set, as a share of what is drawn while lit. */
  readonly background: Share | undefined;
  /** Tried instead of what is set. */
  readonly offDelay: Seconds | undefined;
}

/**
 * The task for the controllers of a load: movements and people of the days, daylight in steps, a day before to lead in.
 * With a semi-automatic controller everybody presses the button who comes into the dark.
 *
 * @param load - Its detectors
 * @param input - The days
 * @returns Controllers, events, people; the days begin at its `watchFrom`
 * @source CONTROL-MACHINE
 * @source DAY-PATTERN
 */
export function dayTask(load: SwitchedLoad, input: DayInput): ControlTask {
  const lead = input.before === "every-day" ? daySeconds : 0;
  const lastDay = (input.days - 1) * daySeconds;
  const devices = load.devices.map((device): ControlDevice => controllerOf(load, device, input));
  const movements = Object.fromEntries(
    load.devices.map(({ id }) => {
      const seen = movementsOf(input.rows[id] ?? [], { still: input.still, seed: input.seed, device: id });
      const last = lead === 0 ? [] : seen.filter((at) => at >= lastDay).map((at) => at - lastDay);
      // A movement at midnight is both: the end of the day before and of this one.
      const times = new Float64Array(last.length + seen.length);
      times.set(last);
      times.set(
        seen.map((at) => at + lead),
        last.length,
      );
      return [id, times.sort()];
    }),
  );
  const people = peopleOf(
    load.devices.map(({ id }) => input.rows[id] ?? []),
    input.bridge,
  );
  const before = people
    .filter(([, to]) => lead > 0 && to > lastDay)
    .map(([from, to]): Interval => [Math.max(0, from - lastDay), to - lastDay]);
  const timed = devices.some(({ output }) => output.kind === "impulse");
  const lamps: ControlLoad = {
    id: load.id,
    title: say`The light of ${load.devices.map(({ tag }) => tag).join(", ")}`,
    ...(input.lamps.lightAt > 0
      ? { lightAt: Object.fromEntries(devices.map(({ id }) => [id, input.lamps.lightAt])) }
      : {}),
    ...(timed ? { stairTimer: { time: devices[0]!.parameters.offDelay, retriggerable: true } } : {}),
  };
  const task: ControlTask = {
    devices,
    loads: [lamps],
    movements,
    events: daylightEvents(devices, { input, until: lead + input.days * daySeconds }),
    people: {
      // A stay up to midnight and one from midnight on are one.
      [load.id]: bridged([...before, ...people.map(([from, to]): Interval => [from + lead, to + lead])], 0),
    },
    watchFrom: lead,
    until: lead + input.days * daySeconds,
  };
  return { ...task, events: [...task.events, ...pressesInTheDark(task, load.id)] };
}

function controllerOf(load: SwitchedLoad, device: LoadDevice, input: DayInput): ControlDevice {
  const { compensation } = input.lamps;
  return {
    id: device.id,
    parameters: {
      ...device.parameters,
      compensation,
      ...(input.offDelay === undefined ? {} : { offDelay: input.offDelay }),
    },
    output: outputOf(load, device),
  };
}

function outputOf(load: SwitchedLoad, device: LoadDevice): ControlOutput {
  const switching = load.devices.filter(({ role }) => role === "switches");
  if (device.role === "reports") {
    const master = switching.find(({ chosen }) => chosen.groupRole === "master") ?? switching[0]!;
    return { kind: "slave", master: master.id, interval: slaveInterval };
  }
  // A contact beside pulses would hold the timer: then all are taken for contacts.
  const impulse = device.chosen.impulse;
  return typeof impulse === "object" && switching.every(({ chosen }) => typeof chosen.impulse === "object")
    ? { kind: "impulse", load: load.id, pulse: impulse.pulse, pause: impulse.pause }
    : { kind: "contact", load: load.id };
}

function daylightEvents(
  devices: readonly ControlDevice[],
  { input: { daylight }, until }: { readonly input: DayInput; readonly until: Seconds },
): ControlEvent[] {
  const looking = devices.filter(({ parameters }) => parameters.threshold !== undefined);
  if (looking.length === 0) return [];
  if (!daylight) return looking.map(({ id: device }) => ({ kind: "daylight", at: 0, device, value: 0 }));
  const steps = Array.from({ length: Math.ceil(until / daylightStep) }, (_, i) => i * daylightStep);
  return steps.flatMap((at) => {
    const value = daylightAt(daylight, at % daySeconds);
    return looking.map(({ id: device }): ControlEvent => ({ kind: "daylight", at, device, value }));
  });
}
