import type { Celsius } from "../quantity/index.ts";

/** Air temperature from which body heat will not be seen reliably. [°C] @source COMMON-PRACTICE */
export const UNRELIABLE_FROM: Celsius = 30;

/** Temperature of the declared figures. [°C] @source COMMON-PRACTICE */
export const DECLARED_AT: Celsius = 22;

/**
 * Contrast of a clothed person against a room, as a share of that at 22 °C.
 * kT = ΔM(t)/ΔM(22 °C) with ΔM = M(t_cl) − M(t), M the radiation from 8 to 14 µm.
 *
 * How obtained: t_cl by the formula of ISO 7730 (1.2 met, 1.0 clo, 0.1 m/s, radiant = air temperature), M by Planck's law; `contrastAt` computes
 * the same and a test compares the two. Rounded to three digits.
 * @source ISO-7730
 * @source PLANCK-BAND
 */
export const contrastTable: readonly {
  readonly air: Celsius;
  readonly clothing: Celsius;
  readonly contrast: number;
  readonly share: number;
}[] = [
  { air: 10, clothing: 19.79, contrast: 23.0, share: 1.845 },
  { air: 16, clothing: 23.37, contrast: 18.15, share: 1.455 },
  { air: 20, clothing: 25.7, contrast: 14.45, share: 1.159 },
  { air: 22, clothing: 26.84, contrast: 12.47, share: 1.0 },
  { air: 24, clothing: 28.0, contrast: 10.45, share: 0.838 },
  { air: 26, clothing: 29.16, contrast: 8.38, share: 0.672 },
  { air: 28, clothing: 30.33, contrast: 6.28, share: 0.503 },
  { air: 30, clothing: 31.51, contrast: 4.13, share: 0.331 },
  { air: 32, clothing: 32.7, contrast: 1.94, share: 0.156 },
  { air: 34, clothing: 33.9, contrast: -0.28, share: -0.02 },
];

/**
 * Factor on the reach in a room that gets warm.
 *
 * R(t) = R(22 °C) · kTⁿ with n = 1 (the person fills the beam in height and not in width: the careful end; in neither it would be 0.5); 1 at 22 °C and below, never more than declared; 0 where the contrast is gone.
 *
 * @param temperature - Highest temperature of the room. [°C]
 * @returns Factor, 0 … 1; between the table's temperatures linear.
 * @source ISO-7730
 * @source PLANCK-BAND
 * @example 26 °C: 0.672
 */
export function warmthFactor(temperature: Celsius): number {
  if (temperature <= DECLARED_AT) return 1;
  for (let i = 1; i < contrastTable.length; i++) {
    const [low, high] = [contrastTable[i - 1], contrastTable[i]];
    if (!low || !high || temperature > high.air) continue;
    const t = (temperature - low.air) / (high.air - low.air);
    return Math.max(0, low.share + t * (high.share - low.share));
  }
  return 0;
}

/** Whether body heat is seen reliably in a room that reaches a temperature. @returns false from 30 °C @example 28 °C: true */
export const seenReliably = (temperature: Celsius): boolean => temperature < UNRELIABLE_FROM;

/**
 * Radiation of a black body between 8 and 14 µm, into the half space.
 *
 * M = ∫ 2πhc² / (λ⁵ (exp(hc/λkT) − 1)) dλ
 *
 * @param temperature - Temperature of the body. [°C]
 * @returns Band radiation, emissivity 1. [W/m²]
 * @source PLANCK-BAND
 * @example 20 °C: 155.11 W/m²
 */
export function bandRadiation(temperature: Celsius): number {
  const kelvin = temperature + 273.15;
  const at = (wavelength: number): number => {
    const first = 2 * Math.PI * PLANCK * LIGHT ** 2;
    return first / (wavelength ** 5 * Math.expm1((PLANCK * LIGHT) / (wavelength * BOLTZMANN * kelvin)));
  };
  // Simpson's rule; 240 strips leave an error below 1e-6 of the value for this smooth curve.
  const strips = 240;
  const step = (14e-6 - 8e-6) / strips;
  let sum = at(8e-6) + at(14e-6);
  for (let i = 1; i < strips; i++) sum += (i % 2 === 1 ? 4 : 2) * at(8e-6 + i * step);
  return (sum * step) / 3;
}

/**
 * Surface temperature of clothing in still air.
 *
 * t_cl = 35.7 − 0.028 M − I_cl (3.96·10⁻⁸ f_cl ((t_cl + 273)⁴ − (t_r + 273)⁴) + f_cl h_c (t_cl − t_a)),
 * h_c = max(2.38 |t_cl − t_a|^0.25, 12.1 √v), f_cl = 1.05 + 0.645 I_cl for I_cl > 0.078 m²K/W.
 *
 * @param air - Air and radiant temperature. [°C]
 * @returns Surface temperature for 1.2 met (69.8 W/m²), 1.0 clo (0.155 m²K/W), 0.1 m/s. [°C]
 * @source ISO-7730
 * @example 22 °C: 26.84 °C
 */
export function clothingTemperature(air: Celsius): Celsius {
  const [metabolism, insulation, speed] = [1.2 * 58.15, 0.155, 0.1];
  const cover = 1.05 + 0.645 * insulation;
  const balance = (clothing: number): number => {
    const convection = Math.max(2.38 * Math.abs(clothing - air) ** 0.25, 12.1 * Math.sqrt(speed));
    const radiation = 3.96e-8 * cover * ((clothing + 273) ** 4 - (air + 273) ** 4);
    return (
      35.7 - 0.028 * metabolism - insulation * (radiation + cover * convection * (clothing - air)) - clothing
    );
  };
  // The balance falls steadily with the clothing's temperature: halve the bracket.
  let [low, high] = [-60, 80];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (balance(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Contrast of a clothed person against a room, ΔM = M(t_cl) − M(t), 8 to 14 µm. @returns [W/m²] @example 22 °C: 12.47 */
export const contrastAt = (air: Celsius): number =>
  bandRadiation(clothingTemperature(air)) - bandRadiation(air);

const PLANCK = 6.62607015e-34;
const LIGHT = 299792458;
const BOLTZMANN = 1.380649e-23;
