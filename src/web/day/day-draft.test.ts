import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { daySeconds, type Stay, simulateDay, switchedLoads } from "#engine";
import { dayAnswer } from "../calculate/day-answer.ts";
import type { DayLog } from "../calculate/day-protocol.ts";
import { clockIn, clockText, spanText } from "./clock.ts";
import {
  chanceDays,
  emptied,
  inputOfDay,
  inputOfDelays,
  usualChance,
  usualDay,
  withRow,
  withSource,
} from "./day-draft.ts";
import { flagsOfDay, flagWords } from "./day-flags.ts";
import { addedStay, drawnStay, keyedStay, movedStay, replaced } from "./stay-edit.ts";

const site = {
  rooms: [{ id: "r", use: "sitting" }],
  openings: [{ id: "o", kind: "window", rooms: ["r", null] }],
  detectors: [
    { id: "a", tag: "B1", room: "r", controls: ["r"], model: "m" },
    { id: "b", tag: "B2", room: "r", controls: ["r"], model: "m" },
  ],
  luminaires: [],
  models: [],
} as unknown as Parameters<typeof usualDay>[0] & Parameters<typeof switchedLoads>[0];
const load = switchedLoads(site, new Map([["a", { offDelay: 300 }]]))[0]!;

/** A night, then somebody from 8:00 to 8:02, away for four minutes, back until 8:10, on two days running. */
const csv = ["2026-03-30", "2026-03-31"]
  .flatMap((date) =>
    Array.from({ length: 24 * 60 }, (_, i) => {
      const minute = i - 480;
      const there = (minute >= 0 && minute < 2) || (minute >= 6 && minute < 10);
      const clock = `${String(Math.floor(i / 60)).padStart(2, "0")}:${String(i % 60).padStart(2, "0")}:00`;
      return `${date} ${clock},${there ? 1 : 0}`;
    }),
  )
  .slice(5 * 60);
function log(lines: readonly string[] = csv): DayLog {
  const answer = dayAnswer({
    ask: "log",
    bytes: new TextEncoder().encode(`time,occupied\n${lines.join("\n")}\n`).buffer as ArrayBuffer,
  });
  if (answer.tell !== "log") throw new Error(JSON.stringify(answer));
  return answer.log;
}

describe("a day of a load", () => {
  test("begins with the usual day of its rooms, and with daylight where there is a window", () => {
    const draft = usualDay(site, load);
    expect(Object.keys(draft.rows)).toEqual(["a", "b"]);
    expect(draft.daylight).toBeDefined();
    expect(draft.still).toBeGreaterThan(0);
    expect(usualDay({ ...site, openings: [] }, load).daylight).toBeUndefined();
  });

  test("changed by hand it is drawn, and other rows stay", () => {
    const draft = usualDay(site, load);
    const next = withRow(draft, "a", [{ from: 5000, to: 4000, what: "somebody" }]);
    expect([next.source.kind, next.rows.a, next.rows.b]).toEqual(["hand", [], draft.rows.b]);
    expect(Object.values(emptied(draft).rows)).toEqual([[], []]);
  });

  test("chance is drawn for each detector apart, one day on show and many to try delays on", () => {
    const draft = withSource(usualDay(site, load), usualChance.turns, { site, load });
    expect(draft.rows.a).not.toEqual(draft.rows.b);
    const many = inputOfDelays(draft, { site, load });
    expect(many.days).toBe(chanceDays);
    // The day on show is the first of the many.
    expect(many.rows.a!.filter(({ from }) => from < daySeconds)).toEqual(draft.rows.a);
    const again = withSource({ ...draft, seed: 2 }, draft.source, { site, load });
    expect(again.rows.a).not.toEqual(draft.rows.a);
  });

  test("a log is shown day by day, by the clock it was written with, and its pauses are somebody sitting still", () => {
    const read = log();
    expect(read).toMatchObject({ days: 2, step: 60, begins: "2026-03-30 05:00:00", timeOfDay: 5 * 3600 });
    const draft = withSource(
      usualDay(site, load),
      { kind: "log", file: "log.csv", log: read, day: 1 },
      { site, load },
    );
    const morning = [
      { from: 8 * 3600, to: 8 * 3600 + 120, what: "somebody" },
      { from: 8 * 3600 + 360, to: 8 * 3600 + 600, what: "somebody" },
    ];
    expect(draft.rows).toEqual({ a: morning, b: morning });
    const input = inputOfDay({ ...draft, tried: 60 });
    // Four minutes of pause outlast a delay of one: somebody sits in the dark from 8:03 to 8:06.
    const { faults } = simulateDay(load, input);
    expect(faults.map(({ code, from, to }) => [code, from - 8 * 3600, to - 8 * 3600])).toEqual([
      ["switched-off-while-occupied", 180, 360],
    ]);
    expect(simulateDay(load, { ...input, bridge: 0 }).faults).toEqual([]);
  });

  test("a log that is none is refused with its line, and a replay has a delay for every one that is tried", () => {
    const bytes = new TextEncoder().encode("time,occupied\nyesterday,1\n").buffer as ArrayBuffer;
    expect(dayAnswer({ ask: "log", bytes })).toMatchObject({
      tell: "refused",
      problems: [{ code: "log-time-unreadable", values: { line: 2 } }],
    });
    const answer = dayAnswer({ ask: "replay", load, log: log(), still: 600 });
    if (answer.tell !== "replay") throw new Error(answer.tell);
    expect(answer.replayed.run.results.map(({ delay }) => delay / 60)).toEqual([0, 1, 5, 10, 15, 20, 30]);
    expect(answer.replayed.recommended.delay).toBe(300);
  });

  test("flags name the detector, the time and how long; joined contacts say who holds whom", () => {
    const rows = { a: [{ from: 32_400, to: 36_000, what: "somebody" as const }] };
    const input = { ...inputOfDay(usualDay(site, load)), still: 1200, daylight: undefined };
    const dark = flagsOfDay(load, simulateDay(load, { ...input, rows, offDelay: 60 }));
    expect(dark.length).toBeGreaterThan(0);
    expect(flagWords(dark[0]!)).toMatch(/^09:\d\d: dark for .+ with somebody there \(B1\)$/);
    const held = flagsOfDay(load, simulateDay(load, { ...input, still: 0, rows: { ...rows, b: rows.a } }));
    expect(held.map(flagWords)).toEqual(["10:05: B2 keeps the light on after B1 let go, 5 min in all"]);
  });
});

