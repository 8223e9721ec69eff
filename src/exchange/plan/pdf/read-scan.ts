import type { PDFPageProxy } from "pdfjs-dist";
import { type Metres, type Problem, type Said, say } from "#engine";
import { megabytes, type PlanLimits, usualPlanLimits } from "../limits.ts";
import { looksLike } from "../looks-like.ts";
import { growth, type Matrix } from "../page/matrix.ts";
import { type DecodedPicture, decodedPicture } from "./decoded-picture.ts";
import { loadPdfReader, type PdfReader, pictureRefused } from "./open-pdf.ts";
import { beginsAsPdf, guarded, type Opened, opening, PackageFailure } from "./opened-pdf.ts";
import { operationsOf } from "./operations.ts";
import { picturesOn } from "./page-pictures.ts";
import { sheetOf } from "./sheet.ts";

export interface ReadScanOptions {
  /** The page to read, from 1. */
  readonly page: number;
  /** Longest side of the picture that comes of it. [px] */
  readonly longest: number;
  readonly limits?: Partial<PlanLimits>;
}

/** A page as a picture: red, green, blue and cover of each pixel, row by row from the upper left; it covers all. */
export interface ScannedPage {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8ClampedArray;
  /** Width and height of the paper. [m] */
  readonly paper: readonly [Metres, Metres];
}

/**
 * The pictures on one page of a PDF file as one picture, as large as they are stored or as large as is asked for; or the
 * problems that stopped it. A scanned plan is such a page. Lines and texts are not painted: those are read as a plan.
 *
 * Like `readPdf` it runs to its end in one go: call it where it can be killed, a worker with a time limit.
 */
export async function readScan(
  bytes: Uint8Array,
  { page: number, longest, limits: own }: ReadScanOptions,
): Promise<{ readonly scan: ScannedPage } | { readonly problems: readonly Problem[] }> {
  const limits = { ...usualPlanLimits, ...own };
  const stopped = (problem: Problem) => ({ problems: [problem] });
  const refused = (reason: Said) =>
    stopped({ code: "plan-pdf-scan-refused", values: { page: number, reason } });
  if (bytes.length === 0) return stopped({ code: "file-empty", values: {} });
  if (bytes.length > limits.bytes)
    return stopped({ code: "plan-too-large", values: { limit: megabytes(limits.bytes) } });
  if (!beginsAsPdf(bytes)) return stopped({ code: "plan-not-pdf", values: { found: looksLike(bytes) } });
  const reader = await loadPdfReader();
  // Strictly first, so that a picture that is too large is noticed; whatever else is wrong is skipped.
  let large = false;
  for (const strict of [true, false]) {
    const opened = await opening(reader, bytes, { strict, pixels: limits.pixels });
    if ("code" in opened) return stopped(opened);
    try {
      const pages = opened.document.numPages;
      if (!Number.isInteger(number) || number < 1 || number > pages)
        return stopped({ code: "plan-pdf-no-page", values: { page: number, pages } });
      const page = await guarded(opened, opened.document.getPage(number));
      const found = await picturesOf(page, { opened, reader });
      if (found.sheet[0] > 0 && found.sheet[1] > 0 && found.pictures.length > 0)
        return { scan: painted(found, longest) };
      if (large) return refused(tooLarge(limits.pixels));
      if (!strict || found.named === 0)
        return refused(
          found.named > 0 ? say`it is packed in a way that is not read here` : say`there is none on the page`,
        );
    } catch (error) {
      if (!(error instanceof PackageFailure)) throw error;
      large ||= pictureRefused.test(error.message);
      if (!strict)
        return large
          ? refused(tooLarge(limits.pixels))
          : stopped({ code: "plan-pdf-damaged", values: { reason: error.message } });
    } finally {
      await opened.close();
    }
  }
  return refused(say`it is packed in a way that is not read here`);
}

const tooLarge = (pixels: number): Said =>
  pixels < 1e6
    ? say`it has more than ${pixels} pixels`
    : say`it has more than ${Math.round(pixels / 1e6)} million pixels`;

interface Laid extends DecodedPicture {
  /** From the unit square to the sheet. */
  readonly matrix: Matrix;
}

interface Found {
  /** [pt] */
  readonly sheet: readonly [number, number];
  readonly pictures: readonly Laid[];
  /** How many the page names, those that could not be decoded too. */
  readonly named: number;
}

