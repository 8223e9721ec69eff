/** Colours of the plan, read from the style sheet so that screen and theme agree. */
export type Palette = Readonly<Record<PaletteName, string>>;

const names = [
  "ink",
  "paper",
  "plan",
  "hairline",
  "edge",
  "muted",
  "focus",
  "seated",
  "towards",
  "across",
  "sound",
  "gap",
  "gap-text",
  "spill",
  "interference",
  "interference-text",
  "must",
  "should",
  "note",
  "selected",
  "wall",
  "wall-line",
  "obstacle-low",
  "obstacle-high",
  "obstacle-line",
  "dwell-line",
  "luminaire-line",
  "grid-line",
  "outside",
] as const;

export type PaletteName = (typeof names)[number];

export function readPalette(): Palette {
  const style = getComputedStyle(document.documentElement);
  return Object.fromEntries(
    names.map((name) => [name, style.getPropertyValue(`--${name}`).trim()]),
  ) as Palette;
}

/** A colour between two "#rrggbb" colours. */
export function mixed(from: string, to: string, share: number): string {
  const channel = (colour: string, at: number): number => Number.parseInt(colour.slice(at, at + 2), 16);
  const mix = [1, 3, 5].map((at) =>
    Math.round(channel(from, at) + (channel(to, at) - channel(from, at)) * share),
  );
  return `#${mix.map((value) => value.toString(16).padStart(2, "0")).join("")}`;
}

/** A "#rrggbb" colour with an opacity. */
export const faded = (colour: string, opacity: number): string =>
  `${colour}${Math.round(opacity * 255)
    .toString(16)
    .padStart(2, "0")}`;
