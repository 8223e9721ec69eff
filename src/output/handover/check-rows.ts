import {
  type Check,
  distinct,
  english,
  type Finding,
  figured,
  inside,
  joined,
  messageSaid,
  remedySaid,
  type Said,
  say,
  shortSourceTitle,
  type Verdict,
  type Words,
} from "#engine";
import { column } from "../wiring/schedules.ts";
import type { Block } from "./upright-pages.ts";

const verdictWords: Readonly<Record<Verdict, Said>> = {
  pass: say`passed`,
  fail: say`! failed`,
  "not-proven": say`not proven`,
};

/** A figure with no more digits than it carries. @example 12.3456 of "m": "12.3 m" */
export function figure(value: number | undefined, unit: Words): Said {
  if (value === undefined) return say`unknown`;
  if (!Number.isFinite(value)) return say`beyond measure`;
  const digits = Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2;
  const text = String(Number(value.toFixed(digits)));
  if (english(unit) === "") return figured(text);
  return typeof unit === "string" ? figured(`${text} ${unit}`) : joined([figured(text), unit], " ");
}

/** Checks with their evidence: what was found, what is asked, by which source. One source of all of them is named once, above. */
export function checkBlock(heading: Said, checks: readonly Check[]): Block {
  const [one, ...more] = distinct(checks.map(({ source }) => shortSourceTitle(source)));
  const same = one !== undefined && more.length === 0;
  return {
    heading: same ? say`${heading}, by ${inside(one)}` : heading,
    columns: [
      column(say`What is checked`, same ? 109 : 61),
      column(say`Found`, 18, "end"),
      column(say`Limit`, 18, "end"),
      column(say`Verdict`, 27),
      ...(same ? [] : [column(say`Source`, 48)]),
    ],
    rows: checks.map(({ what, actual, limit, unit, verdict, source }) => [
      what,
      figure(actual, unit),
      limit === undefined ? "" : figure(limit, unit),
      verdictWords[verdict],
      ...(same ? [] : [shortSourceTitle(source)]),
    ]),
  };
}

const severityWords: Readonly<Record<Finding["severity"], Said>> = {
  must: say`! must`,
  should: say`– should`,
  note: say`· note`,
};

/** Findings with their remedy. */
export function findingBlock(heading: Said, findings: readonly Finding[], empty?: Said): Block {
  return {
    heading,
    columns: [column("", 18), column(say`What`, 84), column(say`Remedy`, 70)],
    rows: findings.map((finding) => [
      severityWords[finding.severity],
      messageSaid(finding),
      remedySaid(finding),
    ]),
    ...(empty === undefined ? {} : { empty }),
  };
}
