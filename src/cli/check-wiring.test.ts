import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { correctedDemoJob, demoJob, jobText } from "#job";
import { handWritten } from "./jobs.fixture.ts";
import { runHere } from "./run-here.fixture.ts";

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "roomwake-"));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

async function checked(job: string, ...words: readonly string[]) {
  await writeFile(join(folder, "one.job.json"), job);
  return runHere(folder, ["check", "one.job.json", ...words]);
}

/** A hand-written job with one lit room; what is wrong with its wiring comes on top. */
const lit = (more: {
  readonly circuit?: object;
  readonly luminaire?: object;
  readonly board?: object;
}): string =>
  JSON.stringify({
    ...handWritten,
    version: 3,
    detectors: [],
    luminaires: [
      {
        id: "e1",
        room: "hall",
        name: "Panel",
        at: [2, 1],
        circuit: "Lighting 1",
        power: 32,
        ...more.luminaire,
      },
    ],
    boards: [{ id: "b1", name: "Sub-board", system: "TN-S", ...more.board }],
    circuits: [{ id: "c1", board: "b1", name: "Lighting 1", breaker: "C", rating: 10, ...more.circuit }],
  });

describe("check of a wiring", () => {
  test("the demo: circuits with load, current, every check and its evidence; findings in the one list", async () => {
    const { exit, json } = await checked(jobText(demoJob()), "--json");
    expect(exit).toBe(1);
    const { wiring, findings } = json();
    expect(
      wiring.circuits.map((one: { id: string; luminaires: number }) => [one.id, one.luminaires]),
    ).toEqual([
      ["lighting-1", 16],
      ["lighting-2", 16],
      ["lighting-3", 16],
      ["lighting-4", 12],
      ["lighting-5", 7],
    ]);
    expect(typeof wiring.circuits[0].checks[0].what).toBe("string");
    for (const { text } of wiring.assumptions) expect(typeof text).toBe("string");
    // Three detectors of 0.4 W.
    expect(wiring.standby).toEqual({ perYear: 10.512, unknown: [] });
    const [first] = wiring.circuits;
    // 14 panels of 32 W and 2 battens of 24 W at cos φ 0.95
    expect([first.power, first.current]).toEqual([496, 2.27002]);
    for (const check of first.checks)
      expect(Object.keys(check).sort()).toEqual([
        "actual",
        "assumptions",
        "limit",
        "source",
        "unit",
        "verdict",
        "what",
      ]);
    expect(
      wiring.assumptions.every(
        (one: { text: string; records: string[] }) => one.text && one.records.length > 0,
      ),
    ).toBe(true);
    expect(wiring.contacts.map((one: { tag: string; drivers: number }) => [one.tag, one.drivers])).toEqual([
      ["B1.01", 8],
      ["B1.02", 8],
      ["B1.03", 4],
    ]);
    const order = findings.map((one: { severity: string }) => one.severity);
    expect(order).toEqual(
      [...order].sort(
        (a, b) => ["must", "should", "note"].indexOf(a) - ["must", "should", "note"].indexOf(b),
      ),
    );
    expect(findings.map((one: { code: string }) => one.code)).toEqual(
      expect.arrayContaining(["contact-inrush-too-large", "neutral-borrowed", "no-detector"]),
    );
  });

  test("the corrected demo: the same circuits, and no finding about its wiring", async () => {
    const { json } = await checked(jobText(correctedDemoJob()), "--json");
    const { wiring, findings } = json();
    const verdicts = wiring.circuits.flatMap((one: { checks: { verdict: string }[] }) =>
      one.checks.map((check) => check.verdict),
    );
    expect(new Set(verdicts)).toEqual(new Set(["pass"]));
    const codes: string[] = findings.map((one: { code: string }) => one.code);
    expect(
      codes.filter((code) => /wiring|contact|neutral-b|button-wired|leakage|breaker|joined/.test(code)),
    ).toEqual([]);
  });

  test("as text: one line for each circuit, with what is not known left open", async () => {
    const { out } = await checked(jobText(demoJob()));
    const lines = out.split("\n").filter((line) => line.startsWith("Lighting"));
    expect(lines.map((line) => line.split(/ {2,}/).slice(-6))).toEqual([
      ["16", "496 W", "2.27 A", expect.stringMatching(/^\d\.\d\d %$/), "1.66 Ω", "pass"],
      ["16", "512 W", "2.34 A", expect.stringMatching(/^\d\.\d\d %$/), "1.60 Ω", "1 failed"],
      ["16", "496 W", "2.27 A", expect.stringMatching(/^\d\.\d\d %$/), "1.83 Ω", "1 failed"],
      ["12", "336 W", "1.54 A", expect.stringMatching(/^\d\.\d\d %$/), "2.00 Ω", "pass"],
      ["7", "168 W", "0.77 A", "–", "–", "5 not proven"],
    ]);
    expect(out).toContain("Taken for granted:");
  });

  test("a job that says nothing of its wiring has none", async () => {
    const { json } = await checked(JSON.stringify(handWritten), "--json");
    expect(json().wiring).toBeNull();
    expect((await checked(JSON.stringify(handWritten))).out).not.toContain("Verdict");
  });
});

describe("bad input says what and where", () => {
  test("a negative length is refused or left out with its circuit's name", async () => {
    const { out, notes, json, exit } = await checked(
      lit({ circuit: { cable: { section: 1.5, length: -5 } } }),
      "--json",
    );
    const told: string[] = (exit === 2 ? json().problems : json().findings).map(
      (one: { message: string }) => one.message,
    );
    expect([out !== "", notes]).toEqual([true, ""]);
    expect(told.filter((text) => /Lighting 1|c1/.test(text) && /length/.test(text)).length).toBe(1);
  });
  test.each([
    [
      "a missing breaker",
      { circuit: { breaker: "unknown", rating: undefined } },
      /rating of the protective device/,
    ],
    [
      "a luminaire without power",
      { luminaire: { power: undefined, drivers: 1 } },
      /the power of each luminaire/,
    ],
    ["a driver without inrush", { luminaire: { drivers: 1 } }, /inrush of the drivers in each luminaire/],
    ["a board without a loop", {}, /the impedance of the fault loop at the board/],
  ])("%s", async (_, more, missing) => {
    const { json, exit } = await checked(lit(more), "--json");
    expect(exit).not.toBe(2);
    const own = json().findings.filter((one: { code: string }) => one.code === "wiring-not-proven");
    expect(
      own.some(
        (one: { remedy: string; message: string }) =>
          missing.test(one.remedy) && one.message.includes("Lighting 1"),
      ),
    ).toBe(true);
  });
});
