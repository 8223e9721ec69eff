import { handoverOf, remedyOf, sentenceOf } from "#engine";
import { readOffer } from "#exchange";
import { handOverOf } from "#job";
import { type PackFile, type PackInput, packFiles } from "#output";
import type { PackAnswer, PackQuestion } from "./pack-protocol.ts";

/**
 * The papers of one job, priced by what the job keeps: the same files with the same bytes as on the command line.
 *
 * @throws Error with the sentences where a kept price list or accepted quote cannot be read.
 */
export async function packPapers(
  { site, job, only, device, storey }: Omit<PackQuestion, "fonts">,
  by: {
    readonly fonts: () => Promise<PackInput["fonts"]>;
    readonly tell: (step: Extract<PackAnswer, { tell: "checking" | "drawing" }>) => void;
  },
): Promise<{ readonly files: readonly PackFile[]; readonly created: Date }> {
  const offer = readOffer(job.details);
  if ("problems" in offer)
    throw new Error(offer.problems.map((one) => `${sentenceOf(one)} ${remedyOf(one)}`).join(" "));
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
    ...(only ? { only } : {}),
    ...(device === undefined ? {} : { device }),
    ...(storey === undefined ? {} : { storey }),
    progress: (file, share) => by.tell({ tell: "drawing", file, share }),
  });
  return { files, created: printed.created };
}
