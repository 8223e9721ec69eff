import type { Metres, Opening, Outline, Point, Room, Site } from "#engine";
import { selfCrossing, signedArea } from "#engine";
import type { EditStep, RecordOf } from "../../contract.ts";
import { applied } from "../../jobs/apply.ts";
import { type PlacedKind, recordOf, roomAt } from "../pick.ts";
import { insideRoom } from "../shapes.ts";
import { type Face, facing, ringsOfRoom } from "./faces.ts";
import { standing, toRoom } from "./motion.ts";
import { mappedFields, shiftBy } from "./plan-map.ts";
import { placedKinds } from "./selected.ts";
import { setStep } from "./steps.ts";
import { edgeOf, type Stretch, withMoved } from "./stretch.ts";

/** What would be left over of a face beside the moved part goes along when it is shorter than this. [m] */
const leastRest: Metres = 0.1;

/** A room is never pressed to less floor than this. [m²] */
const leastFloor = 0.05;

/** An opening counts as in a face when it lies no further from it. [m] */
const inFace: Metres = 0.05;

/**
 * Steps that move a wall: the side of a room that is in the hand, and the faces of the rooms behind it.
 *
 * The side in the hand moves over its whole length. A face behind it moves as far as it lies behind that side:
 * - a face no longer than the side moves as a whole, so that a corridor's side takes the walls of all its rooms along;
 * - of a longer face only the part behind the side moves, and new corners join it to the rest. Where the room in the hand
 *   grows, that part is longer by the wall's thickness at either end, so that the wall is as thick round the new corner;
 * - what would be left over shorter than 10 cm goes along.
 * Openings in the moved part go along. Things stay where they are, and belong to the room that they then lie in.
 * No room is pressed together: the wall stops before one would be gone or its outline cross itself.
 */
export function movedWall(
  site: Site,
  id: string,
  change: { readonly index: number; readonly by: Metres },
): EditStep[] {
  const room = recordOf(site, "rooms", id);
  if (!room?.outline[change.index] || change.by === 0) return [];
  const side = { room, ring: 0, edge: change.index };
  const parts = partsOf(site, side, change.by);
  const by = furthest(parts, edgeOf(room.outline, change.index).way, change.by);
  return by === 0 ? [] : stepsOf(site, parts, by);
}

/** The same, but nothing at all where the wall would stop before it is where it should be. */
export function movedWallWholly(
  site: Site,
  id: string,
  change: { readonly index: number; readonly by: Metres },
): EditStep[] | undefined {
  const room = recordOf(site, "rooms", id);
  if (!room?.outline[change.index]) return undefined;
  const parts = partsOf(site, { room, ring: 0, edge: change.index }, change.by);
  const { way } = edgeOf(room.outline, change.index);
  return areSound(parts, outwards(way, change.by)) ? stepsOf(site, parts, change.by) : undefined;
}

/** What moves of one ring of a room. */
interface Part {
  readonly room: Room;
  readonly ring: number;
  readonly stretches: readonly Stretch[];
}

function partsOf(site: Site, side: Face, by: Metres): readonly Part[] {
  const { length } = edgeOf(side.room.outline, side.edge);
  const parts: Part[] = [{ ...side, stretches: [{ edge: side.edge, from: 0, to: length }] }];
  for (const face of facing(site, side)) {
    const round = by > 0 ? face.away : 0;
    const low = -round - face.from < leastRest ? face.from : -round;
    const high = face.to - (length + round) < leastRest ? face.to : length + round;
    // The face runs the other way.
    const stretch: Stretch = {
      edge: face.edge,
      from: Math.max(0, face.to - high),
      to: Math.min(face.to - face.from, face.to - low),
    };
    const known = parts.findIndex((part) => part.room.id === face.room.id && part.ring === face.ring);
    if (known < 0) parts.push({ room: face.room, ring: face.ring, stretches: [stretch] });
    else
      parts[known] = {
        ...(parts[known] as Part),
        stretches: [...(parts[known] as Part).stretches, stretch],
      };
  }
  return parts;
}

