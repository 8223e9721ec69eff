import type { CatalogueEntry } from "./entry.ts";

/** Settings that contradict each other, and readings that cannot carry a threshold. */
export const settingProblems = {
  "threshold-without-daylight": {
    severity: "should",
    message:
      "Detector {tag} has a threshold of {lux} lx, but no daylight reaches what it lights in room {room}.",
    remedy: "Switch the threshold off.",
  },
  "threshold-on-slave": {
    severity: "should",
    message:
      "Detector {tag} in room {room} is a slave and has a threshold: its master alone looks at the light.",
    remedy: "Switch the threshold off at the slave.",
  },
  "sound-next-to-fan": {
    severity: "should",
    message: "Detector {tag} in room {room} listens next to a fan: the light may never go off.",
    remedy: "Switch sound off, or move the detector.",
  },
  "sound-without-microphone": {
    severity: "must",
    message: "Detector {tag} in room {room} is set to listen, but its data sheet declares no reach of sound.",
    remedy: "Switch sound off, or choose a model that hears.",
  },
  "addressed-bus-not-covered": {
    severity: "should",
    message:
      "Detector {tag} in room {room} speaks on an addressed bus: addresses, groups and levels are not covered here.",
    remedy: "Plan its place and its supply here, and set the bus up as its data sheet says.",
  },
  "output-not-declared": {
    severity: "must",
    message:
      "Detector {tag} in room {room} needs the output {output}, which its data sheet does not declare.",
    remedy: "Take a model that has it, or let each point be seen by two devices that switch.",
  },
  "background-level-unusual": {
    severity: "note",
    message: "Detector {tag} in room {room} falls to {percent} %; 10 to 20 % is customary on ways.",
    remedy: "Choose a level between 10 and 20 %, or keep yours if the room asks for it.",
  },
  "way-goes-dark": {
    severity: "should",
    message:
      "Detector {tag} switches way {room} off, and not each of its points is seen by two devices: one that fails leaves people in the dark.",
    remedy: "Let it fall to a background level of 10 to 20 %, or add a device.",
  },
  "delay-above-rule": {
    severity: "must",
    message: "Detector {tag} in room {room} waits {minutes} min; {rule} allows {limit} min.",
    remedy: "Shorten the off delay.",
  },
  "absence-control-in-dark-way": {
    severity: "must",
    message:
      "Detector {tag} switches off only, but way {room} has no daylight: people walk in the dark to the button.",
    remedy: "Set it to automatic.",
  },
  "absence-control-maybe-dark": {
    severity: "should",
    message:
      "Detector {tag} switches off only, and no windows are entered for way {room}: people may walk in the dark to the button.",
    remedy: "Set it to automatic, or enter what daylight there is.",
  },
  "absence-control-without-button": {
    severity: "must",
    message: "Detector {tag} in room {room} waits for a button, and there is none.",
    remedy: "Set it to automatic, or plan a button.",
  },
  "left-in-test-mode": {
    severity: "must",
    message: "Detector {tag} in room {room} is left in test mode: it ignores delay and light.",
    remedy: "Switch test mode off.",
  },
  "impulse-slower-than-timer": {
    severity: "must",
    message: "Detector {tag} in room {room} pulses every {every} s, but its timer runs out after {time} s.",
    remedy: "Shorten the pause, or lengthen the timer.",
  },
  "impulse-without-timer": {
    severity: "must",
    message: "Detector {tag} in room {room} is set to pulses, and no timer is planned.",
    remedy: "Set it to hold its contact, or plan a timer.",
  },
  "mask-left-out": {
    severity: "should",
    message: "The plan masks the lens of detector {tag} in room {room}, but its settings say none.",
    remedy: "Set the mask as drawn, or take it off the plan.",
  },
  "parallel-delays-differ": {
    severity: "should",
    message:
      "{tags} in room {room} are joined and have different delays: the longest, {longest} min, always wins.",
    remedy: "Set one delay in all of them.",
  },
  "parallel-thresholds": {
    severity: "should",
    message:
      "{tags} in room {room} are joined and each look at the light: each takes the others' lamps for daylight.",
    remedy: "Leave the threshold in one of them, or make one the master.",
  },
  "slaves-without-master": {
    severity: "must",
    message: "{tags} in room {room} only report presence, and nobody switches the light for them.",
    remedy: "Make one of them the master.",
  },
  "several-masters": {
    severity: "should",
    message: "{tags} in room {room} are all masters of one load: each takes the others' lamps for daylight.",
    remedy: "Leave one master, and make the others slaves.",
  },
  "alone-on-shared-load": {
    severity: "should",
    message: "{tags} in room {room} is set to work alone, but others switch the same load.",
    remedy: "Set it back to the role that follows from the wiring.",
  },
  "setting-not-proven": {
    severity: "note",
    message: "{setting} of detector {tag} in room {room} is not proven to fit. {missing}.",
    remedy: "Enter what is not known.",
  },
  "threshold-target-missing": {
    severity: "must",
    message: "No illuminance is wanted in room {room}: a threshold has nothing to aim at.",
    remedy: "Enter the illuminance that the task needs.",
  },
  "threshold-reading-impossible": {
    severity: "must",
    message:
      "A reading in room {room} cannot be: light is never negative, and daylight reaches the ceiling too.",
    remedy: "Read again.",
  },
  "threshold-sun-patch": {
    severity: "must",
    message: "The sun shone in view of the detector in room {room}: the readings cannot carry a threshold.",
    remedy: "Read again under a covered sky, or when the patch has gone.",
  },
  "threshold-too-dark": {
    severity: "must",
    message:
      "Daylight in room {room} was {read} lx at most; at least {needed} lx are needed to judge the target.",
    remedy: "Read again when it is brighter.",
  },
  "threshold-few-readings": {
    severity: "note",
    message: "The threshold of room {room} rests on {count} readings; {needed} through the day make it sure.",
    remedy: "Read again at other hours.",
  },
} as const satisfies Record<string, CatalogueEntry>;
