import { say } from "#engine";
import { concatenated, letters } from "./bytes.ts";
import { orientationIn } from "./exif.ts";
import type { Damaged, StoredPicture } from "./stored-picture.ts";

/** Chunks that the pixels and their colours need; every other one is a remark. @source ISO-15948, chapter 11 */
const needed = new Set([
  ...["IHDR", "PLTE", "IDAT", "IEND", "tRNS"],
  ...["gAMA", "cHRM", "sRGB", "iCCP", "cICP", "sBIT", "bKGD", "pHYs"],
]);

/**
 * Walks the chunks of a PNG picture up to its end and keeps those that the pixels need.
 *
 * @returns The picture, or what is wrong with it
 */
export function readPng(bytes: Uint8Array): StoredPicture | Damaged {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const parts: Uint8Array[] = [bytes.subarray(0, 8)];
  const removed = new Set<string>();
  let size: { readonly width: number; readonly height: number } | undefined;
  let orientation = 1;
  let pixels = false;
  let at = 8;
  for (;;) {
    if (at + 12 > bytes.length) return { damage: say`it is cut off` };
    const length = view.getUint32(at);
    const name = letters(bytes.subarray(at + 4, at + 8));
    if (!/^[A-Za-z]{4}$/.test(name)) return { damage: say`a chunk has no name` };
    if (at + 12 + length > bytes.length) return { damage: say`it is cut off` };
    const body = bytes.subarray(at + 8, at + 8 + length);
    if (name === "IHDR" && !size) {
      if (length < 13) return { damage: say`its size is missing` };
      size = { width: view.getUint32(at + 8), height: view.getUint32(at + 12) };
    }
    if (!size) return { damage: say`its size is missing` };
    pixels ||= name === "IDAT" && length > 0;
    if (needed.has(name)) parts.push(bytes.subarray(at, at + 12 + length));
    else {
      removed.add(name === "eXIf" ? "EXIF" : name);
      if (name === "eXIf") orientation = orientationIn(body);
    }
    at += 12 + length;
    if (name !== "IEND") continue;
    if (at < bytes.length) removed.add("data after the picture");
    break;
  }
  if (size.width === 0 || size.height === 0) return { damage: say`its size is missing` };
  if (!pixels) return { damage: say`it holds no pixels` };
  return { ...size, orientation, bytes: concatenated(parts), removed: [...removed] };
}
