import { expect, test } from "vitest";
import { demoJob, installationOf, siteOf } from "#job";
import { wiringKnown } from "../calculate/wiring-known.ts";
import type { Workbench } from "../shell/workbench.ts";
import { wiresOf } from "./wires.ts";

const file = demoJob();
const { site } = siteOf(file);
const wiring = wiringKnown({ site, found: installationOf(file), routes: true });
const bench = (change: Partial<Workbench>): Workbench =>
  ({
    job: { site, kept: file },
    stage: "wire",
    storey: "ground",
    selection: [],
    circuit: undefined,
    wiring,
    ...change,
  }) as unknown as Workbench;

test("circuits are told apart by the breaks of their lines and by their names, not by colour", () => {
  const feeds = wiresOf(bench({}))!.runs.filter(({ kind }) => kind === "feeds");
  const labels = [...new Set(feeds.map(({ label }) => label))];
  expect(labels.length).toBe(file.circuits.length);
  expect(labels).toContain("Lighting 1 C10");
  expect(new Set(feeds.map(({ pattern }) => pattern.join(" "))).size).toBe(file.circuits.length);
});

test("what is selected leads to its circuit, before the one that is open in the card", () => {
  const [luminaire] = site.luminaires.filter(({ circuit }) => circuit === "Lighting 1");
  const chosen = (change: Partial<Workbench>): readonly string[] => [
    ...new Set(wiresOf(bench(change))!.runs.flatMap(({ look, label }) => (look === "chosen" ? [label] : []))),
  ];
  expect(chosen({})).toEqual([]);
  expect(chosen({ circuit: "lighting-2" })).toEqual(["Lighting 2 C10"]);
  const selection = [{ kind: "luminaires", id: luminaire!.id }] as const;
  expect(chosen({ circuit: "lighting-2", selection })).toEqual(["Lighting 1 C10"]);
});

test("the same picture as long as nothing of it changed, and none in other stages", () => {
  expect(wiresOf(bench({}))).toBe(wiresOf(bench({ panel: { kind: "findings" } })));
  expect(wiresOf(bench({ stage: "place" }))).toBeUndefined();
});
