import { describe, expect, test } from "vitest";
import { entity, type Group, line, writtenInBytes } from "../../../test/exchange/written-dxf.ts";
import { decimalAt } from "./decimal.ts";
import { readDxf } from "./read-dxf.ts";
import { lineText, paragraphs } from "./text-codes.ts";

/** The text that a drawing of a release and a code page gives for these bytes. */
const textFrom = (release: string, page: string, bytes: readonly number[]): string | undefined => {
  const header: readonly Group[] = [
    [9, "$DWGCODEPAGE"],
    [3, page],
  ];
  const text = String.fromCharCode(...bytes);
  const entities = [...line(0, 0, 10, 0), ...entity("TEXT", "0", [10, 0], [20, 0], [40, 1], [1, text])];
  const result = readDxf(writtenInBytes({ release, header, entities }), { fileName: "page.dxf" });
  return "linework" in result ? result.linework.texts[0]?.text : undefined;
};

const utf8 = (text: string): number[] => [...new TextEncoder().encode(text)];

describe("code pages", () => {
  // Bytes from the tables of the pages, looked up by hand.
  test.each<[string, readonly number[], string]>([
    ["ANSI_1252", [0x4b, 0xfc, 0x63, 0x68, 0x65], "Küche"],
    ["ansi_1250", [0x50, 0xf8, 0xed, 0xe8, 0x6b, 0x61], "Příčka"],
    ["ANSI_1251", [0xca, 0xf3, 0xf5, 0xed, 0xff], "Кухня"],
    ["ANSI_1253", [0xd3, 0xe1, 0xeb], "Σαλ"],
    ["dos850", [0x4b, 0x9b, 0x6b, 0x6b, 0x65, 0x6e], "Køkken"],
    ["dos437", [0x81, 0x62, 0x65, 0x72], "über"],
    ["dos852", [0x4c, 0xa2, 0xa7], "Lóž"],
    ["ISO8859-1", [0xe9, 0x74, 0x61, 0x67, 0x65], "étage"],
    ["ANSI_932", [0x89, 0xef, 0x8b, 0x63, 0x8e, 0xba], "会議室"],
    ["ANSI_936", [0xb4, 0xf3, 0xcc, 0xc3], "大堂"],
    ["mac", [0x8e, 0x74, 0x8e], "été"],
  ])("%s is decoded", (page, bytes, text) => {
    expect(textFrom("AC1015", page, bytes)).toBe(text);
  });

  test("from the release of 2007 on texts are UTF-8, whatever the code page", () => {
    expect(textFrom("AC1021", "ANSI_1252", utf8("Fællesrum 会"))).toBe("Fællesrum 会");
  });

  test("writers that mix up both ways are put right", () => {
    expect(textFrom("AC1015", "ANSI_1252", utf8("Fællesrum"))).toBe("Fællesrum");
    expect(textFrom("AC1032", "ANSI_1252", [0x4b, 0xfc, 0x63, 0x68, 0x65])).toBe("Küche");
  });
});

describe("codes in texts", () => {
  test.each([
    ["%%uROOM%%U 12 %%D %%p0.1 %%c80 100%%% %%065", "ROOM 12 ° ±0.1 ⌀80 100% A"],
    ["V\\U+00E6rksted \\M+18CFB", "Værksted 口"],
    ["100 %", "100 %"],
    ["ends in %%", "ends in %%"],
  ])("%j reads %j", (raw, text) => {
    expect(lineText(raw)).toBe(text);
  });

  test.each<[string, readonly string[]]>([
    ["Office\\P12 m\\S2^ ;", ["Office", "12 m2"]],
    ["{\\fSans|b0|i0|c0|p34;\\H2.5;Room}\\~3", ["Room 3"]],
    ["\\A1;\\LUnder\\l \\Oover\\o \\S1/2; \\S3#4;", ["Under over 1/2 3/4"]],
    ["a\\\\b \\{c\\} ^I^J^ ", ["a\\b {c}", "^"]],
    ["\\pi-2,l2;\\T1.2;\\Q15;\\W0.8;\\C3;\\c255;Text", ["Text"]],
    ["\\U+00C6 %%c", ["Æ ⌀"]],
    ["\\Hopen without end", ["\\Hopen without end"]],
  ])("paragraphs of %j are %j", (raw, lines) => {
    expect(paragraphs(raw)).toEqual(lines);
  });
});

test("numbers are rounded as the language itself rounds them; what is no number is none", () => {
  const read = (text: string): number => {
    const bytes = new TextEncoder().encode(text);
    return decimalAt(bytes, 0, bytes.length);
  };
  const numbers = [
    "0",
    "-0.5",
    "+3",
    " 12.25 ",
    "1e3",
    "-1.5E-7",
    ".5",
    "5.",
    "123456789.123456789",
    "0.1",
    "2.675",
  ];
  const longer = ["9007199254740993", "0.30000000000000004", "1234567890123456789", "4.35", "1.0D2"];
  for (const text of [...numbers, ...longer])
    expect([text, read(text)]).toEqual([text, Number(text.replace("D", "e"))]);
  for (const text of ["", " ", ".", "-", "-.", "1,5", "1e", "0x10", "Infinity", "nan", "1 2", "--1"])
    expect([text, read(text)]).toEqual([text, Number.NaN]);
});
