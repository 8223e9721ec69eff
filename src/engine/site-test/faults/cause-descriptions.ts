import { type Said, say } from "../../check/index.ts";
import type { FaultCause, Symptom } from "./names.ts";

/** What a cause is, in one sentence for the person who stands in the room. */
export const causeDescriptions: Readonly<Record<FaultCause, Said>> = {
  "source-in-view": say`Warm air, a heater or a machine in sight of the detector looks like somebody who moves.`,
  "passer-by-seen": say`The detector sees people outside the room through the open door.`,
  "noise-heard": say`A fan or a machine keeps the microphone awake.`,
  "delay-too-long": say`The off delay is set longer than planned.`,
  "delay-too-short": say`The off delay is shorter than people sit still.`,
  "contact-welded": say`The detector's contact is welded by the lamps' inrush and stays closed.`,
  "switch-in-parallel": say`A switch beside the contact keeps the lamps on.`,
  "output-joined-with-another": say`Another room's detector feeds the same lamps.`,
  "glow-lamp-holds-button": say`The current of a glow lamp counts as a press of the button.`,
  "button-of-another-room": say`A button of another room is wired to this detector.`,
  "place-beyond-reach": say`The place lies beyond the reach for small movements.`,
  "hidden-behind-something": say`Something stands between the place or the door and the lens.`,
  "mask-in-the-way": say`The mask on the lens covers more than it should, or sits turned.`,
  "sensitivity-too-low": say`The sensitivity is turned too low.`,
  "room-too-warm": say`The room is so warm that people hardly stand out.`,
  "hung-at-another-height": say`The detector hangs at another height than planned.`,
  "bright-enough-for-the-sensor": say`The light sensor measures more light than where people need it.`,
  "lamps-dazzle-the-sensor": say`The lamps shine on the light sensor, which switches them off again and again.`,
  "semi-automatic": say`The device waits for the button to switch on.`,
  "detector-without-supply": say`The detector has no supply, or is dead.`,
  "contact-stays-open": say`The detector calls for light, and its contact does not close.`,
  "lamps-without-line": say`The switched line is live, and does not reach the lamps, or these are dead.`,
  "supply-interrupted": say`The supply comes and goes: a loose terminal.`,
  "lamps-start-late": say`The lamps or their drivers take seconds to start.`,
  "door-beyond-reach": say`Whoever comes in walks far before the detector sees them.`,
  "suppressor-leaks": say`A suppressor across the open contact leaks into the lamps.`,
  "long-cores-couple": say`Long cores side by side leak into the lamps.`,
  "glow-lamp-feeds-lamps": say`A glow lamp at a switch leaks into the lamps.`,
  "neutral-borrowed": say`The lamps' neutral belongs to another circuit, and the residual current device trips.`,
  "surge-starts-it-again": say`Switching off gives a surge that starts the detector again.`,
  "test-mode-left-on": say`The detector was left in test mode.`,
  "driver-unsteady": say`The lamps or their drivers are unsteady; the detector does not switch.`,
};

/** What people complain of, in their words. */
export const symptomDescriptions: Readonly<Record<Symptom, Said>> = {
  "stays-on": say`The light stays on.`,
  "goes-off-while-occupied": say`The light goes off while somebody is there.`,
  "comes-on-with-nobody-there": say`The light comes on with nobody there.`,
  "does-not-come-on": say`The light does not come on.`,
  "comes-on-late": say`The light comes on late.`,
  flickers: say`The light flickers, or goes off and on again and again.`,
  "glows-when-off": say`The lamps glow while they are off.`,
};
