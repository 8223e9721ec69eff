import { describe, expect, test } from "vitest";
import { english } from "#engine";
import { linesIn } from "../../../test/exchange/same-lines.ts";
import {
  entity,
  type Group,
  insert,
  line,
  type WrittenDrawing,
  written,
  writtenBinary,
} from "../../../test/exchange/written-dxf.ts";
import { drawn, expectLines, read, readBytes, square, squareLines } from "./read-drawn.fixture.ts";

describe("blocks", () => {
  const door = {
    name: "Door",
    base: [1, 1] as const,
    entities: [...line(1, 1, 2, 1), ...line(1, 1, 1, 2, "Leaf")],
  };
  const put = (...entities: readonly (readonly Group[])[]) =>
    read({ blocks: [door], entities: entities.flat() });

  test("their base point comes to lie where they are put in, scaled, mirrored and turned", () => {
    const { linework } = put(insert("DOOR", 10, 20, [41, -2], [42, 3], [50, 90]));
    // x by −2 then a quarter turn: (1, 0) → (0, −2); y by 3: (0, 1) → (−3, 0).
    expectLines(linework, [
      [10, 20, 10, 18],
      [10, 20, 7, 20],
    ]);
    expect(linework.blocks).toHaveLength(1);
    const block = linework.blocks[0]!;
    expect(block.name).toBe("Door");
    expect(block.at).toEqual([10, 20]);
    expect(block.box).toEqual([7, 18, expect.closeTo(10, 9), expect.closeTo(20, 9)]);
    expect(block.scale[0] * block.scale[1]).toBeCloseTo(-6, 9);
  });

  test("columns and rows are copies along the turned axes", () => {
    const { linework } = put(insert("Door", 0, 0, [50, 90], [70, 2], [71, 3], [44, 10], [45, 100]));
    const starts = linesIn(linework, /Leaf/).map(([x, y]) => [Math.round(x) + 0, Math.round(y) + 0]);
    expect(starts).toHaveLength(6);
    for (const column of [0, 1])
      for (const row of [0, 1, 2]) expect(starts).toContainEqual([-100 * row + 0, 10 * column]);
    expect(linework.blocks).toHaveLength(6);
  });

  test("what lies on layer 0 takes the layer that the block is put on, through every depth", () => {
    const { linework } = read({
      blocks: [
        door,
        {
          name: "Pair",
          entities: [...insert("Door", 0, 0), ...entity("INSERT", "Own", [2, "Door"], [10, 5], [20, 0])],
        },
      ],
      entities: entity("INSERT", "Ground floor", [2, "pair"], [10, 0], [20, 0]),
    });
    const count = (name: string) => linework.layers.find((layer) => layer.name === name)?.lines;
    expect([count("Ground floor"), count("Own"), count("Leaf")]).toEqual([1, 1, 2]);
    expect(linework.blocks.map(({ name }) => name)).toEqual(["Pair", "Door", "Door"]);
  });

  test("attributes come along as record and as text, invisible ones only as record", () => {
    const attribute = (tag: string, text: string, flags: number) =>
      entity("ATTRIB", "Names", [10, 3], [20, 4], [40, 0.2], [1, text], [2, tag], [70, flags]);
    const { linework } = put(
      insert("Door", 0, 0, [66, 1]),
      attribute("NUMBER", "1.07", 0),
      attribute("FIRE", "T30", 1),
      entity("SEQEND", "0"),
    );
    expect(linework.blocks[0]!.attributes).toEqual({ NUMBER: "1.07", FIRE: "T30" });
    expect(linework.texts.map(({ text, at }) => [text, at])).toEqual([["1.07", [3, 4]]]);
  });

  test("a whole plan inside one block is drawn and listed", () => {
    const { linework } = read({
      blocks: [{ name: "Plan", entities: entity("LWPOLYLINE", "Walls", [90, 4], [70, 1], ...square) }],
      entities: insert("Plan", 1000, 0),
    });
    expectLines(
      linework,
      squareLines.map(([a, b, c, d]) => [a + 1000, b, c + 1000, d]),
    );
    expect(linework.blocks).toMatchObject([{ name: "Plan", box: [1000, 0, 1004, 3] }]);
  });

  test("an arc in a block that is scaled unevenly is no arc any more, but its lines are there", () => {
    const round = { name: "Round", entities: entity("CIRCLE", "0", [10, 0], [20, 0], [40, 1]) };
    const even = read({ blocks: [round], entities: insert("Round", 5, 5, [41, 2], [42, -2]) }).linework;
    expect(even.arcs).toMatchObject([{ centre: [5, 5], radius: 2 }]);
    const uneven = read({ blocks: [round], entities: insert("Round", 5, 5, [41, 2], [42, 1]) }).linework;
    expect(uneven.arcs).toEqual([]);
    expect(uneven.layerOf.length).toBe(even.layerOf.length);
  });

  test("content of a block on a frozen layer does not show, whatever its own layer", () => {
    const { linework } = read({
      layers: [{ name: "Old", flags: 1 }],
      blocks: [door],
      entities: [...entity("INSERT", "Old", [2, "Door"], [10, 0], [20, 0]), ...line(0, 0, 9, 0)],
    });
    expect(linework.layers.filter(({ shown, lines }) => shown && lines > 0).map(({ name }) => name)).toEqual([
      "0",
    ]);
  });
});

