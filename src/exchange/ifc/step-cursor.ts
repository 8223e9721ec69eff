import { type Problem, type Said, say } from "#engine";

/** Thrown at the first thing that is wrong. */
export class Stop {
  constructor(readonly problem: Problem) {}
}

/** Place in the bytes of a STEP file, with what is needed to say where something is wrong. */
export class Cursor {
  at = 0;
  /** Instance name being read, for the message. */
  record = 0;
  constructor(readonly bytes: Uint8Array) {
    if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) this.at = 3;
  }

  where(): Said {
    return this.record ? say`record #${this.record}` : say`the header`;
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
      else if (c === 47 && bytes[this.at + 1] === 42) this.comment();
      else return;
    }
  }

  comment(): void {
    const { bytes } = this;
    const begin = this.at;
    for (let i = begin + 2; i < bytes.length; i++) {
      if (bytes[i] === 42 && bytes[i + 1] === 47) {
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
    let end = begin + 1;
    while (end < bytes.length && bytes[end] !== mark) end++;
    if (end === bytes.length) this.stop("ifc-text-open", { line: lineAt(bytes, begin) });
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
    let at = begin;
    for (let digit = bytes[at]! - 48; digit >= 0 && digit <= 9; digit = bytes[++at]! - 48)
      value = value * 10 + digit;
    this.at = at;
    if (at === begin || value > 0xffffffff) this.stop("ifc-broken-line");
    return value;
  }

  expect(mark: number): void {
    if (this.bytes[this.at] === mark) {
      this.at++;
      return;
    }
    this.gap();
    if (this.at >= this.bytes.length) this.stop("ifc-truncated");
    if (this.bytes[this.at] !== mark) this.stop("ifc-broken-line");
    this.at++;
  }

  keyword(wanted: string): void {
    this.gap();
    if (this.at >= this.bytes.length) this.stop("ifc-truncated");
    if (this.word().toUpperCase() !== wanted) this.stop("ifc-broken-line");
    this.expect(59);
  }
}

const lineAt = (bytes: Uint8Array, at: number): number => {
  let line = 1;
  for (let i = 0; i < at && i < bytes.length; i++) if (bytes[i] === 10) line++;
  return line;
};
