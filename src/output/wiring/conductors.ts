import { english, type Line, type Said, type SourceId, type Supply, say, type Words } from "#engine";
import { ink, type Variant } from "../drawing/ink.ts";
import type { Pen } from "../drawing/mark.ts";

/** A conductor behind a contact; behind the contacts of three lines each has the number of its own. */
export type SwitchedKind = "switched" | `switched-${Line}`;

/** What a conductor is for; lines by their number. */
export type ConductorKind =
  | Line
  | "neutral"
  | "protective"
  | SwitchedKind
  | "button"
  | "signal"
  | "control-plus"
  | "control-minus"
  | "low-plus"
  | "low-minus"
  | "low-signal"
  | "unknown";

export const conductorOrder: readonly ConductorKind[] = [
  "L1",
  "L2",
  "L3",
  "switched",
  "switched-L1",
  "switched-L2",
  "switched-L3",
  "neutral",
  "protective",
  "button",
  "signal",
  "control-plus",
  "control-minus",
  "low-plus",
  "low-minus",
  "low-signal",
  "unknown",
];

export const isLine = (kind: ConductorKind): kind is Line => kind === "L1" || kind === "L2" || kind === "L3";

/** The two conductors by which a detector sets the level of luminaires. */
export const controlPair = ["control-plus", "control-minus"] as const satisfies readonly ConductorKind[];

export type WiringRegion = Supply["region"];

/** How a conductor is marked at its ends. */
export const markings: Readonly<Record<ConductorKind, Words>> = {
  L1: "L1",
  L2: "L2",
  L3: "L3",
  neutral: "N",
  protective: "PE",
  switched: "L′",
  "switched-L1": "L1′",
  "switched-L2": "L2′",
  "switched-L3": "L3′",
  button: say`button`,
  signal: say`signal`,
  "control-plus": say`control +`,
  "control-minus": say`control −`,
  "low-plus": say`supply +`,
  "low-minus": say`supply −`,
  "low-signal": say`signal`,
  unknown: say`unknown`,
};

const brown = say`brown`;
const black = say`black`;
const grey = say`grey`;
const anyLine = say`brown, black or grey`;
const anyHot = say`any but white, gray, green`;
const seeSheet = say`see data sheet`;
const unknown = say`unknown`;

const words: Readonly<Record<WiringRegion, Readonly<Record<ConductorKind, Said>>>> = {
  IEC: {
    L1: brown,
    L2: black,
    L3: grey,
    neutral: say`blue`,
    protective: say`green-yellow`,
    switched: anyLine,
    "switched-L1": brown,
    "switched-L2": black,
    "switched-L3": grey,
    button: anyLine,
    signal: anyLine,
    "control-plus": anyLine,
    "control-minus": anyLine,
    "low-plus": seeSheet,
    "low-minus": seeSheet,
    "low-signal": seeSheet,
    unknown: unknown,
  },
  US: {
    L1: anyHot,
    L2: anyHot,
    L3: anyHot,
    neutral: say`white or gray`,
    protective: say`green, green-yellow or bare`,
    switched: anyHot,
    "switched-L1": anyHot,
    "switched-L2": anyHot,
    "switched-L3": anyHot,
    button: anyHot,
    signal: anyHot,
    "control-plus": anyHot,
    "control-minus": anyHot,
    "low-plus": seeSheet,
    "low-minus": seeSheet,
    "low-signal": seeSheet,
    unknown: unknown,
  },
};

export const colourSource: Readonly<Record<WiringRegion, SourceId>> = {
  IEC: "IEC-60445",
  US: "NEC-CONDUCTOR-COLOURS",
};

/** The colour of a conductor's insulation in words, by the region of the supply. */
export const colourWords = (kind: ConductorKind, region: WiringRegion): Said => words[region][kind];

/** Line colours, for a wire that is one of several in a cable: the free ones of brown, black and grey, in this order; beyond them cores by number. */
export function coloursInCable(
  conductors: readonly ConductorKind[],
  region: WiringRegion,
): ReadonlyMap<ConductorKind, Said> {
  if (region === "US") return new Map(conductors.map((kind) => [kind, colourWords(kind, region)]));
  const ownColour = (kind: ConductorKind): boolean => isLine(kind) || kind.startsWith("switched-L");
  const fixed = new Set(conductors.filter(ownColour).map((kind) => english(words.IEC[kind])));
  const free = [brown, black, grey].filter((colour) => !fixed.has(english(colour)));
  return new Map(
    conductors.map((kind) => {
      if (
        ownColour(kind) ||
        kind === "neutral" ||
        kind === "protective" ||
        kind === "unknown" ||
        kind.startsWith("low-")
      )
        return [kind, words.IEC[kind]];
      return [kind, free.shift() ?? say`by number`];
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
    "switched-L1": "#7A4A21",
    "switched-L2": ink,
    "switched-L3": "#6B7280",
    button: "#7A4A21",
    signal: "#7A4A21",
    "control-plus": "#7A4A21",
    "control-minus": "#7A4A21",
    "low-plus": "#B3261E",
    "low-minus": ink,
    "low-signal": ink,
    unknown: ink,
  },
  US: {
    L1: ink,
    L2: ink,
    L3: ink,
    neutral: "#6B7280",
    protective: "#00805A",
    switched: ink,
    "switched-L1": ink,
    "switched-L2": ink,
    "switched-L3": ink,
    button: ink,
    signal: ink,
    "control-plus": ink,
    "control-minus": ink,
    "low-plus": ink,
    "low-minus": ink,
    "low-signal": ink,
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
    case "switched-L1":
      return [{ width: 0.5, colour, dash: [6.5, 1.1, 0.7, 1.1] }];
    case "switched-L2":
      return [{ width: 0.5, colour, dash: [6.5, 1.1, 0.7, 1.1, 0.7, 1.1] }];
    case "switched-L3":
      return [{ width: 0.5, colour, dash: [6.5, 1.1, 0.7, 1.1, 0.7, 1.1, 0.7, 1.1] }];
    case "control-plus":
      return [{ width: 0.25, colour, dash: [1.6, 0.6] }];
    case "control-minus":
      return [{ width: 0.25, colour, dash: [0.8, 1.6] }];
    case "low-plus":
      return [{ width: 0.25, colour }];
    case "low-minus":
      return [{ width: 0.25, colour, dash: [4, 1.2] }];
    case "low-signal":
      return [{ width: 0.25, colour, dash: [2, 0.8, 0.4, 0.8, 0.4, 0.8] }];
    case "button":
      return [{ width: 0.35, colour, dash: [0.3, 1.1] }];
    case "signal":
      return [{ width: 0.35, colour, dash: [2, 1, 0.4, 1, 0.4, 1] }];
    case "unknown":
      return [{ width: 0.18, colour, dash: [0.8, 0.8] }];
  }
}
