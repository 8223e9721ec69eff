import type { Lux, Seconds } from "../quantity/index.ts";
import type { ControlDevice, ControlEvent, ControlTask } from "./arrangement.ts";
import {
  type Automaton,
  automatonOf,
  button,
  expire,
  learn,
  lookAtLight,
  nextExpiry,
  power,
  presence,
  sound,
  test,
} from "./automaton.ts";
import type { ControlGroup } from "./groups.ts";
import { closedLoad, pulseTimer, type RunningLoad, runningLoad, settleLoad } from "./load-switching.ts";
import { checkedParameters } from "./parameters.ts";
import { C, causeCode, S } from "./states.ts";
import {
  closedTrack,
  type GrowingTrack,
  growingTrack,
  type LoadTrack,
  type StateTrack,
  widen,
} from "./track.ts";

const NEVER = Number.POSITIVE_INFINITY;

/** One controller of the group with everything that it is wired to. */
interface Unit {
  readonly index: number;
  readonly automaton: Automaton;
  readonly track: GrowingTrack;
  readonly load: RunningLoad | undefined;
  readonly contact: boolean;
  readonly master: Unit | undefined;
  readonly every: Seconds;
  /** No further pulse before this. */
  pulseFrom: Seconds;
  readonly movements: ArrayLike<Seconds>;
  nextMovement: number;
  /** Earlier of the next movement and the next expiry. */
  due: Seconds;
}

interface Run {
  readonly units: readonly Unit[];
  readonly loads: readonly RunningLoad[];
  /** Units whose sensor a load lights, with how much. */
  readonly lighted: ReadonlyMap<RunningLoad, readonly (readonly [Unit, Lux])[]>;
}

/** Events of a group with the unit that they reach; units in order, causes in theirs. */
export interface GroupInput {
  readonly events: readonly ControlEvent[];
  readonly movements: ReadonlyMap<number, ArrayLike<Seconds>>;
}

/** What became of the controllers and loads of one group. */
export interface GroupResult {
  readonly devices: ReadonlyMap<number, StateTrack>;
  readonly loads: ReadonlyMap<number, LoadTrack>;
}

/**
 * Runs one group of controllers from event to event.
 *
 * @param task - Everything
 * @param group - Indices of what belongs together
 * @param input - Its events, in the order of their effect
 * @returns Tracks by index
 */
export function runGroup(task: ControlTask, group: ControlGroup, input: GroupInput): GroupResult {
  const run = prepared(task, group, input);
  const { units, loads } = run;
  const unitOf = new Map(units.map((unit) => [task.devices[unit.index]!.id, unit]));
  for (const unit of units) {
    record(unit, 0, C.start);
    unit.due = dueOf(unit);
  }
  let next = 0;
  const { events } = input;
  for (;;) {
    let now = next < events.length ? events[next]!.at : NEVER;
    for (const unit of units) if (unit.due < now) now = unit.due;
    for (const load of loads) if (load.timerAt < now) now = load.timerAt;
    if (now > task.until || now === NEVER) break;
    for (; next < events.length && events[next]!.at === now; next++) {
      const event = events[next]!;
      if (causeCode(event.kind) > C.movement) break;
      outside(run, unitOf, event);
    }
    for (const unit of units) if (unit.due <= now) moved(run, unit, now);
    for (; next < events.length && events[next]!.at === now; next++) outside(run, unitOf, events[next]!);
    expiries(run, now);
  }
  return {
    devices: new Map(units.map((unit) => [unit.index, closedTrack(unit.track)])),
    loads: new Map(group.loads.map((load, i) => [load, closedLoad(loads[i]!, task.until)])),
  };
}

function prepared(task: ControlTask, group: ControlGroup, input: GroupInput): Run {
  const loads = group.loads.map((load) => runningLoad(task.loads[load]!));
  const loadOf = new Map(loads.map((running) => [running.load.id, running]));
  const units: Unit[] = [];
  const unitOf = new Map<string, Unit>();
  // Masters first, so that a slave finds its own; the run goes in the order of the task again.
  const order = group.devices.toSorted((a, b) => slaveLast(task.devices[a]!) - slaveLast(task.devices[b]!));
  for (const index of order) {
    const { id, parameters, output, start } = task.devices[index]!;
    const automaton = automatonOf(checkedParameters(parameters, id), start ?? "ready");
    const unit: Unit = {
      index,
      automaton,
      track: growingTrack(),
      load: output.kind === "slave" ? undefined : loadOf.get(output.load),
      contact: output.kind === "contact",
      master: output.kind === "slave" ? unitOf.get(output.master) : undefined,
      every:
        output.kind === "impulse"
          ? output.pulse + output.pause
          : output.kind === "slave"
            ? output.interval
            : 0,
      pulseFrom: Number.NEGATIVE_INFINITY,
      movements: input.movements.get(index) ?? [],
      nextMovement: 0,
      due: NEVER,
    };
    units.push(unit);
    unitOf.set(id, unit);
  }
  units.sort((a, b) => a.index - b.index);
  const lighted = new Map(
    loads.map((running) => [
      running,
      Object.entries(running.load.lightAt ?? {}).map(([id, lux]) => [unitOf.get(id)!, lux] as const),
    ]),
  );
  return { units, loads, lighted };
}

const slaveLast = (device: ControlDevice): number => (device.output.kind === "slave" ? 1 : 0);

