import { findingsOf, type Problem } from "#engine";
import { type Answer, exitOf, type Refusal, type World } from "./command.ts";
import { findingLines, problemJson } from "./words.ts";
import { writeJob } from "./write-job.ts";

/** Whether a file is a job by its name; a packed building model ends in .ifczip. */
export const isJobName = (file: string): boolean => /\.(json|zip)$/i.test(file);

/** A job into another form: packed with its pictures and history, or readable. What comes out is a copy of the same job. */
export async function importJob(
  world: World,
  { file, bytes, output }: { readonly file: string; readonly bytes: Uint8Array; readonly output: string },
): Promise<Answer | Refusal> {
  const { documentOfRead, historyOf, readJobFile } = await import("#job");
  const read = readJobFile(bytes);
  if (!read.job) return { problems: read.problems };
  const job = read.job.id === undefined ? { ...read.job, id: world.newId() } : read.job;
  const document = documentOfRead({ ...read, job });
  const failed = await writeJob(world, output, { job, history: historyOf(document) });
  document.close();
  if (failed) return { problems: [failed] };
  const notes: readonly Problem[] = read.notes;
  const counts = { rooms: job.rooms.length, detectors: job.detectors.length, photos: job.photos.length };
  return {
    exit: exitOf(findingsOf(notes)),
    json: {
      id: job.id,
      name: job.name,
      ...counts,
      history: read.history !== undefined,
      notes: notes.map(problemJson),
    },
    text: [
      `${job.name || file}: ${counts.rooms} rooms, ${counts.detectors} detectors, ${counts.photos} photographs.`,
      ...(notes.length > 0 ? ["", findingLines(findingsOf(notes))] : []),
      "",
      `Written to ${output}.`,
    ].join("\n"),
  };
}
