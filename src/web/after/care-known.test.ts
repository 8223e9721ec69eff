import { expect, test } from "vitest";
import { settingsOfSite } from "#engine";
import { demoJob, type JobFile, type JobTestEntry, settingsOfJob, siteOf } from "#job";
import type { OpenJob } from "../contract.ts";
import { numberText } from "../texts/index.ts";
import { careKnown, progressOfCare } from "./care-known.ts";
import { beforeWords, enteredWords, pointTitle, visitTitle } from "./care-words.ts";

const demo = demoJob();
const { site } = siteOf(demo);
const settings = { ...settingsOfSite(site, settingsOfJob(demo).choices), packs: [] };
const revision = { id: "r", letter: "A", date: "2026-11-26", reason: "", prints: {} };
const jobWith = (given: Partial<JobFile>): OpenJob => {
  const file = { ...demo, ...given };
  return { site, kept: file, file } as unknown as OpenJob;
};
const winter = new Date(2027, 11, 1, 12);
const meeting = site.rooms.find(({ name }) => name === "Meeting room")!.id;

test("nothing handed over: no visits; handed over: trims and yearly checks with every watched room", () => {
  expect(careKnown(jobWith({}), settings, winter).occasions).toEqual([]);
  const job = jobWith({ revisions: [revision] });
  const known = careKnown(job, settings, winter);
  expect(known.occasions.map(visitTitle)).toEqual([
    "Trim visit, after four weeks",
    "Trim visit, first summer",
    "Yearly check 2027",
    "Yearly check 2028",
  ]);
  for (const occasion of known.occasions) {
    expect(known.rooms(occasion)).toContain(meeting);
    for (const { point } of [...known.states(occasion, meeting), ...known.states(occasion)])
      expect(pointTitle(job, point)).not.toMatch(/undefined|after\./);
  }
});

test("an entry belongs to its visit alone, and is told with its verdict and what was found before", () => {
  const [detector] = site.detectors.filter(({ room }) => room === meeting);
  const set = settings.devices.find(({ context }) => context.device === detector!.id)!.settings.offDelay
    .value;
  const entry = (id: string, given: Partial<JobTestEntry>): JobTestEntry => ({
    id,
    time: "2026-11-26T10:00:00.000Z",
    about: { kind: "detector", id: detector!.id },
    step: "delay",
    outcome: "read",
    ...given,
  });
  const job = jobWith({
    revisions: [revision],
    testEntries: [
      entry("a", { value: set + 2 }),
      entry("b", {
        value: set * 2,
        step: "care-delay",
        occasion: "yearly-1",
        by: "A. Fitter",
        time: "2027-11-30T10:00:00.000Z",
      }),
    ],
  });
  const known = careKnown(job, settings, winter);
  const [first, second] = known.occasions.filter(({ kind }) => kind === "yearly");
  const delay = (of: typeof first) => known.states(of!, meeting).find(({ point }) => point.name === "delay")!;
  expect(beforeWords(delay(second).point)).toContain(`Before: ${set + 2} s, 2026-11-26.`);
  expect(enteredWords(delay(first))).toBe(`failed · ${numberText(set * 2)} s · A. Fitter · 2027-11-30`);
  expect(enteredWords(delay(second))).toBe("");
  expect(progressOfCare(known.states(first!, meeting))).toMatchObject({ looked: 1, failed: 1 });
  expect(progressOfCare(known.states(second!, meeting))).toMatchObject({ looked: 0, failed: 0 });
});