async function picturesOf(
  page: PDFPageProxy,
  { opened, reader }: { readonly opened: Opened; readonly reader: PdfReader },
): Promise<Found> {
  const { matrix, size } = sheetOf(page);
  const list = await guarded(opened, operationsOf(page));
  const named = picturesOn(list, { operations: reader.OPS, matrix });
  const pictures: Laid[] = [];
  for (const { stored, matrix: at, ink } of named) {
    const whole = typeof stored === "string" ? await guarded(opened, storedIn(page, stored)) : stored;
    const decoded = decodedPicture(whole, ink);
    if (decoded && growth(at) > 0 && at.every(Number.isFinite)) pictures.push({ ...decoded, matrix: at });
  }
  return { sheet: size, pictures, named: named.length };
}

/** What the package keeps of a page under a name, as soon as it is decoded. */
const storedIn = (page: PDFPageProxy, name: string): Promise<unknown> =>
  new Promise((resolve) => {
    const { objs, commonObjs } = page as unknown as Record<
      "objs" | "commonObjs",
      { get(name: string, then: (stored: unknown) => void): void }
    >;
    // What several pages share is kept apart, under names that begin so.
    (name.startsWith("g_") ? commonObjs : objs).get(name, resolve);
  });

/** One point of paper, 1/72 in. [m] */
const POINT: Metres = 0.0254 / 72;

/** Samples across a pixel at most, each way: a scan of 600 dots an inch is ten times as fine as what is kept of it. */
const mostSamples = 10;

/** Paints pictures one over the other on white paper; each pixel is the mean of what lies in it. */
function painted({ sheet, pictures }: Found, longest: number): ScannedPage {
  const finest = Math.max(
    ...pictures.map(({ width, height, matrix: [a, b, c, d] }) =>
      Math.max(width / Math.hypot(a, b), height / Math.hypot(c, d)),
    ),
  );
  const scale = Math.min(finest, longest / Math.max(...sheet));
  const [width, height] = sheet.map((side) => Math.min(longest, Math.max(1, Math.round(side * scale)))) as [
    number,
    number,
  ];
  const pixels = new Uint8ClampedArray(4 * width * height).fill(255);
  for (const picture of pictures) paint(picture, { pixels, width, height, sheet });
  return { width, height, pixels, paper: [sheet[0] * POINT, sheet[1] * POINT] };
}

function paint(
  picture: Laid,
  to: {
    readonly pixels: Uint8ClampedArray;
    readonly width: number;
    readonly height: number;
    readonly sheet: readonly [number, number];
  },
): void {
  const [a, b, c, d, e, f] = picture.matrix;
  const determinant = a * d - b * c;
  const [across, up] = [to.sheet[0] / to.width, to.sheet[1] / to.height];
  /** From a place among the pixels to one in the picture, both counted from the upper left. */
  const columnOf = (x: number, y: number): number =>
    ((d * (x - e) - c * (y - f)) / determinant) * picture.width;
  const rowOf = (x: number, y: number): number =>
    (1 - (a * (y - f) - b * (x - e)) / determinant) * picture.height;
  const xs = [e, e + a, e + c, e + a + c];
  const ys = [f, f + b, f + d, f + b + d];
  const first = Math.max(0, Math.floor(Math.min(...xs) / across));
  const last = Math.min(to.width - 1, Math.ceil(Math.max(...xs) / across));
  const top = Math.max(0, Math.floor(to.height - Math.max(...ys) / up));
  const bottom = Math.min(to.height - 1, Math.ceil(to.height - Math.min(...ys) / up));
  const fineness = Math.hypot(picture.width * across, picture.height * up) / Math.sqrt(Math.abs(determinant));
  const samples = Math.max(1, Math.min(mostSamples, Math.round(fineness / Math.SQRT2)));
  const sum = new Float64Array(4);
  for (let row = top; row <= bottom; row++)
    for (let column = first; column <= last; column++) {
      sum.fill(0);
      for (let i = 0; i < samples; i++)
        for (let j = 0; j < samples; j++) {
          const x = (column + (i + 0.5) / samples) * across;
          const y = (to.height - row - (j + 0.5) / samples) * up;
          const [at, line] = [Math.floor(columnOf(x, y)), Math.floor(rowOf(x, y))];
          if (at >= 0 && line >= 0 && at < picture.width && line < picture.height) picture.add(sum, at, line);
        }
      const count = samples * samples;
      const free = 1 - sum[3]! / (255 * count);
      const place = 4 * (row * to.width + column);
      for (let i = 0; i < 3; i++) to.pixels[place + i] = to.pixels[place + i]! * free + sum[i]! / count;
    }
}
