import type { CatalogueEntry } from "./entry.ts";

/** What can be wrong with a job file, or with a job after changes of several people met. */
export const jobProblems = {
  "job-not-json": {
    severity: "must",
    message: "This file cannot be read as JSON: {reason}.",
    remedy:
      "Open the file in a text editor and mend that place, or fetch the job again from where it was saved.",
  },
  "job-other-format": {
    severity: "must",
    message: "This file is not a Roomwake job: {reason}.",
    remedy: "Choose a file whose name ends in .job.json.",
  },
  "job-version-unknown": {
    severity: "must",
    message: "The job says version {version}, which never existed.",
    remedy: "Set “version” to {newest}, or fetch the job again from where it was saved.",
  },
  "job-newer": {
    severity: "should",
    message: "This job was written by a newer Roomwake (file version {version}; this one writes {newest}).",
    remedy: "Look at it here, and update Roomwake to change it.",
  },
  "job-read-only": {
    severity: "must",
    message: "This job was written by a newer Roomwake and is open for reading only.",
    remedy: "Update Roomwake to change it.",
  },
  "job-field-wrong": {
    severity: "must",
    message: "{place}: {reason}.",
    remedy: "Correct that place in the file and open it again.",
  },
  "job-too-large": {
    severity: "must",
    message: "The job has {count} {what}; at most {most} are read.",
    remedy: "Split the job, for instance by storeys.",
  },
  "job-record-broken": {
    severity: "must",
    message: "{place} cannot be used: {reason}.",
    remedy: "Delete the record or restore the missing part; it was left out of the plan until then.",
  },
  "job-id-twice": {
    severity: "must",
    message: "{place}: the id “{id}” was already given to {first}.",
    remedy: "Give one of the two another id, and check what refers to it.",
  },
  "job-reference-lost": {
    severity: "must",
    message: "{place} refers to {what}, which is not in the job.",
    remedy: "Delete it, or assign it to something that exists; it was left out of the plan until then.",
  },
  "job-record-gone": {
    severity: "should",
    message: "{what} is no longer in the job.",
    remedy: "Somebody else may have deleted it; undo that, or go on without it.",
  },
  "job-entry-stands": {
    severity: "must",
    message: "Entry “{id}” was recorded on site and is not changed afterwards.",
    remedy: "Record a correction beside it; undo takes back what was entered last by mistake.",
  },
  "job-model-in-use": {
    severity: "must",
    message: "{count} detectors still use the model “{title}”.",
    remedy: "Give them another model first, or delete them.",
  },
  "job-tag-twice": {
    severity: "should",
    message: "The tag {tag} was given to {count} detectors.",
    remedy: "Give all but one of them another tag.",
  },
  "outline-too-few-corners": {
    severity: "must",
    message: "{place}: {ring} has {corners} corners; {what} needs at least 3.",
    remedy: "Add the missing corners, or delete it.",
  },
  "outline-too-many-corners": {
    severity: "must",
    message: "{place}: {ring} has {corners} corners; at most {most} are read.",
    remedy: "Simplify the outline where it follows a curve.",
  },
  "outline-crosses-itself": {
    severity: "must",
    message: "{place}: {ring} crosses itself near ({x}, {y}).",
    remedy: "Move the corners there so that the walls no longer cross.",
  },
  "outline-flat": {
    severity: "must",
    message: "{place}: {ring} encloses no area.",
    remedy: "Check its corners: all of them lie on one line.",
  },
  "outline-corner-doubled": {
    severity: "note",
    message: "{place}: {ring} repeated {count} of its corners; they were taken once.",
    remedy: "Nothing needs to be done.",
  },
} as const satisfies Record<string, CatalogueEntry>;
