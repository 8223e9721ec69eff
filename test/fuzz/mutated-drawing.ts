import { seeded } from "../exchange/mutated.ts";
import {
  bytesOf,
  entity,
  type Group,
  insert,
  line,
  textOf,
  type WrittenDrawing,
  writtenBinary,
} from "../exchange/written-dxf.ts";

const codes = (pairs: readonly number[]): Group[] =>
  pairs.flatMap((value, i) => (i % 2 === 0 ? [[value, pairs[i + 1]!] as Group] : []));

/** A drawing with one of everything. */
const drawing: WrittenDrawing = {
  release: "AC1015",
  header: [
    [9, "$DWGCODEPAGE"],
    [3, "ANSI_1252"],
    [9, "$INSUNITS"],
    [70, 6],
    [9, "$LUNITS"],
    [70, 2],
  ],
  layers: [{ name: "Walls", colour: 1 }, { name: "Doors", flags: 1, colour: -30 }, { name: "Names" }],
  blocks: [
    {
      name: "Door",
      base: [1, 1],
      entities: [
        ...line(1, 1, 1.9, 1),
        ...entity("ARC", "0", ...codes([10, 1, 20, 1, 40, 0.9, 50, 0, 51, 90])),
        ...entity("ATTDEF", "0", [10, 0], [20, 0], [40, 0.2], [1, "1.01"], [2, "NUMBER"], [70, 0]),
      ],
    },
    { name: "Pair", entities: [...insert("Door", 0, 0), ...insert("Door", 5, 0, [41, -1], [50, 30])] },
  ],
  entities: [
    ...entity(
      "LWPOLYLINE",
      "Walls",
      [90, 3],
      [70, 1],
      ...codes([10, 0, 20, 0, 42, 0.4, 10, 9, 20, 0, 10, 9, 20, 6]),
    ),
    ...entity("POLYLINE", "Walls", [66, 1], [70, 1]),
    ...[0, 1, 2].flatMap((x) => entity("VERTEX", "Walls", ...codes([10, x, 20, x * x, 42, 0.2, 70, 0]))),
    ...entity("SEQEND", "Walls"),
    ...entity("CIRCLE", "0", ...codes([10, 3, 20, 3, 40, 1, 210, 0, 220, 0, 230, -1])),
    ...entity("ELLIPSE", "0", ...codes([10, 3, 20, 3, 11, 2, 21, 1, 40, 0.5, 41, 0, 42, 3])),
    ...entity(
      "SPLINE",
      "0",
      ...codes([70, 4, 71, 2, 72, 6, 73, 3, 40, 0, 40, 0, 40, 0, 40, 1, 40, 1, 40, 1]),
    ),
    ...codes([41, 1, 41, 0.7, 41, 1, 10, 0, 20, 0, 10, 4, 20, 4, 10, 8, 20, 0]),
    ...entity("SPLINE", "0", ...codes([70, 0, 71, 3, 74, 3, 11, 0, 21, 0, 11, 2, 21, 2, 11, 4, 21, 0])),
    ...entity("HATCH", "Walls", ...codes([10, 0, 20, 0, 91, 2, 92, 2, 72, 1, 73, 1, 93, 3])),
    ...codes([10, 0, 20, 0, 42, 1, 10, 4, 20, 0, 42, 0, 10, 4, 20, 4, 42, 0, 97, 0, 92, 1, 93, 2]),
    ...codes([72, 2, 10, 1, 20, 1, 40, 1, 50, 0, 51, 180, 73, 0, 72, 1, 10, 0, 20, 0, 11, 4, 21, 4, 97, 0]),
    ...entity(
      "MLINE",
      "Walls",
      ...codes([71, 1, 72, 2, 73, 1, 11, 0, 21, 0, 13, 0, 23, 1, 74, 1, 41, 0.1, 75, 0]),
    ),
    ...codes([11, 5, 21, 0, 13, 0, 23, 1, 74, 1, 41, 0.1, 75, 0]),
    ...entity("3DFACE", "0", ...codes([10, 0, 20, 0, 11, 1, 21, 0, 12, 1, 22, 1, 13, 0, 23, 1, 70, 1])),
    ...entity("SOLID", "0", ...codes([10, 0, 20, 0, 11, 1, 21, 0, 12, 0, 22, 1, 13, 1, 23, 1])),
    ...entity("TEXT", "Names", ...codes([10, 2, 20, 2, 40, 0.2, 50, 10, 72, 1, 73, 2, 11, 3, 21, 2]), [
      1,
      "%%uRoom \\U+00C6",
    ]),
    ...entity("MTEXT", "Names", ...codes([10, 2, 20, 2, 40, 0.2, 71, 5]), [1, "{\\H2;Big\\P\\S1/2;}"]),
    ...insert("Pair", 2, 2, ...codes([41, 2, 42, 2, 50, 45, 66, 1, 70, 2, 71, 2, 44, 10, 45, 10])),
    ...entity("ATTRIB", "Names", ...codes([10, 2, 20, 2, 40, 0.2, 70, 0]), [2, "NUMBER"], [1, "1.07"]),
    ...entity("SEQEND", "0"),
    ...insert("Door", 20, 0),
    ...entity("DIMENSION", "0", [2, "*D1"]),
    ...line(0, 0, 100, 0, "Walls"),
  ],
};

