import { type Problem, say, type Words } from "#engine";

/** What the first bytes of a file say against its being a STEP file, or undefined. */
export function firstBytesProblem(bytes: Uint8Array): Problem | undefined {
  if (bytes.length === 0) return { code: "file-empty", values: {} };
  const encoding = wideEncoding(bytes);
  if (encoding) return { code: "ifc-wrong-encoding", values: { encoding } };
  const head = new TextDecoder("latin1").decode(bytes.subarray(0, 4096)).replace(/^\u00ef\u00bb\u00bf/, "");
  const text = head.replace(/^(\s|\/\*[\s\S]*?\*\/)*/, "");
  if (text.toUpperCase().startsWith("ISO-10303-21")) return undefined;
  if (/^\/\*/.test(text)) return { code: "ifc-comment-open", values: { where: say`the header`, line: 1 } };
  return { code: "ifc-not-step", values: { found: looksLike(head) } };
}

const wideEncoding = (bytes: Uint8Array): string | undefined => {
  const [a, b, c, d] = bytes;
  if (a === 0xff && b === 0xfe) return c === 0 && d === 0 ? "UTF-32" : "UTF-16";
  if (a === 0xfe && b === 0xff) return "UTF-16";
  if (a === 0 && b === 0 && c === 0xfe && d === 0xff) return "UTF-32";
  if (a === 0x49 && b === 0) return "UTF-16";
  if (a === 0 && b === 0x49) return "UTF-16";
  return undefined;
};

const looksLike = (head: string): Words => {
  if (head.startsWith("%PDF")) return say`a PDF`;
  if (/^\s*(<\?xml|<ifc)/i.test(head)) return "XML";
  if (/^\s*[{[]/.test(head)) return "JSON";
  if (/^\s*0\s*\n\s*SECTION/.test(head)) return say`a DXF drawing`;
  if (head.startsWith("AC10")) return say`a DWG drawing`;
  if (head.startsWith("glTF")) return "glTF";
  if (head.startsWith("\u0089HDF")) return "HDF5";
  return say`something else`;
};
