import { basename } from "node:path";
import { english, findingsOf, type Problem } from "#engine";
import {
  type ImportReport,
  type ImportResult,
  type PlanSurveyResult,
  planKind,
  type SurveyRecords,
} from "#exchange";
import { readIfcInWorker, surveyPlanInWorker } from "#exchange-node";
import { type Command, exitCodes, exitOf, type Refusal, refused, textValue } from "./command.ts";
import { occupied, readBytes } from "./files.ts";
import { importJob, isJobName } from "./import-job.ts";
import { importPicture, importScan, isPicture } from "./import-picture.ts";
import { planJson, planWish } from "./plan-wish.ts";
import { progressLine } from "./progress-line.ts";
import { aligned, findingLines, problemJson, rounded } from "./words.ts";
import { writeJob } from "./write-job.ts";

export const importModel: Command = {
  name: "import",
  usage: "import FILE -o JOB",
  summary:
    "Read a building model (IFC, .ifczip), a plan (DXF, PDF, SVG) or a picture of one (PNG, JPEG) into a new job; pack a job, or unpack one.",
  help: [
    ["-o, --output JOB", "job file to write: NAME.job.json, or NAME.job.zip with pictures and history"],
    [
      "--unit UNIT",
      "of a plan: mm, cm, dm, m, in, ft, or metres in one drawing unit; of a picture: metres in one pixel",
    ],
    ["--scale N", "of a printed plan: 100 for 1 : 100"],
    ["--page N", "of a PDF; 1 if absent"],
    ["--picture", "take the page of a PDF as a picture, to draw over it: for scans; with --scale or --unit"],
    ["--layers A,B", "of a plan: only these; the likely ones if absent"],
    ["--floor N", "of a drawing with several floors side by side; 1 if absent"],
    ["--luminaires A,B", "blocks of a DXF plan that are luminaires"],
    ["--ceiling M", "height of the ceilings of a plan in metres; 2.5 if absent"],
  ],
  options: {
    output: { type: "string", short: "o" },
    unit: { type: "string" },
    scale: { type: "string" },
    page: { type: "string" },
    picture: { type: "boolean" },
    layers: { type: "string" },
    floor: { type: "string" },
    luminaires: { type: "string" },
    ceiling: { type: "string" },
  },
  run: async ({ world, words, values }) => {
    const [file, ...more] = words;
    const output = textValue(values, "output");
    const wrong = (reason: string): Refusal =>
      refused({ code: "command-wrong", values: { reason, command: "import" } });
    if (file === undefined || more.length > 0 || output === undefined)
      return wrong("it takes one building model, plan or job and -o JOB");
    const wish = planWish(values);
    if (typeof wish === "string") return wrong(wish);
    const taken = await occupied(world.folder, [output], values.force ? "may-replace" : "keep");
    if (taken.length > 0) return refused(...taken);
    const read = await readBytes(world.folder, file);
    if ("problem" in read) return refused(read.problem);
    if (isJobName(file)) return importJob(world, { file, bytes: read.bytes, output });
    if (isPicture(file, read.bytes)) {
      const { metres } = wish.choice;
      return metres === undefined
        ? wrong("a picture tells no scale of its own: say with --unit how many metres one pixel is")
        : importPicture(world, { file, bytes: read.bytes, output, metres });
    }
    const line = progressLine(world);
    const named = { name: basename(file), bytes: read.bytes };
    const host = {
      progress: (step: string, share: number) => line.show(`${step} ${Math.round(100 * share)} %`),
      signal: world.cancelled,
    };
    const kind = planKind(named);
    const stoppedHere = (error: unknown): undefined => {
      if (world.cancelled.aborted) return undefined;
      throw error;
    };
    const cancelled = {
      problems: [{ code: "reading-cancelled", values: { file } } as const],
      exit: exitCodes.cancelled,
    };
    if (values.picture === true) {
      const { metres, scale: denominator } = wish.choice;
      const scale =
        metres !== undefined ? { metres } : denominator !== undefined ? { of: denominator } : undefined;
      if (kind !== "pdf") return wrong("--picture is for a page of a PDF");
      if (scale === undefined)
        return wrong(
          "a picture tells no scale of its own: say --scale of its paper, or with --unit how many metres one pixel is",
        );
      const taken = importScan(world, {
        file,
        bytes: read.bytes,
        output,
        page: wish.page ?? 1,
        scale,
        progress: host.progress,
      });
      const answer = await taken.catch(stoppedHere);
      line.clear();
      return answer ?? cancelled;
    }
    const reading: Promise<ImportResult | PlanSurveyResult> =
      kind === undefined ? readIfcInWorker(named, host) : surveyPlanInWorker(named, { ...host, ...wish });
    const result = await reading.catch(stoppedHere);
    line.clear();
    if (!result) return cancelled;
    if ("problems" in result) return { problems: result.problems };
    const { addModel, createJobDocument, demoModels, emptyJob, historyOf, loadFile, takeReading } =
      await import("#job");
    const document = createJobDocument(undefined, { newId: world.newId });
    document.run(loadFile({ ...emptyJob(nameOf(file)), id: world.newId() }));
    // Without models there would be nothing to place; an order list is refused while these are in it.
    for (const model of demoModels) document.run(addModel(model));
    const outcome = document.run(
      takeReading({
        survey: result.survey,
        file: basename(file),
        choice: { ...wish.choice, ...("page" in wish ? { page: wish.page } : {}) },
      }),
    );
    const problems: readonly Problem[] = [...result.report.notes, ...outcome.problems];
    if (!outcome.done) return { problems };
    const made = { job: document.job(), history: historyOf(document) };
    document.close();
    const failed = await writeJob(world, output, made);
    if (failed) return refused(failed);
    const findings = findingsOf(problems);
    return {
      exit: exitOf(findings),
      json: { ...reportJson(result, problems), ...("plan" in result ? { plan: planJson(result.plan) } : {}) },
      text: reportText(result.report, { problems, output }),
    };
  },
};

