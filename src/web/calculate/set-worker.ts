import { findingsOf, settingsOfSite, shippedPacks } from "#engine";
import { readRulePacks } from "#exchange";
import { settingsOfJob } from "#job";
import type { SetAnswer, SetQuestion } from "./set-protocol.ts";

addEventListener("message", ({ data: { number, site, file } }: MessageEvent<SetQuestion>) => {
  const tell = (answer: SetAnswer): void => postMessage(answer);
  try {
    const shipped = shippedPacks.map(({ code }) => code);
    const own = readRulePacks(file.details.ownRules ?? [], shipped);
    const { choices, packs } = settingsOfJob(file, [...shippedPacks, ...own.packs]);
    const settings = settingsOfSite(site, choices);
    const findings = [...findingsOf(own.problems), ...settings.findings];
    tell({ tell: "set", number, known: { ...settings, findings, packs } });
  } catch (trouble) {
    tell({
      tell: "trouble",
      number,
      sentence: trouble instanceof Error ? trouble.message : String(trouble),
    });
  }
});
