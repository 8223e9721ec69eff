import type { Outline, Point, Site } from "#engine";
import type { EditStep, RecordRef } from "../../contract.ts";
import { t } from "../../texts/drawn.ts";
import { lengthText, type Units } from "../../texts/measures.ts";
import { recordOf, roomAt } from "../pick.ts";
import { distance, openingShape, turnedRectangle } from "../shapes.ts";
import { type Guide, wallDistances } from "../snap.ts";
import type { Chain, ChosenSide, Drawing, Grip, ToolState } from "../tools/state.ts";
import { paintReshaped } from "./ghosts.ts";
import { faded } from "./palette.ts";
import { inPixels, pixelOf, type Surface, writeText } from "./surface.ts";

interface Held {
  readonly storey: string;
  readonly selection: readonly RecordRef[];
  readonly toolState: ToolState;
  readonly preview: readonly EditStep[];
  readonly grips: readonly Grip[];
  readonly units: Units;
  readonly side: ChosenSide | undefined;
  readonly planned: Planned | undefined;
}

/** What figures in the card would do to the selection; it is not done yet. */
export type Planned =
  | { readonly kind: "row"; readonly count: number; readonly by: Point }
  | { readonly kind: "steps"; readonly steps: readonly EditStep[] };

/** Painting that is loaded with the first thing that needs it. */
export interface LatePainting {
  readonly drawing?: PaintDrawing;
  readonly row?: PaintRow;
}

/** Paints the copies of a row before it is made. */
export type PaintRow = (
  surface: Surface,
  row: { readonly count: number; readonly by: Point },
  of: { readonly site: Site; readonly refs: readonly RecordRef[] },
) => void;

/** Paints what is being drawn. */
export type PaintDrawing = (
  surface: Surface,
  state: Chain | Drawing,
  ground: { readonly site: Site; readonly storey: string; readonly units: Units },
) => void;

/** Selection, grips, guides, figures while dragging, measure. */
export function paintHandles(
  surface: Surface,
  held: Held,
  on: { readonly site: Site; readonly late: LatePainting },
): void {
  const { site, late } = on;
  inPixels(surface);
  const { toolState } = held;
  for (const ref of held.selection) paintChosen(surface, ref, site);
  if (held.side) paintChosenSide(surface, held.side, { site, units: held.units });
  if (toolState.on === "rest" && held.planned)
    paintPlanned(surface, held.planned, { site, refs: held.selection, late });
  if (toolState.on === "rest" || toolState.on === "press")
    for (const grip of held.grips) paintGrip(surface, grip, site);
  if (toolState.on === "move" || toolState.on === "reshape")
    for (const guide of toolState.guides) paintGuide(surface, guide);
  if (toolState.on === "move") paintDistances(surface, { ref: toolState.refs[0], site, held });
  if (toolState.on === "reshape") paintSides(surface, { ref: toolState.grip.ref, site, units: held.units });
  if (toolState.on === "box") paintBox(surface, toolState.from, toolState.to);
  if (toolState.on === "draw" || toolState.on === "chain")
    late.drawing?.(surface, toolState, { site, storey: held.storey, units: held.units });
  if (toolState.on === "measure") paintMeasure(surface, toolState, held.units);
}

function paintPlanned(
  surface: Surface,
  planned: Planned,
  of: { readonly site: Site; readonly refs: readonly RecordRef[]; readonly late: LatePainting },
): void {
  if (planned.kind === "steps") paintReshaped(surface, of.site, planned.steps);
  else of.late.row?.(surface, planned, of);
}

function paintChosen(surface: Surface, ref: RecordRef, site: Site): void {
  const { context, palette } = surface;
  const ring = ringOf(site, ref);
  if (ring) {
    trace(surface, ring);
    context.fillStyle = faded(palette.focus, 0.07);
    if (ref.kind !== "rooms") context.fill();
    context.strokeStyle = palette.focus;
    context.lineWidth = 2;
    context.stroke();
    return;
  }
  const at = ref.kind === "detectors" ? recordOf(site, "detectors", ref.id)?.at : undefined;
  if (!at) return;
  const { px, py } = pixelOf(surface, at);
  context.beginPath();
  context.arc(px, py, 17, 0, 2 * Math.PI);
  context.fillStyle = faded(palette.focus, 0.14);
  context.fill();
  context.strokeStyle = palette.focus;
  context.lineWidth = 2;
  context.stroke();
}

