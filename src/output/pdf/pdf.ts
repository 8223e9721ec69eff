import { dotsInside, hatchStrokes } from "../drawing/hatching.ts";
import { emOf } from "../drawing/lettering.ts";
import type { Fill, Mark, PaperPoint, PaperRing, Pen, Sheet, TextMark } from "../drawing/mark.ts";

/** Bytes of the two weights of Inter (TTF); read from a file by Node, fetched by the browser. */
export interface PdfFonts {
  readonly regular: Uint8Array;
  readonly semibold: Uint8Array;
}

export interface PdfDetails {
  readonly fonts: PdfFonts;
  readonly title: string;
  readonly author: string;
  /** Told to whatever reads the pages out: a tag such as "de". */
  readonly language: string;
  /** Stamped as the date of creation; the same date and sheets give the same bytes. */
  readonly created: Date;
  /** Marks that a reader shows beside the pages, each with the sheet that it leads to, counted from 0. */
  readonly bookmarks?: readonly Bookmark[];
  /** Told after each page. */
  readonly progress?: (page: number) => void;
}

export interface Bookmark {
  readonly heading: string;
  readonly sheet: number;
  readonly within?: readonly Bookmark[];
}

const pointsPerMillimetre = 72 / 25.4;

/** Figures of one width; no contextual letters, which would print “2x3” as “2×3” in a name. The types know only the short form. */
const lettering = { tnum: true, calt: false } as unknown as PDFKit.Mixins.OpenTypeFeatures[];

/** Sheets as one PDF, a page each, to scale: 100 mm in the drawing are 100 mm on paper. */
export async function pdfOf(sheets: readonly Sheet[], details: PdfDetails): Promise<Uint8Array> {
  // Loaded with the first paper: most commands print none, and it takes long to load.
  const { default: PDFDocument } = await import("pdfkit");
  const doc = new PDFDocument({
    autoFirstPage: false,
    pdfVersion: "1.7",
    tagged: true,
    lang: details.language,
    displayTitle: true,
    // The built-in faces need files that a browser has not got, so the first font is handed over here.
    font: details.fonts.regular as unknown as string,
    info: {
      Title: details.title,
      Author: details.author,
      Creator: "Roomwake",
      Producer: "Roomwake",
      CreationDate: details.created,
    },
  });
  doc.registerFont("regular", details.fonts.regular as unknown as ArrayBuffer);
  doc.registerFont("semibold", details.fonts.semibold as unknown as ArrayBuffer);
  for (const weight of ["regular", "semibold"] as const) rememberFont(doc, weight, details.fonts);
  const done = collected(doc);
  const mark = bookmarker(doc, details.bookmarks ?? []);
  const root = doc.struct("Document");
  doc.addStructure(root);
  for (const [i, sheet] of sheets.entries()) {
    doc.addPage({ size: [sheet.width * pointsPerMillimetre, sheet.height * pointsPerMillimetre], margin: 0 });
    mark(i);
    const part = doc.struct("Sect", { title: sheet.title });
    root.add(part);
    doc.save().scale(pointsPerMillimetre).lineJoin("round");
    for (const run of runsOf(sheet)) tagged(doc, part, run);
    doc.restore();
    part.end();
    details.progress?.(i + 1);
  }
  root.end();
  doc.end();
  return done;
}

/** What the document keeps of its fonts, which its types do not tell of. */
interface FontsWithin {
  readonly _font: FontWithin;
  readonly _fontFamilies: Record<string, unknown>;
}
interface FontWithin {
  /** The face, with its tables. */
  font: { readonly createSubset: () => unknown };
  subset: unknown;
  layoutRun: (text: string, features: unknown) => unknown;
}

/** A face that was opened, with the texts that were shaped in it. */
interface OpenFace {
  readonly font: FontWithin["font"];
  readonly runs: Map<string, unknown>;
}
/** As long as somebody holds the bytes of a face: the papers of a pack are many documents with the same words. */
const openFaces = new WeakMap<Uint8Array, OpenFace>();

