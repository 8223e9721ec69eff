import { zlibSync } from "fflate";
import { concatenated } from "./bytes.ts";

/** Pixels row by row from the upper left: red, green, blue and a fourth byte that does not count. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8ClampedArray;
}

/**
 * Writes pixels as a PNG picture without remarks; one of greys alone takes one byte a pixel.
 *
 * @source ISO-15948
 */
export function writtenPng({ width, height, pixels }: Pixels): Uint8Array {
  const channels = isGrey(pixels) ? 1 : 3;
  const wide = width * channels;
  const rows = new Uint8Array((wide + 1) * height);
  for (let row = 0; row < height; row++) {
    const at = row * (wide + 1);
    // Each byte as its difference from the pixel before: paper becomes zeros.
    rows[at] = 1;
    for (let x = 0; x < width; x++)
      for (let k = 0; k < channels; k++) {
        const from = 4 * (row * width + x) + k;
        rows[at + 1 + x * channels + k] = pixels[from]! - (x === 0 ? 0 : pixels[from - 4]!);
      }
  }
  const head = new Uint8Array(13);
  const view = new DataView(head.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  head.set([8, channels === 1 ? 0 : 2], 8);
  return concatenated([
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
    chunk("IHDR", head),
    chunk("IDAT", zlibSync(rows, { level: 6 })),
    chunk("IEND", new Uint8Array(0)),
  ]);
}

function isGrey(pixels: Uint8ClampedArray): boolean {
  for (let i = 0; i < pixels.length; i += 4)
    if (pixels[i] !== pixels[i + 1] || pixels[i] !== pixels[i + 2]) return false;
  return true;
}

function chunk(name: string, body: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(12 + body.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, body.length);
  for (let i = 0; i < 4; i++) bytes[4 + i] = name.charCodeAt(i);
  bytes.set(body, 8);
  view.setUint32(8 + body.length, remainder(bytes.subarray(4, 8 + body.length)));
  return bytes;
}

/** Remainder by the polynomial of PNG and zip files. */
function remainder(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let i = 0; i < 8; i++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  }
  return (value ^ 0xffffffff) >>> 0;
}
