import type { Source } from "./entry.ts";

/** What the order of work and the tests on site are laid out by. */
export const siteTestSources = {
  "IEC-60364-6": {
    kind: "standard",
    title: "IEC 60364-6, Low-voltage electrical installations: verification, order of the initial tests",
    edition: "2016",
    clause: "6.4.2, 6.4.3",
    certainty: "secondary",
    verify: true,
    note: "Contents seen; the order of the clauses from memory, the same as in a national list that was seen.",
  },
  "IEC-60364-6-INSULATION": {
    kind: "standard",
    title: "IEC 60364-6, least insulation resistance: 1.0 MΩ at 500 V direct voltage up to 500 V",
    edition: "2016",
    clause: "6.4.3.3, Table 6.1",
    certainty: "secondary",
    verify: true,
    note: "Table seen in public reproductions. Between live conductors and to earth, switches closed, loads disconnected.",
  },
  "IEC-60364-6-PERIODIC": {
    kind: "standard",
    title:
      "IEC 60364-6, periodic verification: its interval follows from kind and use, a few years where nothing else is said",
    certainty: "from-memory",
    verify: true,
    note: "Four years are taken where the job says nothing; local rules and the owner's insurer say how long it is.",
  },
  "IEC-61008-TIME": {
    kind: "standard",
    title: "IEC 61008 and IEC 61009, general type: trips within 300 ms at the rated residual current",
    certainty: "secondary",
    verify: true,
  },
  "IEC-61557-4": {
    kind: "standard",
    title: "IEC 61557-4, continuity instruments: at least 200 mA, 4 to 24 V without load",
    certainty: "from-memory",
    verify: true,
  },
  "OSHA-1910": {
    kind: "standard",
    title:
      "29 CFR 1910.147 and 1910.333(b), lockout and tagout: prepare, shut down, isolate, lock, release, verify",
    certainty: "from-memory",
    verify: true,
  },
  "OPEN-CONTACT": {
    kind: "derivation",
    title: "An unpowered detector's relay is open: a test from the board does not reach the switched line",
    certainty: "derived",
    verify: false,
    note: "Bridged at the detector by a test link whose removal is recorded, or the switched line is tested apart.",
  },
  "REACH-PROBIT": {
    kind: "derivation",
    title: "True reach from seen and not seen: P(seen at r) = Φ((R − r)/σ), interval by profile likelihood",
    certainty: "derived",
    verify: false,
    note: "The cut is widened for few readings by Student's t, as it is exact for measured distances; a thousand simulated walk tests hold it.",
  },
  "STUDENT-EXPANSION": {
    kind: "handbook",
    title:
      "Abramowitz and Stegun, Handbook of Mathematical Functions: Student's t by an expansion about the normal score",
    clause: "26.7.5",
    certainty: "from-memory",
    verify: false,
    note: "Held against tabled values by a test.",
  },
  "ERROR-FUNCTION": {
    kind: "handbook",
    title: "Press and others, Numerical Recipes: complementary error function, relative error below 1.2·10⁻⁷",
    certainty: "from-memory",
    verify: false,
    note: "Held against tabled values of the normal distribution by a test.",
  },
} as const satisfies Record<string, Source>;
