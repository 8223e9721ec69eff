import { basename } from "node:path";
import type { Problem, Site } from "#engine";
import { type ModelToFill, modelRefusal, refusalCodes } from "#output";
import type { World } from "./command.ts";
import { readBytes } from "./files.ts";

/**
 * The building model that the devices are added to. It is read as on the way in, so that they come to stand where they stand in the plan: what the
 * reading took off to come near the origin is put back.
 */
export async function modelToFill(
  world: World,
  asked: {
    readonly file: string | undefined;
    readonly site: Site;
    readonly progress: (text: string) => void;
  },
): Promise<ModelToFill | { readonly problems: readonly Problem[] } | undefined> {
  const { file, site } = asked;
  if (file === undefined) return undefined;
  const read = await readBytes(world.folder, file);
  if ("problem" in read) return { problems: [read.problem] };
  const { givenModel } = await import("#exchange");
  const given = givenModel(read.bytes);
  if ("problem" in given) return { problems: [given.problem] };
  const { readIfcInWorker } = await import("#exchange-node");
  const result = await readIfcInWorker(
    { name: basename(file), bytes: read.bytes },
    {
      progress: (step, share) => asked.progress(`${step} ${Math.round(100 * share)} %`),
      signal: world.cancelled,
    },
  );
  if ("problems" in result) return { problems: result.problems };
  const model = { ...given, shift: [result.survey.shift[0], result.survey.shift[1]] as const };
  const refusal = modelRefusal(site, model);
  return refusal === undefined ? model : { problems: [{ code: refusalCodes[refusal], values: { file } }] };
}
