import { type ControlParameters, usualParameters } from "../../../control/index.ts";
import {
  type PreparedRoom,
  prepareRoom,
  seesSource,
  spillZone,
  zoneInScene,
} from "../../../coverage/index.ts";
import { deviceOf, watchersOf } from "../../../coverage/watchers.ts";
import { contains, type Point } from "../../../geometry/index.ts";
import type { SettingValues } from "../../../settings/index.ts";
import type { Site } from "../../../site/index.ts";
import { between, DOOR, type Draw, IDLE, ownDetectors, ROOM, type TrialPlan } from "./plan.fixture.ts";

/** The room as it really is. Injecting a fault changes it, and nothing else does. */
export interface Built {
  plan: TrialPlan;
  /** As built: no planning margin, because it is no plan. */
  site: Site;
  parameters: Record<string, ControlParameters>;
  door: "shut" | "open";
  /** A loud machine in the room. */
  noise: boolean;
  /** A button of the next room also speaks to the room's first detector. */
  strangerPresses: boolean;
  /** The corridor's contact feeds the room's lamps. */
  strangerContact: boolean;
  /** Current through a glow lamp is taken for presses now and then. */
  glowPresses: boolean;
  supply: "steady" | "absent" | "comes-and-goes";
  contact: "works" | "welded" | "open";
  lamps: "good" | "late" | "unsteady" | "dead";
  parallelSwitch: boolean;
  /** What the lamps add at the sensor. [lx] */
  lampsAtSensor: number;
  daylight: number;
  leak: "none" | "suppressor" | "cores" | "glow-lamp";
  neutral: "own" | "shared";
  /** The sensitivity was turned down. */
  lowSensitivity: boolean;
  /** Switching off gives a surge that the detector takes for movement. */
  surge: boolean;
}

/** The room built as planned, with reaches a little off the data sheet. */
export function builtAsPlanned(plan: TrialPlan, draw: Draw): Built {
  return {
    plan,
    site: withoutIdle(scaledSite(plan.site, between(draw, 0.95, 1.12))),
    parameters: Object.fromEntries(
      Object.entries(plan.settings).map(([id, settings]) => [id, parametersOf(settings)]),
    ),
    door: draw() < 0.3 ? "open" : "shut",
    noise: false,
    strangerPresses: false,
    strangerContact: false,
    glowPresses: false,
    supply: "steady",
    contact: "works",
    lamps: "good",
    parallelSwitch: false,
    lampsAtSensor: between(draw, 120, 280),
    daylight: between(draw, 40, 200),
    leak: "none",
    neutral: "own",
    lowSensitivity: false,
    surge: false,
  };
}

const withoutIdle = (site: Site): Site => ({
  ...site,
  interference: site.interference.filter(({ id }) => id !== IDLE),
});

const parametersOf = (settings: SettingValues): ControlParameters => ({
  ...usualParameters,
  litWhileWarmingUp: true,
  mode: settings.mode,
  button: settings.button,
  offDelay: settings.offDelay,
  ...(typeof settings.threshold === "number" ? { threshold: settings.threshold } : {}),
  ...(settings.soundSensitivity === "off" ? {} : { sound: { grace: 8 } }),
});

/** The site with margins of nothing and every reach of the room's model × factor. */
export const scaledSite = (site: Site, factor: number): Site => ({
  ...site,
  defaults: { ...site.defaults, margin: { seated: 0, towards: 0, across: 0, spill: 0 } },
  models: site.models.map((model) => ({
    ...model,
    zones: Object.fromEntries(
      Object.entries(model.zones).map(([kind, rows]) => [
        kind,
        rows.map((row) => ("radius" in row ? { ...row, radius: row.radius * factor } : row)),
      ]),
    ),
  })),
});

/** Walk as the detectors notice it: seconds after its start. */
export interface NoticedWalk {
  readonly seconds: number;
  readonly noticed: Readonly<Record<string, readonly number[]>>;
}

/** What the room's detectors see, by the geometry as built. Worked out at the first use. */
export interface Senses {
  readonly walkTo: (place: number) => NoticedWalk;
  readonly walkPast: () => NoticedWalk;
  /** Detectors that notice small movements at a point. */
  readonly still: (at: Point, height: number) => readonly string[];
  /** Detectors that notice one who walks at a point. */
  readonly walking: (at: Point) => readonly string[];
  /** Detectors with a source of false triggering in view. */
  readonly sources: (door: "shut" | "open") => readonly string[];
}

