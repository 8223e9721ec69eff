import type {
  AmpereSquareSeconds,
  Amperes,
  Farads,
  Henries,
  Ohms,
  Seconds,
  Volts,
} from "../quantity/index.ts";

/** A pulse of inrush current. */
export interface InrushPulse {
  readonly kind: "underdamped" | "overdamped" | "resistive";
  /** ζ = (R/2) · √(C/L); infinite without inductance. */
  readonly damping: number;
  readonly peak: Amperes;
  /** From closing to the peak. [s] */
  readonly peakTime: Seconds;
  /** Width at half the peak. [s] */
  readonly halfWidth: Seconds;
  /** From closing until the rectifier blocks; infinite where the current dies away. [s] */
  readonly base: Seconds;
  readonly integral: AmpereSquareSeconds;
  /** Voltage on the capacitor afterwards. [V] */
  readonly charged: Volts;
}

/** Source, line and driver as one series circuit, closed at a voltage. */
export interface InrushCircuit {
  readonly voltage: Volts;
  readonly resistance: Ohms;
  readonly inductance: Henries;
  readonly capacitance: Farads;
}

/**
 * Inrush into a discharged capacitor behind a rectifier.
 *
 * α = R/2L, ω₀ = 1/√(LC), ω = √(ω₀² − α²): Ipk = V·√(C/L)·e^(−(α/ω)·atan(ω/α)), base π/ω, x = e^(−απ/ω), I²t = (C·V²/2R)·(1 − x²).
 * Overdamped: the whole of C·V²/2 is lost in R, I²t = C·V²/2R; without inductance Ipk = V/R and the half width is 0.693·RC.
 *
 * @param voltage - At closing [V]; with resistance R [Ω], inductance L [H], capacitance C [F]; R and C above 0. For N equal drivers on one contact pass N · C.
 * @returns Peak, its time, half width, base, I²t.
 * @source INRUSH-CLOSED-FORM
 * @validFor Ideal rectifier, no current before closing
 * @example No inductance, 325.27 V, 2 Ω, 22 µF: 162.6 A, half width 30.5 µs, 0.582 A²s
 */
export function inrushPulse({ voltage, resistance, inductance, capacitance }: InrushCircuit): InrushPulse {
  const whole = (capacitance * voltage * voltage) / (2 * resistance);
  if (inductance === 0)
    return {
      kind: "resistive",
      damping: Number.POSITIVE_INFINITY,
      peak: voltage / resistance,
      peakTime: 0,
      halfWidth: Math.LN2 * resistance * capacitance,
      base: Number.POSITIVE_INFINITY,
      integral: whole,
      charged: voltage,
    };
  const alpha = resistance / (2 * inductance);
  const square = 1 / (inductance * capacitance) - alpha * alpha;
  const damping = (resistance / 2) * Math.sqrt(capacitance / inductance);
  const swing = Math.sqrt(Math.abs(square));
  if (square > 0) {
    const peakTime = Math.atan2(swing, alpha) / swing;
    const rest = Math.exp((-alpha * Math.PI) / swing);
    const current = (t: Seconds): Amperes =>
      (voltage / (inductance * swing)) * Math.exp(-alpha * t) * Math.sin(swing * t);
    const base = Math.PI / swing;
    return {
      kind: "underdamped",
      damping,
      peak: current(peakTime),
      peakTime,
      halfWidth: widthAtHalf(current, peakTime, base),
      base,
      integral: whole * (1 - rest * rest),
      charged: voltage * (1 + rest),
    };
  }
  const critical = swing < alpha * 1e-7;
  const peakTime = critical ? 1 / alpha : Math.atanh(swing / alpha) / swing;
  // As a difference of two exponentials, because e^(−αt)·sinh(ωt) overflows long before the current is gone.
  const current = (t: Seconds): Amperes =>
    critical
      ? (voltage / inductance) * t * Math.exp(-alpha * t)
      : (voltage / (2 * inductance * swing)) *
        (Math.exp((swing - alpha) * t) - Math.exp((-swing - alpha) * t));
  const slowest = 1 / Math.max(alpha - swing, alpha * 1e-9);
  return {
    kind: "overdamped",
    damping,
    peak: current(peakTime),
    peakTime,
    halfWidth: widthAtHalf(current, peakTime, peakTime + 60 * slowest),
    base: Number.POSITIVE_INFINITY,
    integral: whole,
    charged: voltage,
  };
}

function widthAtHalf(current: (t: Seconds) => Amperes, peakTime: Seconds, end: Seconds): Seconds {
  const half = current(peakTime) / 2;
  return cross(current, half, [end, peakTime]) - cross(current, half, [0, peakTime]);
}

/** Time between a time below the level and one above it at which the current crosses it. */
function cross(
  current: (t: Seconds) => Amperes,
  level: Amperes,
  [below, above]: readonly [number, number],
): Seconds {
  let low = below;
  let high = above;
  // 60 halvings bring any interval of microseconds below the last bit of a number.
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (current(middle) < level) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** I²t of a pulse by its shape, per peak squared and half width. */
const pulseShapes = { "half-sine": 0.75, exponential: 1 / (2 * Math.LN2), triangle: 2 / 3 } as const;

/**
 * Joule integral of a pulse of which only peak and width at half the peak are known.
 *
 * I²t = 0.75 · Ipk² · T50 for half a sine
 *
 * @param pulse - Peak [A] and half width [s]. @param shape - Half-sine where nothing else is known.
 * @returns I²t. [A²s]
 * @source INRUSH-CLOSED-FORM
 * @example 30 A for 200 µs: 0.75 · 900 · 0.0002 = 0.135 A²s
 */
export const pulseIntegral = (
  pulse: { readonly peak: Amperes; readonly width: Seconds },
  shape: keyof typeof pulseShapes = "half-sine",
): AmpereSquareSeconds => pulseShapes[shape] * pulse.peak ** 2 * pulse.width;

/**
 * What is left of the peak when a contact closes a little beside the zero of the voltage.
 *
 * sin(2π · f · Δt)
 *
 * @param miss - Error of the moment Δt. [s] @param frequency - Of the network. [Hz]
 * @returns Share of the worst peak; 1 from a quarter of a period on.
 * @source DERIVED-HERE
 * @example 0.5 ms at 50 Hz: sin 9° = 0.156
 */
export const peakBesideZero = (miss: Seconds, frequency: number): number =>
  Math.sin(Math.min(Math.PI / 2, 2 * Math.PI * frequency * Math.abs(miss)));
