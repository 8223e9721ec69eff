import { findingsOf, settingsOfSite, shippedPacks } from "#engine";
import { readRulePacks } from "#exchange";
import { settingsOfJob } from "#job";
import { answerLine } from "./answer-line.ts";
import type { SetQuestion, SettingsKnown } from "./set-protocol.ts";

// Derives the settings beside the screen.
answerLine(({ site, file }: SetQuestion): SettingsKnown => {
  const shipped = shippedPacks.map(({ code }) => code);
  const own = readRulePacks(file.details.ownRules ?? [], shipped);
  const { choices, packs } = settingsOfJob(file, [...shippedPacks, ...own.packs]);
  const settings = settingsOfSite(site, choices);
  return { ...settings, findings: [...findingsOf(own.problems), ...settings.findings], packs };
});
