import { type ControlEvent, type ControlTask, runControl } from "../../../control/index.ts";
import type { Point } from "../../../geometry/index.ts";
import type { Built, NoticedWalk, Senses } from "./built.fixture.ts";
import { type Draw, NEIGHBOUR, ownDetectors } from "./plan.fixture.ts";

/** Somebody comes in at `from`, does something, and has left at `to`. [s] */
export interface Stay {
  readonly from: number;
  readonly to: number;
  /** At a place by its number; beneath the first detector, walking about; or sitting at a point near it. */
  readonly what: { readonly place: number } | "beneath" | { readonly near: Point };
}

/** A stretch of life in the room, and what the tester changes for it. */
export interface Script {
  readonly stays: readonly Stay[];
  readonly until: number;
  readonly door: "shut" | "open";
  /** Somebody walks by outside at these times; their buttons and detectors work as ever. */
  readonly passers: readonly number[];
  readonly machines: boolean;
  readonly byDay: boolean;
  readonly lensesCovered?: boolean;
  readonly sensorShaded?: boolean;
  readonly microphoneOff?: boolean;
  readonly buttonOff?: boolean;
  readonly neighboursCovered?: boolean;
  readonly outputUnplugged?: boolean;
  /** The lamps' glow lamp is taken out. */
  readonly glowLampOut?: boolean;
  readonly presses?: readonly number[];
}

export type Stretch = readonly [from: number, to: number];

/** What anybody can see of it. */
export interface Life {
  /** Lamps lit. */
  readonly lit: readonly Stretch[];
  /** Lamps lit, but not steadily. */
  readonly unsteady: boolean;
  /** Lamps glow while they are off. */
  readonly glows: boolean;
  /** Contacts closed, by the detectors' own wish. */
  readonly called: readonly Stretch[];
  /** Movements noticed by the room's detectors; what an indicator shows. */
  readonly noticed: readonly number[];
  /** The residual current device has tripped. */
  readonly tripped: boolean;
}

const LOAD = "lamps";
const OTHERS = "corridor lamps";
const LATE = 6;

/** Lets people, machines and neighbours act, and runs the controllers. */
export function live(built: Built, senses: Senses, script: Script, draw: Draw): Life {
  const noticed = noticedBy(built, senses, script, draw);
  const dead = built.supply === "absent";
  const events: ControlEvent[] = [...lightOf(built, script), ...pressesOf(built, script, draw)];
  const wished = script.buttonOff || dead ? [] : ownPresses(built, script);
  if (built.noise && !script.microphoneOff)
    for (let at = 5; at < script.until; at += 4)
      for (const { id } of ownDetectors(built.site)) events.push({ kind: "sound", at, device: id });
  const testing = ownDetectors(built.site).flatMap(({ id }) =>
    built.parameters[id]!.testTime > 3600 ? [{ kind: "test-on" as const, at: 0, device: id }] : [],
  );
  events.push(...testing);
  const outages = built.supply === "comes-and-goes" ? outagesOf(script, draw) : [];
  for (const at of outages)
    events.push({ kind: "power-off", at }, { kind: "power-on", at: Math.min(at + 2, script.until) });
  const movements = dead
    ? {}
    : Object.fromEntries(Object.entries(noticed).map(([id, times]) => [id, sorted(times)]));
  const task: ControlTask = {
    devices: [
      ...ownDetectors(built.site).map(({ id }) => ({
        id,
        parameters: built.parameters[id]!,
        output: { kind: "contact", load: script.outputUnplugged ? OTHERS : LOAD } as const,
        ...(dead ? { start: "without-power" as const } : {}),
      })),
      {
        id: NEIGHBOUR,
        parameters: built.parameters[NEIGHBOUR]!,
        output: { kind: "contact", load: built.strangerContact ? LOAD : OTHERS },
      },
    ],
    loads: [
      {
        id: LOAD,
        lightAt: Object.fromEntries(
          ownDetectors(built.site).map(({ id }) => [id, script.sensorShaded ? 0 : built.lampsAtSensor]),
        ),
      },
      { id: OTHERS },
    ],
    events,
    movements,
    until: script.until,
  };
  const called = calledOf(withPresses(task, wished), built.surge && !dead);
  return lampsOf(built, script, { called, noticed: dead ? {} : noticed, outages });
}

