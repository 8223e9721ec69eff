import type { Share } from "../quantity/index.ts";

/** Chances of one step. */
export interface PresenceStep {
  /** Vacant now, present next. */
  readonly arrive: Share;
  /** Present now, present next. */
  readonly stay: Share;
}

const share = (value: number): Share => Math.min(1, Math.max(0, value));

/**
 * Chances of arriving and staying that lead from one share of presence to the next.
 *
 * T01 = (μ − 1)/(μ + 1) P(t) + P(t+1);  T11 = (P(t) − 1)/P(t) · [(μ − 1)/(μ + 1) P(t) + P(t+1)] + P(t+1)/P(t); both kept within 0 … 1
 *
 * @param presence - P(t), P(t+1), each 0 … 1
 * @param mobility - μ ≥ 0: how often people come and go
 * @returns Chances; with P(t) = 0 nobody is there to stay, so `stay` is 0
 * @source PAGE-2008
 * @example P 0.5 twice, μ 0.5: arrive 1/3, stay 2/3
 */
export function presenceStep(
  presence: { readonly now: Share; readonly next: Share },
  mobility: number,
): PresenceStep {
  const { now, next } = presence;
  if (!(now >= 0 && now <= 1 && next >= 0 && next <= 1 && mobility >= 0))
    throw new RangeError(
      `Shares must lie within 0 … 1 and mobility not below 0: ${now}, ${next}, ${mobility}`,
    );
  const arrive = ((mobility - 1) / (mobility + 1)) * now + next;
  const stay = now === 0 ? 0 : ((now - 1) / now) * arrive + next / now;
  return { arrive: share(arrive), stay: share(stay) };
}

/**
 * Presence step by step along a profile.
 *
 * @param profile - Share of presence at each step, 0 … 1
 * @param options.mobility - μ
 * @param options.draw - Gives the next random number, 0 ≤ x < 1: chance is an argument
 * @returns Whether somebody is there, for every step
 * @source PAGE-2008
 */
export function drawnPresence(
  profile: readonly Share[],
  options: { readonly mobility: number; readonly draw: () => number },
): boolean[] {
  const present: boolean[] = [];
  profile.forEach((share, i) => {
    if (i === 0) {
      present.push(options.draw() < share);
      return;
    }
    const { arrive, stay } = presenceStep({ now: profile[i - 1]!, next: share }, options.mobility);
    present.push(options.draw() < (present[i - 1] ? stay : arrive));
  });
  return present;
}
