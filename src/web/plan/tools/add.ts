import { unreachable } from "#engine";
import type { AddKind } from "./kinds.ts";
import { block } from "./presets/blocks.ts";
import type { Added, Ground, Refusal, Span } from "./presets/ground.ts";
import { opening } from "./presets/opening.ts";
import { rectangleRoom } from "./presets/rooms.ts";
import { row } from "./presets/rows.ts";
import { spot } from "./presets/spots.ts";
import { wall } from "./presets/wall.ts";

export type { Added, Refusal } from "./presets/ground.ts";

/**
 * Records for a new thing, with the heights that one usually meets; or why it cannot be: a door far from a wall,
 * furniture outside rooms. A chain closes into a room of its own, see `draw.ts`.
 */
export function added(what: AddKind, ground: Ground, span: Span): Added | Refusal {
  return setDown(what, ground, span) ?? { refused: needsWall.has(what) ? "wall" : "room" };
}

const needsWall: ReadonlySet<AddKind> = new Set(["door", "passage", "window", "glazing"]);

function setDown(what: AddKind, ground: Ground, span: Span): Added | Refusal | undefined {
  switch (what) {
    case "room":
    case "lRoom":
      return rectangleRoom(what, ground, span);
    // Found by a worker that asks the drawing, see `input.ts`.
    case "drawnRoom":
    case "roomChain":
      return undefined;
    case "wall":
      return wall(ground, span);
    case "door":
    case "passage":
    case "window":
    case "glazing":
      return opening(what, ground, span.to);
    case "partition":
    case "glassScreen":
    case "rackRow":
    case "lockers":
    case "benches":
    case "cubicles":
    case "showers":
    case "duct":
    case "beam":
    case "luminaireRow":
    case "flight":
      return row(what, ground, span);
    case "deskGroup":
    case "meetingTable":
    case "luminaireGrid":
    case "obstacle":
    case "landing":
      return block(what, ground, span);
    case "column":
    case "dwellPlace":
    case "luminaire":
    case "smokeHead":
    case "sprinkler":
    case "ceilingThing":
    case "ceilingGrid":
    case "heater":
    case "fan":
    case "airOutlet":
    case "switch":
      return spot(what, ground, span);
    case "detector":
      return ground.site.models.length === 0 ? { refused: "models" } : spot(what, ground, span);
    default:
      return unreachable(what);
  }
}
