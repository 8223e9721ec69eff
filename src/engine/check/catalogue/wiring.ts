import type { CatalogueEntry } from "./entry.ts";

/** What the calculation of the wiring finds. */
export const wiringProblems = {
  // What the program does not cover
  "supply-without-neutral": {
    severity: "must",
    message: "The supply has no neutral; detectors and luminaires between two lines are not covered.",
    remedy: "Have the wiring designed by someone who knows this network, or enter a supply with a neutral.",
  },
  "supply-it-system": {
    severity: "must",
    message: "The supply is an IT system, which is not covered: a first fault does not disconnect there.",
    remedy: "Have the wiring designed by someone who knows this network.",
  },
  "supply-not-known": {
    severity: "must",
    message: "The supply of {voltage} V, {frequency} Hz is not among those that are covered.",
    remedy: "Choose 230/400 V at 50 Hz, or 120/208 V or 277/480 V at 60 Hz.",
  },

  // Circuits
  "voltage-drop-too-large": {
    severity: "must",
    message:
      "{name}: {actual} % of the voltage is lost from the origin to the last luminaire; {limit} % is the most.",
    remedy: "Take a thicker cable, a shorter way, or share the load between two circuits.",
  },
  "design-current-over-rating": {
    severity: "must",
    message: "{name}: a design current of {actual} A behind a protective device of {limit} A.",
    remedy: "Share the load between circuits; a larger device needs a thicker cable.",
  },
  "cable-too-thin": {
    severity: "must",
    message: "{name}: protected at {actual} A, but the weakest cable carries {limit} A.",
    remedy: "Take a thicker cable or a smaller device, or lay the cable apart from others.",
  },
  "section-below-smallest": {
    severity: "should",
    message: "{name}: a cable of {limit} mm²; {actual} mm² is the least for lighting.",
    remedy: "Take a thicker cable, or check what your local rules allow.",
  },
  "fault-loop-too-large": {
    severity: "must",
    message: "{name}: the fault loop is {actual} Ω; {limit} Ω is the most.",
    remedy: "Take a thicker cable, a breaker with a lower band, or an RCD as fault protection.",
  },
  "earth-resistance-too-large": {
    severity: "must",
    message:
      "{name}: not disconnected in a fault of this TT system, without an RCD or with too high a resistance to earth.",
    remedy: "Fit a 30 mA RCD, or improve the earth electrode.",
  },
  "neutral-not-isolated": {
    severity: "must",
    message: "{name}: the isolator of the board does not break the neutral, as a TT system needs.",
    remedy: "Fit an isolator that breaks all live conductors.",
  },
  "cable-burns-in-a-fault": {
    severity: "must",
    message: "{name}: a fault lets {actual} A²s through; the weakest conductor withstands {limit} A²s.",
    remedy: "Take a thicker cable, or a device that limits the current more.",
  },
  "breaking-capacity-too-small": {
    severity: "must",
    message: "{name}: a fault current of {actual} A at the board; the protective device breaks {limit} A.",
    remedy: "Fit a device with a higher breaking capacity, or one upstream that is proven with it.",
  },
  "standing-leakage-too-large": {
    severity: "should",
    message: "{name}: {actual} mA leak all the time behind the RCD; {limit} mA is the most.",
    remedy: "Share the luminaires between two RCDs, or take luminaires that leak less.",
  },
  "protective-conductor-current": {
    severity: "should",
    message:
      "{name}: the protective conductor carries {actual} mA; above {limit} mA it needs high integrity.",
    remedy: "Share the luminaires, or run a protective conductor of high integrity.",
  },
  // Contacts and inrush
  "coil-drop-too-large": {
    severity: "must",
    message:
      "{name}: {actual} % of the voltage is lost at its coil while it closes; with more than {limit} % it may not close.",
    remedy: "Take a thicker or shorter cable to the coil, or a coil that draws less.",
  },
  "grounding-conductor-too-thin": {
    severity: "must",
    message: "{name}: its equipment grounding conductor is {actual} AWG; {limit} AWG is the thinnest.",
    remedy: "Take a cable with a thicker grounding conductor.",
  },
  "pack-supply-overloaded": {
    severity: "must",
    message: "{name}: its detectors draw {actual} A; the relay pack gives {limit} A.",
    remedy: "Take a second relay pack, or fewer detectors on this one.",
  },
  "contact-overloaded": {
    severity: "must",
    message: "{name}: {what} is {amount}; {most} is the most.",
    remedy: "Share the load between outputs on their own, or let the detector switch a contactor.",
  },
  "contact-inrush-too-large": {
    severity: "must",
    message: "{name}: {what} is {amount}; {most} is the most.",
    remedy:
      "Let the detector switch a contactor for this kind of load, or share the load between outputs on their own.",
  },
  "contact-not-protected": {
    severity: "must",
    message: "{name}: a protective device of {actual} A before the contact, which needs {limit} A at most.",
    remedy: "Fit a smaller protective device, or put a contactor between.",
  },
  "contact-worn-out": {
    severity: "should",
    message: "{name}: {actual} switching cycles in ten years; the contact is declared for {limit}.",
    remedy: "Lengthen the delay, or let the detector switch a contactor.",
  },
  "breaker-trips-on-inrush": {
    severity: "must",
    message: "{name} may trip: {what} is {amount}; {most} is the most.",
    remedy:
      "Share the luminaires between circuits, take a breaker of a higher band if the fault loop allows, or detectors that warm up with the light off.",
  },
  "detector-does-not-fit": {
    severity: "must",
    message: "{name} does not fit its ceiling: {what} is {amount}; the limit is {most}.",
    remedy: "Take a detector for surface or box, or another place.",
  },
  "fixing-not-declared": {
    severity: "must",
    message: "{name} is to be fixed in a way that its data sheet does not declare: {what}.",
    remedy: "Choose a declared way of fixing, or enter it in the data sheet if it is there.",
  },
  "cable-entry-open": {
    severity: "should",
    message: "The cable entry of {name} has no seal, and water may splash there.",
    remedy: "Seal the entry as the data sheet allows, or take a device whose entry is sealed.",
  },
  "wiring-not-proven": {
    severity: "note",
    message: "Not proven for {name}: {what}.",
    remedy: "Enter what is missing: {missing}.",
  },
} as const satisfies Record<string, CatalogueEntry>;
