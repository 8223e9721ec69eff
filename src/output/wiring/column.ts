import { say, type Words } from "#engine";
import { broken, fitted } from "../drawing/lettering.ts";
import type { Mark, Millimetres, PaperPoint } from "../drawing/mark.ts";
import type { Speak } from "../words/speak.ts";
import { type ConductorKind, markings } from "./conductors.ts";
import type { Designations } from "./designations.ts";
import { words } from "./symbols.ts";

/** A conductor from an apparatus to one of the rails above or below it. */
export interface Tap {
  /** "unknown": no rail; the sheet writes the word. */
  readonly conductor: ConductorKind;
  /** Which of several rails of the same kind: buttons that speak to different detectors never meet. */
  readonly rail?: number;
  /** Where it comes from if that is another circuit or line than the group's: it is written there, and meets no rail. */
  readonly foreign?: Words;
  readonly side: "above" | "below";
  readonly x: Millimetres;
}

/** Symbols that a column shows, for the legend. */
export type SymbolKey =
  | "detector"
  | "contact"
  | "luminaire"
  | "push-button"
  | "latching-switch"
  | "coil"
  | "main-contact"
  | "breaker"
  | "fuse"
  | "residual"
  | "unknown-device"
  | "terminal"
  | "joint"
  | "location"
  | "warning";

/** One apparatus of the drawing: its marks with the upper left corner at a place, and what it is connected to. */
export interface Column {
  readonly shows: readonly SymbolKey[];
  readonly taps: readonly Tap[];
  readonly marks: (at: PaperPoint) => readonly Mark[];
}

/** What the columns of a drawing are written with. */
export interface Written {
  readonly names: Designations;
  readonly speak: Speak;
}

export const columnWidth: Millimetres = 46;
export const columnPitch: Millimetres = 50;
export const columnHeight: Millimetres = 36;

/** "! L1 of F2": a conductor of another circuit. */
export const foreignWords = (conductor: ConductorKind, device: string, names: Designations): Words =>
  say`! ${markings[conductor]} of ${names.of(device)}`;

/** Lines of text in a column to the right of its symbol. */
export function captions(
  [left, top]: PaperPoint,
  head: string,
  texts: readonly string[],
  from: Millimetres,
): readonly Mark[] {
  const width = columnWidth - from - 1.5;
  const lines = texts
    .flatMap((text) => broken(text, width, 2.5))
    .map((text) => fitted(text, width, { size: 2.5 }));
  const shown =
    lines.length > 6 ? [...lines.slice(0, 5), fitted(`${lines[5]} …`, width, { size: 2.5 })] : lines;
  return [
    words([left + from, top + 9.4], fitted(head, width, { size: 2.5, weight: "semibold" }), {
      weight: "semibold",
    }),
    ...shown.map((text, i) => words([left + from, top + 13.3 + i * 3.9], text)),
  ];
}
