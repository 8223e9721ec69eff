import { ink, paper } from "./ink.ts";
import type { LetteringSize, Mark, Millimetres, PaperPoint, TextMark } from "./mark.ts";

/**
 * The sign of a detector, one for screen and paper: a ring with the letter B (class letter of IEC 81346-2) and a notch that
 * shows its turn; the ring is doubled where the detector hears. Lengths in radii of the ring; the notch is given for turn 0
 * (pointing along +x), the letter stays upright.
 */
export const detectorMark = {
  letter: "B",
  /** Height of the capital. */
  letterHeight: 1,
  ring: 1,
  hearingRing: 1.32,
  notch: [
    [0.985, 0.3],
    [0.6, 0],
    [0.985, -0.3],
  ],
} as const;

/** Radius of the ring on paper: the letter inside is then lettering of 2.5 mm. */
export const detectorRingRadius: Millimetres = 2.5;

/** The sign on paper. `turn` counter-clockwise from +x. [rad] */
export function detectorMarks(
  at: PaperPoint,
  sign: { readonly turn: number; readonly hears: boolean },
): readonly Mark[] {
  const radius = detectorRingRadius;
  const cos = Math.cos(sign.turn);
  const sin = Math.sin(sign.turn);
  const onPaper = ([x, y]: readonly [number, number]): PaperPoint => [
    at[0] + radius * (x * cos - y * sin),
    at[1] - radius * (x * sin + y * cos),
  ];
  const pen = { width: 0.35, colour: ink } as const;
  const letter: TextMark = {
    kind: "text",
    at: [at[0], at[1] + (detectorMark.letterHeight * radius) / 2],
    text: detectorMark.letter,
    size: (detectorMark.letterHeight * radius) as LetteringSize,
    anchor: "middle",
    weight: "semibold",
    colour: ink,
  };
  return [
    ...(sign.hears
      ? [{ kind: "circle", at, radius: radius * detectorMark.hearingRing, fill: paper, pen } as const]
      : []),
    { kind: "circle", at, radius, fill: paper, pen },
    {
      kind: "area",
      rings: [detectorMark.notch.map(onPaper)],
      fills: [{ kind: "solid", colour: ink }],
    },
    letter,
  ];
}