/** Runs the controllers; each switching off may start the first detector again. */
function calledOf(task: ControlTask, surge: boolean): readonly Stretch[] {
  const run = (movements: ControlTask["movements"]): readonly Stretch[] => {
    const { loads } = runControl({ ...task, ...(movements ? { movements } : {}) });
    const track = loads[LOAD]!;
    return Array.from({ length: track.length }, (_, i): Stretch => [track.on[i]!, track.off[i]!]);
  };
  let called = run(task.movements);
  if (!surge) return called;
  const first = task.devices[0]!.id;
  const movements = { ...task.movements };
  for (let round = 0; round < 60; round++) {
    const own = Array.from(movements[first] ?? []);
    const next = called.map(([, off]) => off + 1).find((at) => at < task.until && !own.includes(at));
    if (next === undefined) break;
    movements[first] = sorted([...own, next]);
    called = run(movements);
  }
  return called;
}

function lampsOf(
  built: Built,
  script: Script,
  run: {
    readonly called: readonly Stretch[];
    readonly noticed: Readonly<Record<string, readonly number[]>>;
    readonly outages: readonly number[];
  },
): Life {
  const { until } = script;
  const always: readonly Stretch[] = [[0, until]];
  const fromContact: readonly Stretch[] = script.outputUnplugged
    ? run.called
    : built.contact === "open"
      ? []
      : built.contact === "welded"
        ? always
        : run.called;
  const fed: readonly Stretch[] = built.parallelSwitch ? always : fromContact;
  const late: readonly Stretch[] =
    built.lamps === "late"
      ? fed.flatMap(([on, off]): Stretch[] => (on + LATE < off ? [[on === 0 ? 0 : on + LATE, off]] : []))
      : fed;
  const powered = run.outages.reduce<readonly Stretch[]>(
    (lit, at) => lit.flatMap((one) => without(one, [at, at + 2])),
    late,
  );
  // A borrowed neutral carries the lamps' current past the residual current device, which trips soon after they light.
  const trip = built.neutral === "shared" ? tripTime(powered) : undefined;
  const lit =
    built.lamps === "dead"
      ? []
      : trip === undefined
        ? powered
        : powered.flatMap((one) => without(one, [trip, until]));
  const leaks =
    built.leak === "cores" ||
    (built.leak === "suppressor" && !script.outputUnplugged) ||
    (built.leak === "glow-lamp" && !script.glowLampOut);
  const own = Object.entries(run.noticed).flatMap(([id, times]) => (id === NEIGHBOUR ? [] : times));
  return {
    lit,
    unsteady: built.lamps === "unsteady" && lit.length > 0,
    glows: leaks,
    called: run.called,
    noticed: trip === undefined ? own : own.filter((time) => time < trip),
    tripped: trip !== undefined,
  };
}

/** Twenty minutes of light after which the borrowed neutral has let enough current astray. A choice of this trial. */
function tripTime(lit: readonly Stretch[]): number | undefined {
  let sum = 0;
  for (const [on, off] of lit) {
    if (sum + off - on >= 1200) return on + 1200 - sum;
    sum += off - on;
  }
  return undefined;
}

const without = ([from, to]: Stretch, [a, b]: Stretch): readonly Stretch[] =>
  [[from, Math.min(to, a)] as const, [Math.max(from, b), to] as const].filter(([low, high]) => high > low);

