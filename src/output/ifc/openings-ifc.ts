import {
  type FloorPiece,
  floorHeight,
  type Opening,
  openingWidth,
  type Point,
  type Reveal,
  type Room,
  revealOf,
  say,
} from "#engine";
import type { Speak } from "../words/speak.ts";
import type { ModelWriter, Prism } from "./model-writer.ts";
import { type StepRef, word } from "./step-writer.ts";

/** A body needs some thickness, also where two rooms meet in a line. [m] */
const thinnest = 0.02;
/** Thickness of a leaf or a pane. [m] */
const leafThickness = 0.04;

/**
 * Doors, windows and passages of a storey, each with the stretch of wall that it sits in: the job knows rooms and
 * openings, and of the walls only what lies beside an opening.
 *
 * @returns Records that the storey contains.
 */
export function openingsInto(
  writer: ModelWriter,
  storey: StepRef,
  { openings, speak }: { readonly openings: readonly OpeningOf[]; readonly speak: Speak },
): readonly StepRef[] {
  return openings.flatMap((one) => openingInto(writer, storey, { ...one, speak }));
}

/** An opening with its first room, and the stairs in that room. */
export interface OpeningOf {
  readonly opening: Opening;
  readonly room: Room;
  readonly floorPieces: readonly FloorPiece[];
}

/** How far inside the room one stands when the sill is measured. [m] */
const step = 0.1;

function openingInto(
  writer: ModelWriter,
  storey: StepRef,
  { opening, room, floorPieces, speak }: OpeningOf & { readonly speak: Speak },
): readonly StepRef[] {
  const width = openingWidth(opening);
  const height = opening.head - opening.sill;
  if (!(width > 0.01 && height > 0.01)) return [];
  const reveal = revealOf(opening, room);
  const { along, low, hinge } = swingOf(opening, reveal);
  const inside: Point = [
    (opening.from[0] + opening.to[0]) / 2 - step * reveal.through[0],
    (opening.from[1] + opening.to[1]) / 2 - step * reveal.through[1],
  ];
  // A door off a landing counts its heights from the landing.
  const ground = floorHeight(floorPieces, inside);
  const at = (z: number) =>
    writer.placement({ parent: storey, at: [low[0], low[1], room.floor + ground + z], along });
  const thickness = Math.max(opening.thickness, thinnest);
  // The frame's y axis points into the room that the leaf opens into; the wall lies on one side of the near face.
  const y = -along[1] * reveal.through[0] + along[0] * reveal.through[1];
  const slab = (depth: number, middle: number): Prism["outline"] => {
    const centre = y * middle;
    return [
      [0, centre - depth / 2],
      [width, centre - depth / 2],
      [width, centre + depth / 2],
      [0, centre + depth / 2],
    ];
  };
  const through = slab(thickness, opening.thickness / 2);
  const wall = writer.product({
    type: "IFCWALL",
    id: `${opening.id} wall`,
    name: speak(say`Wall at an opening`),
    placement: at(0),
    shape: writer.body([{ outline: through, height: Math.max(room.ceilingHeight - ground, opening.head) }]),
    more: [null, word("NOTDEFINED")],
  });
  const hole = writer.product({
    type: "IFCOPENINGELEMENT",
    // A passage has nothing in it: the hole itself is the record, and keeps its identity.
    id: opening.kind === "passage" ? opening.id : `${opening.id} hole`,
    name: opening.kind === "passage" ? speak(say`Passage`) : speak(say`Opening`),
    placement: at(opening.sill),
    shape: writer.body([{ outline: through, height }]),
    more: [null, word("OPENING")],
  });
  writer.relate("IFCRELVOIDSELEMENT", opening.id, wall, hole);
  if (opening.kind === "passage") return [wall];
  const filling = {
    id: opening.id,
    placement: at(opening.sill),
    shape: writer.body([
      { outline: slab(Math.min(leafThickness, thickness), opening.thickness / 2), height },
    ]),
  };
  const filled =
    opening.kind === "door"
      ? writer.product({
          ...filling,
          type: "IFCDOOR",
          name: speak(say`Door`),
          more: [null, height, width, word("DOOR"), word(operationOf(opening, hinge)), null],
        })
      : writer.product({
          ...filling,
          type: "IFCWINDOW",
          name: opening.kind === "glazing" ? speak(say`Glazing`) : speak(say`Window`),
          more: [null, height, width, word("WINDOW"), word("NOTDEFINED"), null],
        });
  writer.relate("IFCRELFILLSELEMENT", opening.id, hole, filled);
  return [wall, filled];
}

/** "Left" and "right" as seen in the direction in which the leaf opens; a leaf folded right back stands for one that slides. */
const operationOf = (opening: Opening, hinge: "low" | "high"): string => {
  if (opening.angle > 3) return "SLIDING_TO_LEFT";
  return hinge === "low" ? "SINGLE_SWING_LEFT" : "SINGLE_SWING_RIGHT";
};

/** The opening's own frame: x along the wall, y in the direction into which the leaf opens, z up. */
function swingOf(
  opening: Opening,
  reveal: Reveal,
): { readonly along: Point; readonly low: Point; readonly hinge: "low" | "high" } {
  const into: Point =
    opening.opensInto === opening.rooms[0] ? [-reveal.through[0], -reveal.through[1]] : reveal.through;
  const along: Point = [into[1], -into[0]];
  const forward =
    (opening.to[0] - opening.from[0]) * along[0] + (opening.to[1] - opening.from[1]) * along[1] > 0;
  return {
    along,
    low: forward ? opening.from : opening.to,
    hinge: forward === (opening.hinge === "from") ? "low" : "high",
  };
}
