import type { Problem, Words } from "../check/index.ts";
import type { Seconds } from "../quantity/index.ts";
import type { ControlTask, Interval } from "./arrangement.ts";
import { type ControlRun, runControl } from "./simulate.ts";
import { C } from "./states.ts";
import { clockTime, lengthOfTime } from "./told-time.ts";
import type { LoadTrack, StateTrack } from "./track.ts";

/** A fault over time: what, where, and from when to when. */
export interface ControlFault {
  readonly problem: Problem;
  readonly load: string;
  readonly from: Seconds;
  readonly to: Seconds;
  /** Controllers to blame, where they can be named. */
  readonly devices: readonly string[];
}

/** One controller keeps a load lit after another let go. */
export interface Hold {
  readonly load: string;
  readonly holder: string;
  readonly released: string;
  readonly seconds: Seconds;
  /** When it did so first. */
  readonly from: Seconds;
}

export interface Simulation extends ControlRun {
  readonly faults: readonly ControlFault[];
  readonly holds: readonly Hold[];
}

/** When lit time or switching counts as a fault. A choice of ours, replaceable. */
export interface FaultLimits {
  /** Lit without a break for so long: never off. */
  readonly neverOff: Seconds;
  /** Off by brightness and on by darkness again within so long, … */
  readonly huntingGap: Seconds;
  /** … so many times running: hunting. */
  readonly huntingTimes: number;
}

const usualLimits: FaultLimits = { neverOff: 24 * 3600, huntingGap: 120, huntingTimes: 3 };

/**
 * Runs the controllers and looks for what people would complain about.
 *
 * @param task - Controllers, loads, events, people; the end [s]
 * @param limits - When something counts as a fault; ours by default
 * @returns Tracks, faults in the order of load and time, and who holds whom
 * @source CONTROL-MACHINE
 * @example Delay 60 s, somebody there from 0 to 200 but seen at 0 only: switched off while occupied at 60
 */
export function simulate(task: ControlTask, limits: FaultLimits = usualLimits): Simulation {
  const run = runControl(task);
  const holds: Hold[] = [];
  const faults: ControlFault[] = [];
  for (const { id } of task.loads) {
    const track = run.loads[id]!;
    holds.push(...holdsOf(task, run, id));
    const people = task.people?.[id];
    if (people) {
      faults.push(...offWhileOccupied(task, { id, track, people }));
      faults.push(...litWhileEmpty(task, { id, track, people }));
    }
    faults.push(...hunting(task, { id, track, limits }), ...neverOff(task, { id, track, limits }));
  }
  const watchFrom = task.watchFrom ?? 0;
  return { ...run, holds, faults: faults.filter(({ from, to }) => from >= watchFrom || to > watchFrom) };
}

/** The first moment of a stretch that is watched: what leads in is not told, nor counted. */
const watched = (task: ControlTask, time: Seconds): Seconds => Math.max(time, task.watchFrom ?? 0);

/** A time of the task for a sentence. */
const told = (task: ControlTask, time: Seconds): Words =>
  clockTime(watched(task, time) - (task.watchFrom ?? 0));

const titleOf = (task: ControlTask, id: string): Words =>
  task.loads.find((load) => load.id === id)?.title ?? id;

interface LitLoad {
  readonly id: string;
  readonly track: LoadTrack;
  readonly people: readonly Interval[];
}

interface LimitedLoad {
  readonly id: string;
  readonly track: LoadTrack;
  readonly limits: FaultLimits;
}

/** Switched off by a delay, a grace or a stair timer while somebody was there. By hand, by daylight or by power is no fault. */
function offWhileOccupied(task: ControlTask, { id, track, people }: LitLoad): ControlFault[] {
  const faults: ControlFault[] = [];
  let person = 0;
  for (let i = 0; i < track.length; i++) {
    const at = track.off[i]!;
    while (person < people.length && people[person]![1] <= at) person++;
    if (person === people.length) break;
    const there = people[person]![0] <= at;
    const cause = track.offCauses[i]!;
    const timed = cause === C.delayOver || cause === C.graceOver || cause === C.stairTimerOver;
    if (!there || !timed) continue;
    const to = Math.min(people[person]![1], track.on[i + 1] ?? task.until);
    const device = task.devices[track.offBy[i]!]?.id;
    faults.push({
      problem: {
        code: "switched-off-while-occupied",
        values: { load: titleOf(task, id), at: told(task, at), dark: lengthOfTime(to - watched(task, at)) },
        records: device === undefined ? [] : [device],
      },
      load: id,
      from: at,
      to,
      devices: device === undefined ? [] : [device],
    });
  }
  return faults;
}

/** Lit longer after the last person left than the longest delay explains. */
function litWhileEmpty(task: ControlTask, { id, track, people }: LitLoad): ControlFault[] {
  const allowed = longestHold(task, id);
  const faults: ControlFault[] = [];
  for (let i = 0, person = 0; i < track.length; i++) {
    const [on, off] = [track.on[i]!, track.off[i]!];
    while (person < people.length && people[person]![1] <= on) person++;
    // The empty stretches within this lit stretch: before, between and after the people.
    let empty = Math.max(on, person > 0 ? people[person - 1]![1] : on);
    for (let k = person; ; k++) {
      const next = k < people.length ? Math.min(people[k]![0], off) : off;
      if (next - empty > allowed)
        faults.push(emptyFault(task, id, { from: empty + allowed, to: next, allowed }));
      if (k >= people.length || people[k]![0] >= off) break;
      empty = people[k]![1];
      if (empty >= off) break;
    }
  }
  return faults;
}

