import { settingsOfSite } from "#engine";
import { settingsOfJob } from "#job";
import type { SetAnswer, SetQuestion } from "./set-protocol.ts";

addEventListener("message", ({ data: { number, site, file } }: MessageEvent<SetQuestion>) => {
  const tell = (answer: SetAnswer): void => postMessage(answer);
  try {
    const { choices, packs } = settingsOfJob(file);
    tell({ tell: "set", number, known: { ...settingsOfSite(site, choices), packs } });
  } catch (trouble) {
    tell({
      tell: "trouble",
      number,
      sentence: trouble instanceof Error ? trouble.message : String(trouble),
    });
  }
});
