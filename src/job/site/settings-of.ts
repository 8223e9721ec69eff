import {
  type ChosenSettings,
  type LightReadings,
  type PackStanding,
  packsInForce,
  type RulePack,
  type SettingChoices,
  shippedPacks,
} from "#engine";
import type { JobFile, JobSettings } from "../schema/job-file.ts";
import { chosenOfJob } from "./chosen-settings.ts";
import { installationOf } from "./installation-of.ts";

/** Whether words of the file are a day, YYYY-MM-DD: it may hold any others. */
export const isDay = (words: string | undefined): words is string =>
  words !== undefined && /^\d{4}-\d{2}-\d{2}$/.test(words);

/**
 * What a job holds of settings beside its site, for the engine: what people chose, read and entered, and the packs that are on.
 *
 * @param job - A job that was read or that a document holds. @param packs - All packs at hand: those of the program, and a firm's own.
 * @returns Choices by detector; every pack with whether it is on and why.
 * @example A job without settings in no region: nothing chosen, every shipped pack off
 */
export function settingsOfJob(
  job: Pick<JobFile, "detectors" | "details" | "boards" | "circuits">,
  packs: readonly RulePack[] = shippedPacks,
): { readonly choices: SettingChoices; readonly packs: readonly PackStanding[] } {
  const { region, rulesOn, rulesOff, date, plantPower } = job.details;
  const standing = packsInForce(packs, { region, on: rulesOn, off: rulesOff });
  const byDetector = <Value>(
    of: (detector: JobFile["detectors"][number]) => Value | undefined,
  ): ReadonlyMap<string, Value> =>
    new Map(
      job.detectors.flatMap((detector): (readonly [string, Value])[] => {
        const value = of(detector);
        return value === undefined ? [] : [[detector.id, value]];
      }),
    );
  return {
    choices: {
      chosen: chosenOfJob(job),
      readings: byDetector(({ lightReadings }): LightReadings | undefined => lightReadings),
      timers: byDetector(({ timer }) => timer),
      recommended: byDetector(({ recommended }) => recommended),
      packs: standing.flatMap(({ pack, on }) => (on ? [pack] : [])),
      installation: installationOf(job),
      ...(plantPower === undefined ? {} : { plant: plantPower }),
      ...(isDay(date) ? { day: date } : {}),
    },
    packs: standing,
  };
}

/** One setting of the engine by the file's name. @example "threshold" is "brightnessThreshold" */
export const settingInFile = (name: keyof ChosenSettings): keyof JobSettings =>
  name === "button" ? "buttonRole" : name === "threshold" ? "brightnessThreshold" : name;
