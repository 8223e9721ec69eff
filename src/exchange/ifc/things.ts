import {
  type DwellPlace,
  english,
  type Interference,
  type Metres,
  type Obstacle,
  type Outline,
  type Piece,
  type Point,
  type Problem,
  planningDefaults,
  type Said,
  say,
} from "#engine";
import type { Identities } from "../identities.ts";
import { type Box, boxOf, distanceToSegment, inPiece, pieceArea, ringArea, sharedOf } from "../region.ts";
import { tidy } from "../tidy.ts";
import { type Footprint, fewerCorners, footprintBook } from "./footprint.ts";
import type { ElementMesh } from "./kernel.ts";
import type { LeftOutList } from "./left-out.ts";
import type { ReadLimits } from "./limits.ts";
import { type IfcModel, textOf } from "./model.ts";
import { boxAround } from "./plan-box.ts";
import { type Relations, typeNameOf } from "./relations.ts";
import type { ReadRoom } from "./rooms.ts";
import { isSwitch, standsOnFloor, type ThingKind, thingKind } from "./thing-kinds.ts";

export interface ThingContext {
  readonly model: IfcModel;
  readonly relations: Relations;
  readonly rooms: readonly ReadRoom[];
  readonly identities: Identities;
  readonly leftOut: LeftOutList;
  readonly notes: Problem[];
  readonly limits: ReadLimits;
}

export interface ReadThings {
  readonly obstacles: readonly Obstacle[];
  readonly dwellPlaces: readonly DwellPlace[];
  readonly interference: readonly Interference[];
}

/** Types of elements that may stand or hang in a room. */
export const thingTypes: readonly string[] = [
  "IFCFURNISHINGELEMENT",
  "IFCFURNITURE",
  "IFCSYSTEMFURNITUREELEMENT",
  "IFCCOLUMN",
  "IFCCOLUMNSTANDARDCASE",
  "IFCBEAM",
  "IFCBEAMSTANDARDCASE",
  "IFCSANITARYTERMINAL",
  "IFCSPACEHEATER",
  "IFCELECTRICAPPLIANCE",
  "IFCENERGYCONVERSIONDEVICE",
  "IFCTRANSPORTELEMENT",
  "IFCBUILDINGELEMENTPROXY",
  "IFCDUCTSEGMENT",
];

/** Instance names of the things, flow terminals that stand on the floor among them; the others are left out with the reason. */
export function thingsOf(model: IfcModel, relations: Relations, leftOut: LeftOutList): readonly number[] {
  const terminals = model.ids("IFCFLOWTERMINAL").filter((id) => {
    if (model.type(relations.typeOf.get(id) ?? -1) === "IFCLIGHTFIXTURETYPE") return false;
    if (/SANITARYTERMINALTYPE/.test(model.type(relations.typeOf.get(id) ?? -1))) return true;
    const names = namesOf(model, relations, id);
    if (!isSwitch(names) && standsOnFloor(names)) return true;
    leftOut.add(
      textOf(model.values(id)[2]).split(":")[0] || say`terminal without a name`,
      say`a terminal that neither hides nor disturbs`,
    );
    return false;
  });
  return [...model.ids(...thingTypes), ...terminals];
}

/** All names that the file gives a thing: its own, its object type, its type's. */
export const namesOf = (model: IfcModel, relations: Relations, id: number): string =>
  [textOf(model.values(id)[2]), textOf(model.values(id)[4]), typeNameOf(model, relations, id)]
    .join(" ")
    .trim();

/** Obstacles, dwell places and sources of disturbance, each in the room it stands in. Plan coordinates are still the file's own. */
export function readThings(
  things: readonly number[],
  meshes: ReadonlyMap<number, ElementMesh>,
  context: ThingContext,
): ReadThings {
  const book = { ...context, footprintOf: footprintBook(context.limits.obstacleCorners) };
  const found = things.map((id) => readThing(id, meshes.get(id), book));
  const dwellPlaces = withoutDoubleSeats(found.flatMap((each) => each.dwellPlaces));
  if (dwellPlaces.length > 0)
    context.notes.push({ code: "ifc-dwell-guessed", values: { count: dwellPlaces.length } });
  return {
    obstacles: found.flatMap((each) => each.obstacles),
    dwellPlaces,
    interference: found.flatMap((each) => each.interference),
  };
}