/** The wall whose length may be typed, with that length. */
function paintChosenSide(
  surface: Surface,
  side: ChosenSide,
  of: { readonly site: Site; readonly units: Units },
): void {
  const { context, palette } = surface;
  const outline = recordOf(of.site, "rooms", side.room)?.outline ?? [];
  const [from, to] = [outline[side.index], outline[(side.index + 1) % outline.length]];
  if (!from || !to) return;
  const [a, b] = [pixelOf(surface, from), pixelOf(surface, to)];
  const length = Math.hypot(b.px - a.px, b.py - a.py) || 1;
  context.strokeStyle = palette.focus;
  context.lineWidth = 6;
  context.beginPath();
  context.moveTo(a.px, a.py);
  context.lineTo(b.px, b.py);
  context.stroke();
  // Inside the room, beside its grip; a text is wider than high.
  const [nx, ny] = [(b.py - a.py) / length, -(b.px - a.px) / length];
  writeText(surface, lengthText(distance(from, to), of.units), {
    pixel: { px: (a.px + b.px) / 2 + nx * 34, py: (a.py + b.py) / 2 + ny * 18 },
    colour: palette.focus,
    strong: true,
  });
}

function ringOf(site: Site, ref: RecordRef): Outline | undefined {
  switch (ref.kind) {
    case "rooms":
      return recordOf(site, "rooms", ref.id)?.outline;
    case "obstacles":
    case "floorPieces":
      return recordOf(site, ref.kind, ref.id)?.footprint;
    case "luminaires": {
      const one = recordOf(site, "luminaires", ref.id);
      return (
        one &&
        turnedRectangle(one.at, {
          ...one,
          length: Math.max(one.length, 0.16),
          width: Math.max(one.width, 0.16),
        })
      );
    }
    case "openings": {
      const opening = recordOf(site, "openings", ref.id);
      return opening && openingShape(opening, recordOf(site, "rooms", opening.rooms[0])).reveal;
    }
    default:
      return undefined;
  }
}

function trace(surface: Surface, ring: Outline): void {
  const { context } = surface;
  context.beginPath();
  ring.forEach((point, i) => {
    const { px, py } = pixelOf(surface, point);
    if (i === 0) context.moveTo(px, py);
    else context.lineTo(px, py);
  });
  context.closePath();
}

function paintGrip(surface: Surface, grip: Grip, site: Site): void {
  const { context, palette } = surface;
  const { px, py } = pixelOf(surface, grip.at);
  context.fillStyle = palette.plan;
  context.strokeStyle = palette.focus;
  context.lineWidth = 2;
  context.beginPath();
  if (grip.kind === "turn") {
    const middle =
      grip.ref.kind === "detectors"
        ? recordOf(site, "detectors", grip.ref.id)?.at
        : recordOf(site, "luminaires", grip.ref.id)?.at;
    if (middle) {
      const from = pixelOf(surface, middle);
      const length = Math.hypot(px - from.px, py - from.py) || 1;
      context.moveTo(from.px + ((px - from.px) / length) * 17, from.py + ((py - from.py) / length) * 17);
      context.lineTo(px, py);
      context.stroke();
      context.beginPath();
    }
    context.arc(px, py, 5.5, 0, 2 * Math.PI);
  } else if (grip.kind === "corner") context.rect(px - 5, py - 5, 10, 10);
  else context.arc(px, py, 4, 0, 2 * Math.PI);
  context.fill();
  context.stroke();
}

function paintGuide(surface: Surface, guide: Guide): void {
  const { context, palette } = surface;
  const [from, to] = [pixelOf(surface, guide.from), pixelOf(surface, guide.to)];
  context.strokeStyle = palette.focus;
  context.lineWidth = 1;
  context.setLineDash([3, 3]);
  context.beginPath();
  context.moveTo(from.px, from.py);
  context.lineTo(to.px, to.py);
  context.stroke();
  context.setLineDash([]);
  if (guide.kind === "grid") {
    context.beginPath();
    context.arc(to.px, to.py, 22, 0, 2 * Math.PI);
    context.stroke();
  }
  writeText(surface, t(`plan.snap.${guide.kind}`), {
    pixel: { px: (from.px + to.px) / 2, py: (from.py + to.py) / 2 - (guide.kind === "grid" ? 32 : 12) },
    colour: palette.focus,
  });
}

