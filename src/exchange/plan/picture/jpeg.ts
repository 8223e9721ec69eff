import { say } from "#engine";
import { concatenated, letters } from "./bytes.ts";
import { orientationIn } from "./exif.ts";
import type { Damaged, StoredPicture } from "./stored-picture.ts";

/**
 * Walks the segments of a JPEG picture up to its end. Kept are the segments that the pixels need: tables, frames, scans,
 * and of the application's own the size mark (APP0), the colour profile (APP2) and the kind of colour (APP14).
 *
 * @returns The picture, or what is wrong with it
 * @source ITU-T81, annex B
 */
export function readJpeg(bytes: Uint8Array): StoredPicture | Damaged {
  const parts: Uint8Array[] = [bytes.subarray(0, 2)];
  const removed = new Set<string>();
  let size: { readonly width: number; readonly height: number } | undefined;
  let orientation = 1;
  let at = 2;
  for (;;) {
    while (bytes[at] === 0xff && bytes[at + 1] === 0xff) at++;
    if (at + 2 > bytes.length) return { damage: say`it is cut off` };
    if (bytes[at] !== 0xff) return { damage: say`a segment is missing` };
    const marker = bytes[at + 1]!;
    // What follows the end is a second picture, a film, or hidden: none of it is shown.
    if (marker === 0xd9) {
      if (at + 2 < bytes.length) removed.add("data after the picture");
      parts.push(bytes.subarray(at, at + 2));
      break;
    }
    if ((marker >= 0xd0 && marker <= 0xd7) || marker === 0x01) {
      parts.push(bytes.subarray(at, at + 2));
      at += 2;
      continue;
    }
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
    if (length < 2 || at + 2 + length > bytes.length) return { damage: say`it is cut off` };
    const segment = bytes.subarray(at, at + 2 + length);
    const body = segment.subarray(4);
    if (isFrame(marker)) {
      if (body.length < 6) return { damage: say`its size is missing` };
      size ??= { height: (body[1]! << 8) | body[2]!, width: (body[3]! << 8) | body[4]! };
    }
    const remark = remarkIn(marker, body);
    if (remark) {
      removed.add(remark);
      if (remark === "EXIF" && orientation === 1) orientation = orientationIn(body.subarray(6));
    } else parts.push(segment);
    at += 2 + length;
    if (marker === 0xda) {
      if (!size) return { damage: say`its size is missing` };
      const from = at;
      while (at < bytes.length && !(bytes[at] === 0xff && isEndOfScan(bytes[at + 1]))) at++;
      parts.push(bytes.subarray(from, at));
    }
  }
  if (!size || size.width === 0 || size.height === 0) return { damage: say`its size is missing` };
  return { ...size, orientation, bytes: concatenated(parts), removed: [...removed] };
}

/** Start of frame, of all kinds of coding; C4, C8 and CC are tables. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

/** Inside a scan, FF 00 is a byte of data and FF D0 … D7 a restart; everything else ends it. */
const isEndOfScan = (next: number | undefined): boolean =>
  next !== undefined && next !== 0 && !(next >= 0xd0 && next <= 0xd7) && next !== 0xff;

/** Length of the segment that says how colours were turned into brightness and tint. [bytes] */
const colourLength = 12;

/** What kind of remark a segment is; undefined for what the pixels need. */
const remarkIn = (marker: number, body: Uint8Array): string | undefined => {
  if (marker === 0xfe) return "comment";
  if (marker < 0xe0 || marker > 0xef) return undefined;
  const name = letters(body.subarray(0, 30));
  if (marker === 0xe0 && name.startsWith("JFIF")) return undefined;
  if (marker === 0xe2 && name.startsWith("ICC_PROFILE")) return undefined;
  if (marker === 0xee && body.length === colourLength) return undefined;
  if (marker === 0xe1 && name.startsWith("Exif")) return "EXIF";
  if (marker === 0xe1 && name.startsWith("http")) return "XMP";
  return `APP${marker - 0xe0}`;
};
