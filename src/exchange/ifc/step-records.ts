import type { StepFile } from "./step-file.ts";
import { InstanceIndex } from "./step-index.ts";
import { type Signature, signatureOf } from "./step-signatures.ts";

/** Records in file order, in typed arrays that grow: a large file has millions. */
export class RecordList {
  count = 0;
  lastId = 0;
  /** What the parameters of the record read last must be; undefined: anything. */
  lastSignature: Signature | undefined = undefined;
  private ids: Float64Array;
  private typeOf: Uint16Array;
  private from: Uint32Array;
  private to: Uint32Array;
  private firstReference: Uint32Array;
  private references: Float64Array;
  private referenceCount = 0;
  private readonly indexOf: InstanceIndex;
  private readonly types: string[] = [];
  private readonly signatures: (Signature | undefined)[] = [];
  private readonly typesByKey = new Map<number, number[]>();

  constructor(
    private readonly bytes: Uint8Array,
    room: number,
  ) {
    this.indexOf = new InstanceIndex(room * 4);
    this.ids = new Float64Array(room);
    this.typeOf = new Uint16Array(room);
    this.from = new Uint32Array(room);
    this.to = new Uint32Array(room);
    this.firstReference = new Uint32Array(room + 1);
    // Records hold two or three references each.
    this.references = new Float64Array(3 * room);
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
    if (this.referenceCount >= this.references.length)
      this.references = longer(this.references, Float64Array);
    this.references[this.referenceCount++] = id;
  }

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
    this.signatures.push(signatureOf(name.toUpperCase()));
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