/** The nearest two walls of a moved thing, one across and one along, with metres. */
function paintDistances(
  surface: Surface,
  moved: { readonly ref: RecordRef | undefined; readonly site: Site; readonly held: Held },
): void {
  const { ref, site, held } = moved;
  if (!ref || (ref.kind !== "detectors" && ref.kind !== "luminaires" && ref.kind !== "dwellPlaces")) return;
  const at = recordOf(site, ref.kind, ref.id)?.at;
  const room = at && roomAt(site, held.storey, at);
  if (!at || !room) return;
  const { context, palette } = surface;
  const rays = wallDistances(room, at);
  for (const pair of [rays.slice(0, 2), rays.slice(2, 4)]) {
    const near = pair.reduce((a, b) => (b.metres < a.metres ? b : a), pair[0] ?? { to: at, metres: 0 });
    if (near.metres === 0) continue;
    const [a, b] = [pixelOf(surface, at), pixelOf(surface, near.to)];
    context.strokeStyle = palette.muted;
    context.lineWidth = 1;
    context.beginPath();
    context.moveTo(a.px, a.py);
    context.lineTo(b.px, b.py);
    context.stroke();
    writeText(surface, lengthText(near.metres, held.units), {
      pixel: { px: (a.px + b.px) / 2, py: (a.py + b.py) / 2 },
      colour: palette.ink,
    });
  }
}

/** Lengths of the sides while a corner or side moves. */
function paintSides(
  surface: Surface,
  shaped: { readonly ref: RecordRef; readonly site: Site; readonly units: Units },
): void {
  const ring = ringOf(shaped.site, shaped.ref) ?? [];
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] as Point;
    const [p, q] = [pixelOf(surface, a), pixelOf(surface, b)];
    const length = Math.hypot(q.px - p.px, q.py - p.py);
    if (length < 50) return;
    // Inside, beside the side; a text is wider than high.
    const [nx, ny] = [(q.py - p.py) / length, -(q.px - p.px) / length];
    writeText(surface, lengthText(distance(a, b), shaped.units), {
      pixel: { px: (p.px + q.px) / 2 + nx * 30, py: (p.py + q.py) / 2 + ny * 14 },
      colour: surface.palette.ink,
    });
  });
}

function paintBox(surface: Surface, from: Point, to: Point): void {
  const { context, palette } = surface;
  const [a, b] = [pixelOf(surface, from), pixelOf(surface, to)];
  context.beginPath();
  context.rect(Math.min(a.px, b.px), Math.min(a.py, b.py), Math.abs(a.px - b.px), Math.abs(a.py - b.py));
  context.fillStyle = faded(palette.focus, 0.08);
  context.fill();
  context.strokeStyle = palette.focus;
  context.lineWidth = 1.25;
  context.stroke();
}

function paintMeasure(
  surface: Surface,
  line: { readonly from: Point; readonly to: Point },
  units: Units,
): void {
  const { context, palette } = surface;
  const [a, b] = [pixelOf(surface, line.from), pixelOf(surface, line.to)];
  const length = Math.hypot(b.px - a.px, b.py - a.py) || 1;
  const [nx, ny] = [((b.py - a.py) / length) * 6, (-(b.px - a.px) / length) * 6];
  context.strokeStyle = palette.ink;
  context.lineWidth = 1.5;
  context.beginPath();
  if (length < 2) {
    // One end only, as yet: a cross.
    context.moveTo(a.px - 7, a.py);
    context.lineTo(a.px + 7, a.py);
    context.moveTo(a.px, a.py - 7);
    context.lineTo(a.px, a.py + 7);
    context.stroke();
    return;
  }
  context.moveTo(a.px, a.py);
  context.lineTo(b.px, b.py);
  for (const end of [a, b]) {
    context.moveTo(end.px - nx, end.py - ny);
    context.lineTo(end.px + nx, end.py + ny);
  }
  context.stroke();
  writeText(surface, lengthText(distance(line.from, line.to), units), {
    pixel: { px: (a.px + b.px) / 2, py: (a.py + b.py) / 2 - 12 },
    colour: palette.ink,
    strong: true,
  });
}
