import type { Problem, Site } from "#engine";
import type { JobFile } from "#job";
import type { World } from "./command.ts";
import { readBytes } from "./files.ts";

export interface OpenedJob {
  readonly job: JobFile;
  /** What a packed job brought of its history. */
  readonly history?: Uint8Array;
  readonly site: Site;
  /** What was mended or left out on the way in. */
  readonly notes: readonly Problem[];
  readonly readOnly: boolean;
}

/** Reads a job file, packed or not, and makes the engine's snapshot of it. */
export async function openJob(
  world: World,
  file: string,
): Promise<OpenedJob | { readonly problems: readonly Problem[] }> {
  const read = await readBytes(world.folder, file);
  if ("problem" in read) return { problems: [read.problem] };
  // Loaded once there is a file to read: the help of a command needs neither schema nor document.
  const { readJobFile, siteOf } = await import("#job");
  const parsed = readJobFile(read.bytes);
  if (!parsed.job) return { problems: parsed.problems };
  const { site, problems } = siteOf(parsed.job);
  return { ...parsed, site, notes: [...parsed.notes, ...problems] };
}
