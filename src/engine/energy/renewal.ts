import type { Seconds, Share } from "../quantity/index.ts";

/** Presence and vacancy that take turns; vacancy exponential. */
export interface AlternatingPresence {
  /** Mean length of presence, a. [s] */
  readonly occupied: Seconds;
  /** Mean length of vacancy, b. [s] */
  readonly vacant: Seconds;
}

/** What an off delay costs and spares by the closed form. */
export interface RenewalResult {
  /** Share of the time that the light is on. */
  readonly lit: Share;
  /** Share spared against light that always burns. */
  readonly saving: Share;
  /** Switch-offs an hour. [1/h] */
  readonly offPerHour: number;
}

/**
 * Lit share and switch-offs of alternating presence with an off delay, in closed form.
 *
 * lit = 1 − b e^(−t/b) / (a + b);  off per hour = 3600 e^(−t/b) / (a + b)
 *
 * @param presence - Means a and b; a ≥ 0, b > 0 [s]
 * @param delay - Off delay t ≥ 0 [s]
 * @returns Shares and rate
 * @source ALTERNATING-RENEWAL
 * @validFor Exponential vacancy, stationary, presence seen without a gap
 * @example a = b and no delay: lit for half of the time
 */
export function renewal(presence: AlternatingPresence, delay: Seconds): RenewalResult {
  const { occupied, vacant } = presence;
  if (!(occupied >= 0 && vacant > 0 && delay >= 0))
    throw new RangeError(`Means and delay must not be negative: ${occupied}, ${vacant}, ${delay}`);
  const outlived = Math.exp(-delay / vacant) / (occupied + vacant);
  return { lit: 1 - vacant * outlived, saving: vacant * outlived, offPerHour: 3600 * outlived };
}

/** Means of single-person offices. @source WANG-2005 */
export const officePresence: AlternatingPresence = { occupied: 4368, vacant: 2556 };
