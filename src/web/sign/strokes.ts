/** A place on the field, in shares of its width, y down. */
export type StrokePoint = readonly [x: number, y: number];
export type Strokes = readonly (readonly StrokePoint[])[];

/** Height of the field as a share of its width; papers print it in the same shape. */
export const fieldShape = 0.36;
/** Points nearer to each other than this say nothing. */
const NEAR = 0.004;
/** No more than a job file takes. */
const MOST_STROKES = 500;
const MOST_POINTS = 5_000;

/** Strokes with a new one begun at a point; unchanged where there is no room for more. */
export const begun = (strokes: Strokes, at: StrokePoint): Strokes =>
  strokes.length >= MOST_STROKES ? strokes : [...strokes, [tidy(at)]];

/** Strokes with the last one drawn on to a point; points that are hardly apart are left out. */
export function drawnOn(strokes: Strokes, at: StrokePoint): Strokes {
  const last = strokes.at(-1);
  const before = last?.at(-1);
  if (!last || !before || last.length >= MOST_POINTS) return strokes;
  if (Math.hypot(at[0] - before[0], at[1] - before[1]) < NEAR) return strokes;
  return [...strokes.slice(0, -1), [...last, tidy(at)]];
}

/** A place on the screen as shares of the field's width, inside the field. */
export function onField(
  at: { readonly x: number; readonly y: number },
  field: { readonly left: number; readonly top: number; readonly width: number },
): StrokePoint {
  const share = (value: number, most: number): number => Math.min(Math.max(value / field.width, 0), most);
  return [share(at.x - field.left, 1), share(at.y - field.top, fieldShape)];
}

/** Strokes as the line of an SVG, in shares of the width times a thousand. */
export const pathOf = (strokes: Strokes): string =>
  strokes
    .map((stroke) => {
      const points =
        stroke.length === 1 ? [stroke[0]!, [stroke[0]![0] + 0.004, stroke[0]![1]] as const] : stroke;
      return points
        .map(([x, y], i) => `${i === 0 ? "M" : "L"}${Math.round(x * 1000)} ${Math.round(y * 1000)}`)
        .join("");
    })
    .join("");

/** To a ten-thousandth of the width: finer than any pen. */
const tidy = ([x, y]: StrokePoint): StrokePoint => [Math.round(x * 1e4) / 1e4, Math.round(y * 1e4) / 1e4];
