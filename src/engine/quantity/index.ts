/** Unit aliases of number that make a signature speak. SI inside; other units exist only in readers, writers and screens. */
export type Metres = number;
export type SquareMetres = number;
export type Radians = number;
export type Seconds = number;
export type Lux = number;
export type MetresPerSecond = number;
/** Dimensionless share, 0 … 1. */
export type Share = number;
/** Temperature. [°C] */
export type Celsius = number;
/** Active power. [W] */
export type Watts = number;
export type Volts = number;
export type Amperes = number;
export type Ohms = number;
export type OhmsPerMetre = number;
export type Farads = number;
export type Henries = number;
/** Joule integral of a pulse, I²t. [A²s] */
export type AmpereSquareSeconds = number;
/** Nominal cross-section of a conductor. [mm²] A name of the trade under which every table of the standards is kept; not converted. */
export type SquareMillimetres = number;
/** Energy as the meter counts it. [kWh] */
export type KilowattHours = number;

/** Radians of an angle in degrees. @param degrees [°] @returns [rad] @example radiansOf(180) = π */
export const radiansOf = (degrees: number): Radians => (degrees * Math.PI) / 180;

/** Degrees of an angle in radians. @param radians [rad] @returns [°] @example degreesOf(π) = 180 */
export const degreesOf = (radians: Radians): number => (radians * 180) / Math.PI;

/** An angle brought into 0 ≤ a < 2π. @param angle [rad] @returns [rad] @example turned(-π/2) = 3π/2 */
export const wholeTurn = (angle: Radians): Radians => {
  const rest = angle % (2 * Math.PI);
  return rest < 0 ? rest + 2 * Math.PI : rest;
};

/** Stops the build when a tagged union gains a kind that a switch does not know; throws if reached at run time. */
export function unreachable(value: never): never {
  throw new Error(`Unknown kind: ${JSON.stringify(value)}`);
}
