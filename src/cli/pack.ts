import { join } from "node:path";
import { english, handoverOf, type Problem } from "#engine";
import type { Offer, OfferFile } from "#exchange";
import type { JobFile } from "#job";
import { type LabelGridName, labelGrids, type PaperLanguage, packFiles, paperLanguages } from "#output";
import { summaryOf } from "./check.ts";
import { type Command, exitCodes, exitOf, refused, textValue, textValues, type World } from "./command.ts";
import { occupied, readBytes, writeWhole } from "./files.ts";
import { findStorey } from "./find-records.ts";
import { readFonts } from "./fonts.ts";
import { modelToFill } from "./model-to-fill.ts";
import { openJob } from "./open-job.ts";
import { progressLine } from "./progress-line.ts";
import { aligned, findingJson } from "./words.ts";

export const pack: Command = {
  name: "pack",
  usage:
    "pack JOB -o DIR [--prices FILE] [--accepted FILE] [--labels GRID] [--only NAME,...] [--storey NAME] [--model FILE] [--language LANGUAGE] [--cards LANGUAGE]",
  summary: "The whole hand-over as one PDF, its parts, schedules, drawings, model, labels, cards, quote.",
  help: [
    ["-o, --output DIR", "folder for the files; made if it is not there"],
    ["--prices FILE", "price list of the firm as CSV instead of the job's; the pack holds one to fill in"],
    ["--accepted FILE", "quote.csv of the accepted quote: what changed since becomes a variation"],
    ["--labels GRID", `labels on an A4 sheet, columns × rows: ${Object.keys(labelGrids).join(", ")}`],
    ["--only NAME,...", "only files whose names begin so: handover, plan, labels, building"],
    ["--storey NAME", "the pack of one storey; materials and quote are of the whole job only"],
    ["--model FILE", "building model (IFC) that the job was read from: the devices are added to it"],
    ["--language LANGUAGE", `what the papers speak: ${paperLanguages.join(", ")}`],
    ["--cards LANGUAGE", "what the room cards speak; what the papers do if absent"],
    ["--black-and-white", "no colours; the patterns are the same"],
  ],
  options: {
    output: { type: "string", short: "o" },
    prices: { type: "string" },
    accepted: { type: "string" },
    labels: { type: "string" },
    only: { type: "string", multiple: true },
    storey: { type: "string" },
    model: { type: "string" },
    language: { type: "string" },
    cards: { type: "string" },
    "black-and-white": { type: "boolean" },
  },
  run: async ({ world, words, values }) => {
    const [file, ...more] = words;
    const output = textValue(values, "output");
    if (file === undefined || more.length > 0 || output === undefined)
      return refused({
        code: "command-wrong",
        values: { reason: "it takes one job file and -o DIR", command: "pack" },
      });
    const labels = textValue(values, "labels");
    if (labels !== undefined && !isGrid(labels))
      return refused({
        code: "command-wrong",
        values: { reason: `--labels is one of ${Object.keys(labelGrids).join(", ")}`, command: "pack" },
      });
    const language = languageIn("language", textValue(values, "language"));
    if (typeof language === "object") return refused(language);
    const cards = languageIn("cards", textValue(values, "cards"));
    if (typeof cards === "object") return refused(cards);
    const opened = await openJob(world, file);
    if ("problems" in opened) return opened;
    const named = textValue(values, "storey");
    const storey = named === undefined ? undefined : findStorey(opened.site, named);
    if (storey && "code" in storey) return refused(storey);
    const offer = await offerOf(world, opened.job, {
      prices: textValue(values, "prices"),
      accepted: textValue(values, "accepted"),
    });
    if ("problems" in offer) return offer;
    const line = progressLine(world);
    const model = await modelToFill(world, {
      file: textValue(values, "model"),
      site: opened.site,
      progress: line.show,
    });
    if (model && "problems" in model) {
      line.clear();
      return refused(...model.problems);
    }
    const { handOverOf } = await import("#job");
    const { input, printed } = handOverOf(opened.job);
    const handover = handoverOf(opened.site, {
      ...input,
      notes: opened.notes,
      progress: ({ done, total }) => line.show(`checked ${done} of ${total} rooms`),
    });
    line.show("drawing");
    const only = textValues(values, "only").flatMap((list) => list.split(",").filter(Boolean));
    const files = await packFiles({
      ...printed,
      ...offer,
      handover,
      ...(storey && { storey: storey.id }),
      ...(model && { model }),
      ...(labels === undefined ? {} : { labels }),
      ...(language && { language }),
      ...(cards && { cards }),
      ...(only.length === 0 ? {} : { only }),
      fonts: await readFonts(),
      variant: values["black-and-white"] ? "black-and-white" : "colour",
      progress: (name, share) => line.show(`${Math.round(100 * share)} % ${name}`),
    });
    if (files.length === 0)
      return refused({
        code: "command-wrong",
        values: { reason: `no file of the pack begins with ${only.join(" or ")}`, command: "pack" },
      });
    const { wiring, findings } = handover;
    line.clear();
    const names = files.map((one) => join(output, one.name));
    const taken = await occupied(world.folder, names, values.force ? "may-replace" : "keep");
    if (taken.length > 0) return refused(...taken);
    for (const [i, one] of files.entries()) {
      if (world.cancelled.aborted) break;
      const failed = await writeWhole(world.folder, names[i]!, one.content);
      if (failed) return refused(failed);
    }
    const sheets = files.flatMap((one) => one.sheets.map((sheet) => ({ file: one.name, ...sheet })));
    return {
      exit: world.cancelled.aborted ? exitCodes.cancelled : exitOf(findings),
      json: {
        files: files.map((one) => one.name),
        sheets: sheets.map((sheet) => ({ ...sheet, scale: sheet.scale ?? null })),
        noWiring: wiring.kind === "none" ? wiring.reason : (wiring.refused ?? null),
        findings: findings.map(findingJson),
      },
      text: [
        aligned(
          ["Page", "Scale", "File"],
          [
            ...sheets.map((sheet) => [
              String(sheet.page),
              sheet.scale ? `1 : ${sheet.scale}` : "",
              join(output, sheet.file),
            ]),
            ...files.filter((one) => one.sheets.length === 0).map((one) => ["", "", join(output, one.name)]),
          ],
          new Set([0]),
        ),
        "",
        ...(wiring.kind === "none" ? [`No wiring sheets: ${english(wiring.reason)}`] : []),
        ...(wiring.kind === "built" && wiring.refused ? [`Not drawn: ${english(wiring.refused)}`] : []),
        summaryOf(findings),
      ].join("\n"),
    };
  },
};

