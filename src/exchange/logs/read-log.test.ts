import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { replayRows, sentenceOf } from "#engine";
import { realFiles } from "../../../test/real-files.ts";
import { momentOf } from "./moment.ts";
import { type PresenceLog, type ReadLogOptions, readLog } from "./read-log.ts";

const read = (text: string, options?: ReadLogOptions): PresenceLog => {
  const result = readLog(text, options);
  if ("problems" in result) throw new Error(result.problems.map(sentenceOf).join("\n"));
  return result.log;
};
const faults = (text: string, options?: ReadLogOptions): (readonly [string, unknown])[] => {
  const result = readLog(text, options);
  return "problems" in result ? result.problems.map(({ code, values }) => [code, values.line] as const) : [];
};

describe("what is read", () => {
  const plain = "time,light,occupancy\n2026-03-31 10:00:00,5,0\n2026-03-31 10:01:00,7.5,1\n";
  test("plain rows", () => {
    expect(read(plain)).toEqual({
      times: [0, 60],
      occupied: [false, true],
      light: [5, 7.5],
      step: 60,
      longestStep: 300,
      timeOfDay: 36_000,
      begins: "2026-03-31 10:00:00",
      notes: [],
    });
  });
  test("quotes, a byte-order mark, other line ends and empty lines change nothing", () => {
    const quoted = `\ufeff${plain.replace(/[^,\n]+/g, (field) => `"${field}"`)}`;
    expect(read(quoted)).toEqual(read(plain));
    expect(read(plain.replaceAll("\n", "\r\n"))).toEqual(read(plain));
    expect(read(plain.replaceAll("\n", "\r"))).toEqual(read(plain));
    expect(read(`\n${plain.replaceAll("\n", "\n\n")}`)).toEqual(read(plain));
  });
  test("semicolons with decimal commas, days first or months first", () => {
    const log = read("Datum;Helligkeit;belegt\n31.03.2026 10:00;7,5;1\n31.03.2026 10:01;8;0\n");
    expect(log).toMatchObject({ times: [0, 60], light: [7.5, 8], occupied: [true, false] });
    const month = read("time;occupied\n03/31/2026 10:00;1\n03/31/2026 10:05;0", { dayOrder: "month-first" });
    expect(month.times).toEqual([0, 300]);
  });
  test("a header one column short: the first field counts the rows, and it is said", () => {
    const log = read('"date","occupancy"\n"1","2026-03-31 10:00:00",1\n"2","2026-03-31 10:01:00",0\n');
    expect(log.occupied).toEqual([true, false]);
    expect(log.notes.map(({ code }) => code)).toEqual(["log-header-short"]);
  });
  test("a gap is noted with its line", () => {
    const row = (minute: string): string => `2026-03-31 ${minute},1\n`;
    const log = read(`time,occupied\n${["10:00", "10:01", "10:02", "10:03", "11:00"].map(row).join("")}`);
    expect(log.notes).toEqual([{ code: "log-gap", values: { line: 6, minutes: 57 } }]);
  });
  test("the clock set back in autumn follows on, once", () => {
    const row = (minute: string): string => `2026-10-25 ${minute},1\n`;
    const night = ["02:57", "02:58", "02:59", "02:00", "02:01"].map(row).join("");
    const log = read(`time,occupied\n${night}`);
    expect(log.times).toEqual([0, 60, 120, 180, 240]);
    expect(log.notes).toEqual([{ code: "log-clock-set-back", values: { line: 5, minutes: 60 } }]);
    expect(faults(`time,occupied\n${night}${row("01:02")}`)).toEqual([["log-time-backwards", 7]]);
  });
  test("times with a zone, leap days, and days that do not exist", () => {
    expect(momentOf("1970-01-01 00:01", "day-first")).toBe(60);
    expect(momentOf("2000-03-01T00:00:00Z", "day-first")).toBe(951_868_800);
    expect(momentOf("2000-03-01T01:00:00+01:00", "day-first")).toBe(951_868_800);
    expect(momentOf("2024-02-29 00:00", "day-first")).toBeDefined();
    for (const wrong of [
      "2023-02-29 00:00",
      "2026-13-01 00:00",
      "2026-03-31 24:00",
      "2026-03-31 10:60",
      "yesterday",
      "",
    ])
      expect(momentOf(wrong, "day-first")).toBeUndefined();
  });
});