describe("texts", () => {
  const box = line(0, 0, 10, 0);
  const texts = (...entities: readonly (readonly Group[])[]) => drawn(box, ...entities).texts;

  test("a text keeps place, height and turn, and loses its codes", () => {
    const [text] = texts(
      entity(
        "TEXT",
        "Names",
        [10, 2],
        [20, 3],
        [40, 0.25],
        [50, 30],
        [1, "%%uKITCHEN%%u 20%%d %%c8 \\U+00C6 %%37"],
      ),
    );
    expect(text).toMatchObject({ text: "KITCHEN 20° ⌀8 Æ %%37", at: [2, 3], height: 0.25 });
    expect(text!.turn).toBeCloseTo(Math.PI / 6, 12);
  });

  test("a text held at its middle begins half of its width to the left", () => {
    const [text] = texts(
      entity("TEXT", "0", [10, 0], [20, 0], [40, 1], [1, "ABCDE"], [72, 1], [11, 10], [21, 5], [73, 2]),
    );
    // Five letters of 0.6 wide: 10 − 1.5; half of the height below.
    expect(text!.at).toEqual([8.5, 4.5]);
  });

  test("paragraphs become texts below one another, without their formatting", () => {
    const found = texts(
      entity(
        "MTEXT",
        "0",
        [10, 0],
        [20, 10],
        [40, 0.3],
        [41, 5],
        [71, 1],
        [3, "{\\fSans|b1|i0;\\H0.7x;Meeting "],
        [1, "room}\\P\\A1;12\\~m\\S2^ ;\\P\\pxqc;\\C1;B\\\\C \\{7\\}"],
        [101, "Embedded Object"],
        [40, 99],
        [10, 77],
      ),
    );
    expect(found.map(({ text }) => text)).toEqual(["Meeting room", "12 m2", "B\\C {7}"]);
    expect(found.map(({ at }) => at[1])).toEqual([9.7, 9.7 - 0.5, 9.7 - 1].map((y) => expect.closeTo(y, 9)));
    expect(found.every(({ height, at }) => height === 0.3 && at[0] === 0)).toBe(true);
  });

  test("texts in blocks grow and turn with them", () => {
    const { linework } = read({
      blocks: [
        { name: "Tag", entities: [...box, ...entity("TEXT", "0", [10, 1], [20, 0], [40, 0.2], [1, "A1"])] },
      ],
      entities: insert("Tag", 100, 0, [41, 10], [42, 10], [50, 90]),
    });
    expect(linework.texts).toMatchObject([
      { text: "A1", at: [expect.closeTo(100, 9), expect.closeTo(10, 9)], height: expect.closeTo(2, 9) },
    ]);
    expect(linework.texts[0]!.turn).toBeCloseTo(Math.PI / 2, 9);
  });
});

