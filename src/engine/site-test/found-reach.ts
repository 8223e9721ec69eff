import type { Metres } from "../quantity/index.ts";
import { logNormal, studentScore } from "./normal.ts";

/** Zones whose reach a walk test can find. */
export type FoundKind = "seated" | "towards" | "across";

/**
 * What one reading says of one detector's reach.
 * seen, not-seen: at a distance · first-seen: one came from outside and was first seen there.
 */
export interface ReachObservation {
  readonly device: string;
  readonly kind: FoundKind;
  readonly outcome: "seen" | "not-seen" | "first-seen";
  /** From the detector in plan. [m] */
  readonly distance: Metres;
  /** Declared reach in that direction, at that height. [m] */
  readonly declared: Metres;
}

/** The reach of one detector in one kind of zone as found, as a factor on the declared one. */
export interface FoundReach {
  readonly device: string;
  readonly kind: FoundKind;
  readonly readings: number;
  /** At least 8 readings: without them the interval is reported and not passed on. */
  readonly enough: boolean;
  /** Most likely factor; undefined where the readings bound it on one side only. */
  readonly factor: number | undefined;
  /** 95 % interval. */
  readonly interval: readonly [low: number, high: number];
  /** Farthest factor at which it was seen, and nearest at which it was not; undefined without such a reading. */
  readonly seenTo: number | undefined;
  readonly unseenFrom: number | undefined;
  /** Spread of one walk to the next, as a share of the declared reach, at the most likely factor. */
  readonly spread: number;
}

/** Readings from which on a reach counts as found. */
export const ENOUGH_READINGS = 8;

/** Largest factor that is looked at. */
export const LARGEST_FACTOR = 1.5;

/**
 * Spread of a detector's own reach from walk to walk, as a share of the declared reach: between a steady zone and one with gaps between its beams. It is estimated
 * inside these bounds, since a handful of readings cannot tell it from nothing.
 *
 * @source REACH-PROBIT
 */
const SPREADS: readonly number[] = [0.04, 0.055, 0.075, 0.1, 0.135, 0.18, 0.24, 0.32];

const GRID = 0.02;

/**
 * True reach of each detector and kind of zone, from seen and not seen.
 *
 * P(seen at r) = Φ((R − r)/σ); one who comes from outside is first seen at a distance of the density φ((r − R)/σ)/σ. R = factor · declared, 0 ≤ factor ≤ 1.5; σ is
 * estimated along with it. Interval: all factors with 2 (ℓ_max − ℓ(factor)) ≤ (ν + 1) ln(1 + t²/ν), t Student's score for ν, which is exact for noted distances alone;
 * ν + 1 counts a noted distance once and a seen or not seen 0.4 times, since it tells less of σ.
 *
 * @param observations - Readings, in any order; those without a declared reach are passed over.
 * @returns One result for each detector and kind that has readings.
 * @source REACH-PROBIT
 * @validFor a zone whose reach is one factor of the declared one in all directions; a hidden sector is a matter of the stations, not of this
 * @example Ten walks first seen near 3 m where 4 m are declared: factor 0.75
 */
export function foundReach(observations: readonly ReachObservation[]): readonly FoundReach[] {
  const groups = new Map<string, ReachObservation[]>();
  for (const one of observations) {
    if (!(one.declared > 0) || !(one.distance >= 0)) continue;
    const key = `${one.device} ${one.kind}`;
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return [...groups]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([, group]) => {
      const first = group[0] as ReachObservation;
      const ratios = group.map(({ outcome, distance, declared }) => ({
        outcome,
        ratio: distance / declared,
      }));
      return { device: first.device, kind: first.kind, ...estimateOf(ratios) };
    });
}

interface Ratio {
  readonly outcome: ReachObservation["outcome"];
  /** Distance over declared reach. */
  readonly ratio: number;
}

