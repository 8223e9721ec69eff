import { Inflate } from "fflate";
import { type Problem, type Said, say, type Words } from "#engine";
import { crc32 } from "./crc32.ts";

/** What may come out of one packed file. [bytes], [1] */
export const unpackLimits = { bytes: 500_000_000, ratio: 100 } as const;

/** Whether the bytes begin as a zip file does. */
export const isZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && (bytes[2] === 3 || bytes[2] === 5 || bytes[2] === 7);

/** One file in a zip, as its directory tells. */
export interface ZipEntry {
  readonly name: string;
  readonly encrypted: boolean;
  readonly method: number;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  readonly header: number;
}

const damaged = (reason: Said): Problem => ({ code: "job-archive-damaged", values: { reason } });
const tooLarge = (limit: Words): Problem => ({ code: "job-archive-too-large", values: { limit } });

/** Entries of the central directory, folders left out; or what is wrong with it. */
export function zipEntries(bytes: Uint8Array): readonly ZipEntry[] | Problem {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = bytes.length - 22;
  // The end record stands before a comment of at most 65 535 bytes.
  while (end >= 0 && end >= bytes.length - 22 - 65535 && view.getUint32(end, true) !== 0x06054b50) end--;
  if (end < 0 || view.getUint32(end, true) !== 0x06054b50)
    return damaged(say`its directory is missing, the file is cut off`);
  const count = view.getUint16(end + 10, true);
  const entries: ZipEntry[] = [];
  const names = new Set<string>();
  let at = view.getUint32(end + 16, true);
  for (let i = 0; i < count; i++) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== 0x02014b50)
      return damaged(say`its directory is damaged`);
    const length = view.getUint16(at + 28, true);
    const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + length));
    if (names.has(name)) return damaged(say`two of its files have one name`);
    names.add(name);
    if (!name.endsWith("/"))
      entries.push({
        name,
        encrypted: (view.getUint16(at + 8, true) & 1) === 1,
        method: view.getUint16(at + 10, true),
        crc: view.getUint32(at + 16, true),
        packed: view.getUint32(at + 20, true),
        size: view.getUint32(at + 24, true),
        header: view.getUint32(at + 42, true),
      });
    at += 46 + length + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
}

/** Unpacks several entries, and counts what comes out of all of them against the limits. */
export function unpacker(
  bytes: Uint8Array,
  limits: { readonly bytes: number; readonly ratio: number } = unpackLimits,
): (entry: ZipEntry) => Uint8Array | Problem {
  const most = Math.min(limits.bytes, bytes.length * limits.ratio);
  const limit =
    most === limits.bytes
      ? `${Math.round(limits.bytes / 1e6)} MB`
      : say`${limits.ratio} times its packed size`;
  let left = most;
  return (entry) => {
    if (entry.encrypted) return { code: "job-archive-locked", values: {} };
    if (entry.method !== 0 && entry.method !== 8) return damaged(say`it is packed by method ${entry.method}`);
    // A hostile file states what it likes: both what it states and what comes out are looked at.
    if (entry.size > left) return tooLarge(limit);
    const packed = packedPart(bytes, entry);
    if ("code" in packed) return packed;
    const whole = entry.method === 0 ? packed : inflated(packed, left);
    if (whole === "too-large") return tooLarge(limit);
    if (whole === "damaged" || whole.length !== entry.size || crc32(whole) !== entry.crc)
      return damaged(say`its content does not match its checksum`);
    left -= whole.length;
    return whole;
  };
}

function packedPart(bytes: Uint8Array, entry: ZipEntry): Uint8Array | Problem {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (entry.header + 30 > bytes.length || view.getUint32(entry.header, true) !== 0x04034b50)
    return damaged(say`one of its files does not begin where its directory says`);
  const begin =
    entry.header + 30 + view.getUint16(entry.header + 26, true) + view.getUint16(entry.header + 28, true);
  const packed = bytes.subarray(begin, begin + entry.packed);
  return packed.length < entry.packed ? damaged(say`the file is cut off`) : packed;
}

/** Packed bytes that are unpacked in one go: at most about 1000 times this comes out before the limit is looked at. */
const slice = 16_384;

class TooLarge extends Error {}

function inflated(packed: Uint8Array, most: number): Uint8Array | "too-large" | "damaged" {
  const parts: Uint8Array[] = [];
  let total = 0;
  const inflate = new Inflate((part) => {
    total += part.length;
    if (total > most) throw new TooLarge();
    parts.push(part);
  });
  try {
    for (let from = 0; from === 0 || from < packed.length; from += slice)
      inflate.push(packed.subarray(from, from + slice), from + slice >= packed.length);
  } catch (error) {
    return error instanceof TooLarge ? "too-large" : "damaged";
  }
  const whole = new Uint8Array(total);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