const nameOf = (file: string): string => basename(file).replace(/\.[^.]+$/, "");

function reportJson(
  { report, survey }: { readonly report: ImportReport; readonly survey: SurveyRecords },
  problems: readonly Problem[],
): object {
  const storeys = new Map(survey.storeys.map((storey) => [storey.id, storey.name]));
  return {
    storeys: report.storeys.map(({ name, elevation, rooms }) => ({
      name,
      elevation: rounded(elevation),
      rooms,
    })),
    rooms: report.rooms.map((room) => ({
      id: room.id,
      name: room.name,
      storey: storeys.get(room.storey) ?? room.storey,
      area: rounded(room.area),
      height: rounded(room.height),
    })),
    openings: report.openings,
    obstacles: report.obstacles,
    luminaires: report.luminaires,
    leftOut: report.leftOut,
    notes: problems.map(problemJson),
  };
}

function reportText(
  report: ImportReport,
  job: { readonly problems: readonly Problem[]; readonly output: string },
): string {
  const left = report.leftOut.map((one) => [String(one.count), english(one.what), english(one.why)]);
  return [
    aligned(
      ["Storey", "Elevation", "Rooms"],
      report.storeys.map((one) => [one.name, `${one.elevation.toFixed(2)} m`, String(one.rooms)]),
      new Set([1, 2]),
    ),
    "",
    `${report.rooms.length} rooms, ${report.openings} openings, ${report.obstacles} obstacles, ${report.luminaires} luminaires.`,
    ...(left.length > 0 ? ["", aligned(["Left out", "What", "Why"], left, new Set([0]))] : []),
    ...(job.problems.length > 0 ? ["", findingLines(findingsOf(job.problems))] : []),
    "",
    `Written to ${job.output}.`,
  ].join("\n");
}
