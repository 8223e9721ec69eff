import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { usualParameters } from "../control/index.ts";
import { type LogReplayTask, presenceOf, replayLog, replayRows } from "./index.ts";

const minute = 60;
const automatic = { id: "A", parameters: usualParameters };
const semiAutomatic = { id: "A", parameters: { ...usualParameters, mode: "semi-automatic" as const } };

const task = (occupied: readonly boolean[], more: Partial<LogReplayTask> = {}): LogReplayTask => ({
  log: { times: occupied.map((_, i) => i * minute), occupied, step: minute, longestStep: 5 * minute },
  devices: [automatic],
  delays: [0],
  still: 0,
  ...more,
});

/** Rows in stretches, so that pauses of all lengths occur. */
const rows = fc
  .array(fc.tuple(fc.boolean(), fc.integer({ min: 1, max: 40 })), { minLength: 1, maxLength: 30 })
  .map((stretches) => stretches.flatMap(([there, length]) => Array.from({ length }, () => there)));
const kinds = fc.constantFrom([automatic], [semiAutomatic], [automatic, { ...semiAutomatic, id: "B" }]);

describe("controllers run over a log [LOG-REPLAY] [CONTROL-MACHINE]", () => {
  test("one occupied minute and a delay of five light six minutes", () => {
    const occupied = [false, true, ...Array.from({ length: 20 }, () => false)];
    const { span, recorded, results } = replayLog(task(occupied, { delays: [0, 5 * minute, 90] }));
    expect([span, recorded]).toEqual([22 * minute, 22 * minute]);
    expect(results.map(({ used }) => used.litHours * 60)).toEqual(
      [1, 6, 2.5].map((x) => expect.closeTo(x, 9)),
    );
    expect(results.map(({ used }) => used.cycles)).toEqual([1, 1, 1]);
    expect(results.map(({ rows: counted }) => counted?.litRows)).toEqual([1, 6, undefined]);
    expect(results[1]!.saving).toBeCloseTo(1 - 6 / 22, 9);
    // 1 W for six minutes.
    expect(results[1]!.used.energy).toBeCloseTo(0.0001, 12);
    // At a background level of a tenth it draws that for the other sixteen minutes.
    const low = replayLog(task(occupied, { delays: [5 * minute], background: 0.1 })).results[0]!;
    expect(low.used.energy).toBeCloseTo((6 + 1.6) / 60 / 1000, 12);
    expect(low.saving).toBeCloseTo(1 - 7.6 / 22, 9);
  });

  test("in rows of one step the simulation is the plain count of rows, whatever the mode", () => {
    fc.assert(
      fc.property(rows, kinds, fc.integer({ min: 0, max: 30 }), (occupied, devices, delay) => {
        const [result] = replayLog(task(occupied, { devices, delays: [delay * minute] })).results;
        const counted = replayRows(occupied, delay);
        expect(result!.rows).toEqual(counted);
        expect(result!.used.cycles).toBe(counted.offEvents);
        expect(result!.used.litHours * 60).toBeCloseTo(counted.litRows, 6);
      }),
      { seed: 20260501, numRuns: 200 },
    );
  });

  test("a clock that rounds to the second before or after changes nothing", () => {
    fc.assert(
      fc.property(rows, fc.array(fc.integer({ min: -1, max: 1 })), (occupied, off) => {
        const even = task(occupied, { delays: [0, minute, 5 * minute] });
        const times = even.log.times.map((time, i) =>
          i === 0 ? 0 : time + (off[i % (off.length || 1)] ?? 0),
        );
        expect(replayLog({ ...even, log: { ...even.log, times } })).toEqual(replayLog(even));
      }),
      { seed: 20260502, numRuns: 100 },
    );
  });

  test("off while somebody is there: the pauses that outlast the delay and not the sitting still; none if the log is taken at its word", () => {
    fc.assert(
      fc.property(
        rows,
        fc.integer({ min: 0, max: 20 }),
        fc.integer({ min: 0, max: 20 }),
        (occupied, delay, still) => {
          const early = (seconds: number): number =>
            replayLog(task(occupied, { delays: [delay * minute], still: seconds })).results[0]!.used
              .offWhileOccupied;
          const pauses = occupied
            .map((there) => (there ? "x" : "-"))
            .join("")
            .replace(/^-+|-+$/g, "")
            .split(/x+/)
            .map((pause) => pause.length);
          expect(early(still * minute)).toBe(
            pauses.filter((pause) => pause > delay && pause <= still).length,
          );
          expect(early(0)).toBe(0);
        },
      ),
      { seed: 20260503, numRuns: 100 },
    );
  });

  test("in a gap nobody is there, and neither is the reference: its last row counts one step", () => {
    const times = [0, 60, 120, 3720, 3780];
    const log = { times, occupied: [true, true, true, false, true], step: minute, longestStep: 300 };
    const { span, recorded, results } = replayLog(task([], { log, delays: [0, 300] }));
    expect([span, recorded]).toEqual([3840, 300]);
    expect(results.map(({ used }) => used.litHours * 60)).toEqual([4, 9].map((x) => expect.closeTo(x, 9)));
    expect(presenceOf(times, log.occupied, { longestStep: 300, lastsFor: 60 })).toEqual([
      [0, 180],
      [3780, 3840],
    ]);
  });

  test("light in the log is the lamps' own too: a threshold changes nothing", () => {
    const occupied = [true, false, false, true];
    const dim = { id: "A", parameters: { ...usualParameters, threshold: 1 } };
    expect(replayLog(task(occupied, { devices: [dim] }))).toEqual(replayLog(task(occupied)));
  });

  test("rows closer together than the usual step are taken as they stand", () => {
    const times = [0, 58.5, 59.5, 120];
    const log = { times, occupied: [true, false, true, false], step: minute, longestStep: 300 };
    const [result] = replayLog(task([], { log, delays: [0] })).results;
    expect(result!.used.cycles).toBe(2);
    expect(result!.used.litHours * 3600).toBeCloseTo(119, 0);
  });
});
