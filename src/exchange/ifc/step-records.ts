import type { StepFile } from "./step-file.ts";
import { InstanceIndex } from "./step-index.ts";
import { type Signature, signatureOf } from "./step-signatures.ts";

/** Records in file order, in typed arrays that grow: a large file has millions. */
export class RecordList {
  count = 0;
  lastId = 0;
  /** What the parameters of the record read last must be; undefined: anything. */
  lastSignature: Signature | undefined = undefined;
  private ids: Uint32Array;
  private starts: Uint32Array;
  private typeOf: Uint16Array;
  private from: Uint32Array;
  private to: Uint32Array;
  private firstReference: Uint32Array;
  private references: Uint32Array;
  private referenceCount = 0;
  private readonly indexOf: InstanceIndex;
  private readonly types: string[] = [];
  /** Where each type stands first in the bytes. */
  private readonly firstOfType: number[] = [];
  private readonly signatures: (Signature | undefined)[] = [];
  private readonly typesByKey = new Map<number, number[]>();

  constructor(
    private readonly bytes: Uint8Array,
    room: number,
  ) {
    this.indexOf = new InstanceIndex(room * 4);
    this.ids = new Uint32Array(room);
    this.starts = new Uint32Array(room);
    this.typeOf = new Uint16Array(room);
    this.from = new Uint32Array(room);
    this.to = new Uint32Array(room);
    this.firstReference = new Uint32Array(room + 1);
    // Records hold two or three references each.
    this.references = new Uint32Array(3 * room);
  }

  begin(id: number, typeFrom: number, typeTo: number): "new" | "twice" {
    if (this.indexOf.get(id) !== undefined) return "twice";
    if (this.count >= this.ids.length) this.grow();
    this.indexOf.set(id, this.count);
    this.ids[this.count] = id;
    const type = this.type(typeFrom, typeTo);
    this.typeOf[this.count] = type;
    this.lastSignature = this.signatures[type];
    this.firstReference[this.count] = this.referenceCount;
    this.lastId = id;
    return "new";
  }

  reference(id: number): void {
    if (this.referenceCount >= this.references.length) this.references = longer(this.references, Uint32Array);
    this.references[this.referenceCount++] = id;
  }

  /** @param start - Where its # stands. */
  end(start: number, from: number, to: number): void {
    this.starts[this.count] = start;
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
      starts: this.starts.subarray(0, this.count),
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
    if (known !== undefined)
      for (let i = 0; i < known.length; i++)
        if (sameName(bytes, { from, length: to - from, other: this.firstOfType[known[i]!]! }))
          return known[i]!;
    let name = "";
    for (let i = from; i < to; i++) name += String.fromCharCode(bytes[i]!);
    name = name.toUpperCase();
    this.types.push(name);
    this.firstOfType.push(from);
    this.signatures.push(signatureOf(name));
    const index = this.types.length - 1;
    if (known) known.push(index);
    else this.typesByKey.set(key, [index]);
    return index;
  }

  private grow(): void {
    this.ids = longer(this.ids, Uint32Array);
    this.starts = longer(this.starts, Uint32Array);
    this.typeOf = longer(this.typeOf, Uint16Array);
    this.from = longer(this.from, Uint32Array);
    this.to = longer(this.to, Uint32Array);
    const first = new Uint32Array(this.ids.length + 1);
    first.set(this.firstReference);
    this.firstReference = first;
  }
}

/** Whether two names in the bytes are one, small letters like capitals. */
function sameName(
  bytes: Uint8Array,
  { from, length, other }: { readonly from: number; readonly length: number; readonly other: number },
): boolean {
  for (let i = 0; i < length; i++) {
    const a = bytes[from + i]!;
    const b = bytes[other + i]!;
    if (a !== b && (a ^ b) !== 32) return false;
    // Only letters have a small form.
    if (a !== b && ((a | 32) < 97 || (a | 32) > 122)) return false;
  }
  const after = bytes[other + length]!;
  return !(isLetterOrDigit(after) || after === 95);
}

const isLetterOrDigit = (c: number): boolean =>
  (c >= 48 && c <= 57) || (c >= 65 && c <= 90) || (c >= 97 && c <= 122);

function longer<A extends Uint32Array | Uint16Array>(array: A, make: new (length: number) => A): A {
  const next = new make(array.length * 2);
  next.set(array);
  return next;
}
