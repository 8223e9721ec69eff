import type { Cursor } from "./step-cursor.ts";
import type { RecordList } from "./step-records.ts";
import { kinds } from "./step-signatures.ts";

/** Kinds of the parameters of the list read last, as many as the checks look at. */
export interface Found {
  readonly kinds: Uint8Array;
  count: number;
}

export const found = (): Found => ({ kinds: new Uint8Array(16), count: 0 });

/**
 * Reads a bracketed list; the cursor stands after "(" and ends after its ")". Hands every reference to the list, and
 * notes the kind of each parameter: the commas of the outer list part them.
 *
 * Every byte of a file comes through here, so it is one loop over bytes without calls.
 */
export function brackets(cursor: Cursor, list: Pick<RecordList, "reference">, seen: Found): void {
  const { bytes } = cursor;
  const end = bytes.length;
  let at = cursor.at;
  let depth = 1;
  let kind = 0;
  let inner = 0;
  let count = 0;
  while (at < end) {
    const c = bytes[at]!;
    switch (sortOf[c]) {
      case blank:
        at++;
        break;
      case comma:
        at++;
        if (depth > 1) break;
        if (count < 16) seen.kinds[count] = kind;
        if (kind !== 0) count++;
        kind = 0;
        inner = 0;
        break;
      case token:
        if (depth === 1) kind = kind === 0 ? tokenKind[c]! : kind;
        else if (depth === 2) inner = joined(inner, tokenKind[c]!);
        // A letter or digit that follows another belongs to the same token.
        do at++;
        while (at < end && (sortOf[bytes[at]!] === token || sortOf[bytes[at]!] === blank));
        break;
      case hash: {
        const begin = ++at;
        let id = 0;
        for (let digit = bytes[at]! - zero; digit >= 0 && digit <= 9; digit = bytes[++at]! - zero)
          id = id * 10 + digit;
        if (at === begin || id > largest) {
          cursor.at = begin;
          cursor.stop("ifc-broken-line");
        }
        list.reference(id);
        if (depth === 1) kind = kind === 0 ? kinds.reference : kind;
        else if (depth === 2) inner = joined(inner, kinds.reference);
        break;
      }
      case open:
        if (depth === 1) kind = kind === 0 ? kinds.empty : kinds.typed;
        else if (depth === 2) inner = joined(inner, kinds.lists);
        if (++depth > deepest) {
          cursor.at = at;
          cursor.stop("ifc-broken-line");
        }
        at++;
        break;
      case close:
        at++;
        depth--;
        if (depth === 1 && kind === kinds.empty && inner !== 0) kind = listOf[inner] ?? kinds.mixed;
        if (depth > 0) break;
        if (count < 16) seen.kinds[count] = kind;
        seen.count = kind === 0 ? count : count + 1;
        cursor.at = at;
        return;
      case quote:
        if (depth === 1) kind = kind === 0 ? kinds.text : kind;
        else if (depth === 2) inner = joined(inner, kinds.text);
        cursor.at = at;
        cursor.text(c);
        at = cursor.at;
        break;
      default:
        cursor.at = at;
        if (c !== slash || bytes[at + 1] !== star) cursor.stop("ifc-broken-line");
        cursor.comment();
        at = cursor.at;
    }
  }
  cursor.at = at;
  cursor.stop("ifc-truncated");
}

/** Deepest nesting of brackets: entity parameters need about four; beyond this a recursive reader may run out of stack. */
const deepest = 32;

const joined = (inner: number, next: number): number => (inner === 0 || inner === next ? next : kinds.mixed);

const listOf: Readonly<Record<number, number>> = {
  [kinds.reference]: kinds.references,
  [kinds.number]: kinds.numbers,
  [kinds.lists]: kinds.lists,
};

/** Sorts of byte between the brackets; 0: must not stand there. */
const [blank, comma, token, hash, open, close, quote] = [1, 2, 3, 4, 5, 6, 7];
const [slash, star, zero] = [47, 42, 48];
/** Names of records are whole numbers up to here. */
const largest = 0xffffffff;

const sortOf = new Uint8Array(256);
const sort = (letters: string, as: number): void => {
  for (const letter of letters) sortOf[letter.charCodeAt(0)] = as;
};
sort(" \t\r\n", blank);
sort(",", comma);
sort("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.$*_+-", token);
sort("#", hash);
sort("(", open);
sort(")", close);
sort("'\"", quote);

/** Kind of the token that begins with a letter, digit, sign, dot, $ or *. */
const tokenKind = new Uint8Array(256).fill(kinds.typed);
for (const letter of "0123456789+-") tokenKind[letter.charCodeAt(0)] = kinds.number;
for (const letter of "$*") tokenKind[letter.charCodeAt(0)] = kinds.none;
tokenKind[".".charCodeAt(0)] = kinds.word;
