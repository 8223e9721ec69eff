import type { Check, CircuitReview, SourceId } from "#engine";
import { lengthText, numberText, type Units } from "../texts/index.ts";

/** Three digits at most: what a reading means. */
const three = (value: number): string => numberText(Number(value.toPrecision(3)));

/** Units that are easier to read as thousandths when they are small. */
const thousandths: Readonly<Record<string, string>> = { A: "mA", V: "mV", "A²s": "mA²s", Ω: "mΩ" };

/** A figure with its unit: 1.84 %, 12 mA, 30.00 m. @param value - Figure. @param unit - As the check has it. @param units - The person's. @returns Text. @example 0.0123 "A" → "12.3 mA" */
export function amountText(value: number, unit: string, units: Units): string {
  if (unit === "m") return lengthText(value, units);
  const small = thousandths[unit];
  if (small !== undefined && value !== 0 && Math.abs(value) < 0.1) return `${three(value * 1000)} ${small}`;
  return unit === "" ? three(value) : `${three(value)} ${unit}`;
}

const dropSources: readonly SourceId[] = ["IEC-60364-5-52-DROP", "NEC-CHAPTER-9"];

/** The check of the voltage drop among those of a circuit. @param circuit - Reviewed. @returns Check; undefined where there is none. @example Its unit is "%" */
export const dropCheckOf = ({ checks }: Pick<CircuitReview, "checks">): Check | undefined =>
  checks.find(({ unit, source }) => unit === "%" && dropSources.includes(source));
