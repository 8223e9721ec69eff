import { type Lux, type Problem, type Said, type Seconds, say } from "#engine";
import { type CsvRow, rowsOf, type Separator } from "../csv/rows.ts";
import { type DayOrder, momentOf } from "./moment.ts";

/** A log of presence as columns. */
export interface PresenceLog {
  /** From the first row on, ascending. [s] */
  readonly times: readonly Seconds[];
  readonly occupied: readonly boolean[];
  /** Light where the log has it. [lx] */
  readonly light: readonly Lux[] | undefined;
  /** Usual step from row to row. [s] */
  readonly step: Seconds;
  /** A longer step is a gap. [s] */
  readonly longestStep: Seconds;
  /** First time as written. */
  readonly begins: string;
  /** The same as a time of its day, on the clock of the log. [s] */
  readonly timeOfDay: Seconds;
  /** What the reader had to assume. */
  readonly notes: readonly Problem[];
}

export interface ReadLogOptions {
  /** Names of the columns; found by their usual names otherwise. */
  readonly time?: string;
  readonly presence?: string;
  readonly light?: string;
  /** For 03.04.2026; day first by default. */
  readonly dayOrder?: DayOrder;
  /** Longest step that is no gap; five times the usual step by default. [s] */
  readonly longestStep?: Seconds;
}

export type LogResult = { readonly log: PresenceLog } | { readonly problems: readonly Problem[] };

/** More than a year of minutes with a few columns. */
const LIMIT = 100_000_000;
/** A log with more faults than this is another kind of file: the rest is not listed. */
const LISTED = 20;

const names = {
  time: ["date", "time", "timestamp", "datetime", "date and time", "zeit", "datum"],
  presence: ["occupancy", "occupied", "presence", "occupant_presence", "motion", "movement", "pir", "belegt"],
  light: ["light", "lux", "illuminance", "brightness", "helligkeit"],
} as const;

/**
 * Reads a log of presence from CSV: quoted or not, comma, semicolon or tab, with or without a byte-order mark, header up
 * to one column short, local times.
 *
 * @returns The log, or every fault with its line (the first twenty)
 */
export function readLog(text: string, options: ReadLogOptions = {}): LogResult {
  if (text.length > LIMIT) return { problems: [{ code: "log-too-large", values: { limit: LIMIT } }] };
  const cut = rowsOf(text);
  if ("openQuote" in cut) return { problems: [{ code: "log-quote-open", values: { line: cut.openQuote } }] };
  const [head, ...rows] = cut.rows;
  if (!head || rows.length === 0) return { problems: [{ code: "log-empty", values: {} }] };
  const width = rows[0]!.fields.length;
  const short = head.fields.length === width - 1;
  const columns = columnsOf(head, { options, shift: short ? 1 : 0 });
  if ("problems" in columns) return columns;
  const notes: Problem[] = short ? [{ code: "log-header-short", values: {} }] : [];
  const expected = short ? width : head.fields.length;
  return taken(rows, { columns, options, expected, notes, separator: cut.separator });
}

interface Columns {
  readonly time: number;
  readonly presence: number;
  readonly light: number | undefined;
}

function columnsOf(
  head: CsvRow,
  { options, shift }: { readonly options: ReadLogOptions; readonly shift: number },
): Columns | { readonly problems: readonly Problem[] } {
  const lower = head.fields.map((field) => field.toLowerCase());
  const find = (chosen: string | undefined, usual: readonly string[]): number =>
    chosen === undefined
      ? lower.findIndex((name) => usual.includes(name))
      : lower.indexOf(chosen.trim().toLowerCase());
  const time = find(options.time, names.time);
  const presence = find(options.presence, names.presence);
  const light = find(options.light, names.light);
  const problems: Problem[] = [];
  const missing = (what: Said): void => {
    const found = head.fields
      .slice(0, 12)
      .map((field) => `“${field.slice(0, 40)}”`)
      .join(", ");
    problems.push({ code: "log-column-missing", values: { what, line: head.line, found } });
  };
  if (time === -1) missing(say`time`);
  if (presence === -1) missing(say`presence`);
  if (light === -1 && options.light !== undefined) missing(say`light`);
  if (problems.length > 0) return { problems };
  return { time: time + shift, presence: presence + shift, light: light === -1 ? undefined : light + shift };
}

