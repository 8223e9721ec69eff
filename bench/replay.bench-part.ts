import { replayLog, usualParameters } from "#engine";
import { readLog } from "#exchange";
import type { BenchRow } from "./bench.ts";

const MINUTES = 365 * 24 * 60;
const DELAYS = [0, 1, 5, 10, 15, 20, 30].map((minutes) => minutes * 60);
const RUNS = 3;

/**
 * A year of minutes as a CSV log, read and replayed with seven delays.
 *
 * @returns Seconds for both together
 */
export async function rows(): Promise<readonly BenchRow[]> {
  const text = year();
  const times: number[] = [];
  for (let run = 0; run < RUNS; run++) {
    const start = performance.now();
    const read = readLog(text);
    if ("problems" in read) throw new Error("The log of the bench cannot be read.");
    replayLog({
      log: read.log,
      devices: [{ id: "d", parameters: usualParameters }],
      delays: DELAYS,
      still: 600,
    });
    times.push((performance.now() - start) / 1000);
  }
  const seconds = times.toSorted((a, b) => a - b)[RUNS >> 1] as number;
  return [
    {
      what: `A year of one-minute rows (${(text.length / 1e6).toFixed(0)} MB of CSV) read and replayed with ${DELAYS.length} delays`,
      ours: `${seconds.toFixed(2)} s`,
      other: "5 s",
      ratio: `${(5 / seconds).toFixed(1)} times faster`,
      goal: "under 5 s",
    },
  ];
}

/** Stays and absences of a fixed random row, about half of the time each: more than any office has. */
function year(): string {
  let state = 20_260_501;
  const draw = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  const lines = ["time,occupied"];
  let there = false;
  let left = 0;
  for (let minute = 0; minute < MINUTES; minute++) {
    if (left-- <= 0) {
      there = !there;
      left = Math.ceil(-Math.log(1 - draw()) * 50);
    }
    const time = new Date(Date.UTC(2026, 0, 1) + minute * 60_000).toISOString().slice(0, 19);
    lines.push(`${time.replace("T", " ")},${there ? 1 : 0}`);
  }
  return lines.join("\n");
}
