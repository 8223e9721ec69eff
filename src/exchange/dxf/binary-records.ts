import { type Said, say } from "#engine";
import { addGroup, type DxfRecord, groupList, type RecordReader, type TextReader } from "./record.ts";
import { DxfTrouble } from "./trouble.ts";

/** A binary drawing begins with a line of 18 letters that says so, an end mark and a zero. */
const headLength = 22;

/** Whether the bytes begin as a binary drawing does. */
export const isBinaryDxf = (bytes: Uint8Array): boolean =>
  / Binary DXF\r\n$/.test(String.fromCharCode(...bytes.subarray(0, 20))) &&
  bytes[20] === 26 &&
  bytes[21] === 0;

type ValueKind = "text" | "double" | "byte" | "short" | "long" | "wide" | "chunk";

/** How the value of a group code is written. */
const kindOf = (code: number): ValueKind | undefined => {
  if (code < 0) return undefined;
  if (code < 10) return "text";
  if (code < 60) return "double";
  if (code < 80) return "short";
  if (code >= 90 && code < 100) return "long";
  if (code < 110) return code >= 100 ? "text" : undefined;
  if (code < 150) return "double";
  if (code >= 160 && code < 170) return "wide";
  if (code >= 170 && code < 180) return "short";
  if (code >= 210 && code < 240) return "double";
  if (code >= 270 && code < 290) return "short";
  if (code >= 290 && code < 300) return "byte";
  if (code >= 310 && code < 320) return "chunk";
  if (code >= 300 && code < 370) return "text";
  if (code >= 370 && code < 390) return "short";
  if (code >= 390 && code < 400) return "text";
  if (code >= 400 && code < 410) return "short";
  if (code >= 410 && code < 420) return "text";
  if (code >= 420 && code < 430) return "long";
  if (code >= 430 && code < 440) return "text";
  if (code >= 440 && code < 460) return "long";
  if (code >= 460 && code < 470) return "double";
  if (code >= 470 && code < 490) return "text";
  if (code === 999 || (code >= 1000 && code < 1010 && code !== 1004)) return "text";
  if (code === 1004) return "chunk";
  if (code >= 1010 && code < 1060) return "double";
  if (code >= 1060 && code < 1071) return "short";
  return code === 1071 ? "long" : undefined;
};

const sizes: Readonly<Record<Exclude<ValueKind, "text" | "chunk">, number>> = {
  double: 8,
  byte: 1,
  short: 2,
  long: 4,
  wide: 8,
};

/**
 * Records of a drawing written in binary. Old files write a group code in one byte, with 255 before a longer one; newer files
 * write each in two. The first group tells which.
 *
 * @param letters - Turns the bytes of a value into a text
 */
export function binaryRecords(bytes: Uint8Array, letters: TextReader): RecordReader {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const short = isShort(bytes);
  const groups = groupList();
  let offset = headLength;
  let type = "";
  const cut = (): DxfTrouble => new DxfTrouble({ code: "dxf-truncated", values: { place: where() } });
  const where = (): Said => say`byte ${offset}`;
  const readCode = (): number => {
    if (short && bytes[offset] !== 255) return bytes[offset++]!;
    if (short) offset++;
    if (offset + 2 > bytes.length) throw cut();
    offset += 2;
    return view.getInt16(offset - 2, true);
  };
  const readValue = (code: number): { from: number; to: number } => {
    const kind = kindOf(code);
    if (!kind) throw new DxfTrouble({ code: "dxf-broken-place", values: { place: where() } });
    const from = kind === "chunk" ? offset + 1 : offset;
    let to: number;
    if (kind === "text") {
      to = bytes.indexOf(0, from);
      if (to < 0) throw cut();
    } else to = from + (kind === "chunk" ? (bytes[offset] ?? 0) : sizes[kind]);
    offset = kind === "text" ? to + 1 : to;
    if (offset > bytes.length) throw cut();
    return { from, to };
  };
  const number = (i: number): number => {
    const from = groups.from[i]!;
    switch (kindOf(groups.codes[i]!)) {
      case "double":
        return view.getFloat64(from, true);
      case "byte":
        return bytes[from]!;
      case "short":
        return view.getInt16(from, true);
      case "long":
        return view.getInt32(from, true);
      case "wide":
        return Number(view.getBigInt64(from, true));
      default:
        return Number.NaN;
    }
  };
  const record: DxfRecord = {
    get type() {
      return type;
    },
    get count() {
      return groups.count;
    },
    code: (i) => groups.codes[i]!,
    number,
    text: (i) => letters(bytes, groups.from[i]!, groups.to[i]!),
  };
  return {
    next: () => {
      groups.count = 0;
      type = "";
      for (;;) {
        const before = offset;
        if (offset >= bytes.length) return type === "" ? undefined : record;
        // Whatever pads the file after its last record is not part of it.
        if (type === "EOF") return record;
        const code = readCode();
        if (code === 0 && type !== "") {
          offset = before;
          return record;
        }
        const value = readValue(code);
        if (code === 0) type = letters(bytes, value.from, value.to).trim().toUpperCase().slice(0, 64) || "?";
        else if (type !== "") addGroup(groups, code, value);
        else if (code !== 999)
          throw new DxfTrouble({ code: "dxf-broken-place", values: { place: say`byte ${before}` } });
      }
    },
    place: () => ({ offset, line: 0 }),
    goTo: (place) => {
      offset = place.offset;
    },
    where,
  };
}

/** A first group 0 is one zero byte before a letter in the old form, two zero bytes in the new; 999 begins with 255 in the old. */
const isShort = (bytes: Uint8Array): boolean =>
  bytes[headLength] === 255 || (bytes[headLength] === 0 && bytes[headLength + 1] !== 0);
