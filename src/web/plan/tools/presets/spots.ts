import type { CeilingThing, Detector, DwellKind, Interference, Room, Site } from "#engine";
import { freeTag } from "../../change.ts";
import { nearestWall } from "../../pick.ts";
import { distance } from "../../shapes.ts";
import { snapPlace } from "../../snap.ts";
import { type Added, collected, type Ground, millimetres, rectangle, roomOf, type Span } from "./ground.ts";

export type SpotKind =
  | "column"
  | "dwellPlace"
  | "luminaire"
  | "smokeHead"
  | "sprinkler"
  | "ceilingThing"
  | "ceilingGrid"
  | "heater"
  | "fan"
  | "airOutlet"
  | "switch"
  | "detector";

const ceilingKind: Readonly<Record<"smokeHead" | "sprinkler" | "ceilingThing", CeilingThing["kind"]>> = {
  smokeHead: "smoke-head",
  sprinkler: "sprinkler",
  ceilingThing: "speaker",
};

const sourceKind: Readonly<Record<"heater" | "fan" | "airOutlet", Interference["kind"]>> = {
  heater: "heater",
  fan: "machine",
  airOutlet: "air-outlet",
};

/** Who stays in a room of a use, where nothing else is said. */
const dweller: Readonly<Partial<Record<Room["use"], DwellKind>>> = {
  sanitary: "wc",
  changing: "bench",
  plant: "panel",
};

const columnSide = 0.4;

/** One thing at the place that was touched. Undefined outside rooms. */
export function spot(what: SpotKind, ground: Ground, span: Span): Added | undefined {
  const { site, storey, view } = ground;
  const room = roomOf(ground, span);
  if (!room) return undefined;
  const { put, added } = collected(ground);
  const at = millimetres(span.to);
  const onCeiling = () => snapPlace(site, storey, { view, ref: undefined, at: span.to }).at;
  switch (what) {
    case "column": {
      const half = columnSide / 2;
      put("obstacles", {
        room: room.id,
        kind: "column",
        name: "",
        footprint: rectangle({ from: [at[0] - half, at[1] - half], to: [at[0] + half, at[1] + half] }),
        base: 0,
        top: room.ceilingHeight,
        seeThrough: false,
      });
      return added();
    }
    case "dwellPlace": {
      const kind = dweller[room.use] ?? "desk";
      put("dwellPlaces", {
        room: room.id,
        kind,
        at,
        radius: kind === "desk" ? site.defaults.seatedRadius : 0.3,
      });
      return added();
    }
    case "heater":
    case "fan":
    case "airOutlet":
      put("interference", {
        room: room.id,
        kind: sourceKind[what],
        at,
        height: what === "airOutlet" ? room.ceilingHeight : Math.min(2.2, room.ceilingHeight),
      });
      return added();
    case "luminaire":
      put("luminaires", {
        room: room.id,
        name: "",
        at: onCeiling(),
        height: room.ceilingHeight,
        mounting: "flush",
        hot: false,
        length: 0.6,
        width: 0.6,
        turn: room.ceilingGrid?.turn ?? 0,
      });
      return added();
    case "smokeHead":
    case "sprinkler":
    case "ceilingThing":
      put("ceilingThings", { room: room.id, kind: ceilingKind[what], at: onCeiling() });
      return added();
    case "ceilingGrid": {
      const wall = nearestWall(room, at);
      const [a, b] = [wall.ring[wall.index], wall.ring[(wall.index + 1) % wall.ring.length]];
      if (!a || !b) return undefined;
      // Tiles lie along the wall next to the place, a joint at the place.
      const quarter = Math.PI / 2;
      const turn = Math.atan2(b[1] - a[1], b[0] - a[0]);
      const grid = {
        tile: room.ceilingGrid?.tile ?? ([0.6, 0.6] as const),
        origin: at,
        turn: ((turn % quarter) + quarter) % quarter,
      };
      const straight = grid.turn < 1e-9 || quarter - grid.turn < 1e-9 ? { ...grid, turn: 0 } : grid;
      return {
        name: "plan.edit.grid",
        steps: [{ do: "set", kind: "rooms", id: room.id, fields: { ceilingGrid: straight } }],
        made: { kind: "rooms", id: room.id },
      };
    }
    case "switch": {
      const wall = nearestWall(room, at);
      put("switches", {
        room: room.id,
        kind: "switch",
        at: millimetres(justInside(wall.at, at)),
        height: 1.1,
      });
      return added();
    }
    case "detector": {
      const model = modelFor(site, room);
      if (model === undefined) return undefined;
      const record: Omit<Detector, "id"> = {
        tag: freeTag(site),
        room: room.id,
        controls: [room.id],
        group: "",
        model,
        at: onCeiling(),
        height: room.ceilingHeight,
        turn: 0,
        masks: [],
        pinned: false,
      };
      put("detectors", record);
      return added();
    }
  }
}

/** A switch hangs a little before its wall, so that it surely belongs to the room. */
function justInside(
  wall: readonly [number, number],
  touched: readonly [number, number],
): readonly [number, number] {
  const away = distance(wall, touched);
  const off = 0.05;
  return away < off
    ? touched
    : [wall[0] + ((touched[0] - wall[0]) / away) * off, wall[1] + ((touched[1] - wall[1]) / away) * off];
}

/** The model used last in the room, else the first that may hang at its height. */
function modelFor(site: Site, room: Room): string | undefined {
  const used = site.detectors.findLast((device) => device.room === room.id) ?? site.detectors.at(-1);
  const fits = site.models.filter(
    ({ mounting }) => mounting.min <= room.ceilingHeight && room.ceilingHeight <= mounting.max,
  );
  return (fits.find(({ id }) => id === used?.model) ?? fits[0] ?? site.models[0])?.id;
}
