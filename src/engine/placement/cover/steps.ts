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
