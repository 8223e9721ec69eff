/**
 * Text of a STEP string literal (the bytes between its quotes), with every escape of ISO 10303-21 resolved:
 * doubled quotes, `\\`, `\S\c`, `\PA\` to `\PI\`, `\X\hh`, `\X2\…\X0\`, `\X4\…\X0\`.
 *
 * A broken escape stays as it was written: names are for reading, and half a name is better than none. Bytes above
 * 127, which the standard forbids and programs write, are taken as UTF-8 if they are that, else as ISO 8859-1.
 */
export function stepText(bytes: Uint8Array, start: number, end: number): string {
  const raw = rawText(bytes, start, end);
  if (!raw.includes("\\") && !raw.includes("''")) return raw;
  let alphabet = "A";
  return raw.replace(escapes, (whole: string, ...groups: (string | undefined)[]) => {
    const [page, shifted, byte, wide, widest] = groups;
    if (whole === "''") return "'";
    if (whole === "\\\\") return "\\";
    if (page !== undefined) {
      alphabet = page;
      return "";
    }
    if (shifted !== undefined) return inAlphabet(alphabet, (shifted.charCodeAt(0) & 0x7f) | 0x80);
    if (byte !== undefined) return String.fromCharCode(Number.parseInt(byte, 16));
    if (wide !== undefined) return units(wide, 4, String.fromCharCode);
    if (widest !== undefined) return units(widest, 8, codePoint);
    return whole;
  });
}

const escapes =
  /''|\\\\|\\P([A-I])\\|\\S\\([\s\S])|\\X\\([0-9A-Fa-f]{2})|\\X2\\((?:[0-9A-Fa-f]{4})*)\\X0\\|\\X4\\((?:[0-9A-Fa-f]{8})*)\\X0\\/g;

const units = (hex: string, digits: number, letter: (code: number) => string): string => {
  let text = "";
  for (let i = 0; i < hex.length; i += digits) text += letter(Number.parseInt(hex.slice(i, i + digits), 16));
  return text;
};

const codePoint = (code: number): string => (code <= 0x10ffff ? String.fromCodePoint(code) : "\ufffd");

/** Parts 1 to 9 of ISO 8859 are the alphabets A to I. Part 9 is decoded as its superset Windows-1254. */
const inAlphabet = (alphabet: string, code: number): string => {
  if (alphabet === "A") return String.fromCharCode(code);
  const part = alphabet.charCodeAt(0) - 64;
  const label = part === 9 ? "windows-1254" : `iso-8859-${part}`;
  return new TextDecoder(label).decode(Uint8Array.of(code));
};

const rawText = (bytes: Uint8Array, start: number, end: number): string => {
  let text = "";
  for (let i = start; i < end; i++) {
    const code = bytes[i]!;
    if (code > 127) return beyondAscii(bytes.subarray(start, end));
    text += String.fromCharCode(code);
  }
  return text;
};

const beyondAscii = (bytes: Uint8Array): string => {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    let text = "";
    for (const code of bytes) text += String.fromCharCode(code);
    return text;
  }
};
