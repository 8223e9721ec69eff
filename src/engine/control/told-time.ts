import { say, type Words } from "../check/index.ts";
import type { Seconds } from "../quantity/index.ts";

/**
 * A time for a sentence.
 *
 * @param time - From midnight before the first day [s]
 * @returns Hours and minutes; later days with their number
 * @example 33 000 s: "9:10"; a day later: "9:10 on day 2"
 */
export function clockTime(time: Seconds): Words {
  const minutes = Math.floor(time / 60);
  const day = Math.floor(minutes / 1440);
  const clock = `${Math.floor(minutes / 60) - day * 24}:${String(minutes % 60).padStart(2, "0")}`;
  return day === 0 ? clock : say`${clock} on day ${day + 1}`;
}

/**
 * A length of time for a sentence.
 *
 * @param time - [s]
 * @returns Whole seconds below a minute, tenths of minutes from there on
 * @example 90 s: "1.5 min"
 */
export const lengthOfTime = (time: Seconds): string =>
  Math.round(time) < 60 ? `${Math.round(time)} s` : `${Math.round(time / 6) / 10} min`;