/** How far the wall can go with every room still a room: all the way, or what halving finds to the millimetre. */
function furthest(parts: readonly Part[], way: Point, wanted: Metres): Metres {
  const sound = (by: Metres): boolean => areSound(parts, outwards(way, by));
  if (sound(wanted)) return wanted;
  let [good, bad] = [0, Math.abs(wanted)];
  while (bad - good > 1e-3) {
    const half = (good + bad) / 2;
    if (sound(Math.sign(wanted) * half)) good = half;
    else bad = half;
  }
  return Math.sign(wanted) * (Math.floor(good * 1000) / 1000);
}

const areSound = (parts: readonly Part[], by: Point): boolean =>
  parts.every((part) => {
    const before = ringsOfRoom(part.room)[part.ring] ?? [];
    return isSound(withMoved(before, part.stretches, by), before);
  });

function isSound(ring: Outline, before: Outline): boolean {
  const [now, then] = [signedArea(ring), signedArea(before)];
  return ring.length >= 3 && now * Math.sign(then) > leastFloor && selfCrossing(ring) === undefined;
}

const outwards = (way: Point, by: Metres): Point => [way[1] * by, -way[0] * by];

function stepsOf(site: Site, parts: readonly Part[], by: Metres): EditStep[] {
  const first = parts[0] as Part;
  const { way } = edgeOf(first.room.outline, (first.stretches[0] as Stretch).edge);
  const vector = outwards(way, by);
  const rooms = [...new Set(parts.map(({ room }) => room))].map((room) => {
    const rings = ringsOfRoom(room).map((ring, number) => {
      const part = parts.find((one) => one.room === room && one.ring === number);
      return part ? withMoved(ring, part.stretches, vector) : ring;
    });
    return setStep("rooms", room.id, { outline: rings[0] as Outline, holes: rings.slice(1) });
  });
  const openings = site.openings
    .filter((opening) => parts.some((part) => isIn(part, opening)))
    .map((opening) => setStep("openings", opening.id, mappedFields("openings", opening, shiftBy(vector))));
  return [...rooms, ...openings, ...resettled(site, applied(site, rooms), parts)];
}

/** Whether an opening lies in what moves of a room. */
function isIn({ room, ring, stretches }: Part, opening: Opening): boolean {
  if (!opening.rooms.includes(room.id)) return false;
  const corners = ringsOfRoom(room)[ring] ?? [];
  const second = opening.rooms[0] !== room.id;
  return stretches.some((stretch) => {
    const a = corners[stretch.edge] as Point;
    const { way } = edgeOf(corners, stretch.edge);
    return [opening.from, opening.to].every(([x, y]) => {
      const along = (x - a[0]) * way[0] + (y - a[1]) * way[1];
      const away = (x - a[0]) * way[1] - (y - a[1]) * way[0];
      // On the face of its first room an opening is a wall's thickness from the face of its second.
      const off = second ? Math.min(Math.abs(away), Math.abs(away - opening.thickness)) : Math.abs(away);
      return off < inFace && along > stretch.from - inFace && along < stretch.to + inFace;
    });
  });
}

/** Things that the wall has passed over belong to the room on its other side. */
function resettled(before: Site, after: Site, parts: readonly Part[]): EditStep[] {
  const rooms = new Map(parts.map(({ room }) => [room.id, recordOf(after, "rooms", room.id) as Room]));
  return placedKinds.flatMap((kind) =>
    (before[kind] as readonly RecordOf<PlacedKind>[]).flatMap((record): EditStep[] => {
      const room = rooms.get(record.room);
      const at = room && standing(record);
      if (!room || !at || insideRoom(room, at)) return [];
      const other = roomAt(after, room.storey, at);
      return other ? [setStep(kind, record.id, toRoom(record, other.id) as never)] : [];
    }),
  );
}
