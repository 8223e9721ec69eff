import {
  type DeviceSettings,
  type PlannedDevice,
  type Seconds,
  type Site,
  type SwitchedLoad,
  switchedLoads,
  valuesOfSettings,
} from "#engine";

/** A load as its detectors are set, chosen or derived. */
export interface SetLoad {
  readonly load: SwitchedLoad;
  /** Settings of each detector, with their reasons. */
  readonly settings: ReadonlyMap<string, DeviceSettings>;
  /** Longest delay that a rule allows. [s] */
  readonly longest: Seconds | undefined;
}

/** The loads of a site, as its detectors are set. @param devices - Their settings, chosen and derived. */
export function loadsOf(site: Site, devices: readonly PlannedDevice[]): readonly SetLoad[] {
  const settings = new Map(devices.map((device) => [device.context.device, device.settings]));
  const longest = new Map(devices.map(({ context }) => [context.device, context.longestDelay?.delay]));
  const values = new Map([...settings].map(([id, one]) => [id, valuesOfSettings(one)]));
  return switchedLoads(site, values).map((load) => {
    const limits = load.devices.flatMap(({ id }) => longest.get(id) ?? []);
    return { load, settings, longest: limits.length > 0 ? Math.min(...limits) : undefined };
  });
}

/** The detectors that switch a load themselves; others tell them. */
export const switching = (load: SwitchedLoad) => load.devices.filter(({ role }) => role === "switches");

/** The delays that are set on them, each once. */
export const setDelays = (load: SwitchedLoad): readonly Seconds[] => [
  ...new Set(switching(load).map(({ parameters }) => parameters.offDelay)),
];