/** The language that an option names; a problem where papers do not speak it. */
function languageIn(option: string, text: string | undefined): PaperLanguage | Problem | undefined {
  if (text === undefined) return undefined;
  return (
    paperLanguages.find((known) => known === text) ?? {
      code: "command-wrong",
      values: { reason: `--${option} is one of ${paperLanguages.join(", ")}`, command: "pack" },
    }
  );
}

const isGrid = (name: string): name is LabelGridName => Object.hasOwn(labelGrids, name);

/** What the job is priced by, or what is wrong with it: a file that the command names comes before what the job keeps. */
async function offerOf(
  world: World,
  { details }: Pick<JobFile, "details">,
  named: { readonly prices: string | undefined; readonly accepted: string | undefined },
): Promise<Offer | { readonly problems: readonly Problem[] }> {
  const [prices, accepted] = [
    await fileOf(world, named.prices, details.priceList),
    await fileOf(world, named.accepted, details.acceptedQuote),
  ];
  const problems = [prices, accepted].flatMap((one) => (one && "problem" in one ? [one.problem] : []));
  const there = (one: OfferFile | { readonly problem: Problem } | undefined): OfferFile | undefined =>
    one && "text" in one ? one : undefined;
  const { readOffer } = await import("#exchange");
  const offer = readOffer({
    priceList: there(prices),
    acceptedQuote: there(accepted),
    quoteTerms: details.quoteTerms,
  });
  if ("problems" in offer) return { problems: [...problems, ...offer.problems] };
  return problems.length > 0 ? { problems } : offer;
}

async function fileOf(
  world: World,
  named: string | undefined,
  keptInJob: OfferFile | undefined,
): Promise<OfferFile | { readonly problem: Problem } | undefined> {
  if (named === undefined) return keptInJob;
  const read = await readBytes(world.folder, named);
  return "problem" in read ? read : { file: named, text: new TextDecoder().decode(read.bytes) };
}
