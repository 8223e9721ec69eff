import { english, type Problem } from "#engine";
import { megabytes, type PlanLimits, usualPlanLimits } from "../limits.ts";
import { looksLike } from "../looks-like.ts";
import { collector, OverLimit } from "../page/collect.ts";
import { overLimit } from "../page/over-limit.ts";
import type { PlanResult } from "../report.ts";
import { proposeUnit } from "../scale/propose-unit.ts";
import { drawSvg } from "./draw-svg.ts";
import { parseSvg } from "./parse-svg.ts";
import { loadPathReader } from "./shapes.ts";
import { svgText } from "./svg-text.ts";
import { sheetOf } from "./viewport.ts";

export interface ReadSvgOptions {
  readonly fileName: string;
  readonly limits?: Partial<PlanLimits>;
  /** Called now and then with the step's name and the share done, 0 … 1. */
  readonly progress?: (step: string, share: number) => void;
}

/** Largest gap between a curve and its lines on paper: 2 mm in the building at 1 : 100. [m] */
const flatness = (0.05 * 0.0254) / 72;

/**
 * Reads the lines and texts of an SVG drawing in its own units, y up from the lower left corner of its sheet, or the
 * problems that stopped it. Nothing of the file is run, fetched or put into a page. Never an empty success.
 *
 * @source W3C-SVG2
 */
export async function readSvg(bytes: Uint8Array, options: ReadSvgOptions): Promise<PlanResult> {
  const limits = { ...usualPlanLimits, ...options.limits };
  try {
    return await readDrawing(bytes, options, limits);
  } catch (error) {
    if (error instanceof OverLimit) return stopped(overLimit(error));
    throw error;
  }
}

const readDrawing = async (
  bytes: Uint8Array,
  options: ReadSvgOptions,
  limits: PlanLimits,
): Promise<PlanResult> => {
  const progress = options.progress ?? (() => {});
  if (bytes.length === 0) return stopped({ code: "file-empty", values: {} });
  if (bytes.length > limits.bytes)
    return stopped({ code: "plan-too-large", values: { limit: megabytes(limits.bytes) } });
  progress("open", 0);
  const text = svgText(bytes, limits);
  if (typeof text !== "string") return stopped(text);
  if (!/<(svg:)?svg[\s>/]/.test(text))
    return stopped({ code: "plan-not-svg", values: { found: looksLike(bytes) } });
  const file = await parseSvg(text, limits);
  if ("code" in file) return stopped(file);
  progress("lines", 0.5);
  const sheet = sheetOf(file.root);
  const tolerance = flatness / sheet.paperMetres;
  const gathered = collector({ limits, slack: tolerance / 10 });
  const readPath = await loadPathReader();
  const { leftOut, notes } = drawSvg(file, { collector: gathered, limits, sheet, readPath, tolerance });
  const { box, texts, ...found } = gathered.result();
  if (gathered.lines === 0)
    return stopped(
      leftOut.some(({ what }) => english(what) === "picture")
        ? { code: "plan-svg-picture-only", values: {} }
        : { code: "plan-svg-empty", values: { elements: file.elements } },
    );
  const [width, height] = sheet.size ?? [box[2] - box[0], box[3] - box[1]];
  progress("done", 1);
  return {
    linework: {
      ...found,
      file: options.fileName,
      format: "svg",
      texts: texts.map(({ width: _, ...rest }) => rest),
      unit: proposeUnit({
        texts,
        lines: found.lines,
        arcs: found.arcs,
        paperMetres: sheet.paperMetres,
        unit: sheet.unit,
        sheetLength: Math.max(width, height) * sheet.paperMetres,
        extent: Math.max(box[2] - box[0], box[3] - box[1]),
      }),
      parts: [{ name: "Drawing", box }],
    },
    report: {
      file: options.fileName,
      format: "svg",
      pages: 1,
      page: 1,
      paper: { width: width * sheet.paperMetres, height: height * sheet.paperMetres },
      lines: gathered.lines,
      arcs: found.arcs.length,
      texts: texts.length,
      leftOut,
      notes,
    },
  };
};

const stopped = (problem: Problem): PlanResult => ({ problems: [problem] });
