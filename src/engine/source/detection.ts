import type { Source } from "./entry.ts";

export const detectionSources = {
  "IEC-63180": {
    kind: "standard",
    title: "IEC 63180, Methods of measurement and declaration of the detection range of detectors",
    edition: "2020",
    certainty: "secondary",
    verify: true,
    note: "Scope and terms read in the public preview; the 15 % rule only as coded in a public test rig that claims this standard, not confirmed as clause text.",
  },
  "ISO-7730": {
    kind: "standard",
    title: "ISO 7730, Ergonomics of the thermal environment: surface temperature of clothing",
    edition: "2005",
    certainty: "from-memory",
    verify: true,
    note: "Formula from memory, figures computed here for 1.2 met, 1.0 clo, 0.1 m/s, radiant = air temperature.",
  },
  "PLANCK-BAND": {
    kind: "derivation",
    title: "Band radiation 8 to 14 µm of a black body by Planck's law",
    certainty: "derived",
    verify: false,
  },
  "SIGHT-GEOMETRY": {
    kind: "derivation",
    title: "Ray from a detector on the ceiling: reach, shadow and lintel by similar triangles",
    certainty: "derived",
    verify: false,
  },
  "DIRECTION-ELLIPSE": {
    kind: "derivation",
    title: "Reach by direction of walking: 1/R² = cos²ψ/R_towards² + sin²ψ/R_across²",
    certainty: "derived",
    verify: true,
    note: "A planning model, exact for the ellipse of a straight walk; a choice of design, not of a standard.",
  },
  "MASK-GEOMETRY": {
    kind: "derivation",
    title: "Lens mask: off-nadir band that blinds a region from floor to head height",
    certainty: "derived",
    verify: false,
  },
  "GLASS-HEAT": {
    kind: "practice",
    title: "Ordinary glass does not pass 8 to 14 µm",
    certainty: "from-memory",
    verify: false,
    note: "Standard infrared optics.",
  },
} as const satisfies Record<string, Source>;
