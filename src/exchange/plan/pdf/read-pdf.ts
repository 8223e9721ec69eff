import type { PDFDocumentProxy, PDFPageProxy } from "pdfjs-dist";
import { type Problem, say } from "#engine";
import { leftOutList } from "../../ifc/left-out.ts";
import { megabytes, type PlanLimits, usualPlanLimits } from "../limits.ts";
import { looksLike } from "../looks-like.ts";
import { type Collector, collector, OverLimit } from "../page/collect.ts";
import { overLimit } from "../page/over-limit.ts";
import type { PlanResult } from "../report.ts";
import { proposeUnit } from "../scale/propose-unit.ts";
import type { ContentGroups } from "./content-groups.ts";
import { loadPdfReader, type PdfReader, pictureRefused } from "./open-pdf.ts";
import { beginsAsPdf, guarded, type Opened, opening, PackageFailure, reasonOf } from "./opened-pdf.ts";
import { operationsOf } from "./operations.ts";
import { collectPaths, type OperationList } from "./page-paths.ts";
import { collectTexts, type TextRun } from "./page-texts.ts";
import { sheetOf } from "./sheet.ts";

export interface ReadPdfOptions {
  readonly fileName: string;
  /** The page to read, from 1. Absent: the first. */
  readonly page?: number;
  readonly limits?: Partial<PlanLimits>;
  /** Called now and then with the step's name and the share done, 0 … 1. */
  readonly progress?: (step: string, share: number) => void;
}

/** Largest gap between a curve and its lines: 2 mm in the building at 1 : 100. [pt] */
const flatness = 0.05;

/** Metres in a point of paper, 1/72 in. [m] */
const pointMetres = 0.0254 / 72;

/**
 * Reads the lines and texts of one page of a PDF file in points, or the problems that stopped it. Never an empty success: a
 * page without a line is a problem.
 *
 * Whatever the package throws on a damaged file comes back as a problem. It runs to its end in one go: call it where it can
 * be killed, a worker with a time limit.
 *
 * @source ISO-32000 for what the operations of a page mean
 */
export async function readPdf(bytes: Uint8Array, options: ReadPdfOptions): Promise<PlanResult> {
  const limits = { ...usualPlanLimits, ...options.limits };
  const progress = options.progress ?? (() => {});
  if (bytes.length === 0) return stopped({ code: "file-empty", values: {} });
  if (bytes.length > limits.bytes)
    return stopped({ code: "plan-too-large", values: { limit: megabytes(limits.bytes) } });
  if (!beginsAsPdf(bytes)) return stopped({ code: "plan-not-pdf", values: { found: looksLike(bytes) } });
  progress("open", 0);
  const reader = await loadPdfReader();
  const opened = await opening(reader, bytes, { strict: true });
  if ("code" in opened) return stopped(opened);
  try {
    return await readPage(opened, { reader, bytes, options, limits, progress });
  } catch (error) {
    if (error instanceof OverLimit) return stopped(overLimit(error));
    if (!(error instanceof PackageFailure)) throw error;
    return stopped({ code: "plan-pdf-damaged", values: { reason: error.message } });
  } finally {
    await opened.close();
  }
}

interface Reading {
  readonly reader: PdfReader;
  readonly bytes: Uint8Array;
  readonly options: ReadPdfOptions;
  readonly limits: PlanLimits;
  readonly progress: (step: string, share: number) => void;
}

