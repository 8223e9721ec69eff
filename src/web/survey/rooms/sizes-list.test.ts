import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type ListedRoom, readSizes } from "./sizes-list.ts";

const metric = { units: "metric" } as const;
const sizesOf = (text: string) =>
  readSizes(text, metric).rooms.map(({ number, name, length, width, height }) => [
    number,
    name,
    length,
    width,
    height,
  ]);

describe("a list of sizes", () => {
  test("is read from blanks, tabs, semicolons and commas, with decimal points and commas", () => {
    const office = [["101", "Office", 3.42, 4.1, 2.7]];
    for (const line of [
      "101 Office 3.42 4.10 2.7",
      "101\tOffice\t3,42\t4,10\t2,7",
      "101;Office;3,42;4,10;2,7",
      "101,Office,3.42,4.10,2.7",
      "101, Office, 3,42, 4,10, 2,7",
      "101 Office 3,42 x 4,10 2,7",
      "101 Office 3.42x4.10 2.7",
      "101 Office 3.42 m × 4.10 m, 2.7 m",
      "101\tOffice\t342 cm\t4100 mm\t2.7 m",
      '101,Office,"3,42","4,10","2,7"',
      "101\tOffice\t3.42 x 4.10\t2.7",
    ])
      expect(sizesOf(line), line).toEqual(office);
  });

  test("keeps what is a name together, figures in it too", () => {
    const text =
      "101 Meeting room 3.42 4.10 2.7\nA-102 Office 2 3.00 4.00 2.7\n1.03 Ladies' WC 2.00 3.00 2.7";
    expect(sizesOf(text)).toEqual([
      ["101", "Meeting room", 3.42, 4.1, 2.7],
      ["A-102", "Office 2", 3, 4, 2.7],
      ["1.03", "Ladies' WC", 2, 3, 2.7],
    ]);
  });

  test("takes rooms without a name, without a number and without a height", () => {
    expect(sizesOf("3.42 4.10")).toEqual([["", "", 3.42, 4.1, undefined]]);
    expect(sizesOf("101 3.42 4.10")).toEqual([["101", "", 3.42, 4.1, undefined]]);
    expect(sizesOf("101 3.42 4.10 2.7")).toEqual([["101", "", 3.42, 4.1, 2.7]]);
    expect(sizesOf("5 4 2.7")).toEqual([["", "", 5, 4, 2.7]]);
    expect(sizesOf("Office 3.42 4.10")).toEqual([["", "Office", 3.42, 4.1, undefined]]);
  });

  test("never takes a side with decimals for a part of the name, whatever the other lines have", () => {
    expect(sizesOf("101 Office 3.42 4.10 2.7\n102 Meeting room 5.00 x 4.10\n103 Store 2.80 4.10")).toEqual([
      ["101", "Office", 3.42, 4.1, 2.7],
      ["102", "Meeting room", 5, 4.1, undefined],
      ["103", "Store", 2.8, 4.1, undefined],
    ]);
    expect(sizesOf("101 Office 2 3.42 4.10\n102 Store 2.80 4.10\n103 Store 2.60 4.10")[0]).toEqual([
      "101",
      "Office 2",
      3.42,
      4.1,
      undefined,
    ]);
  });

  test("follows its headings, in any order and with the units that stand in them", () => {
    const text =
      "Width (mm)\tRoom\tFloor area\tLength [m]\tNo.\tUse\tCeiling height in cm\n4100\tOffice\t14\t3.42\t101\tOffice\t270";
    const list = readSizes(text, metric);
    expect(list.rooms).toEqual([
      { line: 2, number: "101", name: "Office", use: "sitting", length: 3.42, width: 4.1, height: 2.7 },
    ]);
    expect(list.unused).toEqual(["Floor area"]);
  });

  test("in feet and inches is read in feet and inches", () => {
    const [room] = readSizes("101 Office 11' 3\" x 13' 6\" 8' 2 1/2\"", metric).rooms;
    expect(room?.length).toBeCloseTo(11.25 * 0.3048, 12);
    expect(room?.width).toBeCloseTo(13.5 * 0.3048, 12);
    expect(room?.height).toBeCloseTo((8 * 12 + 2.5) * 0.0254, 12);
    const [bare] = readSizes("Office\t11\t13.5\t8", { units: "imperial" }).rooms;
    expect(bare?.width).toBeCloseTo(13.5 * 0.3048, 12);
  });

  test("whose bare figures are millimetres or centimetres is read as such, unless a person says otherwise", () => {
    expect(readSizes("Office 3420 4100 2700", metric)).toMatchObject({ unit: "mm", unitMatters: true });
    expect(sizesOf("Office 3420 4100 2700")).toEqual([["", "Office", 3.42, 4.1, 2.7]]);
    expect(sizesOf("Office 342 410 270")).toEqual([["", "Office", 3.42, 4.1, 2.7]]);
    expect(readSizes("Office 70 80 2.7", { ...metric, unit: "m" }).rooms[0]).toMatchObject({
      length: 70,
      width: 80,
    });
  });

  test("names every line that it does not understand, with the part that was strange", () => {
    const text = [
      "101 Office 3.42 4.10 2.7",
      "second floor",
      "102 Office 3.42",
      "103 Hall 0.10 4.10 2.7",
      "104 Hall 3.00 4.10 27",
      "105 Hall 3.00 4.10 2.7 sleeping",
      "106\tno",
    ].join("\n");
    const blanks = readSizes(text.replace("\t", " "), metric);
    expect(blanks.rooms.map(({ number }) => number)).toEqual(["101"]);
    expect(blanks.strange.map(({ line, why, part }) => [line, why, part])).toEqual([
      [2, "no-sides", ""],
      [3, "no-sides", ""],
      [4, "side", "0.10"],
      [5, "height", "27"],
      [6, "word", "sleeping"],
      [7, "no-sides", ""],
    ]);
    expect(readSizes("101;Hall;3;4;5;6", metric).strange).toMatchObject([{ why: "too-many" }]);
  });

  test("takes a use behind the figures", () => {
    expect(readSizes("101 Back 3.42 4.10 2.7 office", metric).rooms[0]).toMatchObject({
      name: "Back",
      use: "sitting",
    });
  });

  test("of more lines than any building has is cut off, and says where", () => {
    const list = readSizes("Office 3 4 2.7\n".repeat(2100), metric);
    expect(list.rooms.length).toBe(2000);
    expect(list.strange).toEqual([{ line: 2001, text: "Office 3 4 2.7", why: "long", part: "" }]);
  });
});

