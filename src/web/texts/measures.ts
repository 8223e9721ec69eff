import type { Metres, SquareMetres } from "#engine";

/** How lengths are shown and read. Everything inside stays in metres. */
export type Units = "metric" | "imperial";

const metresPerFoot = 0.3048;
const metresPerInch = 0.0254;

/** Finest fraction of an inch that is shown: an eighth, 3 mm, about what a tape gives on a ceiling. */
const inchFraction = 8;

const twoDecimals = new Intl.NumberFormat("en", {
  minimumFractionDigits: 2,
  maximumFractionDigits: 2,
  useGrouping: false,
});
const oneDecimal = new Intl.NumberFormat("en", {
  minimumFractionDigits: 1,
  maximumFractionDigits: 1,
  useGrouping: false,
});
const noDecimals = new Intl.NumberFormat("en", { maximumFractionDigits: 0 });
const upToTwo = new Intl.NumberFormat("en", { maximumFractionDigits: 2 });

/** A sign that a minus of a rounded nothing would be: none. */
const withoutMinusZero = (text: string): string => (/^-0(?:\.0+)?$/.test(text) ? text.slice(1) : text);

/** A length as the trade writes it: 2.50 m, or 8′ 2 3/8″. @param length [m] */
export const lengthText = (length: Metres, units: Units): string =>
  units === "metric" ? `${lengthFigure(length, units)} m` : lengthFigure(length, units);

/** A length as it stands in a field, without the unit of metres: 2.50, or 8′ 2 3/8″. @param length [m] */
export function lengthFigure(length: Metres, units: Units): string {
  if (units === "metric") return withoutMinusZero(twoDecimals.format(length));
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
  if (units === "imperial") return `${noDecimals.format(area / (metresPerFoot * metresPerFoot))} ft²`;
  return `${area < 99.95 ? oneDecimal.format(area) : noDecimals.format(area)} m²`;
}

/** A plain number with at most two decimals. */
export const numberText = (value: number): string => withoutMinusZero(upToTwo.format(value));

/** A share as per cent, whole. @param share 0 … 1 */
export const percentText = (share: number): string => `${noDecimals.format(share * 100)} %`;

/** An angle in whole degrees. @param angle [rad] */
export const degreesText = (angle: number): string =>
  `${withoutMinusZero(noDecimals.format((angle * 180) / Math.PI))}°`;

/** Seconds as one reads them: 0.4 s, 12 s, 2 min 5 s. @param seconds [s] */
export function durationText(seconds: number): string {
  if (seconds < 9.95) return `${oneDecimal.format(seconds)} s`;
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
  const figure = new Intl.NumberFormat("en", { minimumFractionDigits: 2, maximumFractionDigits: 2 }).format(
    amount,
  );
  return currency === "" ? figure : `${figure} ${currency}`;
}
