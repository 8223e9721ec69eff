import { existsSync } from "node:fs";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { realFiles } from "../../test/real-files.ts";
import { handWritten } from "./jobs.fixture.ts";
import { runHere } from "./run-here.fixture.ts";

/** Somebody from 8:00 to 8:10, away for four minutes, back until 8:20, then nobody until 9:00. */
const morning = Array.from({ length: 60 }, (_, i) => {
  const there = i < 10 || (i >= 14 && i < 20);
  return `2026-03-31 08:${String(i).padStart(2, "0")}:00,${there ? 1 : 0}`;
});
const log = `time,occupied\n${morning.join("\n")}\n`;

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "roomwake-replay-"));
  await writeFile(join(folder, "annex.job.json"), JSON.stringify(handWritten));
  await writeFile(join(folder, "empty.job.json"), JSON.stringify({ ...handWritten, detectors: [] }));
  await writeFile(join(folder, "log.csv"), log);
  await writeFile(
    join(folder, "bad.csv"),
    log.replace("08:05:00,1", "yesterday,1").replace("08:06:00,1", "08:06:00,x"),
  );
  await writeFile(join(folder, "other.csv"), "name,size\nHall,15\n");
  await writeFile(join(folder, "gap.csv"), `${log}2026-03-31 11:00:00,0\n`);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const told = (...words: readonly string[]) => runHere(folder, ["replay", ...words]);

interface DelayJson {
  readonly minutes: number;
  readonly litHours: number;
  readonly switchOffs: number;
  readonly switchOffsWhileThere: number;
  readonly energy: number | null;
  readonly spared: number;
  readonly rows: { readonly lit: number; readonly switchOffs: number } | null;
}
interface LoadJson {
  readonly rooms: readonly string[];
  readonly devices: readonly {
    readonly tag: string;
    readonly mode: string;
    readonly offMinutes: number;
    readonly derived: readonly string[];
  }[];
  readonly power: number | null;
  readonly reference: { readonly litHours: number; readonly energy: number | null };
  readonly delays: readonly DelayJson[];
  readonly recommended: { readonly minutes: number | null; readonly code: string };
  readonly assumptions: readonly string[];
}

async function loads(...words: readonly string[]): Promise<readonly LoadJson[]> {
  const { exit, out } = await told(...words, "--json");
  expect(exit).toBe(0);
  return JSON.parse(out).loads;
}

let jobs = 0;
/** The annex with other detectors in it, or other luminaires. */
async function annex(more: object): Promise<string> {
  const file = `annex-${++jobs}.job.json`;
  await writeFile(join(folder, file), JSON.stringify({ ...handWritten, ...more }));
  return file;
}
const detector = (id: string, settings?: object) => ({
  id,
  tag: id.toUpperCase(),
  room: "hall",
  model: "round-8",
  at: [2.5, 1.5],
  ...(settings && { settings }),
});

describe("bad input is refused with its code", () => {
  test.each([
    [["annex.job.json"], ["command-wrong"]],
    [["--log", "log.csv"], ["command-wrong"]],
    [["annex.job.json", "more", "--log", "log.csv"], ["command-wrong"]],
    [["annex.job.json", "--log", "log.csv", "--still", "-1"], ["command-wrong"]],
    [["annex.job.json", "--log", "log.csv", "--still", "long"], ["command-wrong"]],
    [["annex.job.json", "--log", "log.csv", "--still", ""], ["command-wrong"]],
    [["annex.job.json", "--log", "nowhere.csv"], ["file-unreadable"]],
    [["nowhere.job.json", "--log", "log.csv"], ["file-unreadable"]],
    [["annex.job.json", "--log", "log.csv", "--device", "B9"], ["detector-unknown"]],
    [["empty.job.json", "--log", "log.csv"], ["replay-without-detector"]],
    [
      ["annex.job.json", "--log", "bad.csv"],
      ["log-time-unreadable", "log-value-unreadable"],
    ],
    [["annex.job.json", "--log", "annex.job.json"], ["log-empty"]],
    [
      ["annex.job.json", "--log", "other.csv"],
      ["log-column-missing", "log-column-missing"],
    ],
  ])("%j → %j", async (words, codes) => {
    const { exit, out, notes } = await told(...words, "--json");
    expect([exit, notes]).toEqual([2, ""]);
    expect(JSON.parse(out).problems.map((one: { readonly code: string }) => one.code)).toEqual(codes);
  });
});

