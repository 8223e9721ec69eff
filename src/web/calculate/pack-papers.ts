import { handoverOf, type Problem, remedyOf, type Site, sentenceOf } from "#engine";
import { givenModel, readOffer } from "#exchange";
import { handOverOf } from "#job";
import {
  type ModelToFill,
  modelRefusal,
  type PackFile,
  type PackInput,
  packFiles,
  refusalCodes,
} from "#output";
import type { PackAnswer, PackQuestion } from "./pack-protocol.ts";

/**
 * The papers of one job, priced by what the job keeps: the same files with the same bytes as on the command line.
 *
 * @throws PapersRefused where a kept price list, an accepted quote or a model cannot be used.
 */
export async function packPapers(
  { site, job, only, device, storey, model, language, cards }: Omit<PackQuestion, "fonts">,
  by: {
    readonly fonts: () => Promise<PackInput["fonts"]>;
    readonly tell: (step: Extract<PackAnswer, { tell: "checking" | "drawing" }>) => void;
  },
): Promise<{ readonly files: readonly PackFile[]; readonly created: Date }> {
  const offer = readOffer(job.details);
  if ("problems" in offer) throw new PapersRefused(offer.problems);
  const { input, printed } = handOverOf(job);
  const handover = handoverOf(site, {
    ...input,
    notes: [],
    progress: ({ done, total }) => by.tell({ tell: "checking", done, total }),
  });
  const files = await packFiles({
    ...printed,
    ...offer,
    handover,
    fonts: await by.fonts(),
    language,
    cards,
    ...(only ? { only } : {}),
    ...(device === undefined ? {} : { device }),
    ...(storey === undefined ? {} : { storey }),
    ...(model ? { model: fillable(site, model) } : {}),
    progress: (file, share) => by.tell({ tell: "drawing", file, share }),
  });
  return { files, created: printed.created };
}

/** What stands in the way of the papers, as the program's own problems. */
export class PapersRefused extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map((problem) => `${sentenceOf(problem)} ${remedyOf(problem)}`).join(" "));
    this.problems = problems;
  }
}

/** The given model as it takes the devices. @throws PapersRefused where it cannot. */
function fillable(site: Site, { name, bytes, shift }: NonNullable<PackQuestion["model"]>): ModelToFill {
  const given = givenModel(bytes);
  const refused = (problem: Problem): never => {
    throw new PapersRefused([problem]);
  };
  if ("problem" in given) return refused(given.problem);
  const model = { ...given, shift: [shift[0], shift[1]] as const };
  const refusal = modelRefusal(site, model);
  return refusal === undefined ? model : refused({ code: refusalCodes[refusal], values: { file: name } });
}
