import type { Units } from "../../texts/measures.ts";
import { areaText, lengthText } from "../../texts/measures.ts";
import { isRaised, obstacleTones, type Scene } from "../scene.ts";
import type { Pixel } from "../view.ts";
import type { Lettering } from "./lettering.ts";
import { smallScale } from "./marks.ts";
import { faded, mixed } from "./palette.ts";
import { family, inMetres, inPixels, onScreen, pixelOf, type Surface, textWidth } from "./surface.ts";

/** Paints what does not move while a device is dragged: walls, rooms, openings, obstacles, grid. */
export function paintBase(surface: Surface, scene: Scene): void {
  const { context, view, palette } = surface;
  const px = 1 / view.scale;
  inMetres(surface);
  context.lineJoin = "miter";
  context.miterLimit = 4;
  context.strokeStyle = palette.wall;
  context.lineWidth = scene.walls.width;
  // Of a room that nobody has confirmed the wall is broken: it is only likely.
  context.setLineDash([2 * scene.walls.width, 1.2 * scene.walls.width]);
  context.stroke(scene.proposed);
  context.setLineDash([]);
  context.stroke(scene.walls.path);
  context.fillStyle = palette.plan;
  context.fill(scene.rooms);
  context.fill(scene.proposed);

  context.fillStyle = palette.plan;
  context.fill(scene.reveals);
  if (view.scale > 14) {
    context.strokeStyle = palette["grid-line"];
    context.lineWidth = px;
    context.stroke(scene.grids);
  }
  context.fillStyle = faded(palette.muted, 0.1);
  context.fill(scene.noDevices);

  for (const [index, path] of scene.tones.entries()) {
    context.fillStyle = mixed(palette["obstacle-low"], palette["obstacle-high"], index / (obstacleTones - 1));
    context.fill(path);
    context.strokeStyle = palette["obstacle-line"];
    context.lineWidth = px;
    context.stroke(path);
  }
  context.strokeStyle = palette["obstacle-line"];
  context.lineWidth = px;
  context.setLineDash([1.5 * px, 3 * px]);
  context.stroke(scene.mesh);
  context.setLineDash([8 * px, 3 * px, 2 * px, 3 * px]);
  context.stroke(scene.raised);
  context.setLineDash([]);
  context.fillStyle = palette.plan;
  context.fill(scene.glass);
  context.strokeStyle = palette["wall-line"];
  context.stroke(scene.glass);

  context.strokeStyle = palette.edge;
  context.stroke(scene.steps);
  context.strokeStyle = palette["luminaire-line"];
  context.stroke(scene.luminaires);

  context.strokeStyle = palette["wall-line"];
  context.lineWidth = 1.25 * px;
  context.stroke(scene.rooms);
  context.setLineDash([6 * px, 4 * px]);
  context.stroke(scene.proposed);
  context.setLineDash([]);
  context.strokeStyle = palette.plan;
  context.fillStyle = palette.plan;
  // The face of the wall is open where the opening is.
  context.lineWidth = 2.5 * px;
  context.stroke(scene.reveals);
  context.strokeStyle = palette["wall-line"];
  context.lineWidth = 1.25 * px;
  context.stroke(scene.jambs);
  context.lineWidth = px;
  context.stroke(scene.panes);
  context.lineWidth = 2 * px;
  context.lineCap = "butt";
  context.stroke(scene.leaves);
  context.strokeStyle = palette.edge;
  context.lineWidth = px;
  context.stroke(scene.swings);
}

const titleFont = `600 13px ${family}`;

/** Names of rooms and obstacles, in pixels, left out where there is no room for them. */
export function paintNames(
  surface: Surface,
  scene: Scene,
  to: { readonly units: Units; readonly lettering: Lettering },
): void {
  const { view, palette } = surface;
  inPixels(surface);
  for (const { room, at, area, span } of scene.labels) {
    const pixel = pixelOf(surface, at);
    if (!onScreen(view, pixel, 120)) continue;
    const space = (span.right - span.left) * view.scale - 10;
    const fits = (text: string): boolean => text !== "" && textWidth(surface, text, titleFont) < space;
    const title = room.number ? `${room.number} ${room.name}` : room.name;
    const lines = fits(title)
      ? [title]
      : fits(room.name)
        ? [room.number, room.name]
        : [room.number || room.name];
    const shown = lines.filter(fits);
    const figure = view.scale > 22 && shown.length > 0 ? areaText(area, to.units) : "";
    const write = (all: readonly string[], otherwise: "cover" | "leave out"): boolean => {
      const half = Math.max(0, ...all.map((text) => textWidth(surface, text, titleFont))) / 2 + 4;
      const letters = all.map((text, i) => ({
        text,
        pixel: { px: pixel.px, py: pixel.py + (i - (all.length - 1) / 2) * 16 },
        colour: text === figure ? palette.muted : palette.ink,
        strong: text !== figure,
      }));
      const shifts = shiftsWithin(
        {
          left: (span.left - at[0]) * view.scale + half,
          right: (span.right - at[0]) * view.scale - half,
          top: (at[1] - span.top) * view.scale + 8 * all.length,
          bottom: (at[1] - span.bottom) * view.scale - 8 * all.length,
        },
        [-quarter(span, view.scale), 0, quarter(span, view.scale)],
      );
      return to.lettering.writeGroup(letters, { shifts, otherwise });
    };
    if (figure && write([...shown, figure], "leave out")) continue;
    if (write(shown, "leave out")) continue;
    // In the small picture of a whole storey a name that covers a sign tells less than the sign.
    const short = [room.number || room.name].filter(fits);
    if (!write(short, "leave out") && view.scale >= smallScale) write(short, "cover");
  }
}

const quarter = (span: { readonly left: number; readonly right: number }, scale: number): number =>
  ((span.right - span.left) * scale) / 4;

/** Ways to move a label and stay between the walls, the shortest first; [0, 0] moved inside where the label is too near a wall. */
function shiftsWithin(
  room: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number },
  sideways: readonly number[],
): readonly Pixel[] {
  const within = (value: number, least: number, most: number): number =>
    least > most ? (least + most) / 2 : Math.min(most, Math.max(least, value));
  return [0, 20, -20, 36, -36, 52, -52]
    .flatMap((py) =>
      sideways.map((px) => ({
        px: within(px, room.left, room.right),
        py: within(py, room.top, room.bottom),
      })),
    )
    .sort((a, b) => Math.hypot(a.px, a.py) - Math.hypot(b.px, b.py));
}

/** Heights of obstacles, and their names when near: last of all, where room is left. */
export function paintHeights(
  surface: Surface,
  scene: Scene,
  to: { readonly units: Units; readonly lettering: Lettering },
): void {
  const { view, palette } = surface;
  if (view.scale < 45) return;
  inPixels(surface);
  for (const { obstacle, at, wide } of scene.obstacleLabels) {
    const pixel = pixelOf(surface, at);
    if (!onScreen(view, pixel)) continue;
    const height = isRaised(obstacle)
      ? `${lengthText(obstacle.base, to.units)} – ${lengthText(obstacle.top, to.units)}`
      : lengthText(obstacle.top, to.units);
    const space = wide * view.scale - 6;
    const named = view.scale > 70 && obstacle.name ? `${obstacle.name} ${height}` : height;
    const text = [named, height].find((one) => textWidth(surface, one, `400 13px ${family}`) < space);
    if (text) to.lettering.write(text, { pixel, colour: palette.muted, rim: "transparent" });
  }
}
