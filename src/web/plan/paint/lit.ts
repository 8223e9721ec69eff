import type { Outline, Room } from "#engine";
import { faded } from "./palette.ts";
import { pixelOf, type Surface } from "./surface.ts";

/** Rooms that a simulated day shows lit: a quiet fill, and an edge so that colour is not alone. */
export function paintLit(surface: Surface, rooms: readonly Pick<Room, "outline" | "holes">[]): void {
  const { context, palette } = surface;
  for (const { outline, holes } of rooms) {
    const path = new Path2D();
    for (const ring of [outline, ...holes]) addRing(surface, path, ring);
    context.fillStyle = faded(palette.interference, 0.2);
    context.fill(path, "evenodd");
    context.strokeStyle = palette.interference;
    context.lineWidth = 3;
    context.stroke(path);
  }
}

function addRing(surface: Surface, path: Path2D, ring: Outline): void {
  ring.forEach((point, i) => {
    const { px, py } = pixelOf(surface, point);
    if (i === 0) path.moveTo(px, py);
    else path.lineTo(px, py);
  });
  path.closePath();
}
