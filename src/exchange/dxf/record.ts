import type { Said } from "#engine";

/** Where a record begins, so that the reading can go on from there. */
export interface RecordPlace {
  readonly offset: number;
  /** Line of a text file, from 1; 0 in a binary file. */
  readonly line: number;
}

/**
 * One record of a drawing: what follows a group of code 0, up to the next. The same object is filled again for the next
 * record, so whoever wants to keep something takes it out at once.
 */
export interface DxfRecord {
  /** "LINE", "SECTION", "ENDSEC" … */
  readonly type: string;
  readonly count: number;
  /** Group code of group i. */
  code(i: number): number;
  /** Value of group i as a number; NaN where it is none. */
  number(i: number): number;
  /** Value of group i as a text, decoded. */
  text(i: number): string;
}

/** Walks over the records of a drawing from front to back. */
export interface RecordReader {
  /** The next record; undefined at the end of the file. */
  next(): DxfRecord | undefined;
  /** Where the next record begins. */
  place(): RecordPlace;
  goTo(place: RecordPlace): void;
  /** "line 120" or "byte 3400": the place that was reached, for a sentence. */
  where(): Said;
}

/** Turns the bytes of a text into letters. */
export type TextReader = (bytes: Uint8Array, from: number, to: number) => string;

/** Groups of one record: code, and where the value lies in the file. Grows as needed, never shrinks. */
export interface GroupList {
  codes: Int32Array;
  from: Uint32Array;
  to: Uint32Array;
  count: number;
}

/** A new, empty list of groups. */
export const groupList = (): GroupList => ({
  codes: new Int32Array(256),
  from: new Uint32Array(256),
  to: new Uint32Array(256),
  count: 0,
});

/** Begins an object embedded in the record, whose groups carry the same codes with another meaning. */
const EMBEDDED = 101;
/** From here on, groups belong to other programs. */
const FOREIGN = 1000;

/** Adds a group to a list, unless it is none of the record's own. */
export function addGroup(list: GroupList, code: number, value: { from: number; to: number }): void {
  if (code >= FOREIGN || (list.count > 0 && list.codes[list.count - 1] === EMBEDDED)) return;
  if (list.count === list.codes.length) {
    const grown = { codes: new Int32Array(2 * list.count), from: new Uint32Array(2 * list.count) };
    grown.codes.set(list.codes);
    grown.from.set(list.from);
    const to = new Uint32Array(2 * list.count);
    to.set(list.to);
    list.codes = grown.codes;
    list.from = grown.from;
    list.to = to;
  }
  list.codes[list.count] = code;
  list.from[list.count] = value.from;
  list.to[list.count] = value.to;
  list.count++;
}

/** First number with a code, or the other value where there is none. */
export function numberOf(record: DxfRecord, code: number, otherwise: number): number {
  for (let i = 0; i < record.count; i++) if (record.code(i) === code) return record.number(i);
  return otherwise;
}

/** First text with a code, or "" where there is none. */
export function textOf(record: DxfRecord, code: number): string {
  for (let i = 0; i < record.count; i++) if (record.code(i) === code) return record.text(i);
  return "";
}
