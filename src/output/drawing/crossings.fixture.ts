import { boxOf } from "./lettering.ts";
import type { Mark, PaperPoint, TextMark } from "./mark.ts";

/** Lettering that a line of the same sheet runs through. */
export function crossedTexts(marks: readonly Mark[]): readonly string[] {
  const strokes = marks.flatMap(strokesOf);
  return marks
    .filter((mark): mark is TextMark => mark.kind === "text")
    .filter((text) => {
      const box = boxOf(text);
      // A hair inside: a line that only touches the edge of the letters' box does not run through them.
      const inner = {
        left: box.left + 0.1,
        right: box.right - 0.1,
        top: box.top + 0.1,
        bottom: box.bottom - 0.1,
      };
      return strokes.some(([from, to]) => meets(from, to, inner));
    })
    .map(({ text }) => text);
}

type Stroke = readonly [PaperPoint, PaperPoint];

function strokesOf(mark: Mark): readonly Stroke[] {
  switch (mark.kind) {
    case "line":
      return [[mark.from, mark.to]];
    case "polyline":
      return mark.points.slice(1).map((to, i): Stroke => [mark.points[i]!, to]);
    case "area":
      return mark.pen ? mark.rings.flatMap((ring) => ring.map((to, i): Stroke => [ring.at(i - 1)!, to])) : [];
    case "clip":
      return mark.marks.flatMap(strokesOf);
    case "circle":
    case "text":
      return [];
  }
}

/** Whether a stroke has a point inside a box: clipping by its four edges in turn. */
function meets(
  from: PaperPoint,
  to: PaperPoint,
  box: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number },
): boolean {
  let [low, high] = [0, 1];
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  for (const [p, q] of [
    [-dx, from[0] - box.left],
    [dx, box.right - from[0]],
    [-dy, from[1] - box.top],
    [dy, box.bottom - from[1]],
  ] as const) {
    if (p === 0) {
      if (q < 0) return false;
    } else if (p < 0) low = Math.max(low, q / p);
    else high = Math.min(high, q / p);
  }
  return low < high;
}
