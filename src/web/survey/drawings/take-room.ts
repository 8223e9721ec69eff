import type { Opening, Site } from "#engine";
import type { RoomOnDrawing } from "../../calculate/room-at-protocol.ts";
import type { EditStep } from "../../contract.ts";
import { distance } from "../../plan/shapes.ts";

/** A door that was drawn from the other side already lies within a wall of this one. [m] */
const sameDoor = 0.6;

/**
 * Steps that take a room from the drawing. A door that a neighbour already has, and that leads nowhere yet, leads into the new room;
 * it is not drawn twice.
 */
export function takeRoomSteps(site: Site, { room, openings }: RoomOnDrawing): readonly EditStep[] {
  const here = new Set(site.rooms.filter(({ storey }) => storey === room.storey).map(({ id }) => id));
  const middle = ({ from, to }: Opening) => [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const;
  const free = site.openings.filter(({ rooms }) => here.has(rooms[0]) && rooms[1] === null);
  return [
    { do: "put", kind: "rooms", record: room },
    ...openings.map((opening): EditStep => {
      const known = free.find((other) => distance(middle(other), middle(opening)) < sameDoor);
      if (!known) return { do: "put", kind: "openings", record: opening };
      const between = distance(middle(known), middle(opening));
      return {
        do: "set",
        kind: "openings",
        id: known.id,
        fields: {
          rooms: [known.rooms[0], room.id],
          ...(between > 0.01 ? { thickness: Math.round(between * 1000) / 1000 } : {}),
          ...(known.opensInto === null ? { opensInto: room.id } : {}),
        },
      };
    }),
  ];
}
