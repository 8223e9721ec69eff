import { describe, expect, test } from "vitest";
import { type Problem, say } from "#engine";
import {
  bytesOf,
  entity,
  type Group,
  insert,
  line,
  textOf,
  type WrittenDrawing,
  written,
  writtenBinary,
} from "../../../test/exchange/written-dxf.ts";
import type { DxfLimits } from "./limits.ts";
import { readDxf } from "./read-dxf.ts";

const problemsOf = (bytes: Uint8Array, limits: Partial<DxfLimits> = {}): readonly Problem[] => {
  const result = readDxf(bytes, { fileName: "drawn.dxf", limits });
  if (!("problems" in result)) throw new Error(`read, with ${result.report.lines} lines`);
  return result.problems;
};
const notesOf = (drawing: WrittenDrawing): readonly Problem[] => {
  const result = readDxf(written(drawing), { fileName: "drawn.dxf" });
  if ("problems" in result) throw new Error(JSON.stringify(result.problems));
  return result.report.notes;
};

const room: readonly Group[] = [...line(0, 0, 5, 0), ...line(5, 0, 5, 4), ...line(5, 4, 0, 0)];
const plan: WrittenDrawing = { release: "AC1015", entities: room };

describe("files that are no drawing", () => {
  test.each<[string, Uint8Array, Problem]>([
    ["an empty file", new Uint8Array(), { code: "file-empty", values: {} }],
    [
      "a locked or plain DWG drawing",
      bytesOf("AC1032\0\0\0\0\0"),
      { code: "dxf-is-dwg", values: { version: "AC1032" } },
    ],
    ["a PDF file", bytesOf("%PDF-1.7\n…"), { code: "dxf-not-dxf", values: { found: say`a PDF file` } }],
    [
      "a text",
      bytesOf("Dear Sir,\n0\nSECTION"),
      { code: "dxf-not-dxf", values: { found: say`a text file` } },
    ],
    [
      "a drawing that an editor saved in UTF-16",
      Uint8Array.from([0xff, 0xfe, ...[...textOf(plan)].flatMap((letter) => [letter.charCodeAt(0), 0])]),
      { code: "dxf-wrong-encoding", values: { encoding: "UTF-16" } },
    ],
    [
      "nothing but a comment",
      bytesOf("999\nhello\n"),
      { code: "dxf-truncated", values: { place: say`its beginning` } },
    ],
  ])("%s is refused with the reason", (_, bytes, problem) => {
    expect(problemsOf(bytes)).toEqual([problem]);
  });
});

describe("files that are damaged", () => {
  const text = textOf(plan);

  test("a drawing cut off anywhere is refused as cut off, or read whole if only its end mark is gone", () => {
    for (let length = 12; length < text.length; length++) {
      const result = readDxf(bytesOf(text.slice(0, length)), { fileName: "cut.dxf" });
      if ("problems" in result) expect(["dxf-truncated"]).toContain(result.problems[0]!.code);
      else expect([length, result.report.lines]).toEqual([length, 3]);
    }
    expect(problemsOf(bytesOf(text.slice(0, text.indexOf("LINE"))))[0]!.values).toHaveProperty("place");
  });

  test("a binary drawing cut off anywhere is refused as cut off, or read whole if only its end mark is gone", () => {
    const bytes = writtenBinary(plan, "long");
    for (let length = 40; length < bytes.length; length++) {
      const result = readDxf(bytes.slice(0, length), { fileName: "cut.dxf" });
      if ("problems" in result) expect(["dxf-truncated"]).toContain(result.problems[0]!.code);
      else expect([length, result.report.lines]).toEqual([length, 3]);
    }
  });

  test("a line too many is named with its place", () => {
    const broken = text.replace("ENTITIES\n", "ENTITIES\nstray\n");
    const place = broken.slice(0, broken.indexOf("stray")).split("\n").length;
    expect(problemsOf(bytesOf(broken))).toEqual([
      { code: "dxf-broken-place", values: { place: say`line ${place}` } },
    ]);
  });

  test("a group code that no drawing has is named with its byte in a binary drawing", () => {
    const bytes = writtenBinary(plan, "long");
    // The code behind the head is 0; its record is "SECTION", so the next code follows 2 + 8 bytes on.
    const at = 22 + 2 + 8;
    bytes[at] = 0xff;
    bytes[at + 1] = 0xff;
    expect(problemsOf(bytes)).toEqual([{ code: "dxf-broken-place", values: { place: say`byte ${at + 2}` } }]);
  });
});

describe("drawings with nothing to see", () => {
  test("no entity at all", () => {
    expect(problemsOf(written({ entities: [] }))).toEqual([
      { code: "dxf-nothing-inside", values: { entities: 0, records: 3 } },
    ]);
  });

  test("only texts and dimensions", () => {
    const entities = [
      ...entity("TEXT", "0", [10, 0], [20, 0], [40, 1], [1, "Office"]),
      ...entity("DIMENSION", "0"),
    ];
    expect(problemsOf(written({ entities }))[0]!.code).toBe("dxf-nothing-inside");
  });

  test("everything on sheets of paper", () => {
    const entities = [1, 2].flatMap((y) => entity("LINE", "0", [67, 1], [10, 0], [20, y], [11, 5], [21, y]));
    expect(problemsOf(written({ entities }))).toEqual([{ code: "dxf-paper-only", values: { count: 2 } }]);
  });
});

