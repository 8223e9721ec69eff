import { type ControlParameters, usualParameters } from "../control/index.ts";
import type { Seconds, Share, Watts } from "../quantity/index.ts";
import type { ChosenSettings } from "../settings/index.ts";
import type { Detector, Site } from "../site/index.ts";

/** Lamps that some detectors switch together. */
export interface SwitchedLoad {
  /** The same as long as the same rooms are lit. */
  readonly id: string;
  /** Rooms that it lights. */
  readonly rooms: readonly string[];
  /** All that watch for it: those that switch first. */
  readonly devices: readonly LoadDevice[];
  readonly luminaires: { readonly count: number; readonly withoutPower: number };
  /** Of all luminaires in the rooms; undefined where one of them is not known. [W] */
  readonly power: Watts | undefined;
  /** Switching cycles that the weakest contact bears; undefined where a data sheet does not say. */
  readonly life: number | undefined;
  /** Drawn while the light is off, as a share of what it draws while lit: the background level that its detectors are set to; 0 where they switch it off. */
  readonly background: Share;
}

/** A detector of a load, as it is set. */
export interface LoadDevice {
  readonly id: string;
  readonly tag: string;
  readonly room: string;
  /** reports: its contact is not used, it tells the one that switches. */
  readonly role: "switches" | "reports";
  readonly chosen: ChosenSettings;
  /** What was chosen, and the usual where nothing was. */
  readonly parameters: ControlParameters;
}

/**
 * The loads of a site, or those of one detector alone: detectors that control the same rooms switch one load. Where all of
 * them only report, they are taken to switch.
 *
 * @param site - Detectors, luminaires, models
 * @param chosen - What is set, chosen or derived, by detector
 * @param only - Id of a detector to look at alone
 * @returns Loads in the order of their first detector
 */
export function switchedLoads(
  site: Pick<Site, "detectors" | "luminaires" | "models">,
  chosen: ReadonlyMap<string, ChosenSettings>,
  only?: string,
): readonly SwitchedLoad[] {
  const groups = new Map<string, Detector[]>();
  for (const detector of site.detectors) {
    if (only !== undefined && detector.id !== only) continue;
    const key = JSON.stringify([...detector.controls].sort());
    groups.set(key, [...(groups.get(key) ?? []), detector]);
  }
  return [...groups].map(([id, detectors]) => loadOf(site, { id, detectors, chosen }));
}

interface Group {
  readonly id: string;
  readonly detectors: readonly Detector[];
  readonly chosen: ReadonlyMap<string, ChosenSettings>;
}

function loadOf(site: Pick<Site, "luminaires" | "models">, { id, detectors, chosen }: Group): SwitchedLoad {
  const settingsOf = (detector: Detector): ChosenSettings => chosen.get(detector.id) ?? {};
  const reports = (detector: Detector): boolean => {
    const { groupRole } = settingsOf(detector);
    return groupRole === undefined ? detector.output === "signals" : groupRole === "slave";
  };
  const someSwitch = detectors.some((detector) => !reports(detector));
  const devices = detectors.map((detector): LoadDevice => {
    const own = settingsOf(detector);
    return {
      id: detector.id,
      tag: detector.tag || detector.id,
      room: detector.room,
      role: someSwitch && reports(detector) ? "reports" : "switches",
      chosen: own,
      parameters: controlParameters(own),
    };
  });
  const rooms = detectors[0]!.controls;
  const luminaires = site.luminaires.filter((one) => rooms.includes(one.room));
  const withoutPower = luminaires.filter((one) => one.power === undefined).length;
  const lives = detectors
    .filter((_, i) => devices[i]!.role === "switches")
    .map((detector) => site.models.find((model) => model.id === detector.model)?.contact?.life);
  return {
    id,
    rooms,
    devices: devices.toSorted((a, b) => order[a.role] - order[b.role]),
    luminaires: { count: luminaires.length, withoutPower },
    power:
      luminaires.length === 0 || withoutPower > 0
        ? undefined
        : luminaires.reduce((sum, one) => sum + one.power!, 0),
    background: backgroundOf(devices),
    life: lives.includes(undefined) ? undefined : Math.min(...(lives as number[])),
  };
}

/** One that falls to a background level keeps the light from going off, whatever the others do: the highest level counts. */
const backgroundOf = (devices: readonly LoadDevice[]): Share =>
  Math.max(
    0,
    ...devices
      .filter(({ role }) => role === "switches")
      .map(({ chosen: { output } }) => (typeof output === "object" ? output.background : 0)),
  );

const order = { switches: 0, reports: 1 } as const;

/** Time after a switch-off in which sound brings the light back. [s] @source CONTROL-MACHINE */
const grace: Seconds = 8;

/**
 * Parameters of the state machine from the settings of a device.
 *
 * @param settings - What is set; absent: the usual holds
 * @returns Parameters
 * @source CONTROL-MACHINE
 * @example Nothing set: the usual parameters
 */
export function controlParameters(settings: ChosenSettings): ControlParameters {
  const { mode, button, offDelay, threshold, soundSensitivity } = settings;
  return {
    ...usualParameters,
    ...(mode === undefined ? {} : { mode }),
    ...(button === undefined ? {} : { button }),
    ...(offDelay === undefined ? {} : { offDelay }),
    ...(typeof threshold === "number" ? { threshold } : {}),
    ...(soundSensitivity === undefined || soundSensitivity === "off" ? {} : { sound: { grace } }),
  };
}