function emptyFault(
  task: ControlTask,
  id: string,
  stretch: { readonly from: Seconds; readonly to: Seconds; readonly allowed: Seconds },
): ControlFault {
  const devices = onLoad(task, id).map((index) => task.devices[index]!.id);
  const values = {
    load: titleOf(task, id),
    from: told(task, stretch.from),
    long: lengthOfTime(stretch.to - watched(task, stretch.from)),
    allowed: lengthOfTime(stretch.allowed),
  };
  return {
    problem: { code: "lit-while-empty", values, records: devices },
    load: id,
    from: stretch.from,
    to: stretch.to,
    devices,
  };
}

/** Longest time that a load may stay lit after the last movement, by the settings of what drives it. */
function longestHold(task: ControlTask, id: string): Seconds {
  const drivers = onLoad(task, id);
  const timer = task.loads.find((load) => load.id === id)!.stairTimer;
  const own = Math.max(
    0,
    ...drivers.map((index) => {
      const { parameters, output, id: device } = task.devices[index]!;
      if (output.kind === "impulse") return timer!.time + output.pause + output.pulse;
      const intervals = task.devices.flatMap(({ output: o }) =>
        o.kind === "slave" && o.master === device ? [o.interval] : [],
      );
      return parameters.offDelay + Math.max(0, ...intervals);
    }),
  );
  return own;
}

const onLoad = (task: ControlTask, id: string): number[] =>
  task.devices.flatMap(({ output }, index) => (output.kind !== "slave" && output.load === id ? [index] : []));

/** Off by brightness and soon on by darkness, again and again: the lamps fool the sensor. */
function hunting(task: ControlTask, { id, track, limits }: LimitedLoad): ControlFault[] {
  const faults: ControlFault[] = [];
  let start = -1;
  let times = 0;
  for (let i = 0; i <= track.length; i++) {
    const turned =
      i + 1 < track.length &&
      track.offCauses[i] === C.bright &&
      track.onCauses[i + 1] === C.dark &&
      track.on[i + 1]! - track.off[i]! <= limits.huntingGap;
    if (turned) {
      if (times === 0) start = i;
      times++;
      continue;
    }
    if (times >= limits.huntingTimes) {
      faults.push({
        problem: {
          code: "light-hunts",
          values: { load: titleOf(task, id), times, at: told(task, track.off[start]!) },
        },
        load: id,
        from: track.off[start]!,
        to: track.on[i]!,
        devices: [],
      });
    }
    times = 0;
  }
  return faults;
}

function neverOff(task: ControlTask, { id, track, limits }: LimitedLoad): ControlFault[] {
  const faults: ControlFault[] = [];
  for (let i = 0; i < track.length; i++) {
    const lit = track.off[i]! - track.on[i]!;
    if (lit < limits.neverOff) continue;
    faults.push({
      problem: {
        code: "never-off",
        values: {
          load: titleOf(task, id),
          hours: Math.round((track.off[i]! - watched(task, track.on[i]!)) / 3600),
          at: told(task, track.on[i]!),
        },
      },
      load: id,
      from: track.on[i]!,
      to: track.off[i]!,
      devices: onLoad(task, id).map((index) => task.devices[index]!.id),
    });
  }
  return faults;
}

/** For every pair on a load: how long the one alone kept it lit after the other had let go. */
function holdsOf(task: ControlTask, run: ControlRun, id: string): Hold[] {
  const drivers = onLoad(task, id).filter((index) => task.devices[index]!.output.kind === "contact");
  if (drivers.length < 2) return [];
  const tracks = drivers.map((index) => run.devices[task.devices[index]!.id]!);
  const held = new Map<number, { seconds: Seconds; readonly from: Seconds }>();
  const watchFrom = task.watchFrom ?? 0;
  const rows = tracks.map(() => 0);
  const on = tracks.map(() => false);
  // Who has let go since the load was last dark.
  const released = tracks.map(() => false);
  for (let now = 0; now < task.until; ) {
    tracks.forEach((track, i) => {
      const was = on[i]!;
      let row = rows[i]!;
      for (; row < track.length && track.times[row]! <= now; row++) on[i] = track.outputs[row] === 1;
      rows[i] = row;
      if (was && !on[i]) released[i] = true;
      else if (on[i]) released[i] = false;
    });
    const lit = on.reduce((sum, one) => sum + (one ? 1 : 0), 0);
    if (lit === 0) released.fill(false);
    const next = Math.min(task.until, ...tracks.map((track, i) => nextTime(track, rows[i]!)));
    const from = Math.max(now, watchFrom);
    if (lit === 1 && next > from) {
      const holder = on.indexOf(true);
      released.forEach((gone, i) => {
        if (!gone) return;
        const pair = holder * tracks.length + i;
        const known = held.get(pair) ?? { seconds: 0, from };
        known.seconds += next - from;
        held.set(pair, known);
      });
    }
    now = next;
  }
  const name = (i: number): string => task.devices[drivers[i]!]!.id;
  return [...held].map(([pair, { seconds: time, from }]) => ({
    load: id,
    holder: name(Math.floor(pair / tracks.length)),
    released: name(pair % tracks.length),
    seconds: time,
    from,
  }));
}

const nextTime = (track: StateTrack, row: number): Seconds =>
  row < track.length ? track.times[row]! : Number.POSITIVE_INFINITY;
