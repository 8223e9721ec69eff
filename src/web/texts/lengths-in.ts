import type { Metres } from "#engine";
import type { Units } from "./measures.ts";

const metresPer = {
  m: 1,
  dm: 0.1,
  cm: 0.01,
  mm: 0.001,
  ft: 0.3048,
  in: 0.0254,
} as const;

type Unit = keyof typeof metresPer;

const unitOf: Readonly<Record<string, Unit>> = {
  m: "m",
  metre: "m",
  metres: "m",
  meter: "m",
  meters: "m",
  dm: "dm",
  cm: "cm",
  mm: "mm",
  ft: "ft",
  foot: "ft",
  feet: "ft",
  "'": "ft",
  in: "in",
  inch: "in",
  inches: "in",
  '"': "in",
};

/** One figure (with a fraction or a decimal comma or point) and perhaps its unit. */
const part =
  /^\s*(?:(\d+)(?:\s+|-)(\d+)\s*\/\s*(\d+)|(\d+)\s*\/\s*(\d+)|(\d+(?:[.,]\d*)?|[.,]\d+))\s*(?:([a-z]+)\.?|('|"))?\s*/;

/**
 * A length that a person typed, in metres. A figure without a unit counts in the person's own: metres, or feet.
 * Reads 2.5 · 2,5 m · 250 cm · 1 m 20 cm · 8' 2" · 8'-2 1/2" · 8 ft. 2 1/2 in · 98 in; after feet a bare figure is inches.
 *
 * @returns The length [m], or undefined for anything that is not clearly a length.
 * @example lengthIn("8' 2\"", "metric") = 8 × 0.3048 + 2 × 0.0254 = 2.4892
 */
export function lengthIn(typed: string, units: Units): Metres | undefined {
  return lengthOf(typed, units === "metric" ? "m" : "ft");
}

/** The same for what data sheets give in millimetres: a figure without a unit counts in them, or in inches. @example smallLengthIn("68", "metric") = 68 × 0.001 = 0.068 */
export function smallLengthIn(typed: string, units: Units): Metres | undefined {
  return lengthOf(typed, units === "metric" ? "mm" : "in");
}

function lengthOf(typed: string, own: Unit): Metres | undefined {
  let rest = typed
    .toLowerCase()
    .replace(/[′’‘´`]/g, "'")
    .replace(/''|[″“”]/g, '"')
    .replace(/[\u00a0\u202f\u2009]/g, " ")
    .trim();
  const negative = /^[-−]/.test(rest);
  if (negative) rest = rest.slice(1);
  if (rest.trim() === "") return undefined;
  let sum = 0;
  let last: Unit | undefined;
  while (rest !== "") {
    const found = part.exec(rest);
    if (found === null) return undefined;
    const figure = figureOf(found);
    const written = found[7] ?? found[8];
    const unit = written === undefined ? bareUnit(last, own) : unitOf[written];
    if (figure === undefined || unit === undefined || !follows(last, unit)) return undefined;
    sum += figure * metresPer[unit];
    last = unit;
    rest = rest.slice(found[0].length);
    // Between feet and inches many write a dash: 8'-2".
    if (unit === "ft") rest = rest.replace(/^[-–]\s*(?=[\d.,])/, "");
  }
  return Number.isFinite(sum) ? (negative ? -sum : sum) : undefined;
}

function figureOf(found: RegExpExecArray): number | undefined {
  const [, whole, over, under, overAlone, underAlone, plain] = found;
  if (plain !== undefined) return Number(plain.replace(",", "."));
  const top = Number(over ?? overAlone);
  const bottom = Number(under ?? underAlone);
  return bottom === 0 ? undefined : Number(whole ?? 0) + top / bottom;
}

/** Without a unit: one's own when alone, inches after feet, and nothing sensible after anything else. */
function bareUnit(last: Unit | undefined, own: Unit): Unit | undefined {
  if (last === undefined) return own;
  return last === "ft" ? "in" : undefined;
}

/** A second part must be smaller and of the same system: 1 m 20 cm, 8 ft 2 in. */
function follows(last: Unit | undefined, unit: Unit): boolean {
  if (last === undefined) return true;
  const feetAndInches = last === "ft" && unit === "in";
  const metric = last !== "ft" && last !== "in" && unit !== "ft" && unit !== "in";
  return feetAndInches || (metric && metresPer[unit] < metresPer[last]);
}
