import {
  type ChosenSettings,
  type DeviceSettings,
  type Seconds,
  type SettingValues,
  type SwitchedLoad,
  settingsOfSite,
  switchedLoads,
} from "#engine";
import { settingsOfJob } from "#job";
import type { OpenJob } from "../contract.ts";

/** A load as its detectors are set, chosen or derived. */
export interface SetLoad {
  readonly load: SwitchedLoad;
  /** Settings of each detector, with their reasons. */
  readonly settings: ReadonlyMap<string, DeviceSettings>;
  /** Longest delay that a rule allows. [s] */
  readonly longest: Seconds | undefined;
}

/** The loads of a job: what a person chose, and what is derived where nobody chose. */
export function loadsOfJob(job: Pick<OpenJob, "site" | "file">): readonly SetLoad[] {
  const { choices } = settingsOfJob(job.file);
  const { devices } = settingsOfSite(job.site, choices);
  const settings = new Map(devices.map((device) => [device.context.device, device.settings]));
  const longest = new Map(devices.map(({ context }) => [context.device, context.longestDelay?.delay]));
  const values = new Map([...settings].map(([id, one]) => [id, valuesOf(one)]));
  return switchedLoads(job.site, values).map((load) => {
    const limits = load.devices.flatMap(({ id }) => longest.get(id) ?? []);
    return { load, settings, longest: limits.length > 0 ? Math.min(...limits) : undefined };
  });
}

const valuesOf = (settings: DeviceSettings): ChosenSettings =>
  Object.fromEntries(
    Object.entries(settings).map(([name, setting]) => [name, setting.value]),
  ) as unknown as SettingValues;