function estimateOf(readings: readonly Ratio[]): Omit<FoundReach, "device" | "kind"> {
  // Sums in a fixed order: the result does not hang on the order of the readings (FR-4).
  const sorted = readings.toSorted((a, b) => a.ratio - b.ratio || (a.outcome < b.outcome ? -1 : 1));
  const steps = Math.round(LARGEST_FACTOR / GRID);
  const profile = Array.from({ length: steps + 1 }, (_, i) => best(sorted, i * GRID).likelihood);
  const top = profile.indexOf(Math.max(...profile));
  const peak = summit(sorted, {
    low: Math.max(0, (top - 1) * GRID),
    high: Math.min(LARGEST_FACTOR, (top + 1) * GRID),
  });
  const most = best(sorted, peak);
  const highest = Math.max(most.likelihood, profile[top] as number);
  const count = sorted.length;
  const cut = highest - allowed(sorted);
  const inside = (factor: number): boolean => best(sorted, factor).likelihood >= cut;
  const isIn = profile.map((likelihood) => likelihood >= cut);
  const [first, last] = [isIn.indexOf(true), isIn.lastIndexOf(true)];
  // The peak may lie between two steps of the grid, both of which are already outside.
  const [lowIn, highIn] = first < 0 ? [peak, peak] : [first * GRID, last * GRID];
  const low = crossing(inside, { yes: lowIn, no: first < 0 ? peak - GRID : (first - 1) * GRID });
  const high = crossing(inside, { yes: highIn, no: first < 0 ? peak + GRID : (last + 1) * GRID });
  const isBounded = sorted.some(({ outcome }) => outcome === "first-seen") || bothSides(sorted);
  return {
    readings: count,
    enough: count >= ENOUGH_READINGS,
    factor: isBounded ? peak : undefined,
    interval: [Math.max(0, low), Math.min(LARGEST_FACTOR, high)],
    seenTo: sorted.findLast(({ outcome }) => outcome !== "not-seen")?.ratio,
    unseenFrom: sorted.find(({ outcome }) => outcome === "not-seen")?.ratio,
    spread: most.spread,
  };
}

/** What one seen or not seen tells of the spread, beside a noted distance: the least share with which all simulated mixtures hold their promise. */
const ONE_SIDED = 0.4;

/** How far the log likelihood may lie below its highest value inside the interval. */
function allowed(readings: readonly Ratio[]): number {
  const noted = readings.filter(({ outcome }) => outcome === "first-seen").length;
  const freedom = Math.max(1, noted + ONE_SIDED * (readings.length - noted) - 1);
  return ((freedom + 1) / 2) * Math.log1p(studentScore(freedom) ** 2 / freedom);
}

const bothSides = (readings: readonly Ratio[]): boolean =>
  readings.some(({ outcome }) => outcome === "seen") &&
  readings.some(({ outcome }) => outcome === "not-seen");

/** The likeliest spread at a factor, and its log likelihood. */
function best(
  readings: readonly Ratio[],
  factor: number,
): { readonly likelihood: number; readonly spread: number } {
  let [likelihood, found] = [Number.NEGATIVE_INFINITY, SPREADS[0] as number];
  for (const spread of SPREADS) {
    let sum = 0;
    for (const { outcome, ratio } of readings) {
      const z = (factor - ratio) / spread;
      sum +=
        outcome === "seen"
          ? logNormal(z)
          : outcome === "not-seen"
            ? logNormal(-z)
            : -0.5 * z * z - Math.log(spread) - HALF_LOG_TURN;
    }
    if (sum > likelihood) [likelihood, found] = [sum, spread];
  }
  return { likelihood, spread: found };
}

const HALF_LOG_TURN = 0.5 * Math.log(2 * Math.PI);

/** The factor of greatest likelihood in a bracket, by thirds. */
function summit(
  readings: readonly Ratio[],
  bracket: { readonly low: number; readonly high: number },
): number {
  let { low, high } = bracket;
  while (high - low > 1e-4) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (best(readings, a).likelihood < best(readings, b).likelihood) low = a;
    else high = b;
  }
  return (low + high) / 2;
}

/** Where the inside ends, looked for between a factor inside and one outside; beyond the bounds there is nothing. */
function crossing(
  inside: (factor: number) => boolean,
  { yes, no }: { readonly yes: number; readonly no: number },
): number {
  if (no < 0 || no > LARGEST_FACTOR + 1e-9) return yes;
  let [good, bad] = [yes, no];
  while (Math.abs(good - bad) > 5e-4) {
    const middle = (good + bad) / 2;
    if (inside(middle)) good = middle;
    else bad = middle;
  }
  // The end that is still outside: an interval may be too wide by half a thousandth, never too narrow.
  return bad;
}
