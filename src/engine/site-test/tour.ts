import type { Metres } from "../quantity/index.ts";

/** Lengths of ways: from the start to each station, and from the end of each station to the beginning of each other. [m] */
export interface TourLengths {
  readonly fromStart: readonly Metres[];
  readonly between: readonly (readonly Metres[])[];
}

export interface Tour {
  /** Stations in the order in which they are visited. */
  readonly order: readonly number[];
  readonly length: Metres;
}

/** Stations up to which the order is found exactly. */
const EXACT_UP_TO = 9;

/**
 * A shortest tour that starts at the door, visits every station once, and ends at the last.
 *
 * Up to nine stations exact: L(S, j) = min over i ∈ S∖j of L(S∖j, i) + d(i, j), over all subsets S. Above, stations are inserted where they lengthen
 * the tour least, then single stations are moved and stretches turned round as long as that makes it shorter.
 *
 * @param lengths - Ways between stations; they need not be the same forth and back. [m]
 * @returns Order and length [m]; of equally short orders the first by number.
 * @source HELD-KARP
 * @example Three stations in a row before the door: one after the other
 */
export function shortestTour(lengths: TourLengths): Tour {
  const count = lengths.fromStart.length;
  if (count === 0) return { order: [], length: 0 };
  return count <= EXACT_UP_TO ? exactTour(lengths) : improvedTour(lengths);
}

/** Length of a tour in a given order. @param lengths - Ways. [m] @param order - Stations. @returns [m] @example The empty order: 0 */
export function tourLength(lengths: TourLengths, order: readonly number[]): Metres {
  const { fromStart, between } = lengths;
  let sum = 0;
  for (const [i, station] of order.entries()) {
    const before = order[i - 1];
    sum += (before === undefined ? fromStart[station] : between[before]?.[station]) as number;
  }
  return sum;
}

function exactTour(lengths: TourLengths): Tour {
  const { fromStart, between } = lengths;
  const count = fromStart.length;
  const sets = 1 << count;
  const best = new Float64Array(sets * count).fill(Number.POSITIVE_INFINITY);
  const previous = new Int8Array(sets * count).fill(-1);
  for (let j = 0; j < count; j++) best[(1 << j) * count + j] = fromStart[j] as number;
  for (let set = 1; set < sets; set++) {
    for (let i = 0; i < count; i++) {
      const here = best[set * count + i] as number;
      if (here === Number.POSITIVE_INFINITY) continue;
      for (let j = 0; j < count; j++) {
        if (set & (1 << j)) continue;
        const next = (set | (1 << j)) * count + j;
        const length = here + (between[i]?.[j] as number);
        if (length < (best[next] as number)) {
          best[next] = length;
          previous[next] = i;
        }
      }
    }
  }
  let last = 0;
  for (let j = 1; j < count; j++) {
    if ((best[(sets - 1) * count + j] as number) < (best[(sets - 1) * count + last] as number)) last = j;
  }
  const length = best[(sets - 1) * count + last] as number;
  const order: number[] = [];
  for (let set = sets - 1, at = last; at >= 0; ) {
    order.unshift(at);
    const before = previous[set * count + at] as number;
    set &= ~(1 << at);
    at = before;
  }
  return { order, length };
}

/** What makes a tour shorter by less is rounding. [m] */
const GAIN: Metres = 1e-9;

function improvedTour(lengths: TourLengths): Tour {
  const count = lengths.fromStart.length;
  const leg = legOf(lengths);
  let order: readonly number[] = [];
  for (let station = 0; station < count; station++) {
    let [at, least] = [0, Number.POSITIVE_INFINITY];
    for (let i = 0; i <= order.length; i++) {
      const [a, b] = [order[i - 1], order[i]];
      const longer = leg(a, station) + leg(station, b) - leg(a, b);
      if (longer < least - GAIN) [at, least] = [i, longer];
    }
    order = order.toSpliced(at, 0, station);
  }
  for (;;) {
    const better = bestChange(order, leg);
    if (!better) return { order, length: tourLength(lengths, order) };
    order = better;
  }
}

/** Length of a way from one station to another; from the start where there is none before, and none where there is none behind. */
type Leg = (from: number | undefined, to: number | undefined) => Metres;

const legOf =
  ({ fromStart, between }: TourLengths): Leg =>
  (from, to) =>
    to === undefined ? 0 : ((from === undefined ? fromStart[to] : between[from]?.[to]) as number);

/** The order in which one station stands elsewhere, or one stretch is walked the other way round, that is shortest; undefined where none is shorter. */
function bestChange(order: readonly number[], leg: Leg): readonly number[] | undefined {
  const count = order.length;
  // Ways along the order up to each station, and the same walked back, so that a stretch costs the same to judge however long it is.
  const along = [0];
  const back = [0];
  for (let i = 1; i < count; i++) {
    along.push((along[i - 1] as number) + leg(order[i - 1], order[i]));
    back.push((back[i - 1] as number) + leg(order[i], order[i - 1]));
  }
  let least = -GAIN;
  let best: (() => readonly number[]) | undefined;
  for (let i = 0; i < count; i++) {
    const [before, station, after] = [order[i - 1], order[i] as number, order[i + 1]];
    const without = leg(before, after) - leg(before, station) - leg(station, after);
    for (let k = 0; k < count; k++) {
      if (k === i) continue;
      const [a, b] = k < i ? [order[k - 1], order[k]] : [order[k], order[k + 1]];
      const longer = without + leg(a, station) + leg(station, b) - leg(a, b);
      if (longer < least) {
        least = longer;
        best = () => order.toSpliced(i, 1).toSpliced(k, 0, station);
      }
    }
    for (let k = i + 2; k <= count; k++) {
      const [last, next] = [order[k - 1] as number, order[k]];
      const inside =
        (back[k - 1] as number) - (back[i] as number) - (along[k - 1] as number) + (along[i] as number);
      const longer = inside + leg(before, last) - leg(before, station) + leg(station, next) - leg(last, next);
      if (longer < least) {
        least = longer;
        best = () => [...order.slice(0, i), ...order.slice(i, k).toReversed(), ...order.slice(k)];
      }
    }
  }
  return best?.();
}
