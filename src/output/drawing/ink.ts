import type { Fill, Pen } from "./mark.ts";

/** Colours of a sheet; the black-and-white copy keeps only ink and greys, and every thing keeps its own pattern in both. */
export type Variant = "colour" | "black-and-white";

export const ink = "#1E2430";
export const muted = "#5B6472";
export const hairline = "#9AA1AC";
export const paper = "#FFFFFF";

/** From the set of Okabe and Ito, which the colour-blind tell apart. */
const hues = {
  seated: "#009E73",
  towards: "#0072B2",
  across: "#0072B2",
  sound: "#CC79A7",
  gap: "#D55E00",
  spill: "#CC79A7",
  interference: "#E69F00",
} as const;

export type Hue = keyof typeof hues;

/** How one kind of thing is drawn: what fills it and what goes round it. */
export interface Look {
  readonly fills: readonly Fill[];
  readonly edge: Pen;
}

export const colourOf = (hue: Hue, variant: Variant): string => (variant === "colour" ? hues[hue] : ink);

/** Pattern, tint and edge of zones, gaps and spill: the pattern alone tells them apart, so that a copier loses nothing. */
export function lookOf(hue: Hue, variant: Variant): Look {
  const colour = colourOf(hue, variant);
  const tint = (opacity: number): readonly Fill[] =>
    variant === "colour" ? [{ kind: "solid", colour, opacity }] : [];
  switch (hue) {
    case "seated":
      return {
        fills: [...tint(0.14), { kind: "dots", spacing: 1.5, radius: 0.16, colour }],
        edge: { width: 0.25, colour },
      };
    case "towards":
      return {
        fills: [
          ...tint(0.07),
          { kind: "hatch", angle: 30, spacing: 4, crossed: false, pen: { width: 0.18, colour } },
        ],
        edge: { width: 0.25, colour },
      };
    case "across":
      return { fills: [], edge: { width: 0.25, colour, dash: [2.4, 1.2] } };
    case "sound":
      return { fills: [], edge: { width: 0.25, colour } };
    case "gap":
      return {
        fills: [
          ...tint(0.1),
          { kind: "hatch", angle: 45, spacing: 1.6, crossed: true, pen: { width: 0.18, colour } },
        ],
        edge: { width: 0.35, colour },
      };
    case "spill":
      return { fills: tint(0.12), edge: { width: 0.25, colour, dash: [0.3, 0.9] } };
    case "interference":
      return { fills: [], edge: { width: 0.35, colour } };
  }
}
