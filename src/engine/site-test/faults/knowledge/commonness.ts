import type { FaultCause } from "../names.ts";

/**
 * How common a cause is before anything is known of the room: 3 often met, 2 met, 1 seldom. Of the trade's habit, so kept
 * coarse; what the plan and the tests say weighs far more.
 *
 * @source COMMON-PRACTICE
 */
export const commonness: Readonly<Record<FaultCause, number>> = {
  "source-in-view": 3,
  "passer-by-seen": 3,
  "noise-heard": 2,
  "delay-too-long": 3,
  "delay-too-short": 3,
  "contact-welded": 2,
  "switch-in-parallel": 2,
  "output-joined-with-another": 2,
  "glow-lamp-holds-button": 1,
  "button-of-another-room": 1,
  "place-beyond-reach": 3,
  "hidden-behind-something": 3,
  "mask-in-the-way": 2,
  "sensitivity-too-low": 2,
  "room-too-warm": 2,
  "hung-at-another-height": 1,
  "bright-enough-for-the-sensor": 3,
  "lamps-dazzle-the-sensor": 2,
  "semi-automatic": 3,
  "detector-without-supply": 2,
  "contact-stays-open": 1,
  "lamps-without-line": 2,
  "supply-interrupted": 1,
  "lamps-start-late": 1,
  "door-beyond-reach": 3,
  "suppressor-leaks": 2,
  "long-cores-couple": 2,
  "glow-lamp-feeds-lamps": 2,
  "neutral-borrowed": 1,
  "surge-starts-it-again": 1,
  "test-mode-left-on": 1,
  "driver-unsteady": 2,
};
