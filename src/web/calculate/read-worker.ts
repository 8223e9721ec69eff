import singleThread from "web-ifc/web-ifc.wasm?url";
import { findingsOf } from "#engine";
import { type ImportResult, type PlanSurveyResult, planKind, readIfc, surveyPlan } from "#exchange";
import type { ReadAnswer, ReadQuestion } from "./protocol.ts";

const tell = (answer: ReadAnswer): void => postMessage(answer);
const progress = (text: string, share: number): void => tell({ tell: "progress", text, share });

/** Reads one file and is ended after it: whatever a file does to it stays in here. */
addEventListener("message", async ({ data }: MessageEvent<ReadQuestion>) => {
  try {
    const result = await readAny(data);
    if ("problems" in result) {
      const scan = result.problems.find(({ code }) => code === "plan-pdf-scan")?.values;
      tell({
        tell: "refused",
        ...(scan && { scan: { page: Number(scan.page), pages: Number(scan.pages) } }),
        problems: findingsOf(result.problems),
      });
      return;
    }
    const { survey, report } = result;
    const pictured = report.notes.find(({ code }) => code === "plan-pdf-picture")?.values;
    tell({
      tell: "read",
      read: {
        site: {
          storeys: survey.storeys,
          rooms: survey.rooms,
          openings: survey.openings,
          obstacles: survey.obstacles,
          dwellPlaces: survey.dwellPlaces,
          interference: survey.interference,
          luminaires: survey.luminaires,
          floorPieces: survey.floorPieces,
        },
        drawings: survey.drawings,
        shift: survey.shift,
        ...("plan" in result ? { plan: result.plan } : {}),
        ...(pictured && "plan" in result ? { scan: { page: result.plan.page } } : {}),
        leftOut: report.leftOut,
        problems: findingsOf(report.notes),
      },
    });
  } catch (trouble) {
    tell({ tell: "failed", sentence: trouble instanceof Error ? trouble.message : String(trouble) });
  }
});

/** A plan by its lines, anything else as a building model. */
function readAny({
  name,
  bytes: buffer,
  choice = {},
}: ReadQuestion): Promise<ImportResult | PlanSurveyResult> {
  const bytes = new Uint8Array(buffer);
  if (planKind({ name, bytes }) === undefined)
    return readIfc(bytes, {
      fileName: name,
      kernel: { wasm: () => new URL(singleThread, import.meta.url).href },
      progress,
    });
  const { page, ...settled } = choice;
  const task = { bytes, fileName: name, limits: {}, ...(page === undefined ? {} : { page }) };
  return surveyPlan(task, settled, progress);
}
