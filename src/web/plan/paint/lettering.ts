import type { Pixel } from "../view.ts";
import { family, type Surface, textWidth, writeText } from "./surface.ts";

export interface Letters {
  readonly pixel: Pixel;
  readonly colour: string;
  readonly size?: number;
  readonly strong?: boolean;
  readonly align?: "center" | "left";
  readonly rim?: string;
}

/** Writes texts so that none covers another: the more important are written first, the others where room is left. */
export interface Lettering {
  /** Keeps a place free, for a sign that is painted later. */
  readonly block: (middle: Pixel, half: { readonly wide: number; readonly high: number }) => void;
  /** @returns Whether there was room. */
  readonly write: (text: string, letters: Letters) => boolean;
  /**
   * Writes lines that belong together at the first of the shifts where there is room; else at the first, or not at all.
   *
   * @returns Whether they were written.
   */
  readonly writeGroup: (
    lines: readonly (Letters & { readonly text: string })[],
    where: { readonly shifts: readonly Pixel[]; readonly otherwise: "cover" | "leave out" },
  ) => boolean;
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export function letteringOn(surface: Surface): Lettering {
  const taken: Box[] = [];
  const boxOf = (text: string, { pixel, size, strong, align }: Letters): Box => {
    const width = textWidth(surface, text, `${strong ? 600 : 400} ${size ?? 13}px ${family}`);
    const left = align === "left" ? pixel.px : pixel.px - width / 2;
    const high = (size ?? 13) * 0.62;
    return { left: left - 2, right: left + width + 2, top: pixel.py - high, bottom: pixel.py + high };
  };
  const free = (box: Box): boolean =>
    !taken.some(
      (other) =>
        box.left < other.right && box.right > other.left && box.top < other.bottom && box.bottom > other.top,
    );
  return {
    block: ({ px, py }, { wide, high }) => {
      taken.push({ left: px - wide, right: px + wide, top: py - high, bottom: py + high });
    },
    write: (text, letters) => {
      const box = boxOf(text, letters);
      if (!free(box)) return false;
      taken.push(box);
      writeText(surface, text, letters);
      return true;
    },
    writeGroup: (lines, { shifts, otherwise }) => {
      const at = (shift: Pixel): (Letters & { readonly text: string })[] =>
        lines.map((line) => ({
          ...line,
          pixel: { px: line.pixel.px + shift.px, py: line.pixel.py + shift.py },
        }));
      const clear = shifts.map(at).find((moved) => moved.every((line) => free(boxOf(line.text, line))));
      const fallback = otherwise === "cover" ? at(shifts[0] ?? { px: 0, py: 0 }) : [];
      const written = clear ?? fallback;
      for (const line of written) {
        taken.push(boxOf(line.text, line));
        writeText(surface, line.text, line);
      }
      return written.length > 0;
    },
  };
}
