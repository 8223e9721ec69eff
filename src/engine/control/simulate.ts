import type { Seconds } from "../quantity/index.ts";
import type { ControlEvent, ControlTask } from "./arrangement.ts";
import { checkNames, controlGroups } from "./groups.ts";
import { runGroup } from "./run-group.ts";
import { causeCode } from "./states.ts";
import type { LoadTrack, StateTrack } from "./track.ts";

/** What controllers and loads did, by id. */
export interface ControlRun {
  readonly devices: Readonly<Record<string, StateTrack>>;
  readonly loads: Readonly<Record<string, LoadTrack>>;
  /** Rows of all device tracks together. */
  readonly stateChanges: number;
}

/**
 * Runs controllers and loads over time, from event to event, exactly: nothing is sampled.
 *
 * @param task - Controllers, loads, events from outside, and the end [s]
 * @returns Tracks; the first row of a device is its start at 0
 * @source CONTROL-MACHINE
 * @example Delay 300 s, dark, one movement at 50: lit from 50 to 350
 */
export function runControl(task: ControlTask): ControlRun {
  checkNames(task);
  if (!(task.until >= 0 && task.until < Number.POSITIVE_INFINITY))
    throw new RangeError(`The end must be a time, not ${task.until}`);
  const deviceAt = new Map(task.devices.map((device, i) => [device.id, i]));
  const groups = controlGroups(task);
  const groupOf = new Int32Array(task.devices.length);
  groups.forEach((group, i) => {
    for (const device of group.devices) groupOf[device] = i;
  });
  const events = groups.map((): ControlEvent[] => []);
  const movements = new Map(
    Object.entries(task.movements ?? {}).map(([id, times]) => [deviceAt.get(id)!, ascending(times, id)]),
  );
  const single = new Map<number, Seconds[]>();
  for (const event of task.events) {
    if (!(event.at >= 0 && event.at < Number.POSITIVE_INFINITY))
      throw new RangeError(`An event must have a time from 0 on, not ${event.at}`);
    if (event.device === undefined) for (const list of events) list.push(event);
    else {
      const device = deviceAt.get(event.device);
      if (device === undefined) throw new Error(`No controller has the id ${event.device}`);
      if (event.kind === "movement") {
        const times = single.get(device) ?? [];
        times.push(event.at);
        single.set(device, times);
      } else events[groupOf[device]!]!.push(event);
    }
  }
  for (const [device, times] of single)
    movements.set(device, Float64Array.from([...Array.from(movements.get(device) ?? []), ...times]).sort());
  const devices: Record<string, StateTrack> = {};
  const loads: Record<string, LoadTrack> = {};
  let stateChanges = 0;
  const order = effectOrder(deviceAt);
  groups.forEach((group, i) => {
    const result = runGroup(task, group, { events: events[i]!.sort(order), movements });
    for (const [index, track] of result.devices) {
      devices[task.devices[index]!.id] = track;
      stateChanges += track.length;
    }
    for (const [index, track] of result.loads) loads[task.loads[index]!.id] = track;
  });
  for (const { id } of task.loads) loads[id] ??= darkLoad();
  return { devices, loads, stateChanges };
}

/** Events of one instant in the order of their effect: cause, then controller, then the lower value first so that the highest holds. */
const effectOrder =
  (deviceAt: ReadonlyMap<string, number>) =>
  (a: ControlEvent, b: ControlEvent): number =>
    a.at - b.at ||
    causeCode(a.kind) - causeCode(b.kind) ||
    (deviceAt.get(a.device ?? "") ?? -1) - (deviceAt.get(b.device ?? "") ?? -1) ||
    ("value" in a && "value" in b ? a.value - b.value : 0);

function ascending(times: ArrayLike<Seconds>, id: string): ArrayLike<Seconds> {
  for (let i = 0; i < times.length; i++) {
    if (!(times[i]! >= (i === 0 ? 0 : times[i - 1]!)))
      throw new RangeError(`Movements of ${id} must ascend from 0; number ${i + 1} does not`);
  }
  return times;
}

const darkLoad = (): LoadTrack => ({
  length: 0,
  on: new Float64Array(0),
  off: new Float64Array(0),
  onCauses: new Uint8Array(0),
  offCauses: new Uint8Array(0),
  offBy: new Int32Array(0),
});
