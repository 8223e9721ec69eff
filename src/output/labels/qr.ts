import qrcode from "qrcode-generator";

/** A symbol: rows of modules, true is dark. The clear rim of four modules is not part of it. */
export type QrModules = readonly (readonly boolean[])[];

/** Largest symbol that a phone still reads on the smallest label: version 10, 57 × 57 modules. */
const mostModules = 57;

/**
 * Text as a matrix of dark and light modules, in bytes of UTF-8 at level M, the smallest version that holds it.
 *
 * @param text - At most 213 bytes. @returns undefined where it is longer.
 * @source ISO-18004
 * @example "roomwake:" needs version 1, 21 × 21 modules
 */
export function qrOf(text: string): QrModules | undefined {
  const code = qrcode(0, "M");
  // The library takes a string as bytes, one a character.
  code.addData(String.fromCharCode(...new TextEncoder().encode(text)), "Byte");
  try {
    code.make();
  } catch {
    return undefined; // longer than the largest version holds
  }
  const size = code.getModuleCount();
  if (size > mostModules) return undefined;
  return Array.from({ length: size }, (_, row) =>
    Array.from({ length: size }, (_, column) => code.isDark(row, column)),
  );
}
