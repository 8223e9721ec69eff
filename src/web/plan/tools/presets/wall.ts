import type { Point, Room } from "#engine";
import { splitRoom } from "../../edit/split-room.ts";
import { insideRoom, rimDistance } from "../../shapes.ts";
import { type Added, type Ground, millimetres, type Refusal, roomOf, type Span } from "./ground.ts";
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
  const screen = row("partition", ground, withinRoom(room, span));
  if (!screen) return { refused: "room" };
  const steps = screen.steps.map((step) =>
    step.do === "put" && step.kind === "obstacles"
      ? { ...step, record: { ...step.record, top: room.ceilingHeight } }
      : step,
  );
  return { ...screen, steps };
}

/** A line with one end outside of the room is cut off at the wall that it runs through first, seen from inside. */
function withinRoom(room: Room, span: Span): Span {
  const inside = [span.from, span.to].map((end) => insideRoom(room, end));
  if (inside[0] === inside[1]) return span;
  const [inner, outer] = inside[0] ? [span.from, span.to] : [span.to, span.from];
  const [dx, dy] = [outer[0] - inner[0], outer[1] - inner[1]];
  let share = 1;
  for (const ring of [room.outline, ...room.holes])
    ring.forEach(([ax, ay], i) => {
      const [bx, by] = ring[(i + 1) % ring.length] as Point;
      const [ex, ey] = [bx - ax, by - ay];
      const turn = dx * ey - dy * ex;
      if (turn === 0) return;
      const along = ((ax - inner[0]) * ey - (ay - inner[1]) * ex) / turn;
      const on = ((ax - inner[0]) * dy - (ay - inner[1]) * dx) / turn;
      if (along > 0 && along < share && on >= 0 && on <= 1) share = along;
    });
  const wall = millimetres([inner[0] + share * dx, inner[1] + share * dy]);
  return inside[0] ? { from: span.from, to: wall } : { from: wall, to: span.to };
}