const dueOf = (unit: Unit): Seconds =>
  Math.min(
    unit.nextMovement < unit.movements.length ? unit.movements[unit.nextMovement]! : NEVER,
    nextExpiry(unit.automaton),
  );

/** All movements of a unit at this instant; several count as one. */
function moved(run: Run, unit: Unit, now: Seconds): void {
  let found = false;
  while (unit.nextMovement < unit.movements.length && unit.movements[unit.nextMovement]! <= now) {
    unit.nextMovement++;
    found = true;
  }
  if (found) act(run, unit, { now, cause: C.movement });
}

/** Timers that run out now, device by device, until none is left; then the stair timers. */
function expiries(run: Run, now: Seconds): void {
  for (let again = true; again; ) {
    again = false;
    for (const unit of run.units) {
      if (unit.due > now || nextExpiry(unit.automaton) > now) continue;
      act(run, unit, { now, cause: -1 });
      again = true;
    }
  }
  for (const load of run.loads) {
    if (load.timerAt > now) continue;
    load.timerAt = NEVER;
    if (settleLoad(load, now, { cause: C.stairTimerOver, device: -1 })) relight(run, load, now);
  }
}

/** An event from outside reaches one unit, or with power everything. */
function outside(run: Run, unitOf: ReadonlyMap<string, Unit>, event: ControlEvent): void {
  const now = event.at;
  if (event.kind === "daylight") {
    const unit = unitOf.get(event.device)!;
    unit.automaton.daylight = event.value;
    lookAtLight(unit.automaton, now);
    unit.due = dueOf(unit);
    return;
  }
  const cause = causeCode(event.kind);
  if (event.device !== undefined) {
    act(run, unitOf.get(event.device)!, { now, cause });
    return;
  }
  for (const unit of run.units) act(run, unit, { now, cause });
  if (event.kind !== "power-off") return;
  for (const load of run.loads) {
    load.timerAt = NEVER;
    if (settleLoad(load, now, { cause, device: -1 })) relight(run, load, now);
  }
}

/** One thing happens to one unit: its state moves on, its output is passed on, what changed is written down. */
function act(run: Run, unit: Unit, what: { readonly now: Seconds; readonly cause: number }): void {
  const a = unit.automaton;
  const { now } = what;
  const [state, out] = [a.state, a.out];
  const cause = what.cause === -1 ? expire(a, now) : what.cause;
  if (what.cause !== -1) happen(a, now, cause);
  if (a.state !== state || a.out !== out) record(unit, now, cause);
  if (unit.contact && a.out !== out) switchContact(run, unit, { now, cause });
  else if (!unit.contact && a.out === 1 && callsForLight(cause)) pulse(run, unit, { now, cause });
  lookAtLight(a, now);
  unit.due = dueOf(unit);
}

function happen(a: Automaton, now: Seconds, cause: number): void {
  if (cause === C.movement || cause === C.extension) presence(a, now, cause);
  else if (cause === C.sound) sound(a, now);
  else if (cause === C.button) button(a, now);
  else if (cause === C.powerOn || cause === C.powerOff) power(a, now, cause === C.powerOn);
  else test(a, now, cause === C.testOn);
}

const callsForLight = (cause: number): boolean =>
  cause === C.movement ||
  cause === C.extension ||
  cause === C.sound ||
  cause === C.button ||
  cause === C.dark;

function record(unit: Unit, now: Seconds, cause: number): void {
  const { track, automaton } = unit;
  if (track.length === track.times.length) widen(track);
  const row = track.length++;
  track.times[row] = now;
  track.states[row] = automaton.state;
  track.outputs[row] = automaton.out;
  track.causes[row] = cause;
}

function switchContact(run: Run, unit: Unit, by: { readonly now: Seconds; readonly cause: number }): void {
  const a = unit.automaton;
  const load = unit.load!;
  const before = a.lamps;
  load.closed += a.out === 1 ? 1 : -1;
  if (settleLoad(load, by.now, { cause: by.cause, device: unit.index })) relight(run, load, by.now);
  // Without power nothing is measured any more.
  if (a.state !== S.withoutPower) learn(a, a.out === 1 ? a.lamps - before : before - a.lamps);
}

/** A pulse for the stair timer or the master, unless the pause after the last one still runs. */
function pulse(run: Run, unit: Unit, by: { readonly now: Seconds; readonly cause: number }): void {
  if (by.now < unit.pulseFrom) return;
  unit.pulseFrom = by.now + unit.every;
  unit.track.pulses.push(by.now);
  if (unit.master) {
    act(run, unit.master, { now: by.now, cause: C.extension });
    return;
  }
  const load = unit.load!;
  const before = unit.automaton.lamps;
  pulseTimer(load, by.now);
  if (settleLoad(load, by.now, { cause: by.cause, device: unit.index })) {
    relight(run, load, by.now);
    learn(unit.automaton, unit.automaton.lamps - before);
  }
}

/** The lamps of a load changed: every sensor that they reach measures anew. */
function relight(run: Run, load: RunningLoad, now: Seconds): void {
  for (const [unit, lux] of run.lighted.get(load)!) {
    unit.automaton.lamps += load.lit ? lux : -lux;
    lookAtLight(unit.automaton, now);
    unit.due = dueOf(unit);
  }
}
