import { type Said, say } from "#engine";

/** What the first bytes of a file look like, in words that go into a sentence. */
export function looksLike(bytes: Uint8Array): Said {
  const head = new TextDecoder("latin1").decode(bytes.subarray(0, 1024));
  const begins = marks.find(([mark]) => (typeof mark === "string" ? head.startsWith(mark) : mark.test(head)));
  if (begins) return begins[1];
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what tells binary files from texts.
  return /[\u0000-\u0008\u000e-\u001f]/.test(head) ? say`a binary file of another kind` : say`a text file`;
}

const marks: readonly (readonly [RegExp | string, Said])[] = [
  [/%PDF-/, say`a PDF file`],
  ["\u0089PNG\r\n", say`a PNG picture`],
  ["\u00ff\u00d8\u00ff", say`a JPEG picture`],
  ["GIF8", say`a GIF picture`],
  ["II*\u0000", say`a TIFF picture`],
  ["MM\u0000*", say`a TIFF picture`],
  [/^RIFF....WEBP/s, say`a WebP picture`],
  ["BM", say`a BMP picture`],
  [/^....ftyp(heic|heix|mif1|avif)/s, say`a HEIC or AVIF picture`],
  ["PK\u0003\u0004", say`a zip file`],
  ["\u001f\u008b", say`a packed file (gzip)`],
  [/^AC10\d\d/, say`a DWG drawing`],
  [/^\w+ Binary DXF/, say`a binary DXF drawing`],
  [/^\s*0\s*\r?\n\s*SECTION/, say`a DXF drawing`],
  [/^\s*ISO-10303-21/, say`a building model (IFC)`],
  [/<svg[\s>]/, say`an SVG drawing`],
  [/<html|<!doctype html/i, say`a web page`],
];
