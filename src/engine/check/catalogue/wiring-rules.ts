import type { CatalogueEntry } from "./entry.ts";

/** What breaks a wiring rule, in the order of the rules. */
export const wiringRuleProblems = {
  "joined-outputs-two-feeds": {
    severity: "must",
    message: "The outputs of {name} are joined: {detail}.",
    remedy:
      "Feed all joined outputs from one line of one circuit; until then isolate every source before work.",
  },
  "neutral-borrowed": {
    severity: "must",
    message: "Neutral of {name}: {detail}.",
    remedy: "Take line and neutral from one circuit behind one RCD.",
  },
  "not-the-line-switched": {
    severity: "must",
    message: "Wrong conductor switched at {name}: {detail}.",
    remedy: "Bring the line conductor to the contact; neutral and protective conductor pass uninterrupted.",
  },
  "no-permanent-supply": {
    severity: "must",
    message: "No permanent supply at {name}: {detail}.",
    remedy: "Bring unswitched line and neutral to every detector, slaves too.",
  },
  "joined-contact-too-weak": {
    severity: "should",
    message: "Joined contacts do not add up; too much for one alone at {name}: {detail}.",
    remedy: "Let one master or a contactor switch the load; the others only signal.",
  },
  "too-many-joined": {
    severity: "should",
    message: "Outputs on {name}: {detail}.",
    remedy: "Let one master switch and the others signal to it.",
  },
  "button-wired-wrong": {
    severity: "must",
    message: "Wiring of {name}: {detail}.",
    remedy:
      "Fit a normally open push-button from the detector's own line, or its neutral where the data sheet says so.",
  },
  "glow-lamps-hold-input": {
    severity: "should",
    message: "At {name}: {detail}.",
    remedy: "Take buttons whose lamp has its own neutral, or fewer lamps.",
  },
  "coil-without-suppressor": {
    severity: "should",
    message: "At {name}: {detail}.",
    remedy: "Fit a suppressor across the coil, between switched line and neutral.",
  },
  "coil-cable-wrong": {
    severity: "must",
    message: "Contactor {name}: {detail}.",
    remedy:
      "Take a section and a protective device for the cable to the coil that hold, and calculate it again.",
  },
  "lamps-may-glow": {
    severity: "should",
    message: "Lamps on {name} may glow when off: {detail}.",
    remedy: "Remove the suppressor from the contact, fit a base load across the lamps, or a contactor.",
  },
  "contactor-two-supplies": {
    severity: "must",
    message: "Contactor {name}: {detail}.",
    remedy:
      "Label it with all its supplies and isolate all their poles, or feed coil and contacts from one circuit.",
  },
  "star-neutral-broken": {
    severity: "should",
    message: "{name}: {detail}.",
    remedy: "Fit a device that breaks all three lines together, and test the neutral before energising.",
  },
  "no-isolator": {
    severity: "must",
    message: "{name}: {detail}.",
    remedy: "Provide an isolator upstream that can be locked, and label it.",
  },
  "signals-not-separated": {
    severity: "must",
    message: "{name}: {detail}.",
    remedy: "Separate them, or take signal conductors insulated for the highest voltage present.",
  },
  "emergency-line-switched": {
    severity: "should",
    message: "Escape luminaire {name}: {detail}.",
    remedy:
      "Take its line before the contact from the same final circuit; with the breaker open it must light.",
  },
  "no-protective-conductor": {
    severity: "must",
    message: "At {name}: {detail}.",
    remedy: "Bring a protective conductor to the point and test that it is continuous.",
  },
  "detectors-in-series": {
    severity: "should",
    message: "{name}: {detail}.",
    remedy: "Wire them in parallel, or use the extension input.",
  },
  "override-wrong": {
    severity: "should",
    message: "Manual override in {name}: {detail}.",
    remedy: "Take the switch away, or let a button speak to the detector.",
  },
  "override-missing": {
    severity: "must",
    message: "No manual override in {name}: {detail}.",
    remedy: "Fit a switch that the detector cannot overrule.",
  },
  "detectors-leak-too-much": {
    severity: "must",
    message: "{name}: {detail}.",
    remedy: "Share detectors and luminaires between two RCDs.",
  },
  "ceiling-cables-unsupported": {
    severity: "should",
    message: "{name}: {detail}.",
    remedy: "Fix it to the slab, clear of luminaires, and 50 mm or a barrier away from signal cables.",
  },
  "wet-room-unsafe": {
    severity: "must",
    message: "Wet room, {name}: {detail}.",
    remedy:
      "Keep mains detectors out of the zones, protect every circuit by 30 mA, and take a device made for wet rooms.",
  },
  "no-additional-protection": {
    severity: "must",
    message: "{name}: {detail}.",
    remedy: "Protect it by an RCD of 30 mA.",
  },
  "fire-ceiling-open": {
    severity: "must",
    message: "Fire-rated ceiling, {name}: {detail}.",
    remedy:
      "Mount on the surface or in a tested cover, and seal every penetration as the ceiling's test says.",
  },
  "wiring-rule-not-proven": {
    severity: "note",
    message: "Rule {rule} is not proven for {name}. Not on record: {detail}.",
    remedy: "Look on site or in the data sheet, and enter it.",
  },
} as const satisfies Record<string, CatalogueEntry>;
