/** CSS pixels in one unit. @source W3C-SVG2, section 8.9 */
const pixels: Readonly<Record<string, number>> = {
  "": 1,
  px: 1,
  pt: 96 / 72,
  pc: 16,
  in: 96,
  cm: 96 / 2.54,
  mm: 96 / 25.4,
  q: 96 / 101.6,
};

const written = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z%]*)\s*$/i;

/**
 * A length in pixels; undefined where there is none or it cannot be read.
 *
 * @param against.whole - What 100 % is. [px]
 * @param against.em - Size of the letters. [px]
 */
export function lengthOf(
  text: string | undefined,
  against: { readonly whole?: number | undefined; readonly em?: number },
): number | undefined {
  const match = written.exec(text ?? "");
  if (!match) return undefined;
  const [, digits, unit] = match;
  const value = Number(digits);
  const kind = unit!.toLowerCase();
  if (kind === "%") return against.whole === undefined ? undefined : (value / 100) * against.whole;
  if (kind === "em" || kind === "rem") return value * (against.em ?? 16);
  if (kind === "ex") return value * (against.em ?? 16) * 0.5;
  const size = pixels[kind];
  return size === undefined || !Number.isFinite(value) ? undefined : value * size;
}

/** Whether a length is given in a unit of paper, so that it says how large the drawing is printed. */
export const isPhysical = (text: string | undefined): boolean =>
  /^(pt|pc|in|cm|mm|q)$/i.test(written.exec(text ?? "")?.[2] ?? "");

/** Numbers of a list as SVG writes them, with blanks or commas between, signs and second dots beginning new ones. */
export const numbersOf = (text: string | undefined): number[] =>
  ((text ?? "").match(/[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/gi) ?? []).map(Number);