/**
 * Opens a face once and shapes each text once, for all documents that are given the same bytes.
 *
 * A document opens a face anew at every call where it already has one under another name, as it has the face that it was made
 * with. And it shapes each text twice, to measure and to set it, and keeps nothing where features are asked for, though the
 * words of tables come again and again. The features are always the same here. Which letters a document needs stays its own.
 */
function rememberFont(doc: Doc, weight: TextMark["weight"], fonts: PdfFonts): void {
  const within = doc.font(weight) as unknown as FontsWithin;
  const own = within._font;
  within._fontFamilies[weight] = own;
  const face = openFaces.get(fonts[weight]) ?? { font: own.font, runs: new Map<string, unknown>() };
  openFaces.set(fonts[weight], face);
  own.font = face.font;
  own.subset = face.font.createSubset();
  const shape = own.layoutRun.bind(own);
  own.layoutRun = (text, features) => {
    const before = face.runs.get(text);
    if (before !== undefined) return before;
    const run = shape(text, features);
    face.runs.set(text, run);
    return run;
  };
}

type Doc = PDFKit.PDFDocument;

/** Marks that are read, or passed over, as one. */
interface Run {
  readonly as: "text" | "figure" | "ground";
  readonly marks: readonly Mark[];
  readonly alt?: string;
}

/**
 * A sheet as one who hears it read out gets it: words are paragraphs in the order in which they were set, a drawing to scale
 * is one figure named by its title, and lines and frames about words are ground that says nothing.
 */
function runsOf(sheet: Sheet): readonly Run[] {
  const runs: { as: Run["as"]; marks: Mark[]; alt?: string }[] = [];
  for (const mark of sheet.marks) {
    const as = mark.kind === "text" ? "text" : mark.kind === "clip" ? "figure" : "ground";
    const last = runs.at(-1);
    if (last && last.as === as && as === "ground") last.marks.push(mark);
    else runs.push({ as, marks: [mark], ...(as === "figure" ? { alt: sheet.title } : {}) });
  }
  return runs;
}

function tagged(doc: Doc, part: PDFKit.PDFStructureElement, { as, marks, alt }: Run): void {
  const drawn = (): void => {
    for (const mark of marks) draw(doc, mark);
  };
  if (as === "ground") {
    doc.markContent("Artifact", { type: "Layout" });
    drawn();
    doc.endMarkedContent();
    return;
  }
  const element = as === "text" ? doc.struct("P") : doc.struct("Figure", { alt: alt ?? "" });
  part.add(element);
  const content = doc.markStructureContent(as === "text" ? "P" : "Figure");
  element.add(content);
  drawn();
  doc.endMarkedContent();
  element.end();
}

/** Gives a function that sets the marks leading to a sheet, when that sheet is the last one added. */
function bookmarker(doc: Doc, bookmarks: readonly Bookmark[]): (sheet: number) => void {
  const items = new Map<Bookmark, Doc["outline"]>();
  const add = (under: Doc["outline"], some: readonly Bookmark[], sheet: number): void => {
    for (const bookmark of some) {
      if (bookmark.sheet === sheet) items.set(bookmark, under.addItem(bookmark.heading));
      const own = items.get(bookmark);
      if (own && bookmark.within) add(own, bookmark.within, sheet);
    }
  };
  return (sheet) => add(doc.outline, bookmarks, sheet);
}

function collected(doc: Doc): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    doc.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    doc.on("error", reject);
    doc.on("end", () => {
      const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
      let offset = 0;
      for (const chunk of chunks) {
        bytes.set(chunk, offset);
        offset += chunk.length;
      }
      resolve(bytes);
    });
  });
}

