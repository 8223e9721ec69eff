import type { PlanText } from "./plan-lines.ts";

/** What the lettering in a room calls it. */
export interface RoomName {
  readonly number: string;
  readonly name: string;
}

/** "12.3", "1'204 sq ft", "h = 2.60", "A: 12 m2", "+0.00": sizes and levels, not names. */
const sizes =
  /^[+±-]?\s*\d+([.,']\d+)?\s*(m|m2|m²|qm|mm|cm|sf|sq\.?\s*(ft|m)|ft2)?$|\b(m2|m²|qm|sq\.?\s*ft|sf)\b|^[a-z]{0,2}\s*[=:]\s*[\d.,]+|^±/i;
/** "E15-344", "1.07", "G12", "0121", "A-2.3": a number with at most a few letters. */
const numbers = /^[a-z]{0,3}[-. ]?\d{1,4}([-./ ]?[a-z]?\d{0,4}[a-z]?)?$/i;

/** Whether lettering may name a room at all. */
export const mayName = (text: string): boolean =>
  text.length > 0 && text.length <= 60 && /[\p{L}\d]/u.test(text) && !isSize(text);

const isSize = (text: string): boolean => sizes.test(text) && !roomNumber(text);

/** Plain whole numbers of three or four digits and numbers with letters number rooms; "12.50" is a size. */
export const roomNumber = (text: string): boolean =>
  numbers.test(text) &&
  !/\d\s*(m|m2|qm|sf|cm|mm)$/i.test(text) &&
  (/[a-z]/i.test(text) || /^\d{1,4}$/.test(text) || /^\d{1,2}\.\d{2,3}$/.test(text));

/** Rooms have a number each, and floors side by side may share it; what stands more often is the size or the type of a door. */
const MOST_ALIKE = 2;

/**
 * Lettering of a plan without figures that stand too often to number rooms.
 *
 * @example "2668" at each of five doors of 2 ft 6 in: all five are left out
 */
export function withoutTypes(texts: readonly PlanText[]): readonly PlanText[] {
  const count = new Map<string, number>();
  for (const { text } of texts) count.set(text, (count.get(text) ?? 0) + 1);
  return texts.filter(({ text }) => !roomNumber(text) || count.get(text)! <= MOST_ALIKE);
}

/**
 * Name and number of a room from the lettering in it: what looks like a number is one; the largest other words are the name.
 *
 * @param texts - Lettering whose middle lies in the room.
 */
export function roomName(texts: readonly PlanText[]): RoomName {
  const words = texts.filter(({ text }) => mayName(text));
  const number = words.filter(({ text }) => roomNumber(text)).sort(byHeight)[0];
  const others = words.filter(({ text }) => !roomNumber(text) && /\p{L}{2,}/u.test(text)).sort(byHeight);
  const largest = others[0];
  const name = largest
    ? others
        .filter((one) => one.height > 0.9 * largest.height && near(one, largest))
        .sort((a, b) => b.at[1] - a.at[1])
        .map(({ text }) => text)
        .join(" ")
    : "";
  return { number: number?.text ?? "", name };
}

const byHeight = (a: PlanText, b: PlanText): number => b.height - a.height;

/** Lines of one name stand below one another. */
const near = (a: PlanText, b: PlanText): boolean =>
  Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) < 8 * Math.max(a.height, 0.05) + 0.3;
