/** Plans that can be read as lines. */
export type PlanKind = "dxf" | "pdf" | "svg";

/**
 * What kind of plan a file is: by its first bytes where they say it, else by the ending of its name. A DXF drawing has no
 * mark of its own, so a file that looks like nothing else and is called so is taken for one; its reader says what is wrong.
 */
export function planKind(file: { readonly name: string; readonly bytes: Uint8Array }): PlanKind | undefined {
  const head = new TextDecoder("latin1").decode(file.bytes.subarray(0, 1024));
  if (head.includes("%PDF-")) return "pdf";
  if (/^(\xef\xbb\xbf)?\s*</.test(head) && /<(\w+:)?svg[\s>]/.test(head)) return "svg";
  if (/^\w+ Binary DXF/.test(head) || /^\s*(999|0)\s*[\r\n]/.test(head)) return "dxf";
  // A packed SVG drawing (.svgz) shows nothing of itself before its reader unpacks it.
  const ending = /\.(dxf$|pdf$|svg(?=z?$))/i.exec(file.name)?.[1]?.toLowerCase();
  return ending as PlanKind | undefined;
}
