import { say } from "#engine";
import { decimalAt } from "./decimal.ts";
import { addGroup, type DxfRecord, groupList, type RecordReader, type TextReader } from "./record.ts";
import { DxfTrouble } from "./trouble.ts";

const LF = 10;
const CR = 13;
/** Written behind the last line by old systems. */
const END_MARK = 26;

/**
 * Records of a drawing written as text: pairs of lines, a group code and its value. Lines may end in LF, CR LF, CR, or in
 * CR CR LF as a transfer in the wrong mode leaves them.
 *
 * @param letters - Turns the bytes of a value into a text
 */
export function textRecords(bytes: Uint8Array, letters: TextReader): RecordReader {
  const groups = groupList();
  const length = contentLength(bytes);
  let offset = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  let line = 1;
  let from = 0;
  let to = 0;
  let type = "";
  /** Reads one line into from … to, without its end. */
  const readLine = (): boolean => {
    if (offset >= length) return false;
    from = offset;
    let i = offset;
    while (i < length && bytes[i] !== LF && bytes[i] !== CR) i++;
    to = i;
    if (bytes[i] === CR) i += bytes[i + 1] === LF ? 2 : bytes[i + 1] === CR && bytes[i + 2] === LF ? 3 : 1;
    else i++;
    offset = i;
    line++;
    return true;
  };
  const readCode = (): number => {
    let [i, end] = [from, to];
    while (i < end && (bytes[i] === 32 || bytes[i] === 9)) i++;
    while (end > i && (bytes[end - 1] === 32 || bytes[end - 1] === 9)) end--;
    const minus = bytes[i] === 45;
    if (minus) i++;
    let code = 0;
    if (i === end || end - i > 5) throw broken(line - 1);
    for (; i < end; i++) {
      const digit = bytes[i]! - 48;
      if (digit < 0 || digit > 9) throw broken(line - 1);
      code = 10 * code + digit;
    }
    return minus ? -code : code;
  };
  const record: DxfRecord = {
    get type() {
      return type;
    },
    get count() {
      return groups.count;
    },
    code: (i) => groups.codes[i]!,
    number: (i) => decimalAt(bytes, groups.from[i]!, groups.to[i]!),
    text: (i) => letters(bytes, groups.from[i]!, groups.to[i]!),
  };
  return {
    next: () => {
      groups.count = 0;
      type = "";
      for (;;) {
        const [before, lineBefore] = [offset, line];
        if (!readLine()) return type === "" ? undefined : record;
        const code = readCode();
        if (code === 0 && type !== "") {
          offset = before;
          line = lineBefore;
          return record;
        }
        if (!readLine())
          throw new DxfTrouble({ code: "dxf-truncated", values: { place: say`line ${line - 1}` } });
        if (code === 0) type = word(bytes, from, to) || "?";
        // Only comments may stand before the first record.
        else if (type !== "") addGroup(groups, code, { from, to });
        else if (code !== 999) throw broken(line - 2);
      }
    },
    place: () => ({ offset, line }),
    goTo: (place) => {
      offset = place.offset;
      line = place.line;
    },
    where: () => say`line ${line - 1}`,
  };
}

const broken = (line: number): DxfTrouble =>
  new DxfTrouble({ code: "dxf-broken-place", values: { place: say`line ${line}` } });

/** Blank lines and the end mark of old systems after the last record are not part of it. */
const contentLength = (bytes: Uint8Array): number => {
  let length = bytes.length;
  const blank = (byte: number | undefined): boolean =>
    byte === LF || byte === CR || byte === 32 || byte === 9 || byte === END_MARK || byte === 0;
  while (length > 0 && blank(bytes[length - 1])) length--;
  return length;
};

/** A record type in capitals; a word without letters beyond ASCII. */
const word = (bytes: Uint8Array, from: number, to: number): string => {
  let text = "";
  for (let i = from; i < to && text.length < 64; i++)
    if (bytes[i]! > 32) text += String.fromCharCode(bytes[i]!);
  return text.toUpperCase();
};