describe("what does not belong to the plan", () => {
  test("is left out and counted with its reason", () => {
    const { linework, report } = read({
      entities: [
        ...line(0, 0, 10, 0),
        ...entity("LINE", "0", [67, 1], [10, 0], [20, 0], [11, 5], [21, 5]),
        ...entity("LINE", "0", [60, 1], [10, 0], [20, 0], [11, 5], [21, 5]),
        ...line(1, 1, 1, 1),
        ...entity("LINE", "0", [10, "nan"], [20, 0], [11, 5], [21, 5]),
        ...entity("LINE", "0", [10, "1e999"], [20, 0], [11, 5], [21, 5]),
        ...entity("LINE", "0", [10, 0], [20, 0], [11, 5]),
        ...entity("DIMENSION", "0", [2, "*D1"]),
        ...entity("WIPEOUT", "0", [10, 0], [20, 0]),
        ...entity("POINT", "0", [10, 0], [20, 0]),
        ...entity("NOVELTY", "0"),
      ],
    });
    expect(linework.layerOf.length).toBe(1);
    expect(
      report.leftOut.map(({ what, why, count }) => `${count} ${english(what)}: ${english(why)}`),
    ).toEqual([
      "1 LINE: it lies on a sheet of paper, not in the model",
      "1 LINE: it is switched off",
      "1 lines: seen from above it is a point",
      "3 LINE: its coordinates are missing, no numbers, or beyond any plan",
      "1 DIMENSION: dimensions and their leaders are no part of the building",
      "1 WIPEOUT: it covers what lies below and has no line of its own",
      "1 POINT: a point has no line",
      "1 NOVELTY: things of this type are not read",
    ]);
    expect(report.notes).toContainEqual({ code: "dxf-without-place", values: { count: 3 } });
    expect(report.read).toEqual([{ what: "LINE", count: 2 }]);
  });
});

test("layers have their colour, and those that are off or frozen are not shown", () => {
  const { linework } = read({
    layers: [
      { name: "Walls", colour: 1 },
      { name: "Off", colour: -3 },
      { name: "Frozen", flags: 1, colour: 30 },
    ],
    entities: ["WALLS", "Off", "Frozen", "New"].flatMap((layer, i) => line(0, i, 5, i, layer)),
  });
  expect(linework.layers).toEqual([
    { name: "Walls", lines: 1, shown: true, colour: "#ff0000" },
    { name: "Off", lines: 1, shown: false, colour: "#00ff00" },
    { name: "Frozen", lines: 1, shown: false, colour: "#ff8000" },
    { name: "New", lines: 1, shown: true },
  ]);
});

describe("ways to write a drawing", () => {
  const plan: WrittenDrawing = {
    release: "AC1015",
    header: [
      [9, "$INSUNITS"],
      [70, 4],
    ],
    layers: [{ name: "Walls", colour: 5 }],
    blocks: [{ name: "Door", entities: entity("ARC", "0", [10, 0], [20, 0], [40, 900], [50, 0], [51, 90]) }],
    entities: [
      ...entity(
        "LWPOLYLINE",
        "Walls",
        [90, 4],
        [70, 1],
        ...square.map(([c, v]) => [c, Number(v) * 2500.25] as Group),
      ),
      ...insert("Door", 1250.5, 0.125, [50, 45]),
      ...entity("TEXT", "0", [10, 100], [20, 200], [40, 250], [1, "Office"]),
    ],
  };

  test.each(["\n", "\r\n", "\r", "\r\r\n"])("lines may end in %j", (lineEnd) => {
    expect(readBytes(written(plan, lineEnd)).linework).toEqual(read(plan).linework);
  });

  test.each(["short", "long"] as const)("binary with %s group codes gives the same drawing", (codes) => {
    const { linework, report } = readBytes(writtenBinary(plan, codes));
    expect(report.binary).toBe(true);
    expect(report.release).toBe("R2000");
    expect(linework).toEqual(read(plan).linework);
  });

  test("comments, a byte order mark, blank lines and end marks of old systems do no harm", () => {
    const text = new TextDecoder().decode(written(plan));
    const dressed = `\ufeff999\nwritten by hand\n${text}\n\n\u001a`;
    expect(readBytes(new TextEncoder().encode(dressed)).linework).toEqual(read(plan).linework);
  });

  test("a file that lacks only its end mark is read, with a note", () => {
    const text = new TextDecoder().decode(written(plan)).replace(/ {2}0\nEOF\n$/, "");
    const { linework, report } = readBytes(new TextEncoder().encode(text));
    expect(linework).toEqual(read(plan).linework);
    expect(report.notes).toContainEqual({ code: "dxf-no-end-mark", values: {} });
  });

  test("entities may stand before the blocks that they put in", () => {
    const text = new TextDecoder().decode(written(plan));
    const [, blocks] = /( {2}0\nSECTION\n {2}2\nBLOCKS[\s\S]*?ENDSEC\n)/.exec(text)!;
    const turned = text.replace(blocks!, "").replace(/ {2}0\nEOF\n$/, `${blocks}  0\nEOF\n`);
    expect(readBytes(new TextEncoder().encode(turned)).linework).toEqual(read(plan).linework);
  });
});
