/** A moment, and how far the clock on the wall is from the world's time. @example In winter in the middle of Europe: { time: "2026-11-26T16:40:00.000Z", zone: "+01:00" } */
export function momentOf(date: Date): { readonly time: string; readonly zone: string } {
  const ahead = -date.getTimezoneOffset();
  const [hours, minutes] = [Math.floor(Math.abs(ahead) / 60), Math.abs(ahead) % 60];
  return { time: date.toISOString(), zone: `${ahead < 0 ? "-" : "+"}${two(hours)}:${two(minutes)}` };
}

/** Hour and minute as they were on the wall. @example clockOf({ time: "2026-11-26T16:40:00.000Z", zone: "+01:00" }) is "17:40" */
export function clockOf({
  time,
  zone,
}: {
  readonly time: string;
  readonly zone?: string | undefined;
}): string {
  const [, sign, hours, minutes] = /^([+-])(\d\d):(\d\d)$/.exec(zone ?? "+00:00") ?? [];
  const ahead = (Number(hours ?? 0) * 60 + Number(minutes ?? 0)) * (sign === "-" ? -1 : 1);
  const at = Date.parse(time) + ahead * 60_000;
  return Number.isNaN(at) ? "" : new Date(at).toISOString().slice(11, 16);
}

const two = (figure: number): string => String(figure).padStart(2, "0");

/** The day as it is on the wall. @example localDay(new Date(2026, 10, 26, 23, 30)) is "2026-11-26" */
export const localDay = (date: Date): string =>
  `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
