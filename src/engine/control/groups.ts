import type { ControlTask } from "./arrangement.ts";

/** Controllers and loads that have to do with each other, as indices into the task, ascending. */
export interface ControlGroup {
  readonly devices: readonly number[];
  readonly loads: readonly number[];
}

/** Every name of the task leads somewhere; throws otherwise, because a program put it together. */
export function checkNames(task: ControlTask): void {
  const devices = new Map(task.devices.map((device) => [device.id, device]));
  const loads = new Map(task.loads.map((load) => [load.id, load]));
  if (devices.size !== task.devices.length) throw new Error("Two controllers have one id");
  if (loads.size !== task.loads.length) throw new Error("Two loads have one id");
  const known = (name: string, among: ReadonlyMap<string, unknown>, what: string): void => {
    if (!among.has(name)) throw new Error(`No ${what} has the id ${name}`);
  };
  for (const { id, output } of task.devices) {
    if (output.kind === "slave") {
      known(output.master, devices, "controller");
      const master = devices.get(output.master)!;
      if (master.output.kind === "slave") throw new Error(`The master of ${id} is itself a slave`);
    } else {
      known(output.load, loads, "load");
      const timer = loads.get(output.load)!.stairTimer;
      if ((output.kind === "impulse") !== (timer !== undefined))
        throw new Error(
          `${id} and load ${output.load} do not fit: pulses drive a stair timer, contacts drive lamps`,
        );
    }
  }
  for (const load of task.loads)
    for (const device of Object.keys(load.lightAt ?? {})) known(device, devices, "controller");
  for (const device of Object.keys(task.movements ?? {})) known(device, devices, "controller");
  for (const load of Object.keys(task.people ?? {})) known(load, loads, "load");
}

/**
 * Splits a task into groups that cannot influence each other: joined by a load, by master and slave, or by light.
 *
 * @param task - Controllers and loads
 * @returns Groups in the order of their first controller; a load without a controller belongs to none
 */
export function controlGroups(task: ControlTask): ControlGroup[] {
  const deviceAt = new Map(task.devices.map((device, i) => [device.id, i]));
  const loadAt = new Map(task.loads.map((load, i) => [load.id, task.devices.length + i]));
  const parent = Array.from({ length: task.devices.length + task.loads.length }, (_, i) => i);
  const rootOf = (i: number): number => {
    while (parent[i] !== i) {
      parent[i] = parent[parent[i]!]!;
      i = parent[i]!;
    }
    return i;
  };
  const join = (a: number, b: number): void => {
    const [low, high] = [rootOf(a), rootOf(b)].sort((x, y) => x - y) as [number, number];
    parent[high] = low;
  };
  task.devices.forEach(({ output }, i) => {
    join(i, output.kind === "slave" ? deviceAt.get(output.master)! : loadAt.get(output.load)!);
  });
  task.loads.forEach(({ lightAt }, i) => {
    for (const device of Object.keys(lightAt ?? {})) join(deviceAt.get(device)!, task.devices.length + i);
  });
  const groups = new Map<number, { devices: number[]; loads: number[] }>();
  task.devices.forEach((_, i) => {
    const root = rootOf(i);
    groups.set(root, groups.get(root) ?? { devices: [], loads: [] });
    groups.get(root)!.devices.push(i);
  });
  task.loads.forEach((_, i) => {
    groups.get(rootOf(task.devices.length + i))?.loads.push(i);
  });
  return [...groups.values()];
}
