import type { Opening, Outline, Point, Radians, Site } from "#engine";
import type { EditStep, RecordRef } from "../../contract.ts";
import { applied } from "../../jobs/apply.ts";
import { recordOf, roomAt } from "../pick.ts";
import { insideRoom, middleOf } from "../shapes.ts";
import { relinked, seenFromSecond } from "./openings.ts";
import { type MirrorWay, mapped, mappedFields, mirrorIn, type PlanMap, turnAbout } from "./plan-map.ts";
import { boundsOfWhole, middleOfBounds, type Whole, wholeOf } from "./selected.ts";
import { setStep } from "./steps.ts";

/** Steps that mirror a selection about its own middle, rooms with all that is in them. */
export function mirrorSteps(site: Site, refs: readonly RecordRef[], way: MirrorWay): EditStep[] {
  const whole = wholeOf(site, refs);
  const bounds = boundsOfWhole(site, whole);
  if (!bounds) return [];
  const map = mirrorIn(middleOfBounds(bounds), way);
  return [...motionSteps(site, whole, map), ...rehung(whole, way)];
}

/** Steps that turn a selection counter-clockwise about its own middle, rooms with all that is in them. */
export function rotateSteps(site: Site, refs: readonly RecordRef[], by: Radians): EditStep[] {
  const whole = wholeOf(site, refs);
  const bounds = boundsOfWhole(site, whole);
  return bounds ? motionSteps(site, whole, turnAbout(middleOfBounds(bounds), by)) : [];
}

/**
 * Steps that carry a selection along with a motion of the plane. Things that were chosen themselves get the room that they
 * come to lie in; openings go with their rooms, and lead to whatever then lies behind their wall.
 */
export function motionSteps(site: Site, whole: Whole, map: PlanMap): EditStep[] {
  const moved = new Set(whole.rooms.map(({ id }) => id));
  const rooms = whole.rooms.map((room) => setStep("rooms", room.id, mappedFields("rooms", room, map)));
  const between = applied(site, rooms);
  const placed = whole.placed.flatMap(({ kind, id }): EditStep[] => {
    const record = recordOf(site, kind, id);
    if (!record) return [];
    const fields = mappedFields(kind, record, map);
    const own = recordOf(site, "rooms", record.room);
    if (!own || moved.has(own.id)) return [setStep(kind, id, fields)];
    const at = standing(fields);
    const other = at && !insideRoom(own, at) ? roomAt(between, own.storey, at) : undefined;
    return [setStep(kind, id, { ...fields, ...(other ? toRoom(record, other.id) : {}) })];
  });
  const openings = whole.openings
    .filter(({ rooms: both }) => both.some((id) => id !== null && moved.has(id)))
    .map((opening) => {
      const next = carried(site, opening, moved, map);
      const both = next.rooms.every((id) => id !== null && moved.has(id));
      const { id, ...fields } = both ? next : relinked(between, next);
      return setStep("openings", id, fields);
    });
  return [...rooms, ...placed, ...openings];
}

/** A thing given to another room. A detector that switched its own room alone switches the new one. */
export function toRoom(
  record: { readonly room: string; readonly controls?: readonly string[] },
  room: string,
): { readonly room: string; readonly controls?: readonly string[] } {
  const alone = record.controls?.length === 1 && record.controls[0] === record.room;
  return alone ? { room, controls: [room] } : { room };
}

/** Where a thing stands: its place, or the middle of its footprint. */
export function standing(thing: { readonly at?: Point; readonly footprint?: Outline }): Point | undefined {
  return thing.at ?? (thing.footprint && middleOf(thing.footprint));
}

/** An opening moved with its rooms, standing on the face of one that moved. */
function carried(site: Site, opening: Opening, moved: ReadonlySet<string>, map: PlanMap): Opening {
  const own = moved.has(opening.rooms[0]) ? opening : seenFromSecond(site, opening);
  return mapped("openings", own, map);
}

/** A door that is mirrored without its room stays in its wall and is hung on the other jamb, if it lies along the way of mirroring. */
function rehung(whole: Whole, way: MirrorWay): EditStep[] {
  const moved = new Set(whole.rooms.map(({ id }) => id));
  return whole.openings.flatMap((opening): EditStep[] => {
    if (opening.rooms.some((id) => id !== null && moved.has(id))) return [];
    const [dx, dy] = [opening.to[0] - opening.from[0], opening.to[1] - opening.from[1]];
    const along = way === "across" ? Math.abs(dx) >= Math.abs(dy) : Math.abs(dy) > Math.abs(dx);
    return along
      ? [setStep("openings", opening.id, { hinge: opening.hinge === "from" ? "to" : "from" })]
      : [];
  });
}
