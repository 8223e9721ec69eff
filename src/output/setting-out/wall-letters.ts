import type { Measure } from "./measures.ts";

/** Letters of the walls of one room that are measured from, in the order of the outline: a, b, c … z, aa, ab … */
export function wallLetters(measures: readonly Measure[]): ReadonlyMap<number, string> {
  const walls = [...new Set(measures.map((measure) => measure.wall))].sort((a, b) => a - b);
  return new Map(walls.map((wall, i) => [wall, letter(i)]));
}

function letter(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : letter(Math.floor(index / 26) - 1) + last;
}
