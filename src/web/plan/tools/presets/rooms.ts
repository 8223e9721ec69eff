import type { Point, Room, Site } from "#engine";
import { ringArea } from "../../shapes.ts";
import { type Added, atLeast, collected, type Ground, millimetres, rectangle, type Span } from "./ground.ts";

/** A new room with the heights of its neighbours. */
export function newRoom(ground: Ground, outline: readonly Point[]): Added {
  const { put, added } = collected(ground);
  put("rooms", {
    ...likeNeighbours(ground.site, ground.storey),
    outline: (ringArea(outline) < 0 ? [...outline].reverse() : outline).map(millimetres),
  });
  return added() as Added;
}

/** A rectangle or an L: the L leaves out the quarter where the gesture ended. */
export function rectangleRoom(what: "room" | "lRoom", ground: Ground, span: Span): Added | undefined {
  const whole = atLeast(span, 1);
  if (what === "room") return newRoom(ground, rectangle(whole));
  const { from, to } = whole;
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  return newRoom(ground, [
    from,
    [to[0], from[1]],
    [to[0], middle[1]],
    middle,
    [middle[0], to[1]],
    [from[0], to[1]],
  ]);
}

function likeNeighbours(site: Site, storey: string): Omit<Room, "id" | "outline"> {
  const like = site.rooms.findLast((room) => room.storey === storey);
  return {
    storey,
    number: "",
    name: "",
    use: "other",
    holes: [],
    floor: like?.floor ?? 0,
    ceilingHeight: like?.ceilingHeight ?? 2.5,
    demand: { catch: true, walk: true, hold: true },
    noDevices: [],
  };
}