const readPage = async (opened: Opened, reading: Reading): Promise<PlanResult> => {
  const { options, limits, progress, reader } = reading;
  const pages = opened.document.numPages;
  const number = options.page ?? 1;
  if (!Number.isInteger(number) || number < 1 || number > pages)
    return stopped({ code: "plan-pdf-no-page", values: { page: number, pages } });
  progress("page", 0.1);
  const page = await guarded(opened, opened.document.getPage(number));
  const { matrix, size } = sheetOf(page);
  if (!(size[0] > 0 && size[1] > 0 && Number.isFinite(size[0] * size[1])))
    return stopped({ code: "plan-pdf-damaged", values: { reason: say`page ${number} has no size` } });
  const { list, trouble, groups, runs } = await pageContent(opened, page, reading);
  progress("lines", 0.5);
  const gathered: Collector = collector({ limits, slack: flatness / 10 });
  collectPaths(list, {
    operations: reader.OPS,
    collector: gathered,
    groups,
    matrix,
    size,
    tolerance: flatness,
  });
  progress("texts", 0.8);
  collectTexts(runs ?? [], { collector: gathered, matrix, size });
  const { box, texts, ...found } = gathered.result();
  if (gathered.lines === 0) {
    if (trouble && pictureRefused.test(trouble))
      return stopped({ code: "plan-pdf-scan", values: { page: number, pages } });
    if (trouble)
      return stopped({ code: "plan-pdf-damaged", values: { reason: say`page ${number}: ${trouble}` } });
    return stopped({ code: "plan-pdf-page-empty", values: { page: number, pages } });
  }
  const unit = proposeUnit({
    texts,
    lines: found.lines,
    arcs: found.arcs,
    paperMetres: pointMetres,
    unit: say`points`,
    sheetLength: Math.max(...size) * pointMetres,
    extent: Math.max(box[2] - box[0], box[3] - box[1]),
  });
  const leftOut = leftOutList();
  const notes: Problem[] = [];
  if (trouble && pictureRefused.test(trouble))
    notes.push({ code: "plan-pdf-picture", values: { page: number } });
  else if (trouble || !runs)
    notes.push({
      code: "plan-pdf-partly-read",
      values: { page: number, reason: trouble ?? say`its texts cannot be read` },
    });
  if (pages > 1 && options.page === undefined) notes.push({ code: "plan-pdf-first-page", values: { pages } });
  progress("done", 1);
  return {
    linework: {
      ...found,
      file: options.fileName,
      format: "pdf",
      texts: texts.map(({ width: _, ...text }) => text),
      unit,
      parts: [{ name: `Page ${number}`, box }],
    },
    report: {
      file: options.fileName,
      format: "pdf",
      pages,
      page: number,
      paper: { width: size[0] * pointMetres, height: size[1] * pointMetres },
      lines: gathered.lines,
      arcs: found.arcs.length,
      texts: texts.length,
      leftOut: leftOut.list(),
      notes,
    },
  };
};

interface PageContent {
  readonly list: OperationList;
  readonly groups: ContentGroups;
  /** undefined where the texts cannot be read. */
  readonly runs: readonly TextRun[] | undefined;
  /** What made the strict reading stop, where it did. */
  readonly trouble: string | undefined;
}

/**
 * What is on a page. First strictly, so that damage and pictures are noticed; if that stops, again by skipping what cannot
 * be read. Pictures are never decoded.
 */
const pageContent = async (opened: Opened, page: PDFPageProxy, reading: Reading): Promise<PageContent> => {
  try {
    const drawn = await guarded(opened, drawnOn(opened.document, page));
    return { ...drawn, runs: await guarded(opened, textsOn(page)), trouble: undefined };
  } catch (error) {
    const trouble = reasonOf(error);
    const again = await opening(reading.reader, reading.bytes, { strict: false });
    if ("code" in again) throw new PackageFailure(trouble);
    try {
      const same = await guarded(again, again.document.getPage(page.pageNumber));
      const drawn = await guarded(again, drawnOn(again.document, same));
      const runs = await guarded(again, textsOn(same)).catch(() => undefined);
      return { ...drawn, runs, trouble };
    } finally {
      await again.close();
    }
  }
};

const textsOn = async (page: PDFPageProxy): Promise<readonly TextRun[]> =>
  (await page.getTextContent()).items.filter((item) => "str" in item) as readonly TextRun[];

const drawnOn = async (
  document: PDFDocumentProxy,
  page: PDFPageProxy,
): Promise<Pick<PageContent, "list" | "groups">> => {
  const list = await operationsOf(page);
  const config = await document.getOptionalContentConfig();
  const names = new Map<string, string>();
  for (const [id, group] of config as unknown as Iterable<[string, { name: unknown }]>)
    names.set(id, String(group.name ?? id).slice(0, 200));
  return { list, groups: { names, isVisible: (content) => config.isVisible(content) } };
};

const stopped = (problem: Problem): PlanResult => ({ problems: [problem] });
