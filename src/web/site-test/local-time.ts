/** A moment as the clock on the wall says it, with how far that clock is from the world's: ISO 8601. @example 17:40 in winter in the middle of Europe: "2026-11-26T17:40:00+01:00" */
export function localTime(moment: Date): string {
  const ahead = -moment.getTimezoneOffset();
  const shifted = new Date(moment.getTime() + ahead * 60_000).toISOString().slice(0, 19);
  const [hours, minutes] = [Math.floor(Math.abs(ahead) / 60), Math.abs(ahead) % 60];
  return `${shifted}${ahead < 0 ? "-" : "+"}${two(hours)}:${two(minutes)}`;
}

/** Hour and minute of such a moment, as they were on that clock. @example "17:40" */
export const clockOf = (time: string): string => /T(\d\d:\d\d)/.exec(time)?.[1] ?? "";

const two = (figure: number): string => String(figure).padStart(2, "0");