const none: ReadThings = { obstacles: [], dwellPlaces: [], interference: [] };

function readThing(
  id: number,
  mesh: ElementMesh | undefined,
  context: ThingContext & { readonly footprintOf: (mesh: ElementMesh) => Footprint | undefined },
): ReadThings {
  const { model, relations, leftOut } = context;
  const type = model.type(id);
  const names = namesOf(model, relations, id);
  const kind = thingKind(names, type);
  const what = trade(type, kind);
  const footprint = mesh && context.footprintOf(mesh);
  if (!footprint) {
    leftOut.add(what, say`it has no shape`);
    return none;
  }
  const through =
    kind.obstacle === "column" ||
    kind.obstacle === "beam" ||
    kind.obstacle === "duct" ||
    kind.obstacle === "partition";
  const places = placesOf(footprint, context.rooms, through ? "every room" : "one room");
  if (places.length === 0) {
    leftOut.add(what, say`it stands in no room`);
    return none;
  }
  const kept = places.filter(
    (place) => place.top - place.base > flatThing && place.base < place.room.room.ceilingHeight - flatThing,
  );
  if (kept.length === 0) {
    leftOut.add(what, say`it lies flat on the floor or above the ceiling`);
    return none;
  }
  const thing: Thing = { id, kind, name: textOf(model.values(id)[2]) || names || english(what) };
  return {
    obstacles: kind.obstacle ? kept.map((place, i) => obstacle(thing, place, { context, part: i })) : [],
    dwellPlaces: kind.dwell ? [dwellPlace(thing, kept[0]!, context)] : [],
    interference: kind.interference ? [interference(thing, kept[0]!, context)] : [],
  };
}

/** Thinner than this it hides nobody: a rug, a mat, a strip. [m] */
const flatThing = 0.05;

interface Thing {
  readonly id: number;
  readonly kind: ThingKind;
  readonly name: string;
}

interface Place {
  readonly room: ReadRoom;
  readonly outline: Outline;
  readonly area: number;
  /** Above the room's floor. [m] */
  readonly base: Metres;
  readonly top: Metres;
}

/** Where a footprint lies, cut at the rooms' outlines, largest part first. */
const placesOf = (
  footprint: Footprint,
  rooms: readonly ReadRoom[],
  spread: "one room" | "every room",
): readonly Place[] => {
  const places: Place[] = [];
  for (const outline of footprint.outlines) {
    const [x1, y1, x2, y2] = boxOf(outline);
    const whole = Math.abs(ringArea(outline));
    for (const room of rooms) {
      const { box } = room;
      if (x1 >= box[2] || x2 <= box[0] || y1 >= box[3] || y2 <= box[1]) continue;
      const base = Math.max(0, footprint.low - room.level);
      const top = Math.min(room.room.ceilingHeight, footprint.high - room.level);
      if (!(top - base > 0.01)) continue;
      if (whollyIn(outline, [x1, y1, x2, y2], room.piece)) {
        places.push({ room, outline, area: whole, base: tidy(base), top: tidy(top) });
        continue;
      }
      for (const piece of sharedOf([{ outline, holes: [] }], [room.piece])) {
        const area = pieceArea(piece);
        if (area < Math.min(leastPart, whole / 2)) continue;
        const cut = area > 0.999 * whole ? outline : fewerCorners(piece.outline, 48);
        places.push({ room, outline: cut, area, base: tidy(base), top: tidy(top) });
      }
    }
  }
  places.sort((p, q) => q.area - p.area);
  return spread === "every room" ? places : places.filter((place) => place.room === places[0]!.room);
};

/** Whether a ring lies in a piece whose own edges all pass clear of the ring's box: nothing is left to cut. */
const whollyIn = (ring: Outline, [x1, y1, x2, y2]: Box, piece: Piece): boolean =>
  [piece.outline, ...piece.holes].every((edge) =>
    edge.every((a, i) => {
      const b = edge[(i + 1) % edge.length]!;
      return (
        (a[0] < x1 && b[0] < x1) ||
        (a[0] > x2 && b[0] > x2) ||
        (a[1] < y1 && b[1] < y1) ||
        (a[1] > y2 && b[1] > y2)
      );
    }),
  ) && inPiece(ring[0]!, piece);

