import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sentenceOf } from "#engine";
import { jobText, jobVersion, parseJob } from "../index.ts";

const file = (extra: object): string => JSON.stringify({ format: "roomwake-job", version: 1, ...extra });
const square = [
  [0, 0],
  [4, 0],
  [4, 3],
  [0, 3],
];
const sentences = (content: unknown): readonly string[] => (parseJob(content).problems ?? []).map(sentenceOf);

describe("a hand-written file", () => {
  test("with one room and nothing else is a job with a ground floor", () => {
    const read = parseJob(file({ rooms: [{ name: "Store", outline: square }] }));
    expect(read.job?.rooms).toEqual([
      {
        id: "rooms-1",
        storey: "ground",
        number: "",
        name: "Store",
        use: "other",
        outline: square,
        holes: [],
        floor: 0,
        ceilingHeight: 2.7,
        demand: { catch: true, walk: true, hold: true },
        noDevices: [],
      },
    ]);
    expect(read.job?.storeys).toEqual([{ id: "ground", name: "Ground floor", elevation: 0 }]);
  });

  test("may draw a room clockwise, close it, and repeat a corner: it is mended with a note where something was dropped", () => {
    const read = parseJob(
      file({
        rooms: [
          {
            outline: [
              [0, 3],
              [4, 3],
              [4, 3],
              [4, 0],
              [0, 0],
              [0, 3],
            ],
          },
        ],
      }),
    );
    expect(read.job?.rooms[0]?.outline).toEqual([
      [0, 0],
      [4, 0],
      [4, 3],
      [0, 3],
    ]);
    expect((read.job ? read.notes : []).map(sentenceOf)).toEqual([
      "rooms[0]: outline repeated 2 of its corners; they were taken once.",
    ]);
  });

  test("keeps fields that are unknown here, at the top and in a record", () => {
    const read = parseJob(file({ later: { deep: [1] }, rooms: [{ outline: square, colour: "sand" }] }));
    const again = parseJob(jobText(read.job!));
    expect(again.job).toMatchObject({ later: { deep: [1] }, rooms: [{ colour: "sand" }] });
  });
});

describe("a sentence names the place in the file", () => {
  test.each([
    ["no JSON", "{", /cannot be read as JSON/],
    ["another format", JSON.stringify({ format: "x" }), /not a Roomwake job: its format is “x”/],
    ["a list", "[]", /it holds a list of 0/],
    ["version 0", file({ version: 0 }), /version 0, which never existed/],
    [
      "two corners",
      file({
        rooms: [
          { name: "A", outline: square },
          { name: "Drying room", outline: square.slice(0, 2) },
        ],
      }),
      /^rooms\[1\] “Drying room”: outline has 2 corners; a room needs at least 3\.$/,
    ],
    [
      "a bow tie",
      file({
        rooms: [
          {
            name: "A",
            outline: [
              [0, 0],
              [1, 1],
              [1, 0],
              [0, 1],
            ],
          },
        ],
      }),
      /crosses itself near \(0\.5, 0\.5\)/,
    ],
    [
      "no area",
      file({
        rooms: [
          {
            name: "A",
            outline: [
              [0, 0],
              [1, 0],
              [2, 0],
              [3, 0],
            ],
          },
        ],
      }),
      /“A”: outline encloses no area/,
    ],
    [
      "infinity",
      `{"format":"roomwake-job","rooms":[{"name":"A","outline":[[0,0],[1e999,0],[0,1]]}]}`,
      /^rooms\[0\] “A”: outline\[1\]\[0\] must be/,
    ],
    [
      "a text for a number",
      file({ rooms: [{ name: "A", outline: square, ceilingHeight: "2,7" }] }),
      /ceilingHeight must be a number, not “2,7”/,
    ],
    [
      "a use that is unknown",
      file({ rooms: [{ name: "A", outline: square, use: "hall" }] }),
      /use must be one of passing, .*, not “hall”/,
    ],
    [
      "an id given twice",
      file({
        rooms: [
          { id: "r", outline: square },
          { id: "r", outline: square },
        ],
      }),
      /^rooms\[1\] “r”: the id “r” was already given to rooms\[0\] “r”\.$/,
    ],
    [
      "an obstacle upside down",
      file({ obstacles: [{ id: "o", room: "r", footprint: square, base: 2, top: 1 }] }),
      /top \(1\) must lie above base \(2\)/,
    ],
    [
      "a hole that is one wall",
      file({
        rooms: [
          {
            name: "A",
            outline: square,
            holes: [
              [
                [1, 1],
                [2, 1],
              ],
            ],
          },
        ],
      }),
      /“A”: holes\[0\] has 2 corners/,
    ],
    ["a list that is none", file({ rooms: {} }), /^rooms: must be a list, not an object/],
    [
      "a share of 15",
      file({ defaults: { margin: { seated: 15 } } }),
      /^defaults: margin\.seated must be at most 1, not 15/,
    ],
    [
      "too many corners in one outline",
      file({
        rooms: [
          {
            name: "A",
            outline: Array.from({ length: 6000 }, (_, i) => [Math.cos(i / 955), Math.sin(i / 955)]),
          },
        ],
      }),
      /“A”: outline has 6000 corners; at most 5000/,
    ],
  ])("%s", (_, content, sentence) => {
    expect(sentences(content).join("\n")).toMatch(sentence);
  });

  test("NaN in a value that never was JSON", () => {
    expect(
      sentences({
        format: "roomwake-job",
        rooms: [
          {
            name: "A",
            outline: [
              [0, 0],
              [Number.NaN, 0],
              [0, 1],
            ],
          },
        ],
      }),
    ).toEqual(["rooms[0] “A”: outline[1][0] must be a number, not NaN."]);
  });

  test("a job of more corners than anyone draws is refused before it is looked at closely", () => {
    const outline = Array.from({ length: 5000 }, (_, i) => [i, 0]);
    expect(
      sentences({ format: "roomwake-job", rooms: Array.from({ length: 101 }, () => ({ outline })) }),
    ).toEqual(["The job has 505000 corners; at most 500000 are read."]);
  });
});

test("a file of a newer version opens for reading only, and says so", () => {
  const read = parseJob(file({ version: 7, rooms: [{ outline: square }] }));
  expect(
    read.job && { version: read.job.version, readOnly: read.readOnly, notes: read.notes.map(sentenceOf) },
  ).toEqual({
    version: 7,
    readOnly: true,
    notes: [`This job was written by a newer Roomwake (file version 7; this one writes ${jobVersion}).`],
  });
});

test("any JSON at all gives a job or problems, never an exception", () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.jsonValue(), (rooms, models) => {
      for (const content of [
        rooms,
        { format: "roomwake-job", rooms, models },
        { format: "roomwake-job", rooms: [rooms], models: [models] },
      ]) {
        const read = parseJob(content);
        expect(read.job !== undefined || read.problems.length > 0).toBe(true);
      }
    }),
    { seed: 20260101, numRuns: 300 },
  );
});
