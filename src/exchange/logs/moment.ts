import type { Seconds } from "#engine";

/** How days and months stand in 03.04.2026 or 03/04/2026. */
export type DayOrder = "day-first" | "month-first";

/** Days from 1970-01-01 to a day of the Gregorian calendar, without looking at any clock. */
function daysOf(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const ofEra = y - era * 400;
  const ofYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  return era * 146_097 + ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear - 719_468;
}

const lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const monthLength = (year: number, month: number): number =>
  month === 2 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : (lengths[month - 1] ?? 0);

const yearFirst =
  /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})[T ]+(\d{1,2}):(\d{2})(?::(\d{2}(?:\.\d{1,9})?))?\s*(Z|[+-]\d{2}:?\d{2})?$/;
const yearLast = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})[T ,]+(\d{1,2}):(\d{2})(?::(\d{2}(?:\.\d{1,9})?))?$/;

/**
 * Local time as written, as seconds from 1970-01-01 00:00 on the same clock; with a zone behind it, universal time.
 *
 * @returns [s]; undefined where it is no time
 */
export function momentOf(text: string, order: DayOrder): Seconds | undefined {
  const first = yearFirst.exec(text);
  const last = first ? null : yearLast.exec(text);
  const found = first ?? last;
  if (!found) return undefined;
  const [a, b, c, hour, minute, second] = found.slice(1, 7).map((part) => Number(part ?? 0)) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const [year, month, day] = first ? [a, b, c] : order === "day-first" ? [c, b, a] : [c, a, b];
  if (month < 1 || month > 12 || day < 1 || day > monthLength(year, month)) return undefined;
  if (hour > 23 || minute > 59 || second >= 60) return undefined;
  return daysOf(year, month, day) * 86_400 + hour * 3600 + minute * 60 + second - offsetOf(first?.[7]);
}

function offsetOf(zone: string | undefined): Seconds {
  if (zone === undefined || zone === "Z") return 0;
  const digits = zone.slice(1).replace(":", "");
  return (zone[0] === "-" ? -1 : 1) * (Number(digits.slice(0, 2)) * 3600 + Number(digits.slice(2)) * 60);
}
