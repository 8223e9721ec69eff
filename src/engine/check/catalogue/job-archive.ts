import type { CatalogueEntry } from "./entry.ts";

/** What can be wrong with a packed job, `NAME.job.zip`, or with a copy that is to be merged. */
export const jobArchiveProblems = {
  "job-file-empty": {
    severity: "must",
    message: "This file is empty.",
    remedy: "Fetch the job again from where it was saved.",
  },
  "job-archive-damaged": {
    severity: "must",
    message: "This packed job is damaged: {reason}.",
    remedy: "Copy it again from where it was saved.",
  },
  "job-archive-locked": {
    severity: "must",
    message: "This packed job is locked with a password.",
    remedy: "Unpack it with its password, and open the file in it whose name ends in .job.json.",
  },
  "job-archive-too-large": {
    severity: "must",
    message: "Unpacked, this job would be larger than {limit}.",
    remedy: "Check where the file comes from; a job with fewer or smaller photographs can be packed again.",
  },
  "job-archive-no-job": {
    severity: "must",
    message: "This zip file holds no job: nothing in it ends in .job.json.",
    remedy: "Choose a file whose name ends in .job.zip.",
  },
  "job-archive-several-jobs": {
    severity: "must",
    message: "This zip file holds {count} jobs.",
    remedy: "Unpack it, and open its jobs one by one.",
  },
  "job-archive-left-aside": {
    severity: "note",
    message: "{count} more in the zip file, not part of a job, left aside: {names}.",
    remedy: "Nothing needs to be done.",
  },
  "job-archive-photo-missing": {
    severity: "should",
    message: "{count} of the job's pictures are missing in the zip file: {names}.",
    remedy: "Pack the job again where its pictures are.",
  },
  "job-archive-history-unusable": {
    severity: "should",
    message:
      "The history in this packed job cannot be used: {reason}. The job was taken from its readable file.",
    remedy: "Go on with it; into a copy that is here already it comes as one step that can be undone.",
  },
  "job-copy-other-beginning": {
    severity: "should",
    message: "The copy and the job that is here were begun apart: the copy came in as a difference.",
    remedy: "Look through what changed, and undo it where your own changes are missing.",
  },
} as const satisfies Record<string, CatalogueEntry>;
