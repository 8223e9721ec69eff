import type { JobFile } from "../schema/job-file.ts";

/**
 * Tags for new detectors of a room: the class letter B (what turns a physical quantity into a signal, IEC 81346-2), the storey
 * counted from below, and a running number that no detector of the job has: B1.04.
 *
 * A tag is given once and stays, whatever happens to the order of rooms or storeys afterwards.
 *
 * @param options.count - How many tags are wanted.
 * @param options.taken - Tags given in the same breath, beyond those of the job.
 */
export function newTags(
  job: JobFile,
  options: { readonly room: string; readonly count: number; readonly taken?: readonly string[] },
): readonly string[] {
  const storey = job.rooms.find((room) => room.id === options.room)?.storey;
  const fromBelow = [...job.storeys].sort((a, b) => a.elevation - b.elevation || (a.id < b.id ? -1 : 1));
  const ordinal = Math.max(1, fromBelow.findIndex((one) => one.id === storey) + 1);
  const prefix = `B${ordinal}.`;
  const given = [...job.detectors.map((detector) => detector.tag), ...(options.taken ?? [])]
    .filter((tag) => tag.startsWith(prefix))
    .map((tag) => Number(tag.slice(prefix.length)))
    .filter(Number.isInteger);
  const last = Math.max(0, ...given);
  return Array.from(
    { length: options.count },
    (_, index) => `${prefix}${String(last + 1 + index).padStart(2, "0")}`,
  );
}

/** Rows of a ceiling are told apart by more than this. [m] */
const rowHeight = 0.5;

/** Things on a plan in the order in which one reads: rows from above, each from the left. */
export function inReadingOrder<Thing extends { readonly at: readonly [number, number] }>(
  things: readonly Thing[],
): readonly Thing[] {
  const fromAbove = [...things].sort((a, b) => b.at[1] - a.at[1] || a.at[0] - b.at[0]);
  const rows: Thing[][] = [];
  for (const thing of fromAbove) {
    const row = rows[rows.length - 1];
    if (row && row[0]!.at[1] - thing.at[1] < rowHeight) row.push(thing);
    else rows.push([thing]);
  }
  return rows.flatMap((row) => row.sort((a, b) => a.at[0] - b.at[0]));
}
