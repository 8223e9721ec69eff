import { expect, test } from "vitest";
import {
  findingsOf,
  type Problem,
  reviewSite,
  reviewWiring,
  roomTitle,
  type SaidValue,
  settingsOfSite,
  shippedPacks,
} from "#engine";
import { demoJob, installationOf, settingsOfJob, siteOf } from "../index.ts";

const job = demoJob();
const { site } = siteOf(job);
const installation = installationOf(job);

/** Names that somebody gave: they read the same in every language. */
const names = [
  ...site.rooms.map(roomTitle),
  ...site.detectors.map(({ tag }) => tag),
  ...site.models.map(({ title }) => title),
  ...[...site.obstacles, ...site.luminaires, ...site.storeys].map(({ name }) => name),
  ...[...job.boards, ...job.circuits].map(({ name }) => name),
]
  .filter((name) => name !== "")
  .toSorted((a, b) => b.length - a.length);

/** Every string that is put into a sentence as it stands, at any depth. */
function bareIn(value: SaidValue): readonly string[] {
  if (typeof value === "string") return [value];
  if (typeof value === "number" || "figure" in value || "day" in value) return [];
  if ("inside" in value) return bareIn(value.inside);
  if ("first" in value) return bareIn(value.first);
  return Object.values<SaidValue>(value.values).flatMap(bareIn);
}

const withoutNames = (text: string): string => names.reduce((rest, name) => rest.replaceAll(name, ""), text);

test("what findings put into their sentences is names, figures and what is said itself: no word of English reaches another language", () => {
  const packs = settingsOfJob(
    { ...job, details: { ...job.details, rulesOn: shippedPacks.map(({ code }) => code) } },
    shippedPacks,
  );
  const found: readonly Pick<Problem, "code" | "values">[] = [
    ...reviewSite(site).findings,
    ...settingsOfSite(site, packs.choices).findings,
    ...findingsOf(reviewWiring(site, installation)?.problems ?? []),
  ];
  expect(new Set(found.map(({ code }) => code)).size).toBeGreaterThan(15);
  const words = found.flatMap(({ code, values }) =>
    Object.values(values)
      .flatMap(bareIn)
      .filter((text) => /\p{Ll}{3}/u.test(withoutNames(text)))
      .map((text) => `${code}: ${text}`),
  );
  expect(words).toEqual([]);
});
