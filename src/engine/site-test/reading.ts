import { type Check, type Problem, type Said, say } from "../check/index.ts";
import type { SourceId } from "../source/index.ts";

/** What is read on site. */
export type ReadingKind =
  | "continuity"
  | "insulation"
  | "loop-impedance"
  | "rcd-time"
  | "earth-resistance"
  | "height"
  | "brightness"
  | "delay";

/** A kind of reading: its unit, what cannot be, and outside which values a slip of range or unit is likelier than the truth. */
export interface ReadingRow {
  readonly what: Said;
  readonly unit: string;
  readonly least: number;
  readonly usual: readonly [least: number, most: number];
}

/**
 * Kinds of readings. Usual values are the trade's habit: outside them a reading is questioned, never refused.
 *
 * @source COMMON-PRACTICE
 */
export const readingRows: Readonly<Record<ReadingKind, ReadingRow>> = {
  // A final circuit of 100 m on 1.5 mm² has 2.4 Ω both ways: more is a loose joint or the wrong range.
  continuity: { what: say`Continuity of the protective conductor`, unit: "Ω", least: 0, usual: [0, 5] },
  // Above 100 kΩ counted as megohms; 1000 and more is what instruments show for "beyond range".
  insulation: { what: say`Insulation resistance`, unit: "MΩ", least: 0, usual: [0.1, 10_000] },
  "loop-impedance": { what: say`Fault loop impedance`, unit: "Ω", least: 0, usual: [0.05, 20] },
  // Faster than a half wave is no reading of an RCD; below 1 it was entered in seconds.
  "rcd-time": { what: say`Tripping time of the RCD`, unit: "ms", least: 0, usual: [5, 500] },
  "earth-resistance": {
    what: say`Resistance of the earth electrode`,
    unit: "Ω",
    least: 0,
    usual: [1, 2_000],
  },
  // A detector on a ceiling: anything else was entered in centimetres or millimetres.
  height: { what: say`Mounting height`, unit: "m", least: 0, usual: [1.8, 15] },
  brightness: { what: say`Illuminance`, unit: "lx", least: 0, usual: [1, 20_000] },
  delay: { what: say`Off delay by stop-watch`, unit: "s", least: 0, usual: [5, 3_600] },
};

/** What a reading must keep. */
export interface ReadingLimit {
  readonly least?: number;
  readonly most?: number;
  readonly source: SourceId;
  readonly assumptions?: readonly Said[];
}

/** Range of the instrument as set. */
export type InstrumentRange = readonly [least: number, most: number];

/**
 * A reading checked as it is entered.
 *
 * @param kind - What is read. @param question.value - In the kind's unit; "beyond" where the instrument shows more than it can measure.
 * @param question.limit - What must be kept; absent: the reading alone. @param question.instrument - Its range as set, in the same unit.
 * @returns The check, and problems: "must" refuses the reading, "should" only asks.
 * @source COMMON-PRACTICE
 * @example Insulation 0.8 MΩ against at least 1 MΩ: fail
 */
export function checkReading(
  kind: ReadingKind,
  question: {
    readonly value: number | undefined;
    readonly limit?: ReadingLimit | undefined;
    readonly instrument?: InstrumentRange | undefined;
  },
): { readonly check: Check; readonly problems: readonly Problem[] } {
  const row = readingRows[kind];
  const { value, limit, instrument } = question;
  const common = {
    what: row.what,
    limit: limit?.least ?? limit?.most,
    unit: row.unit,
    source: limit?.source ?? "COMMON-PRACTICE",
  } as const;
  const assumptions = limit?.assumptions ?? [];
  if (value === undefined)
    return {
      check: {
        ...common,
        verdict: "not-proven",
        actual: undefined,
        assumptions: [say`Not yet read`, ...assumptions],
      },
      problems: [],
    };
  if (!Number.isFinite(value) || value < row.least) {
    const problem: Problem = { code: "reading-impossible", values: { value: String(value), unit: row.unit } };
    return {
      check: { ...common, verdict: "not-proven", actual: undefined, assumptions },
      problems: [problem],
    };
  }
  const holds =
    (limit?.least === undefined || value >= limit.least) &&
    (limit?.most === undefined || value <= limit.most);
  const hasLimit = limit?.least !== undefined || limit?.most !== undefined;
  const broken = limit?.most !== undefined && value > limit.most ? limit.most : (limit?.least ?? limit?.most);
  return {
    check: {
      ...common,
      limit: broken,
      verdict: hasLimit ? (holds ? "pass" : "fail") : "not-proven",
      actual: value,
      assumptions: hasLimit ? assumptions : [say`No limit is known`, ...assumptions],
    },
    problems: [
      ...outside(row, { value, range: row.usual, code: "reading-unusual" }),
      ...(instrument ? outside(row, { value, range: instrument, code: "reading-outside-instrument" }) : []),
    ],
  };
}

function outside(
  row: ReadingRow,
  question: {
    readonly value: number;
    readonly range: readonly [number, number];
    readonly code: "reading-unusual" | "reading-outside-instrument";
  },
): readonly Problem[] {
  const { value, range, code } = question;
  const [least, most] = range;
  if (value >= least && value <= most) return [];
  return [{ code, values: { value, unit: row.unit, least, most } }];
}

/** Share of a set delay, and time, by which a measured one may be off. @source COMMON-PRACTICE */
const DELAY_SHARE = 0.1;
const DELAY_LEAST = 15;

/**
 * What a delay by stop-watch must keep: within max(10 %, 15 s) of the set one, and no longer than a code allows.
 *
 * @param delay.set - As set. [s] @param delay.longest - Longest that a code allows. [s]
 * @returns Limits of the reading. [s]
 * @source COMMON-PRACTICE
 * @example 600 s: 540 … 660 s; 60 s: 45 … 75 s
 */
export function delayLimit(delay: { readonly set: number; readonly longest?: number }): ReadingLimit {
  const off = Math.max(DELAY_SHARE * delay.set, DELAY_LEAST);
  return {
    least: Math.max(0, delay.set - off),
    most: Math.min(delay.set + off, delay.longest ?? Number.POSITIVE_INFINITY),
    source: "COMMON-PRACTICE",
  };
}
