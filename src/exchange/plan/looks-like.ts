/** What the first bytes of a file look like, in words that go into a sentence. */
export function looksLike(bytes: Uint8Array): string {
  const head = new TextDecoder("latin1").decode(bytes.subarray(0, 1024));
  const begins = marks.find(([mark]) => (typeof mark === "string" ? head.startsWith(mark) : mark.test(head)));
  if (begins) return begins[1];
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what tells binary files from texts.
  return /[\u0000-\u0008\u000e-\u001f]/.test(head) ? "a binary file of another kind" : "a text file";
}

const marks: readonly (readonly [RegExp | string, string])[] = [
  [/%PDF-/, "a PDF file"],
  ["\u0089PNG\r\n", "a PNG picture"],
  ["\u00ff\u00d8\u00ff", "a JPEG picture"],
  ["GIF8", "a GIF picture"],
  ["II*\u0000", "a TIFF picture"],
  ["MM\u0000*", "a TIFF picture"],
  [/^RIFF....WEBP/s, "a WebP picture"],
  ["BM", "a BMP picture"],
  [/^....ftyp(heic|heix|mif1|avif)/s, "a HEIC or AVIF picture"],
  ["PK\u0003\u0004", "a zip file"],
  ["\u001f\u008b", "a packed file (gzip)"],
  [/^AC10\d\d/, "a DWG drawing"],
  [/^\w+ Binary DXF/, "a binary DXF drawing"],
  [/^\s*0\s*\r?\n\s*SECTION/, "a DXF drawing"],
  [/^\s*ISO-10303-21/, "a building model (IFC)"],
  [/<svg[\s>]/, "an SVG drawing"],
  [/<html|<!doctype html/i, "a web page"],
];
