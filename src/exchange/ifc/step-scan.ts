import type { Problem } from "#engine";
import { brackets, found } from "./step-brackets.ts";
import { Cursor, Stop } from "./step-cursor.ts";
import type { StepFile } from "./step-file.ts";
import { RecordList } from "./step-records.ts";
import { fits } from "./step-signatures.ts";
import { firstBytesProblem } from "./step-start.ts";

export interface StepLimits {
  /** Most records that are read. */
  readonly records: number;
}

/**
 * Checks a STEP file from its first to its last byte and lists its records, or names the first thing that is wrong and
 * where. Nothing that fails here is ever handed to the geometry kernel.
 */
export function scanStep(bytes: Uint8Array, limits: StepLimits): StepFile | Problem {
  const wrong = firstBytesProblem(bytes);
  if (wrong) return wrong;
  try {
    return scanned(new Cursor(bytes), limits);
  } catch (stop) {
    if (stop instanceof Stop) return stop.problem;
    throw stop;
  }
}

const [hash, open, semicolon, equals] = [35, 40, 59, 61];

/** References of the header lead nowhere. */
const nowhere = { reference: (): void => {} };

function header(cursor: Cursor): string {
  cursor.keyword("ISO-10303-21");
  cursor.keyword("HEADER");
  let schema = "";
  for (;;) {
    cursor.gap();
    if (cursor.at >= cursor.bytes.length) cursor.stop("ifc-truncated");
    const word = cursor.word().toUpperCase();
    if (word === "ENDSEC") break;
    if (word === "") cursor.stop("ifc-broken-line");
    cursor.expect(open);
    const begin = cursor.at;
    brackets(cursor, nowhere, found());
    if (word === "FILE_SCHEMA") {
      const text = new TextDecoder("latin1").decode(cursor.bytes.subarray(begin, cursor.at));
      schema = /'\s*([^'\s{]*)/.exec(text)?.[1]?.toUpperCase() ?? "";
    }
    cursor.expect(semicolon);
  }
  cursor.expect(semicolon);
  return schema;
}

function scanned(cursor: Cursor, limits: StepLimits): StepFile {
  const { bytes } = cursor;
  const schema = header(cursor);
  const list = new RecordList(bytes, Math.max(64, Math.floor(bytes.length / 48)));
  for (;;) {
    cursor.record = list.lastId;
    cursor.gap();
    if (cursor.at >= bytes.length) cursor.stop("ifc-truncated");
    const word = cursor.word().toUpperCase();
    if (word === "END-ISO-10303-21") break;
    if (word !== "DATA" && word !== "ANCHOR" && word !== "REFERENCE" && word !== "SIGNATURE")
      cursor.stop("ifc-broken-line");
    if (word !== "DATA")
      cursor.stop("ifc-schema-unknown", { schema: `${schema || "none"} with a ${word} section` });
    cursor.gap();
    if (bytes[cursor.at] === open) {
      cursor.at++;
      brackets(cursor, nowhere, found());
    }
    cursor.expect(semicolon);
    section(cursor, list, limits);
  }
  cursor.expect(semicolon);
  return list.file(schema);
}

function section(cursor: Cursor, list: RecordList, limits: StepLimits): void {
  const { bytes } = cursor;
  const seen = found();
  for (;;) {
    cursor.gap();
    if (cursor.at >= bytes.length) cursor.stop("ifc-truncated");
    if (bytes[cursor.at] !== hash) {
      if (cursor.word().toUpperCase() !== "ENDSEC") cursor.stop("ifc-broken-line");
      cursor.expect(semicolon);
      return;
    }
    const start = cursor.at++;
    const id = cursor.number();
    cursor.record = id;
    cursor.expect(equals);
    cursor.gap();
    const typeFrom = cursor.at;
    let typeTo = typeFrom;
    if (bytes[typeFrom] !== open) {
      while (isName[bytes[typeTo]!] === 1) typeTo++;
      if (typeTo === typeFrom) cursor.stop(typeTo >= bytes.length ? "ifc-truncated" : "ifc-broken-line");
      cursor.at = typeTo;
    }
    cursor.expect(open);
    const from = cursor.at;
    if (list.begin(id, typeFrom, typeTo) === "twice") cursor.stop("ifc-id-twice", { id });
    brackets(cursor, list, seen);
    if (!fits(list.lastSignature, seen.kinds, seen.count)) cursor.stop("ifc-broken-line");
    list.end(start, from, cursor.at - 1);
    cursor.expect(semicolon);
    if (list.count > limits.records) cursor.stop("ifc-too-large", { limit: `${limits.records} records` });
  }
}

/** 1 for each byte that a type may be written with. */
const isName = new Uint8Array(256);
for (const letter of "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_")
  isName[letter.charCodeAt(0)] = 1;
