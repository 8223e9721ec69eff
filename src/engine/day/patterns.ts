import type { Seconds, Share } from "../quantity/index.ts";
import type { RoomUse } from "../site/index.ts";
import type { Stay } from "./stays.ts";

/** A usual day in rooms of one use. */
export interface DayPattern {
  readonly stays: readonly Stay[];
  /** Longest time that somebody stays without a visible movement. [s] */
  readonly still: Seconds;
}

const MINUTE: Seconds = 60;
const HOUR: Seconds = 3600;

const somebody = (from: Seconds, minutes: number): Stay => ({
  from,
  to: from + minutes * MINUTE,
  what: "somebody",
});
const at = (hour: number, minute: number): Seconds => hour * HOUR + minute * MINUTE;

/** A visit of so many minutes in every so many, from one hour to another. */
const visits = (
  [first, last]: readonly [first: number, last: number],
  { every, minutes, past = 0 }: { readonly every: number; readonly minutes: number; readonly past?: number },
): Stay[] =>
  Array.from({ length: Math.ceil(((last - first) * 60) / every) }, (_, i) =>
    somebody(first * HOUR + (past + i * every) * MINUTE, minutes),
  );

/** By use: hours of work from 7 to 17, with the breaks, rounds and visits that such a room would have. Ours. @source DAY-PATTERN */
const patterns: Readonly<Record<RoomUse, DayPattern>> = {
  passing: {
    stays: [
      ...visits([6.5, 9], { every: 6, minutes: 1 }),
      ...visits([9, 16], { every: 14, minutes: 1, past: 3 }),
      ...visits([16, 18], { every: 6, minutes: 1 }),
      somebody(at(21, 30), 2),
    ],
    still: 0,
  },
  stair: {
    stays: [
      ...visits([6.5, 9], { every: 9, minutes: 1 }),
      ...visits([9, 16], { every: 25, minutes: 1, past: 4 }),
      ...visits([16, 18], { every: 9, minutes: 1 }),
      somebody(at(21, 34), 1),
    ],
    still: 0,
  },
  moving: {
    stays: [
      ...visits([7, 12], { every: 50, minutes: 14, past: 10 }),
      ...visits([13, 17], { every: 60, minutes: 18, past: 5 }),
    ],
    still: 4 * MINUTE,
  },
  sitting: {
    stays: [
      somebody(at(7, 50), 95),
      somebody(at(9, 40), 130),
      somebody(at(12, 35), 85),
      somebody(at(14, 15), 150),
    ],
    still: 12 * MINUTE,
  },
  sanitary: {
    stays: [
      ...visits([7, 12], { every: 35, minutes: 5, past: 8 }),
      somebody(at(12, 5), 14),
      ...visits([13, 18], { every: 40, minutes: 6, past: 10 }),
    ],
    still: 5 * MINUTE,
  },
  changing: {
    stays: [
      somebody(at(6, 30), 32),
      somebody(at(13, 45), 38),
      somebody(at(16, 55), 25),
      somebody(at(21, 45), 22),
    ],
    still: 3 * MINUTE,
  },
  plant: { stays: [somebody(at(9, 10), 25), somebody(at(15, 0), 6)], still: 6 * MINUTE },
  other: {
    stays: [
      ...visits([7, 12], { every: 60, minutes: 12, past: 15 }),
      ...visits([13, 17], { every: 75, minutes: 15, past: 20 }),
    ],
    still: 5 * MINUTE,
  },
};

/**
 * A usual day by the use of a room: something to begin with, for a person to change.
 *
 * @param use - Of the room
 * @returns Stays of one day, and how still people are
 * @source DAY-PATTERN
 */
export const dayPattern = (use: RoomUse): DayPattern => patterns[use];

/**
 * Share of presence quarter of an hour by quarter of an hour in the usual day of a use: a profile to draw chance along.
 *
 * @param use - Of the room
 * @returns 96 shares; each is how much of the half hour before and after is somebody's
 * @source DAY-PATTERN
 */
export function dayProfile(use: RoomUse): readonly Share[] {
  const { stays } = patterns[use];
  return Array.from({ length: 96 }, (_, i) => {
    const middle = (i + 0.5) * 15 * MINUTE;
    const [from, to] = [middle - HOUR / 2, middle + HOUR / 2];
    const there = stays.reduce(
      (sum, stay) => sum + Math.max(0, Math.min(stay.to, to) - Math.max(stay.from, from)),
      0,
    );
    return Math.min(1, there / (to - from));
  });
}
