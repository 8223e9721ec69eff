/**
 * Logarithm of the normal distribution, without underflow far out.
 *
 * ln Φ(z) = ln(½ erfc(−z/√2)), erfc(x) = t · exp(−x² + p(t)), t = 1/(1 + x/2) for x ≥ 0
 *
 * @param z - Standard score.
 * @returns ln Φ(z) ≤ 0.
 * @source ERROR-FUNCTION
 * @example z = 0: ln ½; z = 1.96: ln 0.975
 */
export function logNormal(z: number): number {
  const x = -z * Math.SQRT1_2;
  if (x >= 0) return Math.log(0.5) + logErfc(x);
  return Math.log1p(-0.5 * Math.exp(logErfc(-x)));
}

/** Coefficients of p(t), lowest power first. */
const POWERS = [
  -1.26551223, 1.00002368, 0.37409196, 0.09678418, -0.18628806, 0.27886807, -1.13520398, 1.48851587,
  -0.82215223, 0.17087277,
];

function logErfc(x: number): number {
  const t = 1 / (1 + 0.5 * x);
  let sum = 0;
  for (let i = POWERS.length - 1; i >= 0; i--) sum = sum * t + (POWERS[i] as number);
  return Math.log(t) - x * x + sum;
}

/**
 * Score that 97.5 % of Student's distribution lie below, by the expansion about the normal one.
 *
 * t = z + (z³ + z)/4ν + (5z⁵ + 16z³ + 3z)/96ν² + (3z⁷ + 19z⁵ + 17z³ − 15z)/384ν³
 *
 * @param freedom - Degrees of freedom, ν ≥ 1.
 * @returns t; within 1 % from ν = 4 on, too small below.
 * @source STUDENT-EXPANSION
 * @example ν = 7: 2.364 (tabled 2.365)
 */
export function studentScore(freedom: number): number {
  const z = 1.959964;
  const v = Math.max(1, freedom);
  return (
    z +
    (z ** 3 + z) / (4 * v) +
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * v ** 2) +
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / (384 * v ** 3)
  );
}
