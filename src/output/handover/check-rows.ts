import { type Check, type Finding, type SourceId, sources, type Verdict } from "#engine";
import { column } from "../wiring/schedules.ts";
import type { Block } from "./upright-pages.ts";

const verdictWords: Readonly<Record<Verdict, string>> = {
  pass: "passed",
  fail: "! failed",
  "not-proven": "not proven",
};

/** A figure with no more digits than it carries. @example 12.3456 of "m": "12.3 m" */
export function figure(value: number | undefined, unit: string): string {
  if (value === undefined) return "unknown";
  if (!Number.isFinite(value)) return "beyond measure";
  const digits = Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2;
  const text = String(Number(value.toFixed(digits)));
  return unit === "" ? text : `${text} ${unit}`;
}

/** Checks with their evidence: what was found, what is asked, by which source. One source of all of them is named once, above. */
export function checkBlock(heading: string, checks: readonly Check[]): Block {
  const [one, ...more] = new Set(checks.map(({ source }) => shortSource(source)));
  const same = one !== undefined && more.length === 0;
  return {
    heading: same ? `${heading}, by ${one.charAt(0).toLowerCase()}${one.slice(1)}` : heading,
    columns: [
      column("What is checked", same ? 116 : 66),
      column("Found", 18, "end"),
      column("Limit", 18, "end"),
      column("Verdict", 20),
      ...(same ? [] : [column("By", 50)]),
    ],
    rows: checks.map(({ what, actual, limit, unit, verdict, source }) => [
      what,
      figure(actual, unit),
      limit === undefined ? "" : figure(limit, unit),
      verdictWords[verdict],
      ...(same ? [] : [shortSource(source)]),
    ]),
  };
}

/** Title of a source as far as its first comma. */
export const shortSource = (id: SourceId): string => sources[id].title.split(/[,:]/)[0]!;

const severityWords = { must: "! must", should: "– should", note: "· note" } as const;

/** Findings with their remedy. */
export function findingBlock(heading: string, findings: readonly Finding[], empty?: string): Block {
  return {
    heading,
    columns: [column("", 18), column("What", 84), column("Remedy", 70)],
    rows: findings.map(({ severity, message, remedy }) => [severityWords[severity], message, remedy]),
    ...(empty === undefined ? {} : { empty }),
  };
}
