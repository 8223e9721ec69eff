import type { PDFDocumentProxy } from "pdfjs-dist";
import type { Problem } from "#engine";
import { carefully, type PdfReader } from "./open-pdf.ts";
import { type StrayFailures, strayFailures } from "./stray-failures.ts";

/** A file that the package has opened. */
export interface Opened {
  readonly document: PDFDocumentProxy;
  readonly stray: StrayFailures;
  close(): Promise<void>;
}

/** Some writers and mail programs put bytes before the first mark. @source ISO-32000, section 7.5.2 */
export const beginsAsPdf = (bytes: Uint8Array): boolean =>
  new TextDecoder("latin1").decode(bytes.subarray(0, 1024)).includes("%PDF-");

/** Opens a file; `pixels` is the largest picture that is decoded, none where it is absent. */
export const opening = async (
  reader: PdfReader,
  bytes: Uint8Array,
  { strict, pixels = 0 }: { readonly strict: boolean; readonly pixels?: number },
): Promise<Opened | Problem> => {
  const stray = strayFailures();
  // The package takes the bytes away from whoever gave them, so it gets a copy.
  const task = reader.getDocument({
    ...carefully,
    maxImageSize: pixels,
    data: bytes.slice(),
    stopAtErrors: strict,
  });
  const close = async (): Promise<void> => {
    await Promise.race([task.destroy(), stray.first]).catch(() => {});
    // What the package rejects while it closes comes out a turn later.
    await new Promise((resolve) => setTimeout(resolve, 0));
    stray.stop();
  };
  try {
    return { document: await Promise.race([task.promise, stray.first]), stray, close };
  } catch (error) {
    await close();
    if (error instanceof Error && error.name === "PasswordException")
      return { code: "plan-pdf-locked", values: {} };
    return { code: "plan-pdf-damaged", values: { reason: reasonOf(error) } };
  }
};

/** Whatever the package throws is the file's problem here. */
export class PackageFailure extends Error {}

/** Waits for what the package does; whatever it throws, or leaves lying about, comes as a `PackageFailure`. */
export const guarded = async <T>({ stray }: Opened, call: Promise<T>): Promise<T> => {
  try {
    return await Promise.race([call, stray.first]);
  } catch (error) {
    throw new PackageFailure(reasonOf(error));
  }
};

/** What an error says, short enough for a sentence. */
export const reasonOf = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).slice(0, 120).replace(/[.\s]+$/, "") || "unknown";
