/** A day as a text that sorts by time: "2026-11-26". */
export type Day = string;

const pattern = /^(\d{4})-(\d{2})-(\d{2})$/;
const MILLISECONDS_OF_A_DAY = 86_400_000;

/**
 * A day so much later. The last day of February of a leap year becomes the 28th in years without one.
 *
 * @param day - "2026-11-26". @param by - Whole days, or whole years.
 * @returns The later day; undefined where `day` is none.
 * @example 28 days after 2026-11-26: 2026-12-24
 */
export function dayAfter(
  day: Day | undefined,
  by: { readonly days: number } | { readonly years: number },
): Day | undefined {
  const [year, month, date] = partsOf(day) ?? [];
  if (year === undefined || month === undefined || date === undefined) return undefined;
  if ("days" in by) return textOf(Date.UTC(year, month - 1, date) + by.days * MILLISECONDS_OF_A_DAY);
  const months = 12 * year + month - 1 + Math.round(12 * by.years);
  const [toYear, toMonth] = [Math.floor(months / 12), months % 12];
  const last = new Date(Date.UTC(toYear, toMonth + 1, 0)).getUTCDate();
  return textOf(Date.UTC(toYear, toMonth, Math.min(date, last)));
}

/**
 * Whether a text is a day of the calendar.
 *
 * @param day - Any text. @returns False for days that no month has.
 * @example isDay("2026-02-30") is false
 */
export const isDay = (day: string | undefined): day is Day => partsOf(day) !== undefined;

function partsOf(day: Day | undefined): readonly [number, number, number] | undefined {
  const [, year, month, date] = (pattern.exec(day ?? "") ?? []).map(Number);
  if (year === undefined || month === undefined || date === undefined) return undefined;
  return textOf(Date.UTC(year, month - 1, date)) === day ? [year, month, date] : undefined;
}

const textOf = (moment: number): Day => new Date(moment).toISOString().slice(0, 10);
