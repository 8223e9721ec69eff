import type { Problem } from "#engine";
import { fits, kinds } from "./step-signatures.ts";
import { firstBytesProblem } from "./step-start.ts";

/** A STEP physical file (ISO 10303-21) whose framing, quotes, comments, brackets and instance names were all checked. */
export interface StepFile {
  readonly bytes: Uint8Array;
  /** Schema as FILE_SCHEMA names it, in capitals. */
  readonly schema: string;
  /** Instance name (the number after #) of each record, in file order. */
  readonly ids: Float64Array;
  /** Index of each record's type in `types`. */
  readonly typeOf: Uint16Array;
  readonly types: readonly string[];
  /** Byte offsets of each record's parameter list: first byte after "(", and the byte of ")". */
  readonly from: Uint32Array;
  readonly to: Uint32Array;
  readonly indexOf: ReadonlyMap<number, number>;
  /** References of record i: `references[firstReference[i]] … references[firstReference[i + 1] - 1]`, as instance names. */
  readonly references: Float64Array;
  readonly firstReference: Uint32Array;
}

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

/** Deepest nesting of brackets: entity parameters need about four; beyond this a recursive reader may run out of stack. */
const deepest = 32;

class Stop {
  constructor(readonly problem: Problem) {}
}

const code = (letter: string): number => letter.charCodeAt(0);
const [quote, doubleQuote, hash, open, close, semicolon, slash, star, equals] = [..."'\"#();/*="].map(
  code,
) as [number, number, number, number, number, number, number, number, number];

/** What may stand between tokens inside a parameter list: letters, digits, signs, dots, commas, $ * and underscores. */
const plain = new Uint8Array(256);
for (const letter of "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,$*_+- \t\r\n")
  plain[code(letter)] = 1;

class Cursor {
  at = 0;
  /** Instance name being read, for the message. */
  record = 0;
  constructor(readonly bytes: Uint8Array) {
    if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) this.at = 3;
  }

  where(): string {
    return this.record ? `record #${this.record}` : "the header";
  }

  stop(code: Problem["code"], values: Problem["values"] = {}): never {
    throw new Stop({ code, values: { where: this.where(), line: lineAt(this.bytes, this.at), ...values } });
  }

  /** Skips blanks and comments. */
  gap(): void {
    const { bytes } = this;
    for (;;) {
      const c = bytes[this.at];
      if (c === 32 || c === 10 || c === 13 || c === 9) this.at++;
      else if (c === slash && bytes[this.at + 1] === star) this.comment();
      else return;
    }
  }

  comment(): void {
    const { bytes } = this;
    const begin = this.at;
    for (let i = begin + 2; i < bytes.length; i++) {
      if (bytes[i] === star && bytes[i + 1] === slash) {
        this.at = i + 2;
        return;
      }
    }
    this.stop("ifc-comment-open", { line: lineAt(bytes, begin) });
  }

  /** Moves past a text literal. */
  text(mark: number): void {
    const { bytes } = this;
    const begin = this.at;
    const end = bytes.indexOf(mark, begin + 1);
    if (end < 0) this.stop("ifc-text-open", { line: lineAt(bytes, begin) });
    this.at = end + 1;
  }

  word(): string {
    const { bytes } = this;
    let text = "";
    for (;;) {
      const c = bytes[this.at];
      if (
        c === undefined ||
        !((c >= 65 && c <= 90) || (c >= 97 && c <= 122) || (c >= 48 && c <= 57) || c === 95 || c === 45)
      )
        return text;
      text += String.fromCharCode(c);
      this.at++;
    }
  }

  number(): number {
    const { bytes } = this;
    let value = 0;
    const begin = this.at;
    for (;;) {
      const c = bytes[this.at];
      if (c === undefined || c < 48 || c > 57) break;
      value = value * 10 + (c - 48);
      this.at++;
    }
    if (this.at === begin || value > 0xffffffff) this.stop("ifc-broken-line");
    return value;
  }

  expect(mark: number): void {
    this.gap();
    if (this.at >= this.bytes.length) this.stop("ifc-truncated");
    if (this.bytes[this.at] !== mark) this.stop("ifc-broken-line");
    this.at++;
  }

  keyword(wanted: string): void {
    this.gap();
    if (this.at >= this.bytes.length) this.stop("ifc-truncated");
    if (this.word().toUpperCase() !== wanted) this.stop("ifc-broken-line");
    this.expect(semicolon);
  }
}

