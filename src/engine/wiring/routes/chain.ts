import type { Metres } from "../../quantity/index.ts";

/** Cables that loop in and out from point to point, the first being where the supply comes from. */
export interface Chain {
  /** Indices in order, 0 first. */
  readonly order: readonly number[];
  readonly length: Metres;
  /** True where no shorter chain exists. */
  readonly exact: boolean;
}

/** Up to this many points, the start included, the chain is exact; 2ⁿ · n² steps. */
export const EXACT_CHAIN = 13;

/**
 * Shortest chain from the first point through all others: loop in and out, no branch, no box.
 *
 * Exact by dynamic programming over subsets up to 13 points; beyond, nearest neighbour mended by reversing pieces.
 *
 * @param lengths - Symmetric matrix. [m]
 * @returns Order, length, and whether it is proven shortest.
 * @source HELD-KARP
 * @example Points on a line at 0, 2, 1: order 0, 2, 1 and 2 m
 */
export const shortestChain = (lengths: readonly (readonly Metres[])[]): Chain =>
  lengths.length <= EXACT_CHAIN ? exactChain(lengths) : mendedChain(lengths);

function exactChain(lengths: readonly (readonly Metres[])[]): Chain {
  const count = lengths.length - 1;
  if (count <= 0) return { order: count < 0 ? [] : [0], length: 0, exact: true };
  const at = (from: number, to: number): Metres => (lengths[from] as readonly number[])[to] as number;
  const size = 1 << count;
  const best = new Float64Array(size * count).fill(Number.POSITIVE_INFINITY);
  const before = new Int16Array(size * count).fill(-1);
  for (let last = 0; last < count; last++) best[(1 << last) * count + last] = at(0, last + 1);
  for (let set = 1; set < size; set++)
    for (let last = 0; last < count; last++) {
      const so = best[set * count + last] as number;
      if (!(set & (1 << last)) || so === Number.POSITIVE_INFINITY) continue;
      for (let next = 0; next < count; next++) {
        if (set & (1 << next)) continue;
        const slot = (set | (1 << next)) * count + next;
        const length = so + at(last + 1, next + 1);
        if (length < (best[slot] as number)) {
          best[slot] = length;
          before[slot] = last;
        }
      }
    }
  const full = size - 1;
  let last = 0;
  for (let other = 1; other < count; other++)
    if ((best[full * count + other] as number) < (best[full * count + last] as number)) last = other;
  const length = best[full * count + last] as number;
  const order: number[] = [];
  for (let set = full; last >= 0; ) {
    order.unshift(last + 1);
    const previous = before[set * count + last] as number;
    set &= ~(1 << last);
    last = previous;
  }
  return { order: [0, ...order], length, exact: true };
}

function mendedChain(lengths: readonly (readonly Metres[])[]): Chain {
  const at = (from: number, to: number): Metres => (lengths[from] as readonly number[])[to] as number;
  const open = new Set(lengths.map((_, i) => i).slice(1));
  let order = [0];
  while (open.size > 0) {
    const here = order.at(-1) as number;
    const next = [...open].reduce((near, one) => (at(here, one) < at(here, near) ? one : near));
    open.delete(next);
    order.push(next);
  }
  for (let better = true; better; ) {
    better = false;
    for (let first = 1; first < order.length - 1; first++)
      for (let last = first + 1; last < order.length; last++) {
        const [before, from, to, after] = [order[first - 1], order[first], order[last], order[last + 1]] as [
          number,
          number,
          number,
          number | undefined,
        ];
        const gain =
          at(before, from) - at(before, to) + (after === undefined ? 0 : at(to, after) - at(from, after));
        // A nanometre: rounding must not keep the search going round in a circle.
        if (gain <= 1e-9) continue;
        order = [
          ...order.slice(0, first),
          ...order.slice(first, last + 1).reverse(),
          ...order.slice(last + 1),
        ];
        better = true;
      }
  }
  const length = order.reduce((sum, point, i) => (i === 0 ? 0 : sum + at(order[i - 1] as number, point)), 0);
  return { order, length, exact: false };
}
