import type { Point, Site } from "#engine";
import { t } from "../../texts/drawn.ts";
import { lengthText, type Units } from "../../texts/measures.ts";
import { distance } from "../shapes.ts";
import type { Guide } from "../snap.ts";
import { added } from "../tools/add.ts";
import { gestureOf } from "../tools/kinds.ts";
import type { Chain, Drawing } from "../tools/state.ts";
import { paintMade } from "./ghosts.ts";
import { faded } from "./palette.ts";
import { pixelOf, type Surface, writeText } from "./surface.ts";

interface Ground {
  readonly site: Site;
  readonly storey: string;
  readonly units: Units;
}

/** What is being drawn: the sides so far with their lengths, and the things that would be set down. */
export function paintDrawing(surface: Surface, state: Chain | Drawing, ground: Ground): void {
  if (state.on === "chain") {
    paintSides(surface, [...state.points, state.to], ground.units);
    for (const point of state.points) paintCorner(surface, point);
  } else if (gestureOf(state.what) !== "touch") {
    if (gestureOf(state.what) === "line") paintSides(surface, [state.from, state.to], ground.units);
    else paintBox(surface, state, ground.units);
    paintGhosts(surface, state, ground);
    if (state.held === "set") paintCorner(surface, state.from);
  }
  for (const guide of state.guides) paintSnap(surface, guide);
}

function paintSides(surface: Surface, points: readonly Point[], units: Units): void {
  const { context, palette } = surface;
  context.strokeStyle = palette.focus;
  context.lineWidth = 2;
  context.beginPath();
  points.forEach((point, index) => {
    const { px, py } = pixelOf(surface, point);
    if (index === 0) context.moveTo(px, py);
    else context.lineTo(px, py);
  });
  context.stroke();
  points.slice(1).forEach((to, index) => {
    const from = points[index] as Point;
    const [a, b] = [pixelOf(surface, from), pixelOf(surface, to)];
    if (Math.hypot(a.px - b.px, a.py - b.py) < 40) return;
    // Beside the side, not on it.
    const length = Math.hypot(b.px - a.px, b.py - a.py);
    const [nx, ny] = [(b.py - a.py) / length, -(b.px - a.px) / length];
    writeText(surface, lengthText(distance(from, to), units), {
      // A text is wider than high: beside an upright side it stands farther off.
      pixel: { px: (a.px + b.px) / 2 + nx * 32, py: (a.py + b.py) / 2 + ny * 14 },
      colour: palette.ink,
      strong: index === points.length - 2,
    });
  });
}

function paintCorner(surface: Surface, point: Point): void {
  const { context, palette } = surface;
  const { px, py } = pixelOf(surface, point);
  context.fillStyle = palette.plan;
  context.strokeStyle = palette.focus;
  context.lineWidth = 2;
  context.beginPath();
  context.rect(px - 4, py - 4, 8, 8);
  context.fill();
  context.stroke();
}

function paintBox(surface: Surface, { from, to }: Drawing, units: Units): void {
  const { context, palette } = surface;
  const [a, b] = [pixelOf(surface, from), pixelOf(surface, to)];
  context.beginPath();
  context.rect(Math.min(a.px, b.px), Math.min(a.py, b.py), Math.abs(a.px - b.px), Math.abs(a.py - b.py));
  context.fillStyle = faded(palette.focus, 0.06);
  context.fill();
  context.strokeStyle = palette.focus;
  context.lineWidth = 1.25;
  context.stroke();
  const [wide, high] = [Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1])];
  if (wide < 0.05 && high < 0.05) return;
  writeText(surface, `${lengthText(wide, units)} × ${lengthText(high, units)}`, {
    pixel: { px: (a.px + b.px) / 2, py: Math.max(a.py, b.py) + 14 },
    colour: palette.ink,
    strong: true,
  });
}

/** The things themselves, as they would stand, and how many they are. */
function paintGhosts(surface: Surface, state: Drawing, { site, storey }: Ground): void {
  const { palette, view } = surface;
  const made = added(state.what, { site, storey, view, newId: (kind) => `new ${kind}` }, state);
  if ("refused" in made) return;
  paintMade(surface, made.steps);
  const counts = new Map<string, number>();
  for (const { kind } of made.steps) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const count = Math.max(...counts.values());
  if (count < 2) return;
  const { px, py } = pixelOf(surface, state.to);
  writeText(surface, t("draw.count", { count: String(count) }), {
    pixel: { px: px + 10, py: py - 16 },
    colour: palette.focus,
    strong: true,
    align: "left",
  });
}

/** What the hand snapped to: a line to where it was taken from, and its name. */
function paintSnap(surface: Surface, guide: Guide): void {
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
  context.beginPath();
  context.arc(to.px, to.py, 5, 0, 2 * Math.PI);
  context.stroke();
  const along = Math.abs(from.px - to.px) > Math.abs(from.py - to.py);
  writeText(surface, t(`plan.snap.${guide.kind}`), {
    pixel: { px: to.px + (along ? 0 : 14), py: to.py + (along ? -16 : 20) },
    colour: palette.focus,
    align: "left",
  });
}
