import { daySeconds, type Seconds } from "#engine";

const two = (figure: number): string => String(figure).padStart(2, "0");

/** A time of the day as a clock shows it: 09:34; the end of the day is 24:00. @param time [s] */
export function clockText(time: Seconds): string {
  const minutes = Math.floor(Math.min(daySeconds, Math.max(0, time)) / 60);
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/** A clock time as a field gives it, as seconds of the day; undefined where it is none. 00:00 as an end is midnight. */
export function clockIn(text: string): Seconds | undefined {
  const found = /^(\d{1,2}):(\d{2})(?::\d{2})?$/.exec(text.trim());
  if (!found) return undefined;
  const [hours, minutes] = [Number(found[1]), Number(found[2])];
  return hours > 24 || minutes > 59 || (hours === 24 && minutes > 0)
    ? undefined
    : hours * 3600 + minutes * 60;
}

/** A length of time in words a person says: 45 s, 12 min, 3 h 20 min. @param seconds [s] */
export function spanText(seconds: Seconds): string {
  if (seconds < 59.5) return `${Math.round(seconds)} s`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 60) return `${minutes} min`;
  return minutes % 60 === 0 ? `${minutes / 60} h` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}
