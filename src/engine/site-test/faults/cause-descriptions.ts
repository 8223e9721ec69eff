import type { FaultCause, Symptom } from "./names.ts";

/** What a cause is, in one sentence for the person who stands in the room. */
export const causeDescriptions: Readonly<Record<FaultCause, string>> = {
  "source-in-view": "Warm air, a heater or a machine in sight of the detector looks like somebody who moves.",
  "passer-by-seen": "The detector sees people outside the room through the open door.",
  "noise-heard": "A fan or a machine keeps the microphone awake.",
  "delay-too-long": "The off delay is set longer than planned.",
  "delay-too-short": "The off delay is shorter than people sit still.",
  "contact-welded": "The detector's contact is welded by the lamps' inrush and stays closed.",
  "switch-in-parallel": "A switch beside the contact keeps the lamps on.",
  "output-joined-with-another": "Another room's detector feeds the same lamps.",
  "glow-lamp-holds-button": "The current of a glow lamp counts as a press of the button.",
  "button-of-another-room": "A button of another room is wired to this detector.",
  "place-beyond-reach": "The place lies beyond the reach for small movements.",
  "hidden-behind-something": "Something stands between the place or the door and the lens.",
  "mask-in-the-way": "The mask on the lens covers more than it should, or sits turned.",
  "sensitivity-too-low": "The sensitivity is turned too low.",
  "room-too-warm": "The room is so warm that people hardly stand out.",
  "hung-at-another-height": "The detector hangs at another height than planned.",
  "bright-enough-for-the-sensor": "The light sensor measures more light than where people need it.",
  "lamps-dazzle-the-sensor": "The lamps shine on the light sensor, which switches them off again and again.",
  "semi-automatic": "The device waits for the button to switch on.",
  "detector-without-supply": "The detector has no supply, or is dead.",
  "contact-stays-open": "The detector calls for light, and its contact does not close.",
  "lamps-without-line": "The switched line is live, and does not reach the lamps, or these are dead.",
  "supply-interrupted": "The supply comes and goes: a loose terminal.",
  "lamps-start-late": "The lamps or their drivers take seconds to start.",
  "door-beyond-reach": "Whoever comes in walks far before the detector sees them.",
  "suppressor-leaks": "A suppressor across the open contact leaks into the lamps.",
  "long-cores-couple": "Long cores side by side leak into the lamps.",
  "glow-lamp-feeds-lamps": "A glow lamp at a switch leaks into the lamps.",
  "neutral-borrowed": "The lamps' neutral belongs to another circuit, and the residual current device trips.",
  "surge-starts-it-again": "Switching off gives a surge that starts the detector again.",
  "test-mode-left-on": "The detector was left in test mode.",
  "driver-unsteady": "The lamps or their drivers are unsteady; the detector does not switch.",
};

/** What people complain of, in their words. */
export const symptomDescriptions: Readonly<Record<Symptom, string>> = {
  "stays-on": "The light stays on.",
  "goes-off-while-occupied": "The light goes off while somebody is there.",
  "comes-on-with-nobody-there": "The light comes on with nobody there.",
  "does-not-come-on": "The light does not come on.",
  "comes-on-late": "The light comes on late.",
  flickers: "The light flickers, or goes off and on again and again.",
  "glows-when-off": "The lamps glow while they are off.",
};
