import type { PDFDocumentProxy } from "pdfjs-dist";

/** What is used of the package that reads PDF files. */
export interface PdfReader {
  getDocument(options: Record<string, unknown>): {
    readonly promise: Promise<PDFDocumentProxy>;
    destroy(): Promise<void>;
  };
  readonly OPS: Readonly<Record<string, number>>;
}

/**
 * The reader of PDF files, loaded when the first one is read: neither the start of the command line nor the web app's first
 * script carries it. The half that interprets files runs in this very thread, which can be killed; it starts none of its own.
 */
export async function loadPdfReader(): Promise<PdfReader> {
  // It asks for these when it is loaded, and uses them for drawing alone.
  const world = globalThis as Record<string, unknown>;
  for (const name of ["DOMMatrix", "ImageData", "Path2D"]) world[name] ??= class {};
  const pdf: PdfReader = await import("pdfjs-dist/legacy/build/pdf.min.mjs" as string);
  await import("pdfjs-dist/legacy/build/pdf.worker.min.mjs" as string);
  return pdf;
}

/** Nothing in a file is run, nothing is fetched, no fonts of the system are looked at, no picture is decoded. */
export const carefully = {
  isEvalSupported: false,
  enableXfa: false,
  disableFontFace: true,
  useSystemFonts: false,
  useWorkerFetch: false,
  useWasm: false,
  isOffscreenCanvasSupported: false,
  isImageDecoderSupported: false,
  maxImageSize: 0,
  disableAutoFetch: true,
  disableRange: true,
  disableStream: true,
  verbosity: 0,
} as const;

/** What the reader says of a picture when none may be decoded. */
export const pictureRefused = /^Image exceeded maximum allowed size/;
