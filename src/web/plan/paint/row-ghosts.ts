import type { Point, Site } from "#engine";
import type { EditStep, RecordRef } from "../../contract.ts";
import { t } from "../../texts/drawn.ts";
import { rowSteps } from "../edit/copied.ts";
import { madeShape, paintMade } from "./ghosts.ts";
import { inPixels, pixelOf, type Surface, writeText } from "./surface.ts";

/** A row of copies of the selection that is not made yet. */
interface PlannedRow {
  readonly count: number;
  readonly by: Point;
}

let known: { readonly row: PlannedRow; readonly site: Site; readonly steps: readonly EditStep[] } | undefined;

/** The copies of a row before it is made, as they would stand, with their number beside the last. */
export function paintRow(
  surface: Surface,
  row: PlannedRow,
  of: { readonly site: Site; readonly refs: readonly RecordRef[] },
): void {
  if (known?.row !== row || known.site !== of.site) {
    let number = 0;
    const newId = (kind: string): string => `new ${kind} ${++number}`;
    known = { row, site: of.site, steps: rowSteps(of.site, of.refs, { ...row, newId }).steps };
  }
  inPixels(surface);
  paintMade(surface, known.steps);
  const last = known.steps.at(-1);
  const shape = last && madeShape(last);
  const points = shape?.ring ?? (shape?.dot ? [shape.dot.at] : []);
  if (points.length === 0) return;
  const pixels = points.map((point) => pixelOf(surface, point));
  writeText(surface, t("row.shown", { count: String(row.count) }), {
    pixel: {
      px: pixels.reduce((sum, { px }) => sum + px, 0) / pixels.length,
      py: Math.min(...pixels.map(({ py }) => py)) - 14,
    },
    colour: surface.palette.focus,
    strong: true,
  });
}
