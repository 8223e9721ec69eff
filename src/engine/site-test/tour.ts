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
export const EXACT_UP_TO = 9;

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
  let order: readonly number[] = [];
  for (let station = 0; station < count; station++) {
    order = shortest(
      lengths,
      Array.from({ length: order.length + 1 }, (_, at) => order.toSpliced(at, 0, station)),
    );
  }
  let length = tourLength(lengths, order);
  for (;;) {
    const better = shortest(lengths, neighboursOf(order));
    const now = tourLength(lengths, better);
    if (now >= length - GAIN) return { order, length };
    [order, length] = [better, now];
  }
}

/** Orders in which one station stands elsewhere, or a stretch is walked the other way round. */
function neighboursOf(order: readonly number[]): readonly (readonly number[])[] {
  const found: (readonly number[])[] = [];
  for (let i = 0; i < order.length; i++) {
    const without = order.toSpliced(i, 1);
    for (let k = 0; k <= without.length; k++) {
      if (k !== i) found.push(without.toSpliced(k, 0, order[i] as number));
    }
    for (let k = i + 2; k <= order.length; k++) {
      found.push([...order.slice(0, i), ...order.slice(i, k).toReversed(), ...order.slice(k)]);
    }
  }
  return found;
}

function shortest(lengths: TourLengths, orders: readonly (readonly number[])[]): readonly number[] {
  let best = orders[0] ?? [];
  let least = tourLength(lengths, best);
  for (const order of orders.slice(1)) {
    const length = tourLength(lengths, order);
    if (length < least - GAIN) [best, least] = [order, length];
  }
  return best;
}
