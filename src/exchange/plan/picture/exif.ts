import { letters } from "./bytes.ts";

/** Tag that says how the camera was held. */
const orientationTag = 0x0112;

/**
 * How the camera was held, out of a block of EXIF: 1 … 8, and 1 where it does not say or says nonsense.
 *
 * @param tiff - The block from its byte order mark on: "II" or "MM"
 * @source EXIF-2-32, tag Orientation
 */
export function orientationIn(tiff: Uint8Array): number {
  const order = letters(tiff.subarray(0, 2));
  if ((order !== "II" && order !== "MM") || tiff.length < 8) return 1;
  const little = order === "II";
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength);
  const directory = view.getUint32(4, little);
  if (view.getUint16(2, little) !== 42 || directory + 2 > tiff.length) return 1;
  const count = view.getUint16(directory, little);
  for (let i = 0; i < count; i++) {
    const entry = directory + 2 + 12 * i;
    if (entry + 12 > tiff.length) return 1;
    if (view.getUint16(entry, little) !== orientationTag) continue;
    const value = view.getUint16(entry + 8, little);
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}
