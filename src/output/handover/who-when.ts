import { day, joined, type Words } from "#engine";

/** Who entered something, and on which day. */
export const whoWhen = (by: string | undefined, time: string | undefined): Words =>
  joined([...(by ? [by] : []), ...(time ? [day(time.slice(0, 10))] : [])], ", ");
