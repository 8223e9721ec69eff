import type { Opening, Point, Room, Site } from "#engine";
import type { EditStep, RecordKind, RecordRef } from "../../contract.ts";
import { freeTag } from "../change.ts";
import { nearestWall, roomAt, roomsOn } from "../pick.ts";
import { distance, insideRoom, nearestOn } from "../shapes.ts";
import { snapPlace } from "../snap.ts";
import type { View } from "../view.ts";
import type { AddKind } from "./state.ts";

/** What adding came to: the steps, and the thing to select. */
export interface Added {
  readonly name: string;
  readonly steps: readonly EditStep[];
  readonly made: RecordRef;
}

interface Ground {
  readonly site: Site;
  readonly storey: string;
  readonly view: View;
  readonly newId: (kind: RecordKind) => string;
}

/** Things that are drawn by dragging a rectangle; the others need one touch. */
export const isDrawn = (what: AddKind): boolean => what === "room" || what === "obstacle";

/** Records for a new thing at a place, or for a rectangle. Undefined where it cannot be: a door far from a wall. */
export function added(
  what: AddKind,
  ground: Ground,
  drawn: { readonly from: Point; readonly to: Point },
): Added | undefined {
  const { site, storey, newId } = ground;
  const at = drawn.to;
  const room = roomAt(site, storey, drawn.from) ?? roomAt(site, storey, at);
  switch (what) {
    case "room":
      return newRoom(ground, drawn);
    case "obstacle": {
      if (!room) return undefined;
      const id = newId("obstacles");
      const footprint = rectangle(atLeast(drawn, 0.3));
      const record = {
        id,
        room: room.id,
        kind: "furniture",
        name: "",
        footprint,
        base: 0,
        top: 1.2,
        seeThrough: false,
      } as const;
      return {
        name: "plan.edit.add",
        steps: [{ do: "put", kind: "obstacles", record }],
        made: { kind: "obstacles", id },
      };
    }
    case "door":
    case "passage":
    case "window":
    case "glazing":
      return newOpening(what, ground, at);
    case "dwellPlace": {
      if (!room) return undefined;
      const id = newId("dwellPlaces");
      const kind =
        room.use === "sanitary"
          ? "wc"
          : room.use === "changing"
            ? "bench"
            : room.use === "plant"
              ? "panel"
              : "desk";
      const radius = kind === "desk" ? site.defaults.seatedRadius : 0.3;
      return {
        name: "plan.edit.add",
        steps: [
          {
            do: "put",
            kind: "dwellPlaces",
            record: { id, room: room.id, kind, at: centimetres(at), radius },
          },
        ],
        made: { kind: "dwellPlaces", id },
      };
    }
    case "source": {
      if (!room) return undefined;
      const id = newId("interference");
      return {
        name: "plan.edit.add",
        steps: [
          {
            do: "put",
            kind: "interference",
            record: { id, room: room.id, kind: "heater", at: centimetres(at), height: 2.2 },
          },
        ],
        made: { kind: "interference", id },
      };
    }
    case "luminaire": {
      if (!room) return undefined;
      const id = newId("luminaires");
      const place = snapPlace(site, storey, { view: ground.view, ref: undefined, at }).at;
      const record = {
        id,
        room: room.id,
        name: "",
        at: place,
        height: room.ceilingHeight,
        mounting: "flush",
        hot: false,
        length: 0.6,
        width: 0.6,
        turn: room.ceilingGrid?.turn ?? 0,
      } as const;
      return {
        name: "plan.edit.add",
        steps: [{ do: "put", kind: "luminaires", record }],
        made: { kind: "luminaires", id },
      };
    }
    case "ceilingThing": {
      if (!room) return undefined;
      const id = newId("ceilingThings");
      return {
        name: "plan.edit.add",
        steps: [
          {
            do: "put",
            kind: "ceilingThings",
            record: { id, room: room.id, kind: "smoke-head", at: centimetres(at) },
          },
        ],
        made: { kind: "ceilingThings", id },
      };
    }
    case "detector": {
      const model = room && modelFor(site, room);
      if (!room || !model) return undefined;
      const id = newId("detectors");
      const record = {
        id,
        tag: freeTag(site),
        room: room.id,
        controls: [room.id],
        group: "",
        model,
        at: snapPlace(site, storey, { view: ground.view, ref: undefined, at }).at,
        height: room.ceilingHeight,
        turn: 0,
        masks: [],
        pinned: false,
      } as const;
      return {
        name: "plan.edit.add",
        steps: [{ do: "put", kind: "detectors", record }],
        made: { kind: "detectors", id },
      };
    }
  }
}

/** The model used last in the room, else the first that may hang at its height. */
function modelFor(site: Site, room: Room): string | undefined {
  const used = site.detectors.findLast((device) => device.room === room.id) ?? site.detectors.at(-1);
  const fits = site.models.filter(
    ({ mounting }) => mounting.min <= room.ceilingHeight && room.ceilingHeight <= mounting.max,
  );
  return (fits.find(({ id }) => id === used?.model) ?? fits[0] ?? site.models[0])?.id;
}

