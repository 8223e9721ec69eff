/**
 * Largest step of which every cost is a multiple, for rounding bounds up; 0 where there is none of at least a hundredth.
 *
 * @param costs - Costs of all columns. [currency]
 * @returns Step of costs, so that no sum of costs lies between two multiples. [currency]
 * @source DERIVED-HERE
 * @example 40, 60 → 20
 */
export function costStep(costs: readonly number[]): number {
  let step = 0;
  for (const cost of new Set(costs)) {
    const cents = Math.round(cost * 100);
    if (Math.abs(cents - cost * 100) > 1e-6) return 0;
    step = common(step, cents);
  }
  return step / 100;
}

/** The sums that costs can come to. */
export interface CostSums {
  /** From `costStep`. [currency] */
  readonly step: number;
  /** A bound brought up to the next sum that can exist; a millionth of a step below one counts as that one. [currency] */
  readonly up: (bound: number) => number;
  /** The dearest sum that is cheaper than a cost. [currency] */
  readonly below: (cost: number) => number;
  /** Least distance between two sums from a bound to a cost; 0 where it is not known. [currency] */
  readonly gap: (bound: number, cost: number) => number;
}

/** Entries of the table of sums, and work to fill it, at most: a few hundredths of a second. */
const MOST_SUMS = 1e6;
const MOST_WORK = 2e7;

/**
 * Which sums can exist where each cost may be paid any number of times: what lies between two of them is the cost of no cover, so that
 * a bound rises to the next one. With costs of several kinds that is more than the next multiple of their step.
 *
 * @param costs - Costs of all columns. [currency]
 * @returns The sums; beyond a million steps every multiple of the step counts as one, and without a step every amount. [currency]
 * @source DERIVED-HERE
 * @example Costs 52, 80, 129: up(479.9) = 480, below(491) = 480
 */
export function costSums(costs: readonly number[]): CostSums {
  const step = costStep(costs);
  const kinds = step === 0 ? [] : [...new Set(costs.map((cost) => Math.round(cost / step)))].filter(Boolean);
  const widest = kinds.length === 0 ? 0 : Math.min(MOST_SUMS, Math.floor(MOST_WORK / kinds.length));
  let table: Uint8Array = new Uint8Array();
  /** Whether there is such a sum, in steps. */
  const is = (sum: number): boolean => {
    if (sum > widest) return true;
    if (sum >= table.length) table = reached(kinds, Math.min(widest, Math.max(1024, 2 * sum)));
    return table[sum] === 1;
  };
  const atLeast = (sum: number): number => {
    let next = Math.max(0, sum);
    while (!is(next)) next++;
    return next;
  };
  const less = (sum: number): number => {
    let before = sum - 1;
    while (before > 0 && !is(before)) before--;
    return before;
  };
  if (kinds.length === 0)
    return { step, up: (bound) => roundedUp(bound, step), below: (cost) => cost - step, gap: () => step };
  const steps = (amount: number): number => Math.ceil(amount / step - 1e-6);
  const up = (bound: number): number => (Number.isFinite(bound) ? atLeast(steps(bound)) * step : bound);
  return {
    step,
    up,
    below: (cost) => (Number.isFinite(cost) ? less(steps(cost)) * step : cost),
    gap: (bound, cost) => {
      const from = Math.round(up(bound) / step);
      let least = Number.POSITIVE_INFINITY;
      for (let sum = steps(cost); sum > from; ) {
        const before = less(sum);
        least = Math.min(least, sum - before);
        sum = before;
      }
      return Number.isFinite(least) ? least * step : step;
    },
  };
}

/** For each number up to the last whether numbers of the kinds sum to it. */
function reached(kinds: readonly number[], last: number): Uint8Array {
  const table = new Uint8Array(last + 1);
  table[0] = 1;
  for (const kind of kinds)
    for (let sum = kind; sum <= last; sum++) if (table[sum - kind] === 1) table[sum] = 1;
  return table;
}

/**
 * A bound brought up to the next sum of costs that can exist.
 *
 * @param bound - Proven lower bound. [currency]
 * @param step - From `costStep`. [currency]
 * @returns The rounded bound; a millionth of a step below a multiple counts as that multiple. [currency]
 * @source DERIVED-HERE
 * @example roundedUp(3.2, 1) = 4
 */
export function roundedUp(bound: number, step: number): number {
  if (step === 0 || !Number.isFinite(bound)) return bound;
  return Math.max(0, Math.ceil(bound / step - 1e-6) * step);
}

const common = (one: number, other: number): number => (other === 0 ? one : common(other, one % other));
