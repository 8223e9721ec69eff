import type { Point } from "#engine";
import { type IfcModel, refOf, wordOf } from "./model.ts";
import type { Frames } from "./placement.ts";
import type { Relations } from "./relations.ts";

/** How a door opens, in the door's own frame. */
export interface DoorSwing {
  /** Direction from the low end of the leaf to its high end, in plan. */
  readonly along: Point;
  /** Direction into which the leaf opens, in plan. */
  readonly into: Point;
  readonly hinge: "low" | "high";
  readonly leaf: "swings" | "slides";
}

/**
 * Swing of a door from its operation type; undefined where the file does not say, or says it of a door that does not stand upright.
 *
 * The leaf opens towards the positive y of the door's placement; "left" and "right" are as seen in that direction, so
 * that a leaf that swings left has its hinge at x = 0.
 *
 * @source ISO-16739, IfcDoorStyleOperationEnum, IfcDoorTypeOperationEnum
 */
export function doorSwing(
  model: IfcModel,
  relations: Relations,
  door: { id: number; frames: Frames },
): DoorSwing | undefined {
  const operation = operationOf(model, relations, door.id);
  const frame = door.frames.of(refOf(model.values(door.id)[5]));
  const along = flat(frame.x);
  const into = flat(frame.y);
  if (!along || !into || Math.abs(frame.z[2]) < 0.99) return undefined;
  if (/SLIDING|FOLDING|ROLLINGUP|REVOLVING|LIFTING/.test(operation))
    return { along, into, hinge: "low", leaf: "slides" };
  if (/^SINGLE_SWING_LEFT|^DOUBLE_SWING_LEFT|OPPOSITE_LEFT|SWING_FIXED_LEFT/.test(operation))
    return { along, into, hinge: "low", leaf: "swings" };
  if (/^SINGLE_SWING_RIGHT|^DOUBLE_SWING_RIGHT|OPPOSITE_RIGHT|SWING_FIXED_RIGHT/.test(operation))
    return { along, into, hinge: "high", leaf: "swings" };
  if (/^DOUBLE_DOOR|DOUBLE_PANEL|^DOUBLE_DOOR_SINGLE_SWING/.test(operation))
    return { along, into, hinge: "low", leaf: "swings" };
  return undefined;
}

/** Direction along the wall that a door's or window's own placement gives, if it stands upright. */
export function ownDirection(model: IfcModel, id: number, frames: Frames): Point | undefined {
  const frame = frames.of(refOf(model.values(id)[5]));
  return Math.abs(frame.z[2]) > 0.99 ? flat(frame.x) : undefined;
}

const operationOf = (model: IfcModel, relations: Relations, id: number): string => {
  const own = wordOf(model.values(id)[11]);
  if (own && own !== "NOTDEFINED" && own !== "USERDEFINED") return own;
  const type = relations.typeOf.get(id);
  if (type === undefined) return "";
  return wordOf(model.values(type)[model.type(type) === "IFCDOORSTYLE" ? 8 : 10]);
};

const flat = (v: readonly [number, number, number]): Point | undefined => {
  const size = Math.hypot(v[0], v[1]);
  return size > 0.99 ? [v[0] / size, v[1] / size] : undefined;
};
