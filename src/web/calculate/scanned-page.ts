import { t } from "../texts/scan.ts";
import { oneLine } from "../texts/told.ts";
import { RefusedFile } from "./refused-file.ts";
import type { ScanAnswer, ScanQuestion } from "./scan-protocol.ts";

/** A page that takes longer than this has hung. [ms] */
const longest = 120_000;

/**
 * Makes a picture of a page of a PDF file, beside the screen.
 *
 * @throws A `RefusedFile` that says why there is none; an `AbortError` when it was stopped.
 */
export async function scannedPage(
  file: File,
  { page, signal }: { readonly page: number; readonly signal: AbortSignal },
): Promise<File> {
  const bytes = await file.arrayBuffer();
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./scan-worker.ts", import.meta.url), { type: "module", name: "scan" });
    const end = (): void => {
      clearTimeout(hung);
      signal.removeEventListener("abort", stop);
      worker.terminate();
    };
    const stop = (): void => {
      end();
      reject(new DOMException("Stopped", "AbortError"));
    };
    const hung = setTimeout(() => {
      end();
      reject(new RefusedFile([t("scan.hung")]));
    }, longest);
    if (signal.aborted) return stop();
    signal.addEventListener("abort", stop, { once: true });
    worker.onmessage = ({ data }: MessageEvent<ScanAnswer>) => {
      // The package that reads PDF files greets whoever started its thread.
      if (data.tell === undefined) return;
      end();
      if (data.tell === "scanned") resolve(new File([data.picture], file.name, { type: "image/png" }));
      else if (data.tell === "refused") reject(new RefusedFile(data.problems.map(oneLine)));
      else reject(new RefusedFile([data.tell === "unable" ? t("scan.unable") : data.sentence]));
    };
    worker.onerror = (event) => {
      event.preventDefault();
      end();
      reject(new RefusedFile([event.message]));
    };
    worker.postMessage({ bytes, page } satisfies ScanQuestion, [bytes]);
  });
}
