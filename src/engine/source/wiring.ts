import type { Source } from "./entry.ts";

export const wiringSources = {
  "IEC-60038": {
    kind: "standard",
    title:
      "IEC 60038, Standard voltages: 230 V and 120 V between line and neutral, and how far a supply may be off",
    certainty: "from-memory",
    verify: true,
    note: "Plus and minus 10 % of the nominal voltage at the supply terminals; not re-read in its text.",
  },
  "IEC-60364-5-52": {
    kind: "standard",
    title: "IEC 60364-5-52, Low-voltage electrical installations: voltage drop in consumers' installations",
    clause: "informative annex on voltage drop",
    certainty: "from-memory",
    verify: true,
    note: "3 % for lighting from a public network, as remembered; local rules differ.",
  },
  "IEC-61008": {
    kind: "standard",
    title: "IEC 61008 and IEC 61009, residual current devices: preferred rated residual currents",
    certainty: "from-memory",
    verify: true,
    note: "6, 10, 30, 100, 300 and 500 mA as remembered; not re-read in its text.",
  },
} as const satisfies Record<string, Source>;