function newRoom(
  { site, storey, newId }: Ground,
  drawn: { readonly from: Point; readonly to: Point },
): Added {
  const id = newId("rooms");
  const like = site.rooms.find((room) => room.storey === storey);
  const record: Room = {
    id,
    storey,
    number: "",
    name: "",
    use: "other",
    outline: rectangle(atLeast(drawn, 1)),
    holes: [],
    floor: like?.floor ?? 0,
    ceilingHeight: like?.ceilingHeight ?? 2.5,
    demand: { catch: true, walk: true, hold: true },
    noDevices: [],
  };
  return {
    name: "plan.edit.add",
    steps: [{ do: "put", kind: "rooms", record }],
    made: { kind: "rooms", id },
  };
}

const usual = {
  door: { width: 0.9, sill: 0, head: 2.05 },
  passage: { width: 1.2, sill: 0, head: 2.2 },
  window: { width: 1.2, sill: 0.9, head: 2.1 },
  glazing: { width: 2, sill: 0, head: 2.5 },
} as const;

/** An opening of usual size in the nearest wall; on its other side the room that begins behind that wall. */
function newOpening(
  kind: keyof typeof usual,
  { site, storey, view, newId }: Ground,
  at: Point,
): Added | undefined {
  let best: { room: Room; wall: ReturnType<typeof nearestWall> } | undefined;
  for (const room of roomsOn(site, storey).values()) {
    const wall = nearestWall(room, at);
    if (!best || wall.away < best.wall.away) best = { room, wall };
  }
  if (!best || best.wall.away > Math.max(0.5, 24 / view.scale)) return undefined;
  const { room, wall } = best;
  const a = wall.ring[wall.index] as Point;
  const b = wall.ring[(wall.index + 1) % wall.ring.length] as Point;
  const length = distance(a, b);
  const width = Math.min(usual[kind].width, length - 0.02);
  if (width < 0.3) return undefined;
  const along = Math.min(length - width / 2, Math.max(width / 2, distance(a, wall.at)));
  const on = (metres: number): Point =>
    thousandths([a[0] + ((b[0] - a[0]) / length) * metres, a[1] + ((b[1] - a[1]) / length) * metres]);
  const [from, to] = [on(along - width / 2), on(along + width / 2)];
  const middle = on(along);
  const beyond = behind(site, storey, { room, middle, from });
  const id = newId("openings");
  const record: Opening = {
    id,
    rooms: [room.id, beyond?.room.id ?? null],
    kind,
    from,
    to,
    sill: usual[kind].sill,
    head: Math.min(usual[kind].head, room.ceilingHeight),
    thickness: beyond?.thickness ?? 0.2,
    hinge: "from",
    opensInto: room.id,
    angle: Math.PI / 2,
    state: "closed",
  };
  return {
    name: "plan.edit.add",
    steps: [{ do: "put", kind: "openings", record }],
    made: { kind: "openings", id },
  };
}

/** The room on the other side of a wall of at most 0.6 m, and the wall's thickness. */
function behind(
  site: Site,
  storey: string,
  door: { readonly room: Room; readonly middle: Point; readonly from: Point },
): { readonly room: Room; readonly thickness: number } | undefined {
  const width = distance(door.middle, door.from) || 1;
  let out: Point = [(door.middle[1] - door.from[1]) / width, -(door.middle[0] - door.from[0]) / width];
  if (insideRoom(door.room, [door.middle[0] + out[0] * 0.02, door.middle[1] + out[1] * 0.02]))
    out = [-out[0], -out[1]];
  for (let deep = 0.01; deep <= 0.6; deep += 0.01) {
    const there: Point = [door.middle[0] + out[0] * deep, door.middle[1] + out[1] * deep];
    const room = roomAt(site, storey, there);
    if (!room || room.id === door.room.id) continue;
    const wall = nearestWall(room, there);
    const face = nearestOn(wall.at, wall.at, door.middle);
    return { room, thickness: Math.max(0.01, Math.round(distance(face, door.middle) * 1000) / 1000) };
  }
  return undefined;
}

const thousandths = ([x, y]: Point): Point => [Math.round(x * 1000) / 1000, Math.round(y * 1000) / 1000];
const centimetres = ([x, y]: Point): Point => [Math.round(x * 100) / 100, Math.round(y * 100) / 100];

/** A rectangle of usable size, also where someone only touched. */
function atLeast(
  { from, to }: { readonly from: Point; readonly to: Point },
  least: number,
): { from: Point; to: Point } {
  const grown = (a: number, b: number): number =>
    Math.abs(b - a) < least ? a + (b < a ? -least : least) : b;
  return { from, to: [grown(from[0], to[0]), grown(from[1], to[1])] };
}

/** Counter-clockwise rectangle between two opposite corners, to the centimetre. */
function rectangle({ from, to }: { readonly from: Point; readonly to: Point }): Point[] {
  const [a, b] = [centimetres(from), centimetres(to)];
  const [left, right] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])];
  const [bottom, top] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])];
  return [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ];
}