describe("stays under the hand", () => {
  const stay = fc
    .tuple(fc.integer({ min: 0, max: daySeconds - 60 }), fc.integer({ min: 60, max: 20_000 }))
    .map(([from, length]): Stay => ({ from, to: Math.min(daySeconds, from + length), what: "somebody" }))
    .filter(({ from, to }) => to - from >= 60);

  test("moved and stretched they keep within the day and at least a minute long; moving keeps their length", () => {
    const part = fc.constantFrom("whole" as const, "from" as const, "to" as const);
    fc.assert(
      fc.property(stay, part, fc.integer({ min: -90_000, max: 90_000 }), (one, held, by) => {
        const next = movedStay(one, held, by);
        expect(next.from).toBeGreaterThanOrEqual(0);
        expect(next.to).toBeLessThanOrEqual(daySeconds);
        expect(next.to - next.from).toBeGreaterThanOrEqual(60);
        if (held === "whole") expect(next.to - next.from).toBe(one.to - one.from);
        if (held === "from") expect(next.to).toBe(one.to);
        if (held === "to") expect(next.from).toBe(one.from);
      }),
      { seed: 51, numRuns: 200 },
    );
  });

  test("drawn in either direction they are the same, and what has no length is none", () => {
    expect(drawnStay(36_010, 32_390, 300)).toEqual({ from: 32_400, to: 36_000, what: "somebody" });
    expect(drawnStay(32_390, 36_010, 300)).toEqual(drawnStay(36_010, 32_390, 300));
    expect(drawnStay(32_400, 32_410, 300)).toBeUndefined();
    expect(addedStay(daySeconds)).toEqual({ from: daySeconds - 1800, to: daySeconds, what: "somebody" });
  });

  test("arrows move, Shift and arrows stretch, Delete takes away, other keys do nothing", () => {
    const one: Stay = { from: 32_400, to: 36_000, what: "somebody" };
    const key = (name: string, shiftKey = false) => keyedStay(one, { key: name, shiftKey });
    expect(key("ArrowRight")).toEqual({ next: { ...one, from: 32_700, to: 36_300 } });
    expect(key("ArrowLeft", true)).toEqual({ next: { ...one, to: 35_700 } });
    expect(key("Delete")).toEqual({ next: undefined });
    expect(key("a")).toBeUndefined();
    expect(replaced([one, one], 0, undefined)).toEqual([one]);
  });
});

describe("times as they are shown and typed", () => {
  test.each([
    [0, "00:00"],
    [34_499, "09:34"],
    [daySeconds, "24:00"],
  ])("%d s of the day is %s", (time, text) => expect(clockText(time)).toBe(text));
  test.each([
    ["09:34", 34_440],
    ["24:00", daySeconds],
    ["24:01", undefined],
    ["9:60", undefined],
    ["noon", undefined],
  ])("%s is %s", (text, time) => expect(clockIn(text)).toBe(time));
  test.each([
    [45, "45 s"],
    [90, "2 min"],
    [7200, "2 h"],
    [12_000, "3 h 20 min"],
  ])("%d s is %s", (time, text) => expect(spanText(time)).toBe(text));
});
