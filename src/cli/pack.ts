import { join } from "node:path";
import {
  coveredWiring,
  deviceZone,
  findingsOf,
  hasWiring,
  orderedFindings,
  type Problem,
  reviewSite,
  type Site,
  sentenceOf,
  settingsOfSite,
  wiringOfSite,
  type ZoneKind,
} from "#engine";
import type { JobFile } from "#job";
import {
  type DeviceZone,
  type JobSheetDetails,
  type LabelGridName,
  labelGrids,
  type PackInput,
  packFiles,
} from "#output";
import { summaryOf } from "./check.ts";
import { type Command, exitCodes, exitOf, refused, textValue, type World } from "./command.ts";
import { occupied, readBytes, writeWhole } from "./files.ts";
import { readFonts } from "./fonts.ts";
import { openJob } from "./open-job.ts";
import { progressLine } from "./progress-line.ts";
import { aligned, findingJson } from "./words.ts";

export const pack: Command = {
  name: "pack",
  usage: "pack JOB -o DIR [--prices FILE] [--accepted FILE] [--labels GRID]",
  summary: "Plans, setting-out and wiring sheets, schedules, setting sheets, materials, quote.",
  help: [
    ["-o, --output DIR", "folder for the files; made if it is not there"],
    ["--prices FILE", "price list of the firm as CSV; the pack holds one to fill in"],
    ["--accepted FILE", "quote.csv of the accepted quote: what changed since becomes a variation"],
    ["--labels GRID", `labels on an A4 sheet, columns × rows: ${Object.keys(labelGrids).join(", ")}`],
    ["--black-and-white", "no colours; the patterns are the same"],
  ],
  options: {
    output: { type: "string", short: "o" },
    prices: { type: "string" },
    accepted: { type: "string" },
    labels: { type: "string" },
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
    const opened = await openJob(world, file);
    if ("problems" in opened) return opened;
    const { site, job } = opened;
    const offer = await offerOf(world, textValue(values, "prices"), textValue(values, "accepted"));
    if ("problems" in offer) return offer;
    const line = progressLine(world);
    const review = reviewSite(site, {
      progress: ({ done, total }) => line.show(`checked ${done} of ${total} rooms`),
    });
    line.show("drawing");
    const wiring = await wiringOf(site, job);
    const files = await packFiles({
      site,
      coverage: review.rooms,
      zones: zonesOf(site),
      details: detailsOf(job),
      asbestos: job.visit,
      ...("reason" in wiring ? {} : { wiring }),
      settings: await settingsOf(site, job),
      identity: job.id ?? "",
      ...(labels === undefined ? {} : { labels }),
      ...offer,
      fonts: await readFonts(),
      created: createdOf(job),
      variant: values["black-and-white"] ? "black-and-white" : "colour",
    });
    line.clear();
    const names = files.map((one) => join(output, one.name));
    const taken = await occupied(world.folder, names, values.force ? "may-replace" : "keep");
    if (taken.length > 0) return refused(...taken);
    for (const [i, one] of files.entries()) {
      if (world.cancelled.aborted) break;
      const failed = await writeWhole(world.folder, names[i]!, one.content);
      if (failed) return refused(failed);
    }
    const findings = orderedFindings(site, [...findingsOf(opened.notes), ...review.findings]);
    const sheets = files.flatMap((one) => one.sheets.map((sheet) => ({ file: one.name, ...sheet })));
    return {
      exit: world.cancelled.aborted ? exitCodes.cancelled : exitOf(findings),
      json: {
        files: files.map((one) => one.name),
        sheets: sheets.map((sheet) => ({ ...sheet, scale: sheet.scale ?? null })),
        noWiring: "reason" in wiring ? wiring.reason : (wiring.refused ?? null),
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
        ...("reason" in wiring ? [`No wiring sheets: ${wiring.reason}`] : []),
        ...(wiring.refused ? [`Not drawn: ${wiring.refused}`] : []),
        summaryOf(findings),
      ].join("\n"),
    };
  },
};

