import type { WireAnswer, WireQuestion } from "./wire-protocol.ts";
import { wiringKnown } from "./wiring-known.ts";

addEventListener("message", ({ data: { number, site, found } }: MessageEvent<WireQuestion>) => {
  const tell = (answer: WireAnswer): void => postMessage(answer);
  try {
    tell({ tell: "wired", number, known: wiringKnown(site, found) });
  } catch (trouble) {
    tell({
      tell: "trouble",
      number,
      sentence: trouble instanceof Error ? trouble.message : String(trouble),
    });
  }
});
