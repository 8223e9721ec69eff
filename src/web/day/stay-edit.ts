import { daySeconds, type Seconds, type Stay } from "#engine";

/** Which part of a stay is held. */
export type StayPart = "whole" | "from" | "to";

/** The shortest stay that a hand makes. [s] */
export const shortestStay: Seconds = 60;

const within = (time: Seconds): Seconds => Math.min(daySeconds, Math.max(0, time));
const snapped = (time: Seconds, step: Seconds): Seconds => within(Math.round(time / step) * step);

/**
 * A stay moved, or one of its ends; it keeps within the day and at least a minute long.
 *
 * @param stay - As it was when it was taken
 * @param part - What is held
 * @param by - How far [s]
 */
export function movedStay(stay: Stay, part: StayPart, by: Seconds): Stay {
  if (part === "from") return { ...stay, from: Math.min(within(stay.from + by), stay.to - shortestStay) };
  if (part === "to") return { ...stay, to: Math.max(within(stay.to + by), stay.from + shortestStay) };
  const length = stay.to - stay.from;
  const from = Math.min(daySeconds - length, Math.max(0, stay.from + by));
  return { ...stay, from, to: from + length };
}

/** A stay drawn from one time to another, in either direction; undefined where it has no length. */
export function drawnStay(start: Seconds, end: Seconds, step: Seconds): Stay | undefined {
  const [from, to] = [snapped(Math.min(start, end), step), snapped(Math.max(start, end), step)];
  return to - from < shortestStay ? undefined : { from, to, what: "somebody" };
}

/** A stay of half an hour from a time on, for a key. */
export const addedStay = (at: Seconds): Stay => {
  const from = Math.min(snapped(at, 300), daySeconds - 1800);
  return { from, to: from + 1800, what: "somebody" };
};

/** The stays with one of them changed, or taken away. */
export const replaced = (stays: readonly Stay[], index: number, next: Stay | undefined): readonly Stay[] =>
  stays.flatMap((stay, i) => (i === index ? (next ?? []) : [stay]));

/** What a key does to a chosen stay; undefined: nothing. Arrows move it, with Shift its end; Delete takes it away. */
export function keyedStay(
  stay: Stay,
  key: { readonly key: string; readonly shiftKey: boolean },
): { readonly next: Stay | undefined } | undefined {
  const part = key.shiftKey ? "to" : "whole";
  if (key.key === "ArrowLeft") return { next: movedStay(stay, part, -300) };
  if (key.key === "ArrowRight") return { next: movedStay(stay, part, 300) };
  if (key.key === "Delete" || key.key === "Backspace") return { next: undefined };
  return undefined;
}

/** Step to which a hand draws: finer the closer one looks. @param zoom - How many times wider than the day [s] */
export const handStep = (zoom: number): Seconds => (zoom >= 4 ? 60 : 300);