const SPEED = 1.4;
const STEP = 0.2;

/** Senses of a room as built, from zones, spill and sources in sight. */
export function sensesOf(site: Site): Senses {
  const prepared = prepareRoom(site, ROOM);
  const devices = devicesOf(prepared);
  const watchers = once(() =>
    watchersOf({
      look: prepared.look,
      room: prepared.room,
      devices,
      zoneOf: (device, kind) => zoneInScene(prepared.withOpen(DOOR), { device, kind }),
    }),
  );
  const ways = once(() => prepared.ways());
  const spills = once(() =>
    devices.map((device) => ({ id: device.id, region: spillZone(prepared.open(), device) })),
  );
  const walks = new Map<number, NoticedWalk>();
  return {
    walkTo: (place) => {
      const known = walks.get(place);
      if (known) return known;
      const id = site.dwellPlaces[place]!.id;
      const way = ways()
        .flatMap((one) => one.ways)
        .find(({ toward }) => toward.id === id)?.way;
      const path = way?.path ?? [];
      const walk = noticed(path, (at, heading) =>
        watchers().flatMap((watcher) => (watcher.sees(at, heading) ? [watcher.device] : [])),
      );
      const delayed = withOnset(walk, (device) => watchers().find((one) => one.device === device)!);
      walks.set(place, delayed);
      return delayed;
    },
    walkPast: once(() =>
      noticed(
        [
          [-1.5, -1.1],
          [site.rooms[1]!.outline[1]![0] - 0.5, -1.1],
        ],
        (at) => spills().flatMap(({ id, region }) => (contains(region, at) ? [id] : [])),
      ),
    ),
    still: (at, height) =>
      devices.flatMap((device) =>
        zoneInScene(prepared.closed(), { device, kind: "seated", sightHeight: height }).has(at[0], at[1])
          ? [device.id]
          : [],
      ),
    walking: (at) =>
      devices.flatMap((device) =>
        zoneInScene(prepared.closed(), { device, kind: "towards" }).has(at[0], at[1]) ? [device.id] : [],
      ),
    sources: (door) =>
      devices.flatMap((device) =>
        site.interference.some(
          (source) =>
            (door === "open" || source.room === ROOM) && seesSource(prepared.open(), { device, source }),
        )
          ? [device.id]
          : [],
      ),
  };
}

const devicesOf = ({ look }: PreparedRoom) =>
  ownDetectors({ ...look.site, detectors: look.detectorsIn(ROOM) }).map((detector) => ({
    ...deviceOf(detector, look.modelById.get(detector.model)!),
    room: ROOM,
  }));

/** Samples of a way with the detectors that see each. */
function noticed(
  path: readonly Point[],
  seenBy: (at: Point, heading: Point) => readonly string[],
): NoticedWalk {
  const found: Record<string, number[]> = {};
  let passed = 0;
  for (let i = 0; i + 1 < path.length; i++) {
    const [a, b] = [path[i]!, path[i + 1]!];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length === 0) continue;
    const heading: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    for (let s = 0; s < length; s += STEP)
      for (const id of seenBy([a[0] + s * heading[0], a[1] + s * heading[1]], heading)) {
        found[id] ??= [];
        found[id].push((passed + s) / SPEED);
      }
    passed += length;
  }
  return { seconds: passed / SPEED, noticed: found };
}

/** A detector reacts after its onset was walked in sight without a break, and its response later. */
function withOnset(
  walk: NoticedWalk,
  watcherOf: (device: string) => { readonly onset: number; readonly response: number },
): NoticedWalk {
  return {
    seconds: walk.seconds,
    noticed: Object.fromEntries(
      Object.entries(walk.noticed).map(([device, times]) => {
        const { onset, response } = watcherOf(device);
        let since = times[0]!;
        return [
          device,
          times.flatMap((time, i) => {
            if (i > 0 && time - times[i - 1]! > (2 * STEP) / SPEED) since = time;
            return time - since >= onset / SPEED ? [time + response] : [];
          }),
        ];
      }),
    ),
  };
}

function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