const bases: readonly Uint8Array[] = [
  bytesOf(textOf(drawing)),
  bytesOf(textOf({ ...drawing, release: "AC1032" }, "\r\n")),
  writtenBinary(drawing, "long"),
  writtenBinary(drawing, "short"),
];

/** A drawing with one to four faults put into it, the same for the same seed: of four, two as text and two in binary. */
export function mutatedDrawing(seed: number): Uint8Array {
  const random = seeded(seed);
  const kind = seed % bases.length;
  const isText = kind < 2;
  let bytes = bases[kind]!;
  const count = 1 + Math.floor(random() * 4);
  for (let i = 0; i < count; i++)
    bytes = isText && random() < 0.75 ? faultInGroups(bytes, random) : faultInBytes(bytes, random);
  return bytes;
}

type Random = () => number;
const place = (length: number, random: Random): number => Math.floor(random() * length);
const pick = <T>(list: readonly T[], random: Random): T => list[place(list.length, random)]!;

const faultInBytes = (bytes: Uint8Array, random: Random): Uint8Array => {
  const at = place(bytes.length, random);
  switch (place(5, random)) {
    case 0:
      return bytes.slice(0, at);
    case 1:
      return Uint8Array.from([...bytes.subarray(0, at), ...bytes.subarray(at + place(60, random))]);
    case 2: {
      const from = place(bytes.length, random);
      return Uint8Array.from([
        ...bytes.subarray(0, at),
        ...bytes.subarray(from, from + 200),
        ...bytes.subarray(at),
      ]);
    }
    default: {
      const changed = bytes.slice();
      changed[at] = random() < 0.3 ? pick([0, 255, 127, 128, 26, 10], random) : place(256, random);
      return changed;
    }
  }
};

/** Values that hurt readers. */
const values = [
  "0",
  "-1",
  "1e300",
  "-1e308",
  "1e-300",
  "nan",
  "1e999",
  "32767",
  "-32768",
  "2147483647",
  "99999999999999999999",
  "",
  "Door",
  "Pair",
  "Walls",
  "\\P\\S^;{{{",
  "%%%%%%",
  "360",
  "0.0000001",
];
const types = [
  "LINE",
  "INSERT",
  "VERTEX",
  "SEQEND",
  "BLOCK",
  "ENDBLK",
  "ENDSEC",
  "SECTION",
  "EOF",
  "HATCH",
  "SPLINE",
  "ATTRIB",
  "POLYLINE",
  "MTEXT",
];

/** Damage that leaves a drawing written correctly, and so reaches the geometry. */
const faultInGroups = (bytes: Uint8Array, random: Random): Uint8Array => {
  const lines = new TextDecoder("latin1").decode(bytes).split("\n");
  const group = 2 * place(Math.floor(lines.length / 2), random);
  const code = lines[group]!.trim();
  switch (place(6, random)) {
    case 0:
      lines.splice(group, 2);
      break;
    case 1:
      lines.splice(group, 0, lines[group]!, lines[group + 1] ?? "");
      break;
    case 2:
      lines[group] = pick(["0", "10", "20", "40", "42", "70", "91", "93", "2", "101", "999", "1001"], random);
      break;
    default:
      if (code === "0") lines[group + 1] = pick(types, random);
      else lines[group + 1] = pick(values, random);
  }
  return Uint8Array.from(lines.join("\n"), (letter) => letter.charCodeAt(0));
};
