import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { handWritten } from "./jobs.fixture.ts";
import { runHere } from "./run-here.fixture.ts";

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "roomwake-"));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

interface Finding {
  readonly code: string;
  readonly room: string | null;
}

/** Checks the small job with settings on its one detector. */
async function checked(settings: object | undefined, words: readonly string[] = [], more: object = {}) {
  const [detector] = handWritten.detectors;
  const job = { ...handWritten, detectors: [{ ...detector, ...(settings && { settings }) }], ...more };
  await writeFile(join(folder, "annex.job.json"), JSON.stringify(job));
  return runHere(folder, ["check", "annex.job.json", ...words]);
}

test("check says what to set on each device, what was chosen, and the reason of everything derived", async () => {
  const { out } = await checked({ offDelay: 90 });
  expect(out).toMatch(
    /0\.1 Hall +B1\.01 +automatic +on-and-off +1\.5 min\* +switch +off +medium +off +alone/,
  );
  expect(out).toContain("No pack of rules is on; --rules CODE switches one on.");
  const { settings, rules, rulePacks } = (await checked({ offDelay: 90 }, ["--json"])).json();
  expect(settings).toMatchObject([
    {
      device: "d1",
      tag: "B1.01",
      room: "hall",
      settings: {
        offDelay: { kind: "chosen", value: 90 },
        mode: { kind: "derived", value: "automatic", source: "SETTING-CHOICE" },
        threshold: { value: "off", assumption: expect.stringContaining("No windows are entered") },
      },
    },
  ]);
  expect(rules).toEqual([]);
  expect(rulePacks.map(({ code, on }: { code: string; on: boolean }) => [code, on])).toContainEqual([
    "epbd-2024",
    false,
  ]);
});

test("a bad choice is a finding of the check, and a must among them exits with 1", async () => {
  const codes = async (settings: object): Promise<readonly string[]> =>
    (await checked(settings, ["--json"])).json().findings.map(({ code }: Finding) => code);
  expect(await codes({ testMode: "on" })).toContain("left-in-test-mode");
  expect(await codes({ mode: "semi-automatic" })).toContain("absence-control-maybe-dark");
  expect(await codes({})).not.toContain("left-in-test-mode");
});

test("--rules switches a shipped pack on by its code, whatever the job says", async () => {
  const rules = ["--rules", "ashrae-90-1-full-off", "--json"];
  const { rules: results, findings } = (
    await checked({ offDelay: 1800 }, rules, { details: { rulesOff: ["ashrae-90-1-full-off"] } })
  ).json();
  expect(results.find(({ rule }: { rule: string }) => rule === "off-delay")).toMatchObject({
    room: "hall",
    pack: "ashrae-90-1-full-off",
    verdict: "fail",
    actual: 1800,
    limit: 1200,
    unit: "s",
    source: "ASHRAE-90-1",
  });
  expect(findings.map(({ code }: Finding) => code)).toContain("delay-above-rule");
});

test("a firm's own pack is a file; its limit shortens what is derived and is counted in the table", async () => {
  const pack = {
    format: "roomwake-rules",
    version: 1,
    code: "house",
    title: "House rules",
    jurisdiction: "Here",
    edition: "1",
    rules: [
      {
        code: "short",
        clause: "2",
        title: "Off within 1 min",
        when: {},
        limit: { measure: "off-delay", most: 60 },
      },
    ],
  };
  await writeFile(join(folder, "house.json"), JSON.stringify(pack));
  const { out } = await checked(undefined, ["--rules", "house.json"]);
  expect(out).toMatch(/B1\.01 +automatic +on-and-off +1 min /);
  expect(out).toMatch(/House rules \(house\) +1 +0 +0/);
});

test("a pack of one's own that the job keeps is on; what cannot be read of it is a finding, and the rest is checked", async () => {
  const rule = {
    code: "short",
    clause: "2",
    title: "Off within 1 min",
    when: {},
    limit: { measure: "off-delay", most: 60 },
  };
  const pack = {
    format: "roomwake-rules",
    version: 1,
    code: "house",
    title: "House",
    jurisdiction: "Here",
    edition: "1",
    rules: [rule],
  };
  const ownRules = [JSON.stringify(pack), JSON.stringify(pack), "{"];
  const { rules, findings } = (await checked({ offDelay: 90 }, ["--json"], { details: { ownRules } })).json();
  expect(rules).toMatchObject([{ pack: "house", rule: "short", verdict: "fail", actual: 90, limit: 60 }]);
  const codes = findings.map(({ code }: Finding) => code);
  expect(codes.filter((code: string) => code.startsWith("rule-pack"))).toEqual([
    "rule-pack-taken",
    "rule-pack-not-json",
  ]);
});

test("a word that is neither pack nor file, and a pack that is wrong, are bad input", async () => {
  const refused = async (word: string): Promise<unknown> => {
    const { exit, json } = await checked({}, ["--rules", word, "--json"]);
    return [exit, json().problems.map(({ code }: Finding) => code)];
  };
  expect(await refused("roman-law")).toEqual([2, ["rule-pack-unknown"]]);
  await writeFile(join(folder, "bad.json"), "{}");
  expect(await refused("bad.json")).toEqual([2, expect.arrayContaining(["rule-pack-wrong"])]);
});
