import type { Metres, SquareMetres } from "#engine";
import { spokenLanguage } from "./language.ts";

/** How lengths are shown and read. Everything inside stays in metres. */
export type Units = "metric" | "imperial";

const metresPerFoot = 0.3048;
const metresPerInch = 0.0254;

/** Finest fraction of an inch that is shown: an eighth, 3 mm, about what a tape gives on a ceiling. */
const inchFraction = 8;

type Format = "twoDecimals" | "oneDecimal" | "noDecimals" | "upToTwo" | "money";

const formats: Readonly<Record<Format, Intl.NumberFormatOptions>> = {
  twoDecimals: { minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: false },
  oneDecimal: { minimumFractionDigits: 1, maximumFractionDigits: 1, useGrouping: false },
  noDecimals: { maximumFractionDigits: 0 },
  upToTwo: { maximumFractionDigits: 2 },
  money: { minimumFractionDigits: 2, maximumFractionDigits: 2 },
};

/** Formats that were made: each takes longer to make than to use a hundred times. */
const made = new Map<string, Intl.NumberFormat>();

/** A figure in the language that is spoken. */
function figure(value: number, format: Format): string {
  const language = spokenLanguage();
  const key = `${language} ${format}`;
  let own = made.get(key);
  if (own === undefined) {
    own = new Intl.NumberFormat(language, formats[format]);
    made.set(key, own);
  }
  return own.format(value);
}

/** A sign that a minus of a rounded nothing would be: none. */
const withoutMinusZero = (text: string): string => (/^-0(?:[.,]0+)?$/.test(text) ? text.slice(1) : text);

/** A length as the trade writes it: 2.50 m, or 8′ 2 3/8″. @param length [m] */
export const lengthText = (length: Metres, units: Units): string =>
  units === "metric" ? `${lengthFigure(length, units)} m` : lengthFigure(length, units);

/** A length as it stands in a field, without the unit of metres: 2.50, or 8′ 2 3/8″. @param length [m] */
export function lengthFigure(length: Metres, units: Units): string {
  if (units === "metric") return withoutMinusZero(figure(length, "twoDecimals"));
  const parts = Math.round((Math.abs(length) / metresPerInch) * inchFraction);
  const feet = Math.floor(parts / (12 * inchFraction));
  const rest = parts - feet * 12 * inchFraction;
  const inches = Math.floor(rest / inchFraction);
  const eighths = rest - inches * inchFraction;
  const sign = length < 0 && parts > 0 ? "-" : "";
  const fraction = eighths === 0 ? "" : fractionText(eighths);
  const inchText = fraction === "" ? `${inches}` : inches === 0 ? fraction : `${inches} ${fraction}`;
  if (feet === 0) return `${sign}${inchText}″`;
  return inchText === "0" ? `${sign}${feet}′` : `${sign}${feet}′ ${inchText}″`;
}

/** A length of a few millimetres, as data sheets write it: 12.5 mm, or 1/2″. @param length [m] */
export const smallLengthText = (length: Metres, units: Units): string =>
  units === "metric" ? `${smallLengthFigure(length, units)} mm` : lengthFigure(length, units);

/** The same as it stands in a field, without the unit of millimetres. @param length [m] */
export const smallLengthFigure = (length: Metres, units: Units): string =>
  units === "metric" ? numberText(Math.round(length * 10_000) / 10) : lengthFigure(length, units);

/** 6 of 8 → 3/4. */
function fractionText(eighths: number): string {
  if (eighths % 4 === 0) return `${eighths / 4}/2`;
  return eighths % 2 === 0 ? `${eighths / 2}/4` : `${eighths}/8`;
}

/** An area: 12.4 m² (whole from 100 m²), or 133 ft². @param area [m²] */
export function areaText(area: SquareMetres, units: Units): string {
  if (units === "imperial") return `${figure(area / (metresPerFoot * metresPerFoot), "noDecimals")} ft²`;
  return `${area < 99.95 ? figure(area, "oneDecimal") : figure(area, "noDecimals")} m²`;
}

/** A plain number with at most two decimals. */
export const numberText = (value: number): string => withoutMinusZero(figure(value, "upToTwo"));

/** A share as per cent, whole. @param share 0 … 1 */
export const percentText = (share: number): string => `${figure(share * 100, "noDecimals")} %`;

/** An angle in whole degrees. @param angle [rad] */
export const degreesText = (angle: number): string =>
  `${withoutMinusZero(figure((angle * 180) / Math.PI, "noDecimals"))}°`;

/** Seconds as one reads them: 0.4 s, 12 s, 2 min 5 s. @param seconds [s] */
export function durationText(seconds: number): string {
  if (seconds < 9.95) return `${figure(seconds, "oneDecimal")} s`;
  const whole = Math.round(seconds);
  return whole < 60 ? `${whole} s` : `${Math.floor(whole / 60)} min ${whole % 60} s`;
}

/** A delay as one sets it: 90 s, 10 min, 2.5 min. @param seconds [s] */
export const delayText = (seconds: number): string =>
  seconds < 60 || (seconds < 120 && seconds % 60 !== 0)
    ? `${numberText(seconds)} s`
    : `${numberText(seconds / 60)} min`;

/** An amount in the job's currency; plain where the job names none. */
export function moneyText(amount: number, currency: string): string {
  const written = figure(amount, "money");
  return currency === "" ? written : `${written} ${currency}`;
}

/** Size of a file or a store, in the unit that gives few figures: 64 kB, 3.2 MB, 1.5 GB. */
export function sizeText(bytes: number): string {
  const [value, unit] =
    bytes >= 1e9 ? [bytes / 1e9, "GB"] : bytes >= 1e6 ? [bytes / 1e6, "MB"] : [Math.ceil(bytes / 1e3), "kB"];
  return `${unit === "kB" || value >= 10 ? figure(value, "noDecimals") : numberText(Math.round(value * 10) / 10)} ${unit}`;
}