const isGrid = (name: string): name is LabelGridName => Object.hasOwn(labelGrids, name);

const kinds: readonly ZoneKind[] = ["seated", "towards", "across", "sound"];

/** Price list and accepted quote, or what is wrong with them. */
async function offerOf(
  world: World,
  prices: string | undefined,
  accepted: string | undefined,
): Promise<Pick<PackInput, "prices" | "accepted"> | { readonly problems: readonly Problem[] }> {
  if (prices === undefined && accepted === undefined) return {};
  const { readAcceptedQuote, readPriceList } = await import("#exchange");
  const problems: Problem[] = [];
  let offer: Pick<PackInput, "prices" | "accepted"> = {};
  for (const [file, kind] of [
    [prices, "prices"],
    [accepted, "accepted"],
  ] as const) {
    if (file === undefined) continue;
    const read = await readBytes(world.folder, file);
    if ("problem" in read) {
      problems.push(read.problem);
      continue;
    }
    const text = new TextDecoder().decode(read.bytes);
    if (kind === "prices") {
      const result = readPriceList(text, file);
      if ("problems" in result) problems.push(...result.problems);
      else offer = { ...offer, prices: result.list };
    } else {
      const result = readAcceptedQuote(text, file);
      if ("problems" in result) problems.push(...result.problems);
      else offer = { ...offer, accepted: result.items };
    }
  }
  return problems.length > 0 ? { problems } : offer;
}

/** What is set on each device, as the rules that the job has on allow, with the words of the devices at hand. */
async function settingsOf(site: Site, job: JobFile): Promise<NonNullable<PackInput["settings"]>> {
  const { settingsOfJob } = await import("#job");
  return {
    devices: settingsOfSite(site, settingsOfJob(job).choices).devices,
    labels: new Map(
      job.detectors.flatMap(({ id, deviceLabels }) => (deviceLabels ? [[id, deviceLabels]] : [])),
    ),
  };
}

/** The wiring of the job, or why there is nothing to draw of it. */
async function wiringOf(
  site: Site,
  job: JobFile,
): Promise<
  | (NonNullable<PackInput["wiring"]> & { readonly refused?: string })
  | { readonly reason: string; readonly refused?: never }
> {
  const { installationOf } = await import("#job");
  const found = installationOf(job);
  if (!hasWiring(site, found))
    return { reason: "no circuit is on record, and no luminaire with its circuit or power." };
  const whole = wiringOfSite(site, found);
  const { model, problems } = coveredWiring(whole.model);
  const refused = problems.map(sentenceOf).join(" ");
  if (!model) return { reason: refused };
  const built = { ...whole, model };
  if (built.model.switchedLines.length === 0)
    return { reason: "nobody knows yet which luminaires a detector switches." };
  return { found, built, ...(refused === "" ? {} : { refused }) };
}

/** Zones of every detector as coverage counts them, doors closed. */
function zonesOf(site: Site): readonly DeviceZone[] {
  return site.detectors.flatMap((detector) => {
    const model = site.models.find((one) => one.id === detector.model);
    return kinds
      .filter((kind) => (model?.zones[kind]?.length ?? 0) > 0)
      .map((kind) => ({
        device: detector.id,
        kind,
        region: deviceZone(site, { device: detector.id, kind, doors: "closed" }),
      }));
  });
}

function detailsOf(job: JobFile): JobSheetDetails {
  const { details } = job;
  return {
    job: job.name,
    client: details.client ?? "",
    site: details.site ?? "",
    date: details.date ?? "",
    revision: details.revision ?? "",
    drawnBy: details.drawnBy ?? "",
    checkedBy: details.checkedBy ?? "",
  };
}

/** The job's own date, so that the same job gives the same bytes; a fixed day where it has none. */
function createdOf(job: JobFile): Date {
  const date = new Date(job.details.date ?? "");
  return Number.isNaN(date.getTime()) ? new Date(Date.UTC(2000, 0, 1)) : date;
}
