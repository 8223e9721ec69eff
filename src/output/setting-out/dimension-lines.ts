import type { Segment } from "../drawing/hatching.ts";
import { ink } from "../drawing/ink.ts";
import { crosses, inside } from "../drawing/labels.ts";
import { boxOf } from "../drawing/lettering.ts";
import type { Box, Mark, Millimetres, PaperPoint } from "../drawing/mark.ts";
import { type FigurePlace, figureMark, figurePlaces } from "./dimension-figure.ts";

/** A dimension to be drawn: from the middle of a sign to a foot on a wall. */
export interface Dimension {
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly text: string;
}

/** What is already on the sheet where dimensions have to find room. */
export interface DimensionGround {
  readonly window: Box;
  readonly taken: Box[];
  readonly lines: Segment[];
}

const pen = { width: 0.25, colour: ink } as const;
/** From the middle of a sign to where its ring leaves the line free. */
const clearOfSign: Millimetres = 3.6;
const shifts: readonly Millimetres[] = [0, 6, -6, 11, -11, 16, -16, 21, -21];

/**
 * Draws each dimension as a line with oblique ticks and its figure above; a line that would run through another sign,
 * figure or dimension is moved aside on extension lines. What is drawn joins the ground for what comes after.
 */
export function dimensionMarks(dimensions: readonly Dimension[], ground: DimensionGround): readonly Mark[] {
  return [...dimensions]
    .sort((a, b) => lengthOfLine(a) - lengthOfLine(b))
    .flatMap((one) => {
      let best: { drawn: Drawn; cost: number } | undefined;
      for (const [rank, shift] of shifts.entries())
        for (const [next, where] of figurePlaces.entries()) {
          const drawn = drawnAt(one, { shift, where });
          if (!drawn) continue;
          const cost = costOf(drawn, ground) + 4 * rank + next;
          if (!best || cost < best.cost) best = { drawn, cost };
        }
      const { drawn } = best!;
      ground.taken.push(drawn.box);
      ground.lines.push(drawn.line);
      return drawn.marks;
    });
}

interface Drawn {
  readonly marks: readonly Mark[];
  readonly line: Segment;
  readonly box: Box;
  readonly clearFrom: PaperPoint;
}

const lengthOfLine = (one: Dimension): number => Math.hypot(one.to[0] - one.from[0], one.to[1] - one.from[1]);

function drawnAt(
  one: Dimension,
  how: { readonly shift: Millimetres; readonly where: FigurePlace },
): Drawn | undefined {
  const { shift, where } = how;
  const length = lengthOfLine(one) || 1;
  const along: PaperPoint = [(one.to[0] - one.from[0]) / length, (one.to[1] - one.from[1]) / length];
  const across: PaperPoint = [-along[1], along[0]];
  const moved = (point: PaperPoint, by: number): PaperPoint => [
    point[0] + across[0] * by,
    point[1] + across[1] * by,
  ];
  const from = moved(one.from, shift);
  const to = moved(one.to, shift);
  const beyond = shift === 0 ? 0 : Math.sign(shift) * 1.5;
  const extensions: readonly Mark[] =
    shift === 0
      ? []
      : [{ kind: "line", from: one.from, to: moved(one.from, shift + beyond), pen: { ...pen, width: 0.18 } }];
  const tick = (at: PaperPoint): Mark => ({
    kind: "line",
    from: [at[0] - (along[0] + across[0]) * 0.9, at[1] - (along[1] + across[1]) * 0.9],
    to: [at[0] + (along[0] + across[0]) * 0.9, at[1] + (along[1] + across[1]) * 0.9],
    pen: { width: 0.35, colour: ink },
  });
  const text = figureMark(one.text, { from, along, length, where, free: shift === 0 ? clearOfSign : 0 });
  if (!text) return undefined;
  return {
    marks: [...extensions, { kind: "line", from, to, pen }, tick(from), tick(to), text],
    line: [from, to],
    box: boxOf(text),
    clearFrom: one.from,
  };
}

function costOf(drawn: Drawn, ground: DimensionGround): number {
  let cost = inside(drawn.box, ground.window) ? 0 : 1000;
  for (const box of ground.taken) {
    const own =
      Math.hypot(
        (box.left + box.right) / 2 - drawn.clearFrom[0],
        (box.top + box.bottom) / 2 - drawn.clearFrom[1],
      ) < 0.1;
    if (!own && crosses(drawn.line, box)) cost += 100;
    if (meet(box, drawn.box)) cost += 150;
  }
  for (const line of ground.lines) {
    if (crosses(line, drawn.box)) cost += 40;
    if (alongside(line, drawn.line)) cost += 100;
  }
  return cost;
}

const meet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Two lines that lie on each other for a stretch could not be told apart. */
function alongside([a, b]: Segment, [c, d]: Segment): boolean {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (length === 0) return false;
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const off = (p: PaperPoint): number => Math.abs((p[0] - a[0]) * -uy + (p[1] - a[1]) * ux);
  if (off(c) > 1.5 || off(d) > 1.5) return false;
  const on = (p: PaperPoint): number => (p[0] - a[0]) * ux + (p[1] - a[1]) * uy;
  return Math.min(length, Math.max(on(c), on(d))) - Math.max(0, Math.min(on(c), on(d))) > 0.5;
}