describe("what a morning in one room says", () => {
  test("lit hours, switch-offs, and those on somebody who sits still, delay by delay", async () => {
    const [load] = await loads("annex.job.json", "--log", "log.csv");
    const column = <Name extends keyof DelayJson>(name: Name) => load!.delays.map((one) => one[name]);
    expect(column("minutes")).toEqual([0, 1, 5, 10, 15, 20, 30]);
    // 16 minutes there; the pause of four is bridged from five on.
    const lit = [16, 18, 25, 30, 35, 40, 50];
    expect(column("litHours")).toEqual(lit.map((minutes) => expect.closeTo(minutes / 60, 3)));
    expect(column("switchOffs")).toEqual([2, 2, 1, 1, 1, 1, 1]);
    expect(column("switchOffsWhileThere")).toEqual([1, 1, 0, 0, 0, 0, 0]);
    expect(column("spared")).toEqual(lit.map((minutes) => expect.closeTo(1 - minutes / 60, 4)));
    expect(column("rows").map((rows) => rows?.lit)).toEqual(lit);
    expect(load!.reference).toMatchObject({ litHours: 1, energy: null });
    expect(load!.recommended).toMatchObject({ minutes: 5, code: "delay-recommended" });
  });

  test("taken at its word, a log puts nobody in the dark", async () => {
    const [load] = await loads("annex.job.json", "--log", "log.csv", "--still", "0");
    expect(load!.delays.map((one) => one.switchOffsWhileThere)).toEqual([0, 0, 0, 0, 0, 0, 0]);
    expect(load!.assumptions).toContain("the log is taken at its word: an empty row is an empty room");
  });

  test("a contact that bears few cycles wants a longer delay, and none may do", async () => {
    const model = handWritten.models[0];
    const worn = (life: number) => annex({ models: [{ ...model, contact: { rated: {}, life } }] });
    // An hour like this all year: two switch-offs are 17 520 a year, one is 8 760.
    const [long] = await loads(await worn(90_000), "--log", "log.csv", "--still", "0");
    expect(long!.recommended.minutes).toBe(5);
    expect(long!.assumptions).toContain("contacts that bear 90000 cycles serve for 10 years");
    const [none] = await loads(await worn(80_000), "--log", "log.csv");
    expect(none!.recommended).toMatchObject({ minutes: null, code: "no-delay-fits" });
  });

  test("energy is known where every luminaire's power is", async () => {
    const lamp = { room: "hall", at: [1, 1] };
    const known = await annex({
      luminaires: [
        { id: "a", ...lamp, power: 40 },
        { id: "b", ...lamp, power: 20 },
      ],
    });
    const [load] = await loads(known, "--log", "log.csv");
    expect([load!.power, load!.reference.energy]).toEqual([60, 0.06]);
    // 30 of 60 minutes at 60 W.
    expect(load!.delays[3]).toMatchObject({ energy: 0.03, spared: 0.5 });
    const half = await annex({
      luminaires: [
        { id: "a", ...lamp, power: 40 },
        { id: "b", ...lamp },
      ],
    });
    const [unknown] = await loads(half, "--log", "log.csv");
    expect([unknown!.power, unknown!.reference.energy, unknown!.delays[3]!.energy]).toEqual([
      null,
      null,
      null,
    ]);
    expect(unknown!.assumptions).toContain("load not known: the power of 1 of 2 luminaires is missing");
    const { out } = await told(half, "--log", "log.csv");
    expect(out).toMatch(/always lit +1\.0 h .*not known/);
  });

  test("a gap is no part of the reference, and is said", async () => {
    const { exit, out } = await told("annex.job.json", "--log", "gap.csv", "--json");
    const { log: read, findings, loads: found } = JSON.parse(out);
    expect(exit).toBe(0);
    expect(read).toMatchObject({
      rows: 61,
      step: 60,
      hours: expect.closeTo(181 / 60, 3),
      recordedHours: expect.closeTo(61 / 60, 3),
    });
    expect(found[0].reference.litHours).toBeCloseTo(61 / 60, 3);
    expect(findings.map((one: { readonly code: string }) => one.code)).toEqual(["log-gap"]);
  });
});