const lineAt = (bytes: Uint8Array, at: number): number => {
  let line = 1;
  for (let i = 0; i < at && i < bytes.length; i++) if (bytes[i] === 10) line++;
  return line;
};

/** Kinds of the parameters of the list read last, as many as the checks look at. */
const found = (): { kinds: Uint8Array; count: number } => ({ kinds: new Uint8Array(16), count: 0 });

type Found = ReturnType<typeof found>;

/**
 * Reads a bracketed list; the cursor stands after "(" and ends after its ")". Calls back with every reference, and notes
 * the kind of each parameter: the commas of the outer list part them.
 */
function brackets(cursor: Cursor, reference: (id: number) => void, seen: Found): void {
  const { bytes } = cursor;
  let depth = 1;
  let kind = 0;
  let inner = 0;
  seen.count = 0;
  const done = (): void => {
    if (seen.count < 16) seen.kinds[seen.count] = kind;
    if (kind !== 0) seen.count++;
    kind = 0;
    inner = 0;
  };
  const note = (token: number): void => {
    if (depth === 1) kind = kind === 0 ? token : kind;
    else if (depth === 2) inner = inner === 0 || inner === token ? token : kinds.mixed;
  };
  while (cursor.at < bytes.length) {
    const c = bytes[cursor.at]!;
    if (plain[c]) {
      if (depth <= 2 && c > 32) {
        if (c !== 44) note(kindOf(c));
        else if (depth === 1) done();
        // A letter or digit that follows another belongs to the same token.
        if (c !== 44) {
          while (bytes[cursor.at + 1]! !== 44 && plain[bytes[cursor.at + 1]!]) cursor.at++;
        }
      }
      cursor.at++;
    } else if (c === hash) {
      cursor.at++;
      note(kinds.reference);
      reference(cursor.number());
    } else if (c === open) {
      if (depth === 1 && kind === 0) kind = kinds.empty;
      else if (depth === 1) kind = kinds.typed;
      else note(kinds.lists);
      if (++depth > deepest) cursor.stop("ifc-broken-line");
      cursor.at++;
    } else if (c === close) {
      cursor.at++;
      depth--;
      if (depth === 1 && kind === kinds.empty && inner !== 0) kind = listOf[inner] ?? kinds.mixed;
      if (depth === 0) {
        done();
        return;
      }
    } else if (c === quote || c === doubleQuote) {
      note(kinds.text);
      cursor.text(c);
    } else if (c === slash && bytes[cursor.at + 1] === star) cursor.comment();
    else cursor.stop("ifc-broken-line");
  }
  cursor.stop("ifc-truncated");
}

const listOf: Readonly<Record<number, number>> = {
  [kinds.reference]: kinds.references,
  [kinds.number]: kinds.numbers,
  [kinds.lists]: kinds.lists,
};

/** Kind of the token that begins with a letter, digit, sign, dot, $ or *. */
const kindOf = (c: number): number => {
  if (c === 36 || c === 42) return kinds.none;
  if ((c >= 48 && c <= 57) || c === 43 || c === 45) return kinds.number;
  return c === 46 ? kinds.word : kinds.typed;
};

const nothing = (): void => {};

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
    brackets(cursor, nothing, found());
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
      brackets(cursor, nothing, found());
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
    cursor.at++;
    const id = cursor.number();
    cursor.record = id;
    cursor.expect(equals);
    cursor.gap();
    const typeFrom = cursor.at;
    if (bytes[typeFrom] !== open) {
      while (isName(bytes[cursor.at])) cursor.at++;
      if (cursor.at === typeFrom)
        cursor.stop(cursor.at >= bytes.length ? "ifc-truncated" : "ifc-broken-line");
    }
    const typeTo = cursor.at;
    cursor.expect(open);
    const from = cursor.at;
    if (list.begin(id, typeFrom, typeTo) === "twice") cursor.stop("ifc-id-twice", { id });
    brackets(cursor, list.reference, seen);
    if (!fits(list.lastType, seen.kinds, seen.count)) cursor.stop("ifc-broken-line");
    list.end(from, cursor.at - 1);
    cursor.expect(semicolon);
    if (list.count > limits.records) cursor.stop("ifc-too-large", { limit: `${limits.records} records` });
  }
}

