import type { Metres, Outline, Point, Site } from "#engine";
import type { EditStep } from "../../contract.ts";
import { applied } from "../../jobs/apply.ts";
import { recordOf } from "../pick.ts";
import { turnedRectangle } from "../shapes.ts";
import { faded } from "./palette.ts";
import { pixelOf, type Surface } from "./surface.ts";

/** A small thing without a size of its own. [m] */
const small: Metres = 0.12;

/** What steps would make, as it would stand. */
export const paintMade = (surface: Surface, steps: readonly EditStep[]): void =>
  paintShapes(surface, steps.map(madeShape));

/** Rooms as steps would leave them, where they differ from what they are. */
export const paintReshaped = (surface: Surface, site: Site, steps: readonly EditStep[]): void =>
  paintShapes(
    surface,
    applied(site, steps)
      .rooms.filter((room) => recordOf(site, "rooms", room.id)?.outline !== room.outline)
      .map(({ outline }) => ({ ring: outline })),
  );

function paintShapes(surface: Surface, shapes: readonly Shape[]): void {
  const { context, palette, view } = surface;
  context.strokeStyle = palette.focus;
  context.fillStyle = faded(palette.focus, 0.12);
  context.lineWidth = 1;
  for (const { ring, dot } of shapes) {
    context.beginPath();
    for (const point of ring ?? []) {
      const { px, py } = pixelOf(surface, point);
      context.lineTo(px, py);
    }
    if (dot) {
      const { px, py } = pixelOf(surface, dot.at);
      context.arc(px, py, Math.max(3, dot.radius * view.scale), 0, 2 * Math.PI);
    }
    context.closePath();
    context.fill();
    context.stroke();
  }
}

interface Shape {
  readonly ring?: Outline;
  readonly dot?: { readonly at: Point; readonly radius: Metres };
}

/** Outline of what a step would make, or the place of what has none. */
export function madeShape(step: EditStep): Shape {
  if (step.do !== "put") return {};
  switch (step.kind) {
    case "obstacles":
    case "floorPieces":
      return { ring: step.record.footprint };
    case "rooms":
      return { ring: step.record.outline };
    case "luminaires":
      return { ring: turnedRectangle(step.record.at, step.record) };
    case "dwellPlaces":
      return { dot: step.record };
    case "openings":
      return { ring: [step.record.from, step.record.to] };
    case "detectors":
    case "ceilingThings":
    case "interference":
    case "switches":
      return { dot: { at: step.record.at, radius: small } };
    case "models":
    case "storeys":
      return {};
  }
}
