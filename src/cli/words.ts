import {
  english,
  entryOf,
  type Finding,
  findingsOf,
  type Problem,
  remedyOf,
  type Said,
  sentenceOf,
} from "#engine";

/** A finding or a refusal as data on standard output. */
export const findingJson = (finding: Finding): unknown => ({
  code: finding.code,
  severity: finding.severity,
  room: finding.room ?? null,
  message: finding.message,
  remedy: finding.remedy,
  evidence: finding.evidence,
  ...(finding.at ? { x: finding.at[0], y: finding.at[1] } : {}),
  records: finding.records,
});

export const problemJson = (problem: Problem): unknown => ({
  code: problem.code,
  severity: entryOf(problem).severity,
  message: sentenceOf(problem),
  remedy: remedyOf(problem),
});

/** Problems for a person: the word first, then what, then how to mend. */
export const problemLines = (problems: readonly Problem[]): string => findingLines(findingsOf(problems));

export const findingLines = (findings: readonly Finding[]): string =>
  findings
    .map((finding) => `${finding.severity.padEnd(7)}${finding.message}\n       ${finding.remedy}`)
    .join("\n");

/** Columns that stand under each other; figures flush right. */
export function aligned(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  figures: ReadonlySet<number> = new Set(),
): string {
  const widths = head.map((title, i) => Math.max(length(title), ...rows.map((row) => length(row[i] ?? ""))));
  const line = (cells: readonly string[]): string =>
    cells
      .map((cell, i) => {
        const space = " ".repeat(Math.max(0, widths[i]! - length(cell)));
        return figures.has(i) ? space + cell : cell + space;
      })
      .join("  ")
      .trimEnd();
  return [line(head), ...rows.map(line)].join("\n");
}

/** Signs that a terminal shows; a letter made of several code units is one. */
const length = (text: string): number => [...text].length;

/** A length or area for reading and for JSON: no more digits than geometry carries. */
export const rounded = (value: number, digits = 5): number => {
  const factor = 10 ** digits;
  const result = Math.round(value * factor) / factor;
  return result === 0 ? 0 : result;
};

/** What is said stands in data as its English sentence: JSON.stringify asks for every value. @example say`${2} devices` → "2 devices" */
export const inEnglish = (_: string, value: unknown): unknown => (isSaid(value) ? english(value) : value);

const isSaid = (value: unknown): value is Said =>
  typeof value === "object" && value !== null && Object.keys(value).toSorted().join() === "text,values";