/** A smaller part of a thing that reaches into a room is drawing noise. [m²] */
const leastPart = 0.005;

const obstacle = (thing: Thing, place: Place, more: { context: ThingContext; part: number }): Obstacle => ({
  id: identity(thing, more),
  room: place.room.room.id,
  kind: thing.kind.obstacle!,
  name: thing.name,
  footprint: place.outline,
  base: place.base,
  top: place.top,
  seeThrough: false,
});

const dwellPlace = (thing: Thing, place: Place, context: ThingContext): DwellPlace => ({
  id: identity(thing, { context, part: thing.kind.obstacle ? 99 : 0 }),
  room: place.room.room.id,
  kind: thing.kind.dwell!,
  at: thing.kind.dwell === "desk" ? besideDesk(place) : centroid(place.outline),
  radius: planningDefaults.seatedRadius,
});

const interference = (thing: Thing, place: Place, context: ThingContext): Interference => ({
  id: identity(thing, { context, part: 98 }),
  room: place.room.room.id,
  kind: thing.kind.interference!,
  at: centroid(place.outline),
  height: place.top,
});

const roles: Readonly<Record<number, string>> = { 98: "source", 99: "place" };

const identity = (thing: Thing, { context, part }: { context: ThingContext; part: number }): string => {
  const global = textOf(context.model.values(thing.id)[0]);
  const suffix = roles[part] ?? (part === 0 ? "" : String(part + 1));
  return context.identities.take(
    global && suffix ? `${global}-${suffix}` : global,
    `thing-${thing.id}-${part + 1}`,
    thing.name,
  );
};

/** The longer side of a desk with more room before it is where somebody sits. */
const besideDesk = (place: Place): Point => {
  const { centre, along, width } = boxAround(place.outline);
  const sides = [-1, 1].map((side): Point => {
    const off = side * (width / 2 + 0.3);
    return [tidy(centre[0] - off * along[1]), tidy(centre[1] + off * along[0])];
  });
  const inside = sides.filter((at) => inPiece(at, place.room.piece));
  inside.sort((p, q) => wallDistance(q, place.room) - wallDistance(p, place.room));
  return inside[0] ?? centroid(place.outline);
};

const wallDistance = (at: Point, room: ReadRoom): Metres =>
  Math.min(
    ...[room.piece.outline, ...room.piece.holes].flatMap((ring) =>
      ring.map((a, i) => distanceToSegment(at, a, ring[(i + 1) % ring.length]!)),
    ),
  );

/** A desk with a chair of its own needs no second place. */
const withoutDoubleSeats = (places: readonly DwellPlace[]): readonly DwellPlace[] =>
  places.filter(
    (place) =>
      place.kind !== "desk" ||
      !places.some(
        (other) => other.kind === "seat" && other.room === place.room && length(other.at, place.at) < 0.9,
      ),
  );

const length = (a: Point, b: Point): Metres => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** Centre of area of a ring. */
export const centroid = (ring: Outline): Point => {
  let [x, y, sum] = [0, 0, 0];
  const [ox, oy] = ring[0]!;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const cross = (a[0] - ox) * (b[1] - oy) - (b[0] - ox) * (a[1] - oy);
    x += cross * (a[0] - ox + b[0] - ox);
    y += cross * (a[1] - oy + b[1] - oy);
    sum += cross;
  });
  return sum === 0 ? [ox, oy] : [tidy(ox + x / (3 * sum)), tidy(oy + y / (3 * sum))];
};

const trade = (type: string, kind: ThingKind): Said => {
  if (
    kind.dwell === "wc" ||
    kind.dwell === "basin" ||
    kind.dwell === "shower" ||
    kind.dwell === "bath" ||
    /SANITARY|FLOWTERMINAL/.test(type)
  )
    return say`sanitary fitting`;
  if (/FURNI/.test(type)) return say`furniture`;
  if (
    kind.obstacle === "column" ||
    kind.obstacle === "beam" ||
    kind.obstacle === "duct" ||
    kind.obstacle === "partition"
  )
    return parts[kind.obstacle];
  return type === "IFCBUILDINGELEMENTPROXY" ? say`unnamed building part` : say`equipment`;
};

const parts = {
  column: say`column`,
  beam: say`beam`,
  duct: say`duct`,
  partition: say`partition`,
} as const;
