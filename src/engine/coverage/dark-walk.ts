import type { Point, Way } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { DarkWalk } from "./results.ts";

/** Places on a way at which sight is tested are this far apart; where it changes the place is then found to a millimetre. [m] */
const STEP: Metres = 0.05;
const FINE: Metres = 1e-3;

/** One who walks, as a device sees it: whether at a place and in a direction of walking the walker is in sight and within reach. */
export interface Watcher {
  readonly device: string;
  /** Walk without a break after which it reacts. [m] */
  readonly onset: Metres;
  /** From reaction to light: device response and lamp start. [s] */
  readonly response: number;
  /** @param at - Place of the walker. [m] @param heading - Unit vector of walking. */
  readonly sees: (at: Point, heading: Point) => boolean;
}

/** What happens to one who walks a way. */
export interface Walked {
  /** Way to the moment at which the light is on, uncapped; infinite if it never comes on. [m] */
  readonly lightAt: Metres;
  readonly device: string | undefined;
}

/**
 * How far one walks before the light comes on.
 *
 * A device reacts when `onset` metres were walked without a break in sight and within reach; the light is on speed × response later.
 * Turning a corner of the way is no break as long as the walker stays in sight and within the reach for the new heading.
 *
 * @param way - The way. @param question.watchers - Devices that switch the light. @param question.speed - Walking speed. [m/s]
 * @returns Distance along the way at which the first light comes on [m], and the device that does it.
 * @source DIRECTION-ELLIPSE
 * @example In sight from the start, onset 0.5 m, 1.4 m/s, 1 s: 0.5 + 1.4 = 1.9 m
 */
export function walkInTheDark(
  way: Way,
  question: { readonly watchers: readonly Watcher[]; readonly speed: number },
): Walked {
  let best: Walked = { lightAt: Number.POSITIVE_INFINITY, device: undefined };
  for (const watcher of question.watchers) {
    const after = question.speed * watcher.response;
    const reaction = reactionOf(way, { watcher, giveUpAt: best.lightAt - after });
    if (reaction !== undefined && reaction + after < best.lightAt)
      best = { lightAt: reaction + after, device: watcher.device };
  }
  return best;
}

/**
 * The worst of several walks as a result.
 *
 * @param opening - Id of the entrance. @param walks - Ways with what happened on them.
 * @returns The walk with most metres in the dark, no more than the way is long; undefined without walks.
 * @example Ways of 3 and 5 m that are never lit: 5 m, not lit
 */
export function worstWalk(
  opening: string,
  walks: readonly { readonly toward: DarkWalk["toward"]; readonly way: Way; readonly walked: Walked }[],
): DarkWalk | undefined {
  let worst: DarkWalk | undefined;
  for (const { toward, way, walked } of walks) {
    const lit = walked.device !== undefined;
    const metres = Math.min(way.length, walked.lightAt);
    if (worst && metres <= worst.metres) continue;
    worst = {
      opening,
      toward,
      metres,
      lit,
      path: way.path,
      ...(lit ? { litAt: placeAlong(way, metres), device: walked.device as string } : {}),
    };
  }
  return worst;
}

/** A place along a way. @param way - The way. @param distance - From its start. [m] @returns Its end beyond its length. @example Half of a straight way: its middle */
export function placeAlong(way: Way, distance: Metres): Point {
  let left = distance;
  for (let i = 0; i + 1 < way.path.length; i++) {
    const [a, b] = [way.path[i] as Point, way.path[i + 1] as Point];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (left <= length && length > 0)
      return [a[0] + (left / length) * (b[0] - a[0]), a[1] + (left / length) * (b[1] - a[1])];
    left -= length;
  }
  return way.path[way.path.length - 1] as Point;
}

/** Distance along the way at which a device reacts; undefined if it does not before a distance at which it would no longer matter. */
function reactionOf(
  way: Way,
  question: { readonly watcher: Watcher; readonly giveUpAt: Metres },
): Metres | undefined {
  const { watcher, giveUpAt } = question;
  let passed = 0;
  let seenSince: Metres | undefined;
  for (let i = 0; i + 1 < way.path.length; i++) {
    const [a, b] = [way.path[i] as Point, way.path[i + 1] as Point];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length === 0) continue;
    const heading: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    const seenAt = (s: Metres): boolean =>
      watcher.sees([a[0] + s * heading[0], a[1] + s * heading[1]], heading);
    const steps = Math.max(1, Math.ceil(length / STEP));
    let before = { s: 0, seen: seenAt(0) };
    if (!before.seen) seenSince = undefined;
    else seenSince ??= passed;
    for (let k = 1; k <= steps; k++) {
      const s = (k / steps) * length;
      const seen = seenAt(s);
      const edge =
        seen === before.seen ? s : changeBetween({ low: before.s, high: s, seenHigh: seen, seenAt });
      if (seenSince !== undefined && seenSince + watcher.onset <= passed + (seen ? s : edge))
        return seenSince + watcher.onset;
      if (!seen) seenSince = undefined;
      else seenSince ??= passed + edge;
      if ((seenSince ?? passed + s) + watcher.onset >= giveUpAt) return undefined;
      before = { s, seen };
    }
    passed += length;
  }
  return undefined;
}

function changeBetween(search: {
  readonly low: Metres;
  readonly high: Metres;
  readonly seenHigh: boolean;
  readonly seenAt: (s: Metres) => boolean;
}): Metres {
  let { low, high } = search;
  while (high - low > FINE) {
    const middle = (low + high) / 2;
    if (search.seenAt(middle) === search.seenHigh) high = middle;
    else low = middle;
  }
  return high;
}