describe("laws", () => {
  const word = fc.constantFrom(
    "Office",
    "Store",
    "Ladies",
    "WC",
    "Plant",
    "room",
    "north",
    "Küche",
    "hall",
    "O'Neil",
  );
  const roomName = fc
    .tuple(fc.array(word, { minLength: 1, maxLength: 3 }), fc.constantFrom("", " 2", " 17"))
    .map(([words, end]) => words.join(" ") + end);
  const side = fc.integer({ min: 101, max: 999 });
  const listed = fc.record({
    number: fc.constantFrom("101", "1.04", "A-12", "B2", "007"),
    name: roomName,
    length: side,
    width: side,
    height: fc.integer({ min: 201, max: 399 }),
  });
  const style = fc.record({
    separator: fc.constantFrom("\t", ";", ",", " ", " x "),
    decimal: fc.constantFrom(".", ","),
    unit: fc.constantFrom("", " m", "m", " cm", " mm", "bare mm", "feet"),
    headed: fc.boolean(),
  });
  type Style = Parameters<Parameters<typeof style.map>[0]>[0];

  function written(centimetres: number, { decimal, unit }: Style): string {
    const metres = (centimetres / 100).toFixed(2).replace(".", decimal);
    switch (unit) {
      case " cm":
        return `${centimetres} cm`;
      case " mm":
        return `${centimetres * 10} mm`;
      case "bare mm":
        return `${centimetres * 10}`;
      case "feet": {
        // Whole inches, so many as there are decimetres: any number of inches is as good as another.
        const inches = Math.round(centimetres / 2.54);
        return `${Math.floor(inches / 12)}' ${inches % 12}"`;
      }
      default:
        return `${metres}${unit}`;
    }
  }
  const meant = (centimetres: number, { unit }: Style): number =>
    unit === "feet" ? Math.round(centimetres / 2.54) * 0.0254 : centimetres / 100;

  test("a list that was written out and is read again gives the same rooms", () => {
    fc.assert(
      fc.property(fc.array(listed, { minLength: 1, maxLength: 6 }), style, (rooms, drawn) => {
        // A comma cannot both part cells and be decimal where cells are not in quotation marks; nor do blanks take headings.
        const how: Style = drawn.separator === "," ? { ...drawn, decimal: "." } : drawn;
        const blank = how.separator === " " || how.separator === " x ";
        const row = (room: (typeof rooms)[number]): string => {
          const sides = [room.length, room.width].map((one) => written(one, how));
          const height = written(room.height, how);
          return blank
            ? `${room.number} ${room.name} ${sides.join(how.separator)} ${height}`
            : [room.number, room.name, ...sides, height].join(how.separator);
        };
        const head = ["No", "Name", "Length", "Width", "Height"].join(blank ? " " : how.separator);
        const text = [...(how.headed ? [head] : []), ...rooms.map(row)].join("\n");
        const list = readSizes(text, metric);
        expect(list.strange, text).toEqual([]);
        expect(list.rooms.length, text).toBe(rooms.length);
        for (const [index, room] of rooms.entries()) {
          const got = list.rooms[index]!;
          expect([got.number, got.name], text).toEqual([room.number, room.name]);
          expect(got.length, text).toBeCloseTo(meant(room.length, how), 9);
          expect(got.width, text).toBeCloseTo(meant(room.width, how), 9);
          expect(got.height, text).toBeCloseTo(meant(room.height, how), 9);
        }
      }),
      { seed: 31, numRuns: 1500 },
    );
  });

  test("no text makes it throw, and every line that is not blank is a room, a heading, or named as strange", () => {
    const piece = fc.oneof(
      fc.constantFrom(
        "\t",
        ";",
        ",",
        " ",
        "\n",
        "\r\n",
        '"',
        "'",
        "x",
        "m",
        "ft",
        "3.42",
        "4,1",
        "101",
        "Office",
        "/",
        "½",
      ),
      fc.string({ unit: "binary", maxLength: 6 }),
    );
    fc.assert(
      fc.property(
        fc.array(piece, { maxLength: 60 }).map((pieces) => pieces.join("")),
        fc.constantFrom("metric" as const, "imperial" as const),
        (text, units) => {
          const { rooms, strange } = readSizes(text, { units });
          const lines = text.split(/\r\n|[\n\r\u2028\u2029]/).filter((line) => line.trim() !== "").length;
          const told = rooms.length + strange.length;
          expect(told === lines || told === lines - 1).toBe(true);
          for (const room of rooms) expect(isPlausible(room)).toBe(true);
        },
      ),
      { seed: 32, numRuns: 1200 },
    );
  });

  const isPlausible = ({ length, width, height }: ListedRoom): boolean =>
    [length, width].every((one) => one >= 0.3 && one <= 200) &&
    (height === undefined || (height >= 1.8 && height <= 20));
});
