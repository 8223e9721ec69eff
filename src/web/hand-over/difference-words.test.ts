import { expect, test } from "vitest";
import { differencesOf, type HandedState, handedState, settingsOfSite } from "#engine";
import { demoJob, installationOf, settingsOfJob, siteOf } from "#job";
import { differenceLines } from "./difference-words.ts";

const job = demoJob();
const { site } = siteOf(job);
const state = handedState(site, {
  settings: settingsOfSite(site, settingsOfJob(job).choices),
  found: installationOf(job),
});

/** The same with one fact of one record otherwise. */
const with_ = (key: string, fact: string, value: HandedState[string][string]): HandedState => ({
  ...state,
  [key]: { ...state[key], [fact]: value },
});
const linesOf = (after: HandedState): readonly string[] =>
  differencesOf(state, after).flatMap((one) => {
    const { thing, lines } = differenceLines(one, "metric");
    return lines.map((line) => `${thing}: ${line}`);
  });

test("every fact that is handed over has a name in words", () => {
  const facts = new Set(Object.values(state).flatMap((record) => Object.keys(record)));
  expect(facts.size).toBeGreaterThan(30);
  for (const fact of facts) {
    const key = Object.keys(state).find((one) => state[one]![fact] !== undefined)!;
    const [line] = linesOf(with_(key, fact, fact === "at" ? [1, 2] : "otherwise"));
    expect(line, fact).toBeDefined();
    expect(line!.split(": ").slice(1).join(": "), fact).not.toMatch(/^(set\.|[a-z]+[A-Z])/);
    expect(line!.includes(`: ${fact}:`), fact).toBe(false);
  }
});

test("old and new value stand in the sentence, with their units", () => {
  const detector = Object.keys(state).find((key) => state[key]!.tag === "B1.01")!;
  const room = state[detector]!.room as string;
  expect(linesOf(with_(detector, "height", 3))).toEqual([
    `Detector B1.01, ${room}: Mounting height: ${(state[detector]!.height as number).toFixed(2)} m → 3.00 m`,
  ]);
  const before = state[detector]!["set.offDelay"] as number;
  expect(linesOf(with_(detector, "set.offDelay", 1500))).toEqual([
    `Detector B1.01, ${room}: Off delay: ${before / 60} min → 25 min`,
  ]);
  const [x, y] = state[detector]!.at as readonly [number, number];
  expect(linesOf(with_(detector, "at", [x + 0.4, y]))).toEqual([`Detector B1.01, ${room}: moved by 0.40 m`]);
  expect(linesOf(with_(detector, "set.output", "two-level, 30 %"))[0]).toContain("→ two-level, 30 %");
});

test("what came, what went, and what nobody knows here are told too", () => {
  const { [Object.keys(state).find((key) => key.startsWith("detectors/"))!]: gone, ...rest } = state;
  expect(linesOf(rest as HandedState)).toEqual([`Detector ${gone!.tag}, ${gone!.room}: removed`]);
  expect(linesOf({ ...state, "detectors/new": { tag: "B9.01" } })).toEqual(["Detector B9.01: added"]);
  const strange = Object.keys(state).find((key) => key.startsWith("detectors/"))!;
  expect(linesOf(with_(strange, "set.colour", "red"))[0]).toContain("set.colour entered: red");
});
