import type { ChosenSettings } from "#engine";
import type { JobFile, JobSettings } from "../schema/job-file.ts";

/**
 * What a person set on a detector, in the engine's words.
 *
 * @param settings - As the job file has them.
 * @example chosenSettings({ buttonRole: "on-only" }) is { button: "on-only" }
 */
export function chosenSettings(settings: JobSettings): ChosenSettings {
  const { buttonRole, brightnessThreshold, ...others } = settings;
  return {
    ...others,
    ...(buttonRole === undefined ? {} : { button: buttonRole }),
    ...(brightnessThreshold === undefined ? {} : { threshold: brightnessThreshold }),
  } as ChosenSettings;
}

/** What was set in a job, by detector. @param job - A job that was read or that a document holds. */
export const chosenOfJob = (job: Pick<JobFile, "detectors">): ReadonlyMap<string, ChosenSettings> =>
  new Map(
    job.detectors.flatMap(({ id, settings }) =>
      settings === undefined ? [] : [[id, chosenSettings(settings)] as const],
    ),
  );
