import type { StepFile } from "./step-file.ts";
import { stepText } from "./step-text.ts";

/** A parameter of a STEP record. `null`: not given ($ or *). */
export type StepValue =
  | null
  | number
  | string
  | { readonly ref: number }
  | { readonly word: string }
  | { readonly type: string; readonly value: StepValue }
  | readonly StepValue[];

/** Parameters of the record at an index. A complex record (several types) gives its parts as typed values. */
export function parameters(file: StepFile, index: number): readonly StepValue[] {
  const reader = new ValueReader(file.bytes, file.from[index]!, file.to[index]!);
  return reader.list();
}

class ValueReader {
  constructor(
    private readonly bytes: Uint8Array,
    private at: number,
    private readonly end: number,
  ) {}

  /** Values up to the closing bracket or the end. */
  list(): StepValue[] {
    const values: StepValue[] = [];
    for (;;) {
      this.gap();
      if (this.at >= this.end || this.bytes[this.at] === 41) {
        this.at++;
        return values;
      }
      if (this.bytes[this.at] === 44) this.at++;
      else values.push(this.value());
    }
  }

  private gap(): void {
    const { bytes } = this;
    while (this.at < this.end) {
      const c = bytes[this.at];
      if (c === 32 || c === 10 || c === 13 || c === 9) this.at++;
      else if (c === 47 && bytes[this.at + 1] === 42) {
        let i = this.at + 2;
        while (i < this.end && !(bytes[i] === 42 && bytes[i + 1] === 47)) i++;
        this.at = i + 2;
      } else return;
    }
  }

  private value(): StepValue {
    const { bytes } = this;
    const c = bytes[this.at]!;
    if (c === 40) {
      this.at++;
      return this.list();
    }
    if (c === 36 || c === 42) {
      this.at++;
      return null;
    }
    if (c === 39) return this.text();
    if (c === 34) {
      this.at = Math.min(bytes.indexOf(34, this.at + 1), this.end) + 1;
      return null;
    }
    if (c === 35) {
      this.at++;
      return { ref: this.whole() };
    }
    if (c === 46) {
      this.at++;
      if (digit(bytes[this.at]!)) return Number(`0.${this.run(numeral)}`);
      const word = this.run(nameLetter);
      if (bytes[this.at] === 46) this.at++;
      return { word: word.toUpperCase() };
    }
    if (numeral(c)) return Number(this.run(numeral));
    const type = this.run(nameLetter).toUpperCase();
    if (type === "") {
      this.at++;
      return null;
    }
    this.gap();
    if (bytes[this.at] !== 40) return { word: type };
    this.at++;
    const inner = this.list();
    return { type, value: inner.length === 1 ? inner[0]! : inner };
  }

  private text(): string {
    const { bytes } = this;
    const from = this.at + 1;
    let to = from;
    for (;;) {
      to = bytes.indexOf(39, to);
      if (to < 0 || to >= this.end) {
        this.at = this.end;
        return stepText(bytes, from, this.end);
      }
      if (bytes[to + 1] !== 39 || to + 1 >= this.end) break;
      to += 2;
    }
    this.at = to + 1;
    return stepText(bytes, from, to);
  }

  /** Digits as a whole number: most parameters are references. */
  private whole(): number {
    const { bytes, end } = this;
    let value = 0;
    while (this.at < end) {
      const c = bytes[this.at]!;
      if (c < 48 || c > 57) break;
      value = value * 10 + (c - 48);
      this.at++;
    }
    return value;
  }

  private run(allowed: (c: number) => boolean): string {
    const { bytes, end } = this;
    let text = "";
    let at = this.at;
    while (at < end && allowed(bytes[at]!)) text += String.fromCharCode(bytes[at++]!);
    this.at = at;
    return text;
  }
}

const digit = (c: number): boolean => c >= 48 && c <= 57;
const numeral = (c: number): boolean => digit(c) || c === 43 || c === 45 || c === 46 || c === 69 || c === 101;
const nameLetter = (c: number): boolean =>
  digit(c) || (c >= 65 && c <= 90) || (c >= 97 && c <= 122) || c === 95;