function draw(doc: Doc, mark: Mark): void {
  switch (mark.kind) {
    case "line":
      stroke(doc, mark.pen, () => trace(doc, [mark.from, mark.to], false));
      return;
    case "polyline":
      stroke(doc, mark.pen, () => trace(doc, mark.points, false));
      return;
    case "circle":
      if (mark.fill)
        doc.circle(num(mark.at[0]), num(mark.at[1]), num(mark.radius)).fillColor(mark.fill).fill();
      if (mark.pen)
        stroke(doc, mark.pen, () => doc.circle(num(mark.at[0]), num(mark.at[1]), num(mark.radius)));
      return;
    case "area":
      for (const fill of mark.fills) fillArea(doc, mark.rings, fill);
      if (mark.pen)
        stroke(doc, mark.pen, () => {
          for (const ring of mark.rings) trace(doc, ring, true);
        });
      return;
    case "text":
      write(doc, mark);
      return;
    case "clip": {
      const { left, top, right, bottom } = mark.within;
      doc
        .save()
        .rect(num(left), num(top), num(right - left), num(bottom - top))
        .clip();
      for (const inner of mark.marks) draw(doc, inner);
      doc.restore();
      return;
    }
  }
}

function fillArea(doc: Doc, rings: readonly PaperRing[], fill: Fill): void {
  switch (fill.kind) {
    case "solid":
      for (const ring of rings) trace(doc, ring, true);
      doc.fillColor(fill.colour, fill.opacity ?? 1).fill("even-odd");
      doc.fillOpacity(1);
      return;
    case "hatch": {
      const strokes = hatchStrokes(rings, fill);
      if (strokes.length === 0) return;
      stroke(doc, fill.pen, () => {
        for (const segment of strokes) trace(doc, segment, false);
      });
      return;
    }
    case "dots": {
      const dots = dotsInside(rings, fill.spacing);
      if (dots.length === 0) return;
      doc
        .save()
        .lineCap("round")
        .lineWidth(2 * fill.radius)
        .strokeColor(fill.colour);
      for (const [x, y] of dots) doc.moveTo(num(x), num(y)).lineTo(num(x + 0.01), num(y));
      doc.stroke().restore();
      return;
    }
  }
}

function write(doc: Doc, mark: TextMark): void {
  const em = emOf(mark.size);
  doc.save().translate(num(mark.at[0]), num(mark.at[1]));
  if (mark.turn) doc.rotate(-mark.turn);
  doc.font(mark.weight, em).fillColor(mark.colour);
  const options = {
    lineBreak: false,
    features: lettering,
    baseline: "alphabetic" as const,
  };
  const length = doc.widthOfString(mark.text, options);
  const x = mark.anchor === "start" ? 0 : mark.anchor === "middle" ? -length / 2 : -length;
  if (mark.halo) {
    doc.lineWidth(2 * mark.halo).strokeColor("#FFFFFF");
    doc.text(mark.text, x, 0, { ...options, stroke: true, fill: false });
  }
  doc.text(mark.text, x, 0, options);
  doc.restore();
}

/** The pen is taken up before the path begins: PDF allows no change of state between a path and its stroke. */
function stroke(doc: Doc, pen: Pen, path: () => void): void {
  doc.save().lineWidth(pen.width).strokeColor(pen.colour);
  if (pen.dash) {
    if (pen.dash[0]! <= 0.3) doc.lineCap("round");
    // A pattern of several strokes goes in as it is; the types know only the short form.
    if (pen.dash.length > 2) doc.dash(pen.dash as unknown as number, {});
    else doc.dash(pen.dash[0]!, { space: pen.dash[1] ?? pen.dash[0]! });
  }
  path();
  doc.stroke().restore();
}

function trace(doc: Doc, points: PaperRing, closed: boolean): void {
  points.forEach((point: PaperPoint, i) => {
    if (i === 0) doc.moveTo(num(point[0]), num(point[1]));
    else doc.lineTo(num(point[0]), num(point[1]));
  });
  if (closed) doc.closePath();
}

/** The same 1/100 mm as every other writer. */
const num = (value: number): number => Math.round(value * 100) / 100;
