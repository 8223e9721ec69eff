import type { SourceId, Supply } from "#engine";
import { ink, type Variant } from "../drawing/ink.ts";
import type { Pen } from "../drawing/mark.ts";

/** What a conductor is for; lines by their number. */
export type ConductorKind =
  | "L1"
  | "L2"
  | "L3"
  | "neutral"
  | "protective"
  | "switched"
  | "button"
  | "signal"
  | "unknown";

export const conductorOrder: readonly ConductorKind[] = [
  "L1",
  "L2",
  "L3",
  "switched",
  "neutral",
  "protective",
  "button",
  "signal",
  "unknown",
];

export const isLine = (kind: ConductorKind): boolean => kind === "L1" || kind === "L2" || kind === "L3";

export type WiringRegion = Supply["region"];

/** How a conductor is marked at its ends. */
export const markings: Readonly<Record<ConductorKind, string>> = {
  L1: "L1",
  L2: "L2",
  L3: "L3",
  neutral: "N",
  protective: "PE",
  switched: "L′",
  button: "button",
  signal: "signal",
  unknown: "unknown",
};

const words: Readonly<Record<WiringRegion, Readonly<Record<ConductorKind, string>>>> = {
  IEC: {
    L1: "brown",
    L2: "black",
    L3: "grey",
    neutral: "blue",
    protective: "green-yellow",
    switched: "brown, black or grey",
    button: "brown, black or grey",
    signal: "brown, black or grey",
    unknown: "unknown",
  },
  US: {
    L1: "any but white, gray, green",
    L2: "any but white, gray, green",
    L3: "any but white, gray, green",
    neutral: "white or gray",
    protective: "green, green-yellow or bare",
    switched: "any but white, gray, green",
    button: "any but white, gray, green",
    signal: "any but white, gray, green",
    unknown: "unknown",
  },
};

export const colourSource: Readonly<Record<WiringRegion, SourceId>> = {
  IEC: "IEC-60445",
  US: "NEC-CONDUCTOR-COLOURS",
};

/** The colour of a conductor's insulation in words, by the region of the supply. */
export const colourWords = (kind: ConductorKind, region: WiringRegion): string => words[region][kind];

/** Line colours, for a wire that is one of several in a cable: the free ones of brown, black and grey, in this order. */
export function coloursInCable(
  conductors: readonly ConductorKind[],
  region: WiringRegion,
): ReadonlyMap<ConductorKind, string> {
  if (region === "US") return new Map(conductors.map((kind) => [kind, colourWords(kind, region)]));
  const fixed = new Set(conductors.filter(isLine).map((kind) => words.IEC[kind]));
  const free = ["brown", "black", "grey"].filter((colour) => !fixed.has(colour));
  return new Map(
    conductors.map((kind) => {
      if (kind !== "switched" && kind !== "button" && kind !== "signal") return [kind, words.IEC[kind]];
      return [kind, free.shift() ?? words.IEC[kind]];
    }),
  );
}

/** Ink of a conductor on the coloured sheet; the pattern alone tells conductors apart on a copy. */
const inks: Readonly<Record<WiringRegion, Readonly<Record<ConductorKind, string>>>> = {
  IEC: {
    L1: "#7A4A21",
    L2: ink,
    L3: "#6B7280",
    neutral: "#0072B2",
    protective: "#00805A",
    switched: "#7A4A21",
    button: "#7A4A21",
    signal: "#7A4A21",
    unknown: ink,
  },
  US: {
    L1: ink,
    L2: ink,
    L3: ink,
    neutral: "#6B7280",
    protective: "#00805A",
    switched: ink,
    button: ink,
    signal: ink,
    unknown: ink,
  },
};

/** The strokes that draw a conductor, one upon the other. Green-yellow is drawn as stripes. */
export function conductorPens(
  kind: ConductorKind,
  drawn: { readonly region: WiringRegion; readonly variant: Variant },
): readonly Pen[] {
  const colour = drawn.variant === "colour" ? inks[drawn.region][kind] : ink;
  switch (kind) {
    case "L1":
      return [{ width: 0.5, colour }];
    case "L2":
      return [{ width: 0.5, colour, dash: [9, 1, 1, 1] }];
    case "L3":
      return [{ width: 0.5, colour, dash: [9, 1, 1, 1, 1, 1] }];
    case "neutral":
      return [{ width: 0.35, colour, dash: [3.2, 1.4] }];
    case "protective":
      return [
        { width: 0.18, colour },
        { width: 0.7, colour, dash: [1.4, 1.4] },
      ];
    case "switched":
      return [{ width: 0.5, colour, dash: [4.5, 1.1, 0.7, 1.1] }];
    case "button":
      return [{ width: 0.35, colour, dash: [0.3, 1.1] }];
    case "signal":
      return [{ width: 0.35, colour, dash: [2, 1, 0.4, 1, 0.4, 1] }];
    case "unknown":
      return [{ width: 0.18, colour, dash: [0.8, 0.8] }];
  }
}
