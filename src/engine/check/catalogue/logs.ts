import type { CatalogueEntry } from "./entry.ts";

/** What can be wrong with a log of presence. */
export const logProblems = {
  "log-empty": {
    severity: "must",
    message: "The log holds no rows.",
    remedy: "Export it again, with a header line and a row for every moment.",
  },
  "log-too-large": {
    severity: "must",
    message: "The log has more than {limit} characters.",
    remedy: "Cut it into shorter times, a year at most.",
  },
  "log-column-missing": {
    severity: "must",
    message: "The log has no column for {what}; its header in line {line} has {found}.",
    remedy: "Name the column, or choose which one it is.",
  },
  "log-quote-open": {
    severity: "must",
    message: "A quote that opens in line {line} never closes.",
    remedy: "Close the quote, or export the log again.",
  },
  "log-row-width": {
    severity: "must",
    message: "Line {line} has {found} fields, but {expected} are expected.",
    remedy: "Mend the line, or export the log again with one separator throughout.",
  },
  "log-time-unreadable": {
    severity: "must",
    message: "“{text}” in line {line} is no time.",
    remedy: "Write times as 2026-03-31 14:05:00, or choose how days and months stand.",
  },
  "log-value-unreadable": {
    severity: "must",
    message: "“{text}” in line {line} is no {what}.",
    remedy: "Write presence as 0 and 1, light as a number.",
  },
  "log-time-backwards": {
    severity: "must",
    message: "The time in line {line}, {text}, is not after the one before.",
    remedy: "Sort the rows by time, and leave out what stands there twice.",
  },
  "log-clock-set-back": {
    severity: "note",
    message:
      "At line {line} the clock goes back by {minutes} min, as in autumn; the rows are taken as following on.",
    remedy: "Nothing has to be done if this is the night of the change; otherwise mend the times.",
  },
  "log-gap": {
    severity: "note",
    message: "Before line {line} nothing is recorded for {minutes} min; nobody is taken to be there then.",
    remedy: "Judge savings from logs without long gaps.",
  },
  "log-header-short": {
    severity: "note",
    message:
      "The header has one name fewer than the rows have fields; the first field is taken for a row number.",
    remedy: "Nothing has to be done if the first field counts the rows.",
  },
} as const satisfies Record<string, CatalogueEntry>;
