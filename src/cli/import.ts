import { basename } from "node:path";
import { findingsOf, type Problem } from "#engine";
import type { ImportReport, SurveyRecords } from "#exchange";
import { readIfcInWorker } from "#exchange-node";
import { type Command, exitCodes, exitOf, refused, textValue } from "./command.ts";
import { occupied, readBytes, writeWhole } from "./files.ts";
import { progressLine } from "./progress-line.ts";
import { aligned, findingLines, problemJson, rounded } from "./words.ts";

export const importModel: Command = {
  name: "import",
  usage: "import FILE -o JOB",
  summary: "Read a building model (IFC, .ifczip) into a new job.",
  help: [["-o, --output JOB", "job file to write"]],
  options: { output: { type: "string", short: "o" } },
  run: async ({ world, words, values }) => {
    const [file, ...more] = words;
    const output = textValue(values, "output");
    if (file === undefined || more.length > 0 || output === undefined)
      return refused({
        code: "command-wrong",
        values: { reason: "it takes one building model and -o JOB", command: "import" },
      });
    const taken = await occupied(world.folder, [output], values.force ? "may-replace" : "keep");
    if (taken.length > 0) return refused(...taken);
    const read = await readBytes(world.folder, file);
    if ("problem" in read) return refused(read.problem);
    const line = progressLine(world);
    const result = await readIfcInWorker(
      { name: basename(file), bytes: read.bytes },
      {
        progress: (step, share) => line.show(`${step} ${Math.round(100 * share)} %`),
        signal: world.cancelled,
      },
    ).catch((error: unknown) => {
      if (world.cancelled.aborted) return undefined;
      throw error;
    });
    line.clear();
    if (!result)
      return { problems: [{ code: "reading-cancelled", values: { file } }], exit: exitCodes.cancelled };
    if ("problems" in result) return { problems: result.problems };
    const { addModel, createJobDocument, demoModels, importSurvey, jobText, setName } = await import("#job");
    const document = createJobDocument(undefined, { newId: world.newId });
    document.run(setName(nameOf(file)));
    // Without models there would be nothing to place; an order list is refused while these are in it.
    for (const model of demoModels) document.run(addModel(model));
    const outcome = document.run(importSurvey(result.survey));
    const problems: readonly Problem[] = [...result.report.notes, ...outcome.problems];
    if (!outcome.done) return { problems };
    const failed = await writeWhole(world.folder, output, jobText(document.job()));
    document.close();
    if (failed) return refused(failed);
    const findings = findingsOf(problems);
    return {
      exit: exitOf(findings),
      json: reportJson(result, problems),
      text: reportText(result.report, { problems, output }),
    };
  },
};

const nameOf = (file: string): string => basename(file).replace(/\.[^.]+$/, "");

function reportJson(
  { report, survey }: { readonly report: ImportReport; readonly survey: SurveyRecords },
  problems: readonly Problem[],
): unknown {
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
  const left = report.leftOut.map((one) => [String(one.count), one.what, one.why]);
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
