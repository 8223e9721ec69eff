import {
  type AdvanceWidths,
  capitalHeight,
  regularWidths,
  semiboldWidths,
  unitsPerEm,
} from "./inter-widths.ts";
import type { Box, LetteringSize, Millimetres, TextMark } from "./mark.ts";

/** Size of the em square that gives capitals of the named height. [mm] */
export const emOf = (size: LetteringSize): Millimetres => (size * unitsPerEm) / capitalHeight;

/** Length of a line of lettering, figures tabular, without kerning. [mm] */
export function lengthOf(
  text: string,
  size: LetteringSize,
  weight: TextMark["weight"] = "regular",
): Millimetres {
  const widths = weight === "regular" ? regularWidths : semiboldWidths;
  let units = 0;
  for (const letter of text) units += advance(letter, widths);
  return (units / unitsPerEm) * emOf(size);
}

/** The rectangle that a mark of text fills on paper, clear rim included; turned text gives the box around it. */
export function boxOf(mark: TextMark): Box {
  const length = lengthOf(mark.text, mark.size, mark.weight);
  const start = mark.anchor === "start" ? 0 : mark.anchor === "middle" ? -length / 2 : -length;
  const rim = mark.halo ?? 0;
  const turn = ((mark.turn ?? 0) * Math.PI) / 180;
  const corners = [
    [start - rim, -mark.size - rim],
    [start + length + rim, -mark.size - rim],
    [start + length + rim, mark.size * 0.3 + rim],
    [start - rim, mark.size * 0.3 + rim],
  ].map(([x, y]) => [
    mark.at[0] + x! * Math.cos(turn) + y! * Math.sin(turn),
    mark.at[1] - x! * Math.sin(turn) + y! * Math.cos(turn),
  ]);
  const xs = corners.map((corner) => corner[0]!);
  const ys = corners.map((corner) => corner[1]!);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** The text shortened with "…" until it fits a length. */
export function fitted(
  text: string,
  length: Millimetres,
  lettering: { readonly size: LetteringSize; readonly weight?: TextMark["weight"] },
): string {
  if (lengthOf(text, lettering.size, lettering.weight) <= length) return text;
  const letters = [...text];
  while (letters.length > 1) {
    letters.pop();
    const shorter = `${letters.join("").trimEnd()}…`;
    if (lengthOf(shorter, lettering.size, lettering.weight) <= length) return shorter;
  }
  return letters.join("");
}

/** Where a word may be parted; it is written only if it is. */
const softHyphen = "\u00ad";

/** The pieces of a text that stay whole on a line, each with the hyphen that it would end in. */
export const wordsOf = (text: string): readonly string[] =>
  text
    .split(" ")
    .flatMap((word) =>
      word.split(softHyphen).map((part, i, all) => (i < all.length - 1 ? `${part}-` : part)),
    );

/** A sentence broken into lines that fit a length; words are parted at their soft hyphens where they are too long for a line. */
export function broken(text: string, length: Millimetres, size: LetteringSize): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const whole = word.replaceAll(softHyphen, "");
    const longer = line === "" ? whole : `${line} ${whole}`;
    if (line !== "" && lengthOf(longer, size) > length) {
      lines.push(line);
      line = "";
    } else if (line !== "") {
      line = longer;
      continue;
    }
    const parts = lengthOf(whole, size) > length ? wordsOf(word) : [whole];
    lines.push(...parts.slice(0, -1));
    line = parts.at(-1)!;
  }
  if (line !== "") lines.push(line);
  return lines;
}

function advance(letter: string, widths: AdvanceWidths): number {
  const code = letter.codePointAt(0) ?? 32;
  if (code >= 32 && code <= 126) return widths.basic[code - 32]!;
  if (code >= 160 && code <= 255) return widths.latin[code - 160]!;
  return widths.rest[letter] ?? 1400;
}
