import type { Source } from "./entry.ts";

export const controlSources = {
  "CONTROL-MACHINE": {
    kind: "derivation",
    title: "State machine of a presence controller: our own, every parameter named and settable",
    certainty: "derived",
    verify: false,
    note: "States, events and defaults are a choice of design; a device's own data sheet comes first.",
  },
  "IEC-62386-303": {
    kind: "standard",
    title: "IEC 62386-303, Digital addressable lighting interface: occupancy sensor",
    edition: "2017",
    certainty: "secondary",
    verify: true,
    note: "Timers, input values and event bits as coded in public implementations, not read in the standard.",
  },
  "ALTERNATING-RENEWAL": {
    kind: "derivation",
    title:
      "Alternating renewal process: exponential vacancy of mean b, off-delay t, lit = 1 − b e^(−t/b)/(a + b)",
    certainty: "derived",
    verify: false,
  },
  "WANG-2005": {
    kind: "paper",
    title: "Wang, Federspiel, Rubinstein: Modeling occupancy in single person offices",
    edition: "Energy and Buildings 37 (2005)",
    certainty: "secondary",
    verify: true,
    note: "Exponential vacancy from the abstract; means of 4368 s and 2556 s as coded in a public building library.",
  },
  "PAGE-2008": {
    kind: "paper",
    title:
      "Page, Robinson, Morel, Scartezzini: A generalised stochastic model for the simulation of occupant presence",
    edition: "Energy and Buildings 40 (2008)",
    certainty: "secondary",
    verify: true,
    note: "Transition probabilities as in a public implementation; steps of 15 min from memory.",
  },
  "EN-15193": {
    kind: "standard",
    title: "EN 15193, Energy requirements for lighting: occupancy dependency factor",
    edition: "2007, annex D",
    certainty: "from-memory",
    verify: true,
  },
  "LOG-REPLAY": {
    kind: "derivation",
    title: "Replay of a log: lit at row i if any row in the last t of rows was occupied",
    certainty: "derived",
    verify: false,
  },
  "CEILING-READING": {
    kind: "derivation",
    title: "Ceiling reading against work-plane reading: daylight and lamps each in proportion",
    certainty: "derived",
    verify: false,
    note: "Holds for diffuse daylight without a sun patch in view.",
  },
  "RUBINSTEIN-1989": {
    kind: "paper",
    title:
      "Rubinstein, Ward, Verderber: Improving the performance of photo-electrically controlled lighting systems",
    edition: "LBL-24872, 1989",
    certainty: "from-memory",
    verify: true,
    note: "Formula from memory, verified by algebra: at calibration the output is 1 − E_D/E_m.",
  },
  "SETTING-CHOICE": {
    kind: "practice",
    title: "Settings by use of the room: our own choice, to be trimmed after the first weeks",
    certainty: "derived",
    verify: false,
    note: "A person, a rule or a simulation comes before it.",
  },
} as const satisfies Record<string, Source>;