describe("what is refused, with its line", () => {
  const head = "time,light,occupancy\n2026-03-31 10:00,5,0\n";
  test.each([
    ["", "log-empty", undefined],
    ["time,occupancy\n", "log-empty", undefined],
    ["when,light\n1,2\n", "log-column-missing", 1],
    [`${head}2026-03-31 10:01,5\n`, "log-row-width", 3],
    [`${head}31 March,5,0\n`, "log-time-unreadable", 3],
    [`${head}2026-03-31 10:01,bright,0\n`, "log-value-unreadable", 3],
    [`${head}2026-03-31 10:01,5,maybe\n`, "log-value-unreadable", 3],
    [`${head}2026-03-31 10:00,5,0\n`, "log-time-backwards", 3],
    [`${head}"2026-03-31 10:01,5,0\n`, "log-quote-open", 3],
  ] as const)("%j: %s", (text, code, line) => {
    expect(faults(text)[0]).toEqual([code, line]);
  });
  test("a field over two lines counts both", () => {
    expect(faults('time,note,occupancy\n2026-03-31 10:00,"a\nb",0\n2026-03-31 10:01,c,x\n')).toEqual([
      ["log-value-unreadable", 4],
    ]);
  });
  test("a column that was named and is not there", () => {
    expect(faults(head, { light: "sun" })).toEqual([["log-column-missing", 1]]);
  });
  test("a file of another kind lists twenty faults and stops; one that is too large is not read", () => {
    expect(faults(`time,occupancy\n${"x,y\n".repeat(500)}`).length).toBeLessThanOrEqual(22);
    expect(faults("x".repeat(100_000_001))).toEqual([["log-too-large", undefined]]);
  });
});

test("whatever is done to a log, it is read or refused in a sentence, and times ascend", () => {
  const rows = Array.from(
    { length: 40 },
    (_, i) => `"${i}","2026-03-31 10:${String(i).padStart(2, "0")}:00",${i * 3.5},${i % 3 ? 1 : 0}`,
  );
  const good = `"date","light","occupancy"\n${rows.join("\n")}\n`;
  const scrap = fc.constantFrom(
    '"',
    ",",
    ";",
    "\n",
    "\r",
    "\ufeff",
    "0",
    "-",
    ":",
    "=1+1",
    " ",
    "\u0000",
    "é",
    "9".repeat(30),
    '""',
    "\t",
  );
  const change = fc.record({ at: fc.nat(good.length), cut: fc.integer({ min: 0, max: 30 }), put: scrap });
  let refused = 0;
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 6 }), (changes) => {
      const text = changes.reduce((t, { at, cut, put }) => t.slice(0, at) + put + t.slice(at + cut), good);
      const result = readLog(text);
      if ("problems" in result) {
        refused++;
        expect(result.problems.length).toBeGreaterThan(0);
        for (const problem of result.problems)
          expect(sentenceOf(problem)).not.toMatch(/\{\w+\}|undefined|NaN/);
      } else {
        const { times, occupied } = result.log;
        expect(occupied.length).toBe(times.length);
        times.forEach((time, i) => {
          expect(Number.isFinite(time)).toBe(true);
          if (i > 0) expect(time).toBeGreaterThan(times[i - 1]!);
        });
      }
    }),
    { seed: 20260420, numRuns: 1500 },
  );
  expect(refused).toBeGreaterThan(300);
  expect(refused).toBeLessThan(1500);
});

const folder = realFiles("occupancy");
describe("real logs of an office, replayed row by row [LOG-REPLAY]", () => {
  // Certificate: counted from the published files by the rule of LOG-REPLAY; whole numbers, no tolerance.
  const counts = {
    "office-datatraining.txt": {
      rows: 8143,
      lit: [1729, 1749, 1813, 1868, 1910, 1950, 2005],
      off: [20, 19, 12, 10, 8, 8, 4],
    },
    "office-datatest.txt": {
      rows: 2665,
      lit: [972, 985, 1021, 1043, 1063, 1083, 1109],
      off: [13, 12, 5, 4, 4, 4, 2],
    },
    "office-datatest2.txt": {
      rows: 9752,
      lit: [2049, 2073, 2140, 2199, 2254, 2309, 2414],
      off: [24, 21, 13, 11, 11, 11, 9],
    },
  };
  const present = folder ? readdirSync(folder) : [];
  for (const [name, expected] of Object.entries(counts))
    test.skipIf(!present.includes(name))(name, () => {
      const log = read(readFileSync(`${folder}/${name}`, "utf8"));
      expect(log.times.length).toBe(expected.rows);
      const delays = [0, 1, 5, 10, 15, 20, 30].map((rows) => replayRows(log.occupied, rows));
      expect(delays.map(({ litRows }) => litRows)).toEqual(expected.lit);
      expect(delays.map(({ offEvents }) => offEvents)).toEqual(expected.off);
      const lux = log.light!.filter((_, i) => log.occupied[i]);
      const means: Record<string, number> = {
        "office-datatraining.txt": 459.854,
        "office-datatest.txt": 499.596,
        "office-datatest2.txt": 492.264,
      };
      expect(lux.reduce((a, b) => a + b, 0) / lux.length).toBeCloseTo(means[name]!, 2);
    });
});
