import type { Fill, Millimetres, PaperPoint, PaperRing } from "./mark.ts";

export type Segment = readonly [PaperPoint, PaperPoint];

/**
 * The strokes of a hatch inside rings under the even-odd rule. Strokes lie on lines that are fixed to the sheet, so that
 * neighbouring areas of one kind are hatched through.
 */
export function hatchStrokes(
  rings: readonly PaperRing[],
  fill: Extract<Fill, { kind: "hatch" }>,
): readonly Segment[] {
  const strokes = strokesAt(rings, fill.angle, fill.spacing);
  return fill.crossed ? [...strokes, ...strokesAt(rings, fill.angle + 90, fill.spacing)] : strokes;
}

/** Centres of the dots inside rings: a staggered grid fixed to the sheet. */
export function dotsInside(rings: readonly PaperRing[], spacing: Millimetres): readonly PaperPoint[] {
  const dots: PaperPoint[] = [];
  const step = (spacing * Math.sqrt(3)) / 2;
  for (const { row, spans } of spansOf(rings, step))
    for (const [left, right] of spans) {
      const shift = row % 2 === 0 ? 0 : spacing / 2;
      for (let i = Math.ceil((left - shift) / spacing); i * spacing + shift <= right; i++)
        dots.push([i * spacing + shift, row * step]);
    }
  return dots;
}

function strokesAt(rings: readonly PaperRing[], angle: number, spacing: Millimetres): readonly Segment[] {
  // Paper y runs down, so a counter-clockwise angle as one sees it turns the other way.
  const turn = (-angle * Math.PI) / 180;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const level = rings.map((ring) =>
    ring.map(([x, y]): PaperPoint => [x * cos + y * sin, -x * sin + y * cos]),
  );
  const back = (u: number, v: number): PaperPoint => [u * cos - v * sin, u * sin + v * cos];
  return spansOf(level, spacing).flatMap(({ row, spans }) =>
    spans.map(([left, right]): Segment => [back(left, row * spacing), back(right, row * spacing)]),
  );
}

interface Row {
  readonly row: number;
  readonly spans: readonly (readonly [number, number])[];
}

/** Inside parts of the horizontal lines y = row × step. */
function spansOf(rings: readonly PaperRing[], step: Millimetres): readonly Row[] {
  const crossings = new Map<number, number[]>();
  for (const ring of rings)
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i]!;
      const b = ring[(i + 1) % ring.length]!;
      const low = Math.min(a[1], b[1]);
      const high = Math.max(a[1], b[1]);
      // Half-open in y, so that a corner on a line counts once.
      for (let row = Math.ceil(low / step); row * step < high; row++) {
        const share = (row * step - a[1]) / (b[1] - a[1]);
        const x = a[0] + share * (b[0] - a[0]);
        const known = crossings.get(row);
        if (known) known.push(x);
        else crossings.set(row, [x]);
      }
    }
  return [...crossings.entries()]
    .sort((p, q) => p[0] - q[0])
    .map(([row, xs]) => {
      xs.sort((p, q) => p - q);
      const spans: [number, number][] = [];
      for (let i = 0; i + 1 < xs.length; i += 2)
        if (xs[i + 1]! - xs[i]! > 0.02) spans.push([xs[i]!, xs[i + 1]!]);
      return { row, spans };
    });
}
