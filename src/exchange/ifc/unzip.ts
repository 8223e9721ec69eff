import { Inflate } from "fflate";
import { type Problem, type Said, say } from "#engine";
import type { ReadLimits } from "./limits.ts";

/** Whether the bytes begin as a zip file does. */
export const isZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && (bytes[2] === 3 || bytes[2] === 5 || bytes[2] === 7);

/**
 * The one .ifc file inside an .ifczip. Sizes that the archive states are checked before unpacking, and real sizes while
 * unpacking, because a hostile archive states what it likes.
 */
export function unzipModel(
  bytes: Uint8Array,
  limits: Pick<ReadLimits, "bytes" | "ratio">,
): Uint8Array | Problem {
  const entries = directory(bytes);
  if ("text" in entries) return broken(entries);
  const models = entries.filter(
    (entry) => /\.(ifc|step|stp)$/i.test(entry.name) && !/(^|\/)(__MACOSX\/|\._)/.test(entry.name),
  );
  if (models.length === 0) return { code: "ifczip-no-model", values: {} };
  if (models.length > 1) return { code: "ifczip-several-models", values: { count: models.length } };
  return unpacked(bytes, models[0]!, limits);
}

interface Entry {
  readonly name: string;
  readonly method: number;
  readonly encrypted: boolean;
  readonly packed: number;
  readonly size: number;
  readonly crc: number;
  readonly header: number;
}

const broken = (reason: Said): Problem => ({ code: "ifczip-broken", values: { reason } });

/** Entries of the central directory, or what is wrong with it. @source PKWARE-APPNOTE, sections 4.3.7, 4.3.12, 4.3.16 */
const directory = (bytes: Uint8Array): readonly Entry[] | Said => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = -1;
  for (let i = bytes.length - 22; i >= 0 && i >= bytes.length - 22 - 65535; i--) {
    if (view.getUint32(i, true) === 0x06054b50) {
      end = i;
      break;
    }
  }
  if (end < 0) return say`its directory is missing, the file is cut off`;
  const count = view.getUint16(end + 10, true);
  const entries: Entry[] = [];
  let at = view.getUint32(end + 16, true);
  for (let i = 0; i < count; i++) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== 0x02014b50)
      return say`its directory is damaged`;
    const [nameLength, extra, comment] = [28, 30, 32].map((offset) => view.getUint16(at + offset, true)) as [
      number,
      number,
      number,
    ];
    entries.push({
      name: new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength)),
      encrypted: (view.getUint16(at + 8, true) & 1) === 1,
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packed: view.getUint32(at + 20, true),
      size: view.getUint32(at + 24, true),
      header: view.getUint32(at + 42, true),
    });
    at += 46 + nameLength + extra + comment;
  }
  return entries;
};

class TooLarge extends Error {}

const unpacked = (
  bytes: Uint8Array,
  entry: Entry,
  limits: Pick<ReadLimits, "bytes" | "ratio">,
): Uint8Array | Problem => {
  if (entry.encrypted) return broken(say`it is locked with a password`);
  if (entry.method !== 0 && entry.method !== 8) return broken(say`it is packed by method ${entry.method}`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (entry.header + 30 > bytes.length || view.getUint32(entry.header, true) !== 0x04034b50)
    return broken(say`an entry is damaged`);
  const begin =
    entry.header + 30 + view.getUint16(entry.header + 26, true) + view.getUint16(entry.header + 28, true);
  const packed = bytes.subarray(begin, begin + entry.packed);
  if (packed.length < entry.packed) return broken(say`the file is cut off`);
  const most = Math.min(limits.bytes, Math.max(1, entry.packed) * limits.ratio);
  const size = entry.size > limits.bytes ? say`in bytes` : say`against its packed size`;
  const limit = most === limits.bytes ? `${Math.round(limits.bytes / 1e6)} MB` : say`${limits.ratio} times`;
  const tooLarge: Problem = { code: "ifczip-too-large", values: { size, limit } };
  if (entry.size > most) return tooLarge;
  if (entry.method === 0) return checked(packed, entry);
  const parts: Uint8Array[] = [];
  let total = 0;
  const inflate = new Inflate((part) => {
    total += part.length;
    if (total > most) throw new TooLarge();
    parts.push(part);
  });
  try {
    for (let from = 0; from < packed.length; from += slice) {
      inflate.push(packed.subarray(from, from + slice), from + slice >= packed.length);
    }
  } catch (error) {
    return error instanceof TooLarge ? tooLarge : broken(say`its content is damaged`);
  }
  const whole = new Uint8Array(total);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return checked(whole, entry);
};

/** Packed bytes that are unpacked in one go: at most about 1000 times this comes out before the limit is looked at. */
const slice = 16_384;

const checked = (bytes: Uint8Array, entry: Entry): Uint8Array | Problem =>
  bytes.length === entry.size && crc32(bytes) === entry.crc
    ? bytes
    : broken(say`its content does not match its checksum`);

const crc32 = (bytes: Uint8Array): number => {
  let crc = -1;
  for (const byte of bytes) crc = (crc >>> 8) ^ table[(crc ^ byte) & 0xff]!;
  return (crc ^ -1) >>> 0;
};

const table = Int32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1;
  return c;
});
