import { findingsOf } from "#engine";
import { readScan } from "#exchange";
import type { ScanAnswer, ScanQuestion } from "./scan-protocol.ts";

const tell = (answer: ScanAnswer): void => postMessage(answer);

/** As long as a picture in a job may be; finer would only be made smaller afterwards. [px] */
const longest = 2400;

/** Makes a picture of one page and is ended after it: whatever a file does to it stays in here. */
addEventListener("message", async ({ data }: MessageEvent<ScanQuestion>) => {
  try {
    const result = await readScan(new Uint8Array(data.bytes), { page: data.page, longest });
    if ("problems" in result) {
      tell({
        tell: "refused",
        problems: findingsOf(result.problems),
      });
      return;
    }
    const { width, height, pixels } = result.scan;
    const canvas = new OffscreenCanvas(width, height);
    const brush = canvas.getContext("2d");
    if (!brush) return tell({ tell: "unable" });
    const painted = brush.createImageData(width, height);
    painted.data.set(pixels);
    brush.putImageData(painted, 0, 0);
    tell({ tell: "scanned", picture: await canvas.convertToBlob({ type: "image/png" }) });
  } catch (trouble) {
    tell({ tell: "failed", sentence: trouble instanceof Error ? trouble.message : String(trouble) });
  }
});