describe("the settings of the job", () => {
  test("what nobody entered is derived and printed so, what was entered is not", async () => {
    const [plain] = await loads("annex.job.json", "--log", "log.csv");
    const both = ["mode", "offDelay"];
    expect(plain!.devices).toEqual([
      { id: "d1", tag: "B1.01", mode: "automatic", offMinutes: 5, derived: both },
    ]);
    const { out } = await told("annex.job.json", "--log", "log.csv");
    expect(out).toContain("B1.01 (automatic, derived; delay 5 min, derived)");
    expect(out).toMatch(/^5 min \(set\) /m);
    // A plant room's derived delay is another: 20 min.
    const rooms = handWritten.rooms.map((room) => ({ ...room, use: "plant" }));
    const [plant] = await loads(await annex({ rooms }), "--log", "log.csv");
    expect(plant!.devices).toMatchObject([{ offMinutes: 20, derived: both }]);
    expect(plain!.assumptions).toEqual(
      expect.arrayContaining([
        "B1.01: mode not entered, derived as automatic",
        "B1.01: off delay not entered; 5 min, as derived, is among those tried",
      ]),
    );
    const set = await annex({ detectors: [detector("x", { mode: "automatic", offDelay: 150 })] });
    const [load] = await loads(set, "--log", "log.csv");
    expect(load!.devices).toEqual([{ id: "x", tag: "X", mode: "automatic", offMinutes: 2.5, derived: [] }]);
    expect(load!.assumptions.filter((one) => /not entered/.test(one))).toEqual([]);
    expect(load!.delays.map((one) => one.minutes)).toEqual([0, 1, 2.5, 5, 10, 15, 20, 30]);
    // Two and a half rows are no number of rows; the simulation lights 16 + 2 · 2.5 minutes.
    expect(load!.delays[2]).toMatchObject({ rows: null, litHours: 0.35 });
    expect((await told(set, "--log", "log.csv")).out).toMatch(/^2\.5 min \(set\) /m);
  });

  test("what a log cannot show is said of every setting that needs it", async () => {
    const chosen = {
      mode: "semi-automatic",
      offDelay: 300,
      impulse: { pulse: 1, pause: 9 },
      brightnessThreshold: 200,
      soundSensitivity: "low",
    };
    const job = await annex({ detectors: [detector("x", chosen), detector("y", { ...chosen })] });
    const [load] = await loads(job, "--log", "log.csv");
    expect(load!.assumptions.slice(0, 4)).toEqual([
      "X, Y: whoever comes into the dark is taken to press the button; the log does not show it",
      "X, Y: its brightness threshold is left out, as if it were always dark",
      "X, Y: the timer that its impulse drives is taken to run for the delay tried",
      "X, Y: what it hears is not in the log",
    ]);
    const [automatic] = await loads("annex.job.json", "--log", "log.csv");
    expect(load!.delays).toEqual(automatic!.delays);
  });

  test("a slave switches nothing beside its master; alone it is replayed as if it did", async () => {
    const both = await annex({
      detectors: [detector("m", { groupRole: "master" }), detector("s", { groupRole: "slave" })],
    });
    const [load] = await loads(both, "--log", "log.csv");
    expect(load!.devices.map(({ tag }) => tag)).toEqual(["M"]);
    expect(load!.assumptions[0]).toMatch(/^S: a slave, which notices nothing/);
    const [alone] = await loads(both, "--log", "log.csv", "--device", "s");
    expect(alone!.devices.map(({ tag }) => tag)).toEqual(["S"]);
    expect(alone!.assumptions[0]).toMatch(/^S: a slave, replayed as if/);
  });

  test("detectors of the same rooms are one load, others are loads of their own", async () => {
    const store = { ...detector("z"), room: "store", at: [2, 5] };
    const job = await annex({ detectors: [detector("x"), detector("y"), store] });
    const found = await loads(job, "--log", "log.csv");
    expect(found.map(({ rooms, devices }) => [rooms, devices.map(({ tag }) => tag)])).toEqual([
      [["hall"], ["X", "Y"]],
      [["store"], ["Z"]],
    ]);
    expect((await loads(job, "--log", "log.csv", "--device", "z")).map(({ rooms }) => rooms)).toEqual([
      ["store"],
    ]);
  });
});

const real = realFiles("occupancy");
describe("real logs of an office, by the command [LOG-REPLAY]", () => {
  // Certificate: counted from the published files by the rule of LOG-REPLAY; whole numbers, no tolerance. The simulation
  // prints hours to a thousandth: 0.03 min a row of one minute.
  for (const [name, lit, off] of [
    ["office-datatraining.txt", [1729, 1749, 1813, 1868, 1910, 1950, 2005], [20, 19, 12, 10, 8, 8, 4]],
    ["office-datatest.txt", [972, 985, 1021, 1043, 1063, 1083, 1109], [13, 12, 5, 4, 4, 4, 2]],
    ["office-datatest2.txt", [2049, 2073, 2140, 2199, 2254, 2309, 2414], [24, 21, 13, 11, 11, 11, 9]],
  ] as const)
    test.skipIf(!real || !existsSync(join(real, name)))(name, async () => {
      await writeFile(join(folder, name), await readFile(join(real!, name)));
      const [load] = await loads("annex.job.json", "--log", name);
      expect(load!.delays.map(({ rows }) => rows)).toEqual(
        lit.map((rows, i) => ({ lit: rows, switchOffs: off[i] })),
      );
      expect(load!.delays.map(({ switchOffs }) => switchOffs)).toEqual(off);
      load!.delays.forEach(({ litHours }, i) => {
        expect(Math.abs(litHours * 60 - lit[i]!)).toBeLessThan(0.031);
      });
    });
});