const isName = (c: number | undefined): boolean =>
  c !== undefined && ((c >= 65 && c <= 90) || (c >= 97 && c <= 122) || (c >= 48 && c <= 57) || c === 95);

class RecordList {
  count = 0;
  lastId = 0;
  lastType = "";
  private ids: Float64Array;
  private typeOf: Uint16Array;
  private from: Uint32Array;
  private to: Uint32Array;
  private firstReference: Uint32Array;
  private references = new Float64Array(1024);
  private referenceCount = 0;
  private readonly indexOf = new Map<number, number>();
  private readonly types: string[] = [];
  private readonly typesByKey = new Map<number, number[]>();

  constructor(
    private readonly bytes: Uint8Array,
    room: number,
  ) {
    this.ids = new Float64Array(room);
    this.typeOf = new Uint16Array(room);
    this.from = new Uint32Array(room);
    this.to = new Uint32Array(room);
    this.firstReference = new Uint32Array(room + 1);
  }

  begin(id: number, typeFrom: number, typeTo: number): "new" | "twice" {
    if (this.indexOf.has(id)) return "twice";
    if (this.count >= this.ids.length) this.grow();
    this.indexOf.set(id, this.count);
    this.ids[this.count] = id;
    const type = this.type(typeFrom, typeTo);
    this.typeOf[this.count] = type;
    this.lastType = this.types[type]!;
    this.firstReference[this.count] = this.referenceCount;
    this.lastId = id;
    return "new";
  }

  reference = (id: number): void => {
    if (this.referenceCount >= this.references.length)
      this.references = longer(this.references, Float64Array);
    this.references[this.referenceCount++] = id;
  };

  end(from: number, to: number): void {
    this.from[this.count] = from;
    this.to[this.count] = to;
    this.count++;
  }

  file(schema: string): StepFile {
    this.firstReference[this.count] = this.referenceCount;
    return {
      bytes: this.bytes,
      schema,
      ids: this.ids.subarray(0, this.count),
      typeOf: this.typeOf.subarray(0, this.count),
      types: this.types,
      from: this.from.subarray(0, this.count),
      to: this.to.subarray(0, this.count),
      indexOf: this.indexOf,
      references: this.references.subarray(0, this.referenceCount),
      firstReference: this.firstReference.subarray(0, this.count + 1),
    };
  }

  private type(from: number, to: number): number {
    const { bytes } = this;
    let key = to - from;
    for (let i = from; i < to; i++) key = (Math.imul(key, 31) + (bytes[i]! & 0xdf)) | 0;
    const known = this.typesByKey.get(key);
    for (const index of known ?? []) if (sameName(bytes, from, to, this.types[index]!)) return index;
    let name = "";
    for (let i = from; i < to; i++) name += String.fromCharCode(bytes[i]!);
    this.types.push(name.toUpperCase());
    const index = this.types.length - 1;
    if (known) known.push(index);
    else this.typesByKey.set(key, [index]);
    return index;
  }

  private grow(): void {
    this.ids = longer(this.ids, Float64Array);
    this.typeOf = longer(this.typeOf, Uint16Array);
    this.from = longer(this.from, Uint32Array);
    this.to = longer(this.to, Uint32Array);
    const first = new Uint32Array(this.ids.length + 1);
    first.set(this.firstReference);
    this.firstReference = first;
  }
}

const sameName = (bytes: Uint8Array, from: number, to: number, name: string): boolean => {
  if (to - from !== name.length) return false;
  for (let i = from; i < to; i++) {
    const c = bytes[i]!;
    if ((c >= 97 && c <= 122 ? c - 32 : c) !== name.charCodeAt(i - from)) return false;
  }
  return true;
};

function longer<A extends Float64Array | Uint32Array | Uint16Array>(
  array: A,
  make: new (length: number) => A,
): A {
  const next = new make(array.length * 2);
  next.set(array);
  return next;
}
