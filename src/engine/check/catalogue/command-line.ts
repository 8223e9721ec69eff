import type { CatalogueEntry } from "./entry.ts";

/** What can be wrong with a command, or with the files that it names. */
export const commandLineProblems = {
  "command-unknown": {
    severity: "must",
    message: "There is no command “{command}”.",
    remedy: "Run roomwake --help for the list of commands.",
  },
  "command-wrong": {
    severity: "must",
    message: "The command cannot be carried out: {reason}.",
    remedy: "Run roomwake {command} --help for what it takes.",
  },
  "file-unreadable": {
    severity: "must",
    message: "{file} cannot be read: {reason}.",
    remedy: "Check the name, and that you may read the file.",
  },
  "file-unwritable": {
    severity: "must",
    message: "{file} cannot be written: {reason}.",
    remedy: "Check that the folder exists, that you may write to it, and that the disk is not full.",
  },
  "output-exists": {
    severity: "must",
    message: "{file} exists already.",
    remedy: "Choose another name, or add --force to replace it.",
  },
  "storey-unknown": {
    severity: "must",
    message: "There is no storey “{storey}” in this job.",
    remedy: "Name one of them by its id or name: {known}.",
  },
  "room-unknown": {
    severity: "must",
    message: "There is no room “{room}” in this job.",
    remedy: "Name one of them by its id, number or name: {known}.",
  },
  "room-ambiguous": {
    severity: "must",
    message: "“{room}” is the name of {count} rooms.",
    remedy: "Name the one you mean by its id: {known}.",
  },
  "detector-unknown": {
    severity: "must",
    message: "There is no detector “{detector}” in this job.",
    remedy: "Name one of them by its id or tag: {known}.",
  },
  "replay-without-detector": {
    severity: "must",
    message: "The job has no detector that a log could be replayed with.",
    remedy: "Place detectors first, by hand or with roomwake place.",
  },
  "placing-cancelled": {
    severity: "note",
    message: "Placing was stopped; {done} of {rooms} rooms were finished.",
    remedy: "Run the command again for the others; the best found so far is kept.",
  },
  "reading-cancelled": {
    severity: "note",
    message: "Reading {file} was stopped; nothing was written.",
    remedy: "Run the command again when there is time for it.",
  },
  "program-fault": {
    severity: "must",
    message: "The program made a mistake: {reason}.",
    remedy: "Keep the job file and report what you did; nothing was changed.",
  },
} as const satisfies Record<string, CatalogueEntry>;
