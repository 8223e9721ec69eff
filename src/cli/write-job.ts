import type { Problem } from "#engine";
import type { JobFile } from "#job";
import type { World } from "./command.ts";
import { writeWhole } from "./files.ts";

/** Writes a job: packed with its pictures and its history where the name ends in .zip, else as the readable file. */
export async function writeJob(
  world: Pick<World, "folder" | "newId">,
  output: string,
  made: { readonly job: JobFile; readonly history: Uint8Array },
): Promise<Problem | undefined> {
  const { jobText, writeJobArchive } = await import("#job");
  return writeWhole(
    world.folder,
    output,
    /\.zip$/i.test(output)
      ? writeJobArchive({ history: made.history, id: made.job.id ?? world.newId() })
      : jobText(made.job),
  );
}
