import type { Metres } from "#engine";
import type { MeasuredText } from "../page/collect.ts";

/** A printed scale bar: a row of growing numbers beside a line. */
export interface ScaleBar {
  /** Metres in one drawing unit. */
  readonly metres: Metres;
  /** As printed: "0 1 2 5 m". */
  readonly text: string;
}

const unitMetres: Readonly<Record<string, number>> = {
  m: 1,
  metre: 1,
  metres: 1,
  meter: 1,
  meters: 1,
  mètres: 1,
  cm: 0.01,
  mm: 0.001,
  ft: 0.3048,
  feet: 0.3048,
  "'": 0.3048,
  "’": 0.3048,
};
const units = Object.keys(unitMetres).join("|");
const numbered = new RegExp(`^(\\d+(?:[.,]\\d+)?)\\s*(${units})?\\.?$`, "iu");
const unitAlone = new RegExp(`^(${units})\\.?$`, "iu");

interface Tick {
  readonly value: number;
  readonly unit: string | undefined;
  /** Along the row, to the middle of the digits. */
  readonly along: number;
  readonly end: number;
  readonly text: string;
}

/**
 * Reads a printed scale bar: a 0, at least two growing numbers in its row, a unit, and ends of lines where the first and
 * the last number stand.
 *
 * @param lines - x1 y1 x2 y2 of each line. [drawing units]
 */
export function scaleBarIn(texts: readonly MeasuredText[], lines: Float64Array): ScaleBar | undefined {
  const zeros = texts.filter((text) => Number(numbered.exec(text.text)?.[1]?.replace(",", ".")) === 0);
  for (const zero of zeros.slice(0, 200)) {
    const bar = barFrom(zero, texts, lines);
    if (bar) return bar;
  }
  return undefined;
}

const barFrom = (
  zero: MeasuredText,
  texts: readonly MeasuredText[],
  lines: Float64Array,
): ScaleBar | undefined => {
  const { height } = zero;
  const [cos, sin] = [Math.cos(zero.turn), Math.sin(zero.turn)];
  const along = (x: number, y: number): number => (x - zero.at[0]) * cos + (y - zero.at[1]) * sin;
  const across = (x: number, y: number): number => (y - zero.at[1]) * cos - (x - zero.at[0]) * sin;
  const row = texts
    .filter(
      (text) =>
        Math.abs(across(...text.at)) < 0.4 * height &&
        Math.abs(text.height - height) < 0.15 * height &&
        Math.cos(text.turn - zero.turn) > 0.999 &&
        along(...text.at) >= 0,
    )
    .sort((a, b) => along(...a.at) - along(...b.at));
  const ticks: Tick[] = [];
  let unit: string | undefined;
  for (const text of row) {
    const start = along(...text.at);
    const match = numbered.exec(text.text);
    const alone = unitAlone.exec(text.text);
    const last = ticks.at(-1);
    if (alone && last && start - last.end < 4 * height) unit ??= alone[1]!.toLowerCase();
    if (!match) break;
    const value = Number(match[1]!.replace(",", "."));
    if (last && value <= last.value) break;
    const digits = (text.width * match[1]!.length) / text.text.length;
    const tick = { value, along: start + digits / 2, end: start + text.width, text: text.text };
    ticks.push({ ...tick, unit: match[2]?.toLowerCase() });
    unit ??= match[2]?.toLowerCase();
    if (match[2]) break;
  }
  const [first, last] = [ticks[0], ticks.at(-1)];
  if (ticks.length < 3 || unit === undefined || !first || !last) return undefined;
  const rate = rateOf(ticks);
  const longest = last.along - first.along;
  const even = ticks.every(
    (tick) => Math.abs(rate.at(tick.value) - tick.along) < Math.max(height, 0.02 * longest),
  );
  if (!even || !(rate.perValue > 0)) return undefined;
  const ends = endsBeside(lines, { along, across, height, from: first.along, to: last.along });
  const begin = nearest(ends, rate.at(first.value), 1.5 * height);
  const end = nearest(ends, rate.at(last.value), 1.5 * height);
  if (begin === undefined || end === undefined || !(end > begin)) return undefined;
  const perValue = (end - begin) / (last.value - first.value);
  if (Math.abs(perValue / rate.perValue - 1) > 0.15) return undefined;
  const words = ticks.map((tick) => tick.text).join(" ");
  return { metres: unitMetres[unit]! / perValue, text: last.unit ? words : `${words} ${unit}` };
};

/** Straight line through value and place, by least squares. */
const rateOf = (ticks: readonly Tick[]) => {
  const n = ticks.length;
  const mean = (pick: (tick: Tick) => number): number => ticks.reduce((sum, tick) => sum + pick(tick), 0) / n;
  const [value, along] = [mean((tick) => tick.value), mean((tick) => tick.along)];
  const slope =
    mean((tick) => (tick.value - value) * (tick.along - along)) / mean((tick) => (tick.value - value) ** 2);
  return { perValue: slope, at: (v: number): number => along + (v - value) * slope };
};

interface Band {
  along(x: number, y: number): number;
  across(x: number, y: number): number;
  readonly height: number;
  readonly from: number;
  readonly to: number;
}

/** Where lines end close over or under the row of numbers. */
const endsBeside = (lines: Float64Array, { along, across, height, from, to }: Band): number[] => {
  const ends: number[] = [];
  for (let i = 0; i < lines.length; i += 2) {
    const [x, y] = [lines[i]!, lines[i + 1]!];
    const place = along(x, y);
    if (place < from - 3 * height || place > to + 3 * height) continue;
    if (Math.abs(across(x, y) - height / 2) < 6 * height) ends.push(place);
  }
  return ends;
};

const nearest = (ends: readonly number[], to: number, most: number): number | undefined => {
  let best: number | undefined;
  for (const end of ends) if (best === undefined || Math.abs(end - to) < Math.abs(best - to)) best = end;
  return best !== undefined && Math.abs(best - to) <= most ? best : undefined;
};