interface Taking {
  readonly columns: Columns;
  readonly options: ReadLogOptions;
  readonly expected: number;
  readonly notes: Problem[];
  readonly separator: Separator;
}

function taken(rows: readonly CsvRow[], { columns, options, expected, notes, separator }: Taking): LogResult {
  const problems: Problem[] = [];
  const times: Seconds[] = [];
  const lines: number[] = [];
  const occupied: boolean[] = [];
  const light: Lux[] = [];
  let shift = 0;
  for (const { line, fields } of rows) {
    if (problems.length >= LISTED) break;
    if (fields.length !== expected) {
      problems.push({ code: "log-row-width", values: { line, found: fields.length, expected } });
      continue;
    }
    const written = fields[columns.time]!;
    const moment = momentOf(written, options.dayOrder ?? "day-first");
    const there = presenceIn(fields[columns.presence]!);
    const lux = columns.light === undefined ? 0 : numberIn(fields[columns.light]!, separator);
    if (moment === undefined)
      problems.push({ code: "log-time-unreadable", values: { line, text: shown(written) } });
    if (there === undefined)
      problems.push({
        code: "log-value-unreadable",
        values: { line, text: shown(fields[columns.presence]!), what: say`presence` },
      });
    if (lux === undefined)
      problems.push({
        code: "log-value-unreadable",
        values: { line, text: shown(fields[columns.light!]!), what: say`light` },
      });
    if (moment === undefined || there === undefined || lux === undefined) continue;
    const before = times.at(-1);
    if (before !== undefined && moment + shift <= before) {
      const back = setBack(before, { moment: moment + shift, step: usualStep(times) });
      if (back === undefined || shift > 0) {
        problems.push({ code: "log-time-backwards", values: { line, text: shown(written) } });
        continue;
      }
      shift += back;
      notes.push({ code: "log-clock-set-back", values: { line, minutes: back / 60 } });
    }
    times.push(moment + shift);
    lines.push(line);
    occupied.push(there);
    light.push(lux);
  }
  if (problems.length > 0) return { problems };
  const usual = usualStep(times);
  const longest = options.longestStep ?? 5 * usual;
  times.forEach((time, i) => {
    const step = i > 0 ? time - times[i - 1]! : 0;
    if (step > longest)
      notes.push({ code: "log-gap", values: { line: lines[i]!, minutes: Math.round(step / 6) / 10 } });
  });
  const from = times[0]!;
  return {
    log: {
      times: times.map((time) => time - from),
      occupied,
      light: columns.light === undefined ? undefined : light,
      step: usual,
      longestStep: longest,
      begins: rows[0]!.fields[columns.time]!,
      timeOfDay: ((from % 86_400) + 86_400) % 86_400,
      notes,
    },
  };
}

/** In autumn the clock goes back by an hour, once a log: the row after 02:59 is written 02:00. */
function setBack(
  before: Seconds,
  now: { readonly moment: Seconds; readonly step: Seconds },
): Seconds | undefined {
  const real = now.moment + 3600 - before;
  return real > 0 && real <= 2 * now.step ? 3600 : undefined;
}

/** Middle one of the first steps. */
function usualStep(times: readonly Seconds[]): Seconds {
  const steps = times.slice(1, 102).map((time, i) => time - times[i]!);
  return steps.toSorted((a, b) => a - b)[steps.length >> 1] ?? 60;
}

const words: Readonly<Record<string, boolean>> = {
  true: true,
  yes: true,
  on: true,
  occupied: true,
  false: false,
  no: false,
  off: false,
  vacant: false,
};

/** A count of people above zero is presence. */
function presenceIn(text: string): boolean | undefined {
  const word = words[text.toLowerCase()];
  if (word !== undefined) return word;
  return /^\d+(\.0*)?$/.test(text) ? Number(text) > 0 : undefined;
}

/** A comma is a decimal sign only where it does not separate. */
function numberIn(text: string, separator: Separator): number | undefined {
  const plain = separator === "," ? text : text.replace(",", ".");
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,2})?$/i.test(plain) ? Number(plain) : undefined;
}

const shown = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);
