import { type AlternatingPresence, drawnPresence } from "../energy/index.ts";
import type { Seconds, Share } from "../quantity/index.ts";
import { drawsFrom, exponential } from "./chance.ts";
import { daySeconds } from "./day-task.ts";
import { type Stay, staysOfSteps, tidyStays } from "./stays.ts";

const QUARTER: Seconds = 900;

/** Presence by chance: along a profile with a mobility, or presence and absence that take turns within hours of use. */
export type ChanceModel =
  | { readonly kind: "profile"; readonly profile: readonly Share[]; readonly mobility: number }
  | {
      readonly kind: "turns";
      readonly means: AlternatingPresence;
      readonly hours: { readonly from: Seconds; readonly to: Seconds };
    };

/** Mobility to begin with; a public implementation draws it evenly from 0 to 0.5. @source PAGE-2008 */
export const usualMobility = 0.1;

/**
 * Days of presence by chance, one after the other.
 *
 * Along a profile: T01 and T11 of the model, step by step of 15 min. In turns: presence and absence of exponential length;
 * the hours begin with one of them by the share of presence a/(a + b).
 *
 * @param model - Profile of a day and mobility, or means and hours of use
 * @param options.seed - Any whole number
 * @param options.days - How many days
 * @returns Stays from 0 to the end of the last day [s]
 * @source PAGE-2008
 * @source ALTERNATING-RENEWAL
 * @source WANG-2005
 */
export function staysByChance(
  model: ChanceModel,
  options: { readonly seed: number; readonly days: number },
): readonly Stay[] {
  const draw = drawsFrom(options.seed);
  if (model.kind === "profile") {
    const profile = Array.from({ length: options.days }, () => model.profile).flat();
    return staysOfSteps(drawnPresence(profile, { mobility: model.mobility, draw }), QUARTER);
  }
  const { means, hours } = model;
  const stays: Stay[] = [];
  for (let day = 0; day < options.days; day++) {
    const [begin, end] = [day * daySeconds + hours.from, day * daySeconds + hours.to];
    let there = draw() < means.occupied / (means.occupied + means.vacant);
    for (let at = begin; at < end; there = !there) {
      const next = Math.min(end, at + exponential(there ? means.occupied : means.vacant, draw));
      if (there) stays.push({ from: at, to: next, what: "somebody" });
      at = next;
    }
  }
  return tidyStays(stays);
}
