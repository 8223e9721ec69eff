import type { Metres } from "#engine";
import { lengthIn, type Units } from "../../texts/index.ts";
import type { ListUnit } from "./list-headings.ts";

const metresPer: Readonly<Record<ListUnit, number>> = { m: 1, cm: 0.01, mm: 0.001, ft: 0.3048, in: 0.0254 };

const figure = "(?:\\d+(?:[.,]\\d+)?|[.,]\\d+)";
const inches = `(?:\\d+[ -])?(?:\\d+/\\d+|${figure})`;
const foot = "(?:'|′|’|ft\\b\\.?|feet\\b|foot\\b)";
const inch = "(?:\"|″|”|''|′′|in\\b\\.?|inch(?:es)?\\b)";
/** A figure, with its unit if it has one; feet and their inches belong together. */
const measure = new RegExp(
  [
    `${figure}\\s*${foot}(?:\\s*${inches}\\s*${inch}|${inches}(?![\\d'′’]))?`,
    `${inches}\\s*${inch}`,
    `${figure}\\s*(?:mm|cm|dm|m(?:et(?:er|re)s?)?)(?![\\w²³])`,
    `${figure}(?:(?=[x×*]\\s*[\\d.,])|(?![\\w'"′″²³/.,-]))`,
  ].join("|"),
  "iy",
);
/** What stands between two sides: 3.42 x 4.10. */
const times = /\s*(?:[x×*]|by)\s*/iy;

/** A part of a line: a figure, or a word that is none. */
export interface Item {
  readonly kind: "figure" | "word";
  readonly text: string;
}

/** Words and figures of a stretch of text, in their order. "3.42 x 4.10" is two figures. */
export function itemsOf(text: string): readonly Item[] {
  const items: Item[] = [];
  let at = 0;
  while (at < text.length) {
    if (/[\s|]/.test(text[at]!)) {
      at += 1;
      continue;
    }
    const found = matchAt(measure, text, at);
    const beginsHere = at === 0 || /[\s|x×*:(]/i.test(text[at - 1]!);
    if (found !== undefined && found !== "" && beginsHere) {
      items.push({ kind: "figure", text: found.trim() });
      at += found.length;
      const between = matchAt(times, text, at);
      if (between !== undefined && matchAt(measure, text, at + between.length) !== undefined)
        at += between.length;
      continue;
    }
    const word = /\S+/y;
    word.lastIndex = at;
    const whole = word.exec(text)![0];
    items.push({ kind: "word", text: whole });
    at += whole.length;
  }
  return items;
}

function matchAt(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}

/** A figure without a unit. */
export const isBare = (text: string): boolean => /^[\d.,]+$/.test(text.trim());

/** The length of a figure; one without a unit counts in `unit`. @returns [m], or undefined for what is no length. */
export function lengthOfFigure(text: string, unit: ListUnit): Metres | undefined {
  const bare = isBare(text);
  const system: Units = unit === "ft" || unit === "in" ? "imperial" : "metric";
  if (!bare) return lengthIn(text, system);
  const plain = Number(text.trim().replace(",", "."));
  // A nanometre is far below what anyone measures, and keeps 342 cm from becoming 3.4200000000000004 m.
  return Number.isFinite(plain) ? Math.round(plain * metresPer[unit] * 1e9) / 1e9 : undefined;
}

/**
 * What figures without a unit most likely count in, by the middle one of the sides: below 60 the person's own unit, from
 * 1 000 millimetres, between them centimetres or inches. Rooms are neither 60 m nor 1 m on most of their sides.
 */
export function likelyUnit(sides: readonly string[], units: Units): ListUnit {
  const plain = sides
    .filter(isBare)
    .map((text) => Number(text.trim().replace(",", ".")))
    .filter(Number.isFinite)
    .sort((a, b) => a - b);
  const middle = plain[Math.floor(plain.length / 2)] ?? 0;
  if (middle >= 1000) return "mm";
  if (middle >= 60) return units === "metric" ? "cm" : "in";
  return units === "metric" ? "m" : "ft";
}
