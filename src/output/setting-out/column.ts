import { figured, type Words } from "#engine";
import type { Millimetres } from "../drawing/mark.ts";
import type { Speak } from "../words/speak.ts";

export interface Column {
  readonly head: Words;
  readonly width: Millimetres;
  readonly align: "start" | "end";
}

/** A cell in the words of the paper; one of figures alone has the decimal sign of its language. */
export const cellWords = (cell: Words, align: Column["align"], speak: Speak): string =>
  speak(align === "end" && typeof cell === "string" && plainFigure.test(cell) ? figured(cell) : cell);

/** A figure with at most a unit: no tag, no name. */
const plainFigure = /^(?:[-−±]|[≤≥]\s)?\d+\.\d+(?:\s\D*)?$/;
