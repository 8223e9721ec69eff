import type { Source } from "./entry.ts";

/** What papers are drawn and worded by. */
export const paperSources = {
  "IEC-60445": {
    kind: "standard",
    title: "IEC 60445, Identification of equipment terminals, conductor terminations and conductors",
    edition: "2021",
    certainty: "secondary",
    verify: false,
    note: "Green-and-yellow for protective conductors alone, blue for neutral, brown, black and grey preferred for lines; several public accounts agree. That a switched line is marked L′ is the trade's habit.",
  },
  "NEC-CONDUCTOR-COLOURS": {
    kind: "standard",
    title: "NFPA 70 (NEC), identification of grounded, grounding and ungrounded conductors",
    clause: "200.6, 250.119",
    certainty: "from-memory",
    verify: true,
    note: "White or gray grounded, green, green-yellow or bare grounding, any other ungrounded; only 200.6 was seen.",
  },
  "IEC-81346-2": {
    kind: "standard",
    title: "IEC 81346-2, class letters of reference designations; locations marked + as in IEC 81346-1",
    certainty: "from-memory",
    verify: true,
    note: "B detector, E luminaire, F protective device, Q contactor, S switch or button, W cable, X terminals and boxes, as remembered.",
  },
  "IEC-60617": {
    kind: "standard",
    title: "IEC 60617, graphical symbols for diagrams: what each symbol means; drawn anew here",
    certainty: "from-memory",
    verify: true,
  },
  "EN-50110-1": {
    kind: "standard",
    title: "EN 50110-1, Operation of electrical installations: the five steps of dead working",
    certainty: "secondary",
    verify: false,
    note: "Order of the five steps seen in public accounts; local rules may order them otherwise.",
  },
} as const satisfies Record<string, Source>;
