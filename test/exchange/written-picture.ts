import { zlibSync } from "fflate";

const bytesOf = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));
const long = (value: number): number[] => [
  value >>> 24,
  (value >>> 16) & 255,
  (value >>> 8) & 255,
  value & 255,
];
const short = (value: number): number[] => [value >>> 8, value & 255];

/** Remainder by the polynomial of PNG and zip files. */
const crc = (bytes: readonly number[]): number => {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let i = 0; i < 8; i++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  }
  return (value ^ 0xffffffff) >>> 0;
};

/** A chunk of a PNG picture. */
export const chunk = (name: string, body: readonly number[]): number[] => [
  ...long(body.length),
  ...bytesOf(name),
  ...body,
  ...long(crc([...bytesOf(name), ...body])),
];

/** A block of EXIF that says how the camera was held and where it was. */
export const exif = (orientation: number, order: "II" | "MM" = "MM"): number[] => {
  const two = (value: number) => (order === "MM" ? short(value) : short(value).reverse());
  const four = (value: number) => (order === "MM" ? long(value) : long(value).reverse());
  return [
    ...bytesOf(order),
    ...two(42),
    ...four(8),
    ...two(2),
    // Orientation, then the pointer to the place.
    ...[...two(0x0112), ...two(3), ...four(1), ...two(orientation), 0, 0],
    ...[...two(0x8825), ...two(4), ...four(1), ...four(38)],
    ...four(0),
    ...bytesOf("GPS 52.5200 N 13.4050 E"),
  ];
};

/** A grey PNG picture, with more chunks before its pixels where given. */
export function writtenPng(width: number, height: number, more: readonly number[] = []): Uint8Array {
  const rows = new Uint8Array((width + 1) * height).fill(200);
  for (let row = 0; row < height; row++) rows[row * (width + 1)] = 0;
  return Uint8Array.from([
    ...[0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
    ...chunk("IHDR", [...long(width), ...long(height), 8, 0, 0, 0, 0]),
    ...more,
    ...chunk("IDAT", [...zlibSync(rows)]),
    ...chunk("IEND", []),
  ]);
}

/** A segment of a JPEG picture. */
export const segment = (marker: number, body: readonly number[]): number[] => [
  ...[0xff, marker],
  ...short(body.length + 2),
  ...body,
];

/** A JPEG picture as far as its segments go: its scan holds bytes that look like marks and are none. */
export function writtenJpeg(width: number, height: number, more: readonly number[] = []): Uint8Array {
  return Uint8Array.from([
    ...[0xff, 0xd8],
    ...segment(0xe0, [...bytesOf("JFIF\0"), 1, 1, 0, 0, 1, 0, 1, 0, 0]),
    ...more,
    ...segment(0xdb, [0, ...new Array<number>(64).fill(1)]),
    ...segment(0xc0, [8, ...short(height), ...short(width), 1, 1, 0x11, 0]),
    ...segment(0xda, [1, 1, 0, 0, 63, 0]),
    ...[12, 34, 0xff, 0x00, 56, 0xff, 0xd0, 78],
    ...[0xff, 0xd9],
  ]);
}
