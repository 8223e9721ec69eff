import type { Point } from "#engine";
import { splitRoom } from "../../edit/split-room.ts";
import { insideRoom, rimDistance } from "../../shapes.ts";
import { type Added, type Ground, type Refusal, roomOf, type Span } from "./ground.ts";
import { row } from "./rows.ts";

/** Thickness of a light inner wall. Common practice, no source. [m] */
const innerWall = 0.1;
/** An end that comes so near to the room's walls is meant to reach them. [m] */
const reaches = 0.3;

/** A wall from one side of a room to another parts the room in two; one that ends in the open is a partition up to the ceiling. */
export function wall(ground: Ground, span: Span): Added | Refusal {
  const room = roomOf(ground, span);
  if (!room) return { refused: "room" };
  const met = (end: Point): boolean => !insideRoom(room, end) || rimDistance(room.outline, end) < reaches;
  if (met(span.from) && met(span.to)) {
    const parted = splitRoom(ground.site, room.id, span, { thickness: innerWall, newId: ground.newId });
    if (!("refused" in parted))
      return {
        name: "plan.edit.split",
        steps: parted.steps,
        made: { kind: "rooms", id: parted.rooms.at(-1) ?? room.id },
      };
    if (parted.refused === "opening") return { refused: "opening" };
  }
  const screen = row("partition", ground, span);
  if (!screen) return { refused: "room" };
  const steps = screen.steps.map((step) =>
    step.do === "put" && step.kind === "obstacles"
      ? { ...step, record: { ...step.record, top: room.ceilingHeight } }
      : step,
  );
  return { ...screen, steps };
}
