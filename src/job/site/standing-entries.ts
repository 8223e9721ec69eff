import { partedBySwaps } from "#engine";
import type { JobFile, JobTestEntry } from "../schema/job-file.ts";

/**
 * Entries of a job that speak of the devices that hang there now; those of devices that were exchanged stay in the job, and out of this.
 *
 * @param job - A job that was read or that a document holds.
 * @example A job without swaps: all of its entries
 */
export const standingEntries = (
  job: Pick<JobFile, "testEntries" | "swaps" | "detectors">,
): readonly JobTestEntry[] => partedBySwaps(job.testEntries, job).standing;