function noticedBy(
  built: Built,
  senses: Senses,
  script: Script,
  draw: Draw,
): Readonly<Record<string, readonly number[]>> {
  const found: Record<string, number[]> = {};
  const note = (id: string, at: number): void => {
    if (at < 0 || at >= script.until) return;
    found[id] ??= [];
    found[id].push(at);
  };
  const walk = (one: NoticedWalk, start: number, backwards = false): void => {
    for (const [id, times] of Object.entries(one.noticed))
      for (const time of times) note(id, start + (backwards ? Math.max(0, one.seconds - time) : time));
  };
  for (const at of script.passers) {
    if (!script.neighboursCovered) for (let s = 0; s < 6; s++) note(NEIGHBOUR, at + s);
    if (script.door === "open" && !script.lensesCovered) walk(senses.walkPast(), at);
  }
  if (script.lensesCovered) return found;
  if (script.machines) {
    for (const id of senses.sources(script.door))
      for (let at = 20; at < script.until; at += 30 + 130 * draw()) note(id, at);
  }
  for (const { from, to, what } of script.stays) {
    if (what === "beneath") {
      const at = ownDetectors(built.site)[0]!.at;
      for (const id of senses.walking([at[0] + 0.4, at[1]])) for (let t = from; t < to; t++) note(id, t);
      continue;
    }
    const place = "near" in what ? undefined : built.site.dwellPlaces[what.place]!;
    const way = "near" in what ? { seconds: 0, noticed: {} } : senses.walkTo(what.place);
    walk(way, from);
    const height = built.site.defaults.sightHeights.desk;
    for (const id of senses.still("near" in what ? what.near : place!.at, height))
      for (let t = from + way.seconds; t < to - way.seconds; t += 10 + 90 * draw() ** 2) note(id, t);
    walk(way, to - way.seconds, true);
  }
  return found;
}

function lightOf(built: Built, script: Script): readonly ControlEvent[] {
  const value = script.sensorShaded || !script.byDay ? 0 : built.daylight;
  return ownDetectors(built.site).map(({ id }) => ({ kind: "daylight", at: 0, device: id, value }));
}

/** When those who come in look for the button, where the plan gave them one to switch on with. */
function ownPresses(built: Built, script: Script): readonly number[] {
  const hasButton = built.plan.site.switches.some(({ planned }) => planned === "button");
  const planned = Object.values(built.plan.settings)[0]!;
  return hasButton && planned.mode === "semi-automatic"
    ? script.stays.flatMap(({ from, what }) => (what === "beneath" ? [] : [from + 2]))
    : [];
}

/** Who finds light presses nothing. */
function withPresses(task: ControlTask, wished: readonly number[]): ControlTask {
  let events = task.events;
  for (const at of wished) {
    const track = runControl({ ...task, events }).loads[LOAD]!;
    const lit = Array.from(track.on).some((on, i) => on <= at && track.off[i]! > at);
    if (lit) continue;
    const own = task.devices.filter(({ id }) => id !== NEIGHBOUR);
    events = [...events, ...own.map(({ id }) => ({ kind: "button" as const, at, device: id }))];
  }
  return { ...task, events };
}

/** Presses by the tester, by neighbours on a wrong wire, and by the current of a glow lamp. */
function pressesOf(built: Built, script: Script, draw: Draw): readonly ControlEvent[] {
  if (script.buttonOff) return [];
  const astray: number[] = [];
  if (built.strangerPresses) astray.push(...script.passers.filter((_, i) => i % 3 === 0).map((at) => at + 3));
  if (built.glowPresses)
    for (let at = 200 + 900 * draw(); at < script.until; at += 400 + 1600 * draw()) astray.push(at);
  const devices = ownDetectors(built.site);
  return [
    ...(script.presses ?? []).map((at) => ({ kind: "button" as const, at, device: devices[0]!.id })),
    ...astray.map((at) => ({ kind: "button" as const, at, device: devices[0]!.id })),
  ].filter(({ at }) => at < script.until);
}

const outagesOf = (script: Script, draw: Draw): readonly number[] => {
  const times: number[] = [];
  for (let at = 60 + 300 * draw(); at < script.until; at += 120 + 900 * draw()) times.push(Math.round(at));
  return times;
};

const sorted = (times: readonly number[]): Float64Array => Float64Array.from(times).sort();
