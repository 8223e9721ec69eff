const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const codes = Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
const equals = 61;
const none = 255;
const values = new Uint8Array(128).fill(none);
for (const [value, code] of codes.entries()) values[code] = value;

/** Bytes as base64; quick also for megabytes of pictures. @example [255] → "/w==" */
export function base64Of(bytes: Uint8Array): string {
  const text = new Uint8Array(4 * Math.ceil(bytes.length / 3));
  let at = 0;
  for (let i = 0; i < bytes.length; i += 3) {
    const three = (bytes[i]! << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    text[at++] = codes[three >> 18]!;
    text[at++] = codes[(three >> 12) & 63]!;
    text[at++] = i + 1 < bytes.length ? codes[(three >> 6) & 63]! : equals;
    text[at++] = i + 2 < bytes.length ? codes[three & 63]! : equals;
  }
  return new TextDecoder().decode(text);
}

/** Bytes of a base64 text; undefined where it is none, or where the same bytes would be written otherwise. */
export function bytesOfBase64(text: string): Uint8Array | undefined {
  const open = text.endsWith("==") ? 2 : text.endsWith("=") ? 1 : 0;
  if (text.length % 4 !== 0) return undefined;
  const bytes = new Uint8Array((text.length / 4) * 3 - open);
  let [held, bits, at] = [0, 0, 0];
  for (let i = 0; i < text.length - open; i++) {
    const value = values[text.charCodeAt(i)] ?? none;
    if (value === none) return undefined;
    held = ((held << 6) | value) & 0xffff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes[at++] = (held >> bits) & 255;
    }
  }
  // What is left over is written as zeros.
  return (held & ((1 << bits) - 1)) === 0 ? bytes : undefined;
}