describe("limits", () => {
  test("bytes", () => {
    expect(problemsOf(written(plan), { bytes: 100 })).toEqual([
      { code: "plan-too-large", values: { limit: "1 kB" } },
    ]);
  });

  test("lines, through copies of blocks too", () => {
    const block = { name: "Room", entities: room };
    const many = insert("Room", 0, 0, [70, 100], [71, 100], [44, 10], [45, 10]);
    expect(problemsOf(written({ blocks: [block], entities: many }), { lines: 1000 })).toEqual([
      { code: "plan-too-much", values: { what: say`lines`, limit: "1 000" } },
    ]);
  });

  test("texts", () => {
    const text = entity("TEXT", "0", [10, 0], [20, 0], [40, 1], [1, "A"]);
    expect(problemsOf(written({ entities: [...text, ...text, ...room] }), { texts: 1 })[0]!.values).toEqual({
      what: say`texts`,
      limit: "1",
    });
  });

  test("copies, even of a block with nothing in it", () => {
    const nothing = { name: "Nothing", entities: [] };
    const ten = (block: string) => insert(block, 0, 0, [70, 100], [71, 100]);
    const blocks = [nothing, { name: "A", entities: ten("Nothing") }, { name: "B", entities: ten("A") }];
    expect(problemsOf(written({ blocks, entities: ten("B") }))).toEqual([
      { code: "plan-too-much", values: { what: say`inserted blocks`, limit: "1 000 000" } },
    ]);
  });

  test("points that never become a line are not copied without end", () => {
    const speck = { name: "Speck", entities: Array.from({ length: 200 }, () => line(0, 0, 0, 0)).flat() };
    const entities = insert("Speck", 0, 0, [70, 100], [71, 100]);
    expect(problemsOf(written({ blocks: [speck], entities }), { lines: 5000 })).toEqual([
      { code: "plan-too-much", values: { what: say`points`, limit: "20 000" } },
    ]);
  });

  test("blocks inside one another", () => {
    const blocks = Array.from({ length: 40 }, (_, i) => ({
      name: `B${i}`,
      entities: i === 0 ? room : insert(`B${i - 1}`, 0, 0),
    }));
    expect(problemsOf(written({ blocks, entities: insert("B39", 0, 0) }))).toEqual([
      { code: "dxf-blocks-too-deep", values: { limit: 32, block: "B7" } },
    ]);
    const shallow = readDxf(written({ blocks, entities: insert("B31", 0, 0) }), { fileName: "deep.dxf" });
    expect("report" in shallow && shallow.report.lines).toBe(3);
  });
});

describe("drawings that are read with a note", () => {
  test("a block that contains itself through another is put in once", () => {
    const blocks = [
      { name: "A", entities: [...room, ...insert("B", 1, 0)] },
      { name: "B", entities: [...line(9, 9, 8, 8), ...insert("A", 1, 0)] },
    ];
    const result = readDxf(written({ blocks, entities: insert("A", 0, 0) }), { fileName: "loop.dxf" });
    expect("report" in result && result.report.lines).toBe(4);
    expect(notesOf({ blocks, entities: insert("A", 0, 0) })).toEqual([
      { code: "dxf-block-loop", values: { block: "A" } },
    ]);
  });

  test("blocks that are not in the file, and those that are in another one", () => {
    const blocks = [{ name: "Survey", flags: 4, entities: [] }];
    expect(
      notesOf({ blocks, entities: [...room, ...insert("Door", 0, 0), ...insert("Survey", 0, 0)] }),
    ).toEqual([
      { code: "dxf-block-missing", values: { count: 1, blocks: "“Door”" } },
      { code: "dxf-block-elsewhere", values: { count: 1, blocks: "“Survey”" } },
    ]);
  });

  test("a code page that nobody knows", () => {
    const header: readonly Group[] = [
      [9, "$DWGCODEPAGE"],
      [3, "NOPAGE_1"],
    ];
    expect(notesOf({ release: "AC1015", header, entities: room })).toEqual([
      { code: "dxf-code-page-unknown", values: { page: "NOPAGE_1" } },
    ]);
  });

  test("a unit that doors contradict, and storeys side by side", () => {
    const storey = (x: number): readonly Group[] => [
      ...Array.from({ length: 6 }, (_, i) => line(x, 2000 * i, x + 9000, 2000 * i)).flat(),
      ...Array.from({ length: 6 }, (_, i) => line(x + 1800 * i, 0, x + 1800 * i, 10000)).flat(),
      ...entity("ARC", "0", [10, x], [20, 2000], [40, 1800 / 2], [50, 0], [51, 90]),
      ...line(x, 2000, x + 900, 2000),
    ];
    const header: readonly Group[] = [
      [9, "$INSUNITS"],
      [70, 5],
    ];
    expect(notesOf({ release: "AC1015", header, entities: [...storey(0), ...storey(20000)] })).toEqual([
      { code: "dxf-unit-doubted", values: { declared: "cm", unit: "mm" } },
      { code: "dxf-several-parts", values: { count: 2 } },
    ]);
  });
});
