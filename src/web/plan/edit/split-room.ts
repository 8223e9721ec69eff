import {
  areaOf,
  difference,
  intersection,
  type Metres,
  type Opening,
  type Outline,
  type Piece,
  type Point,
  type Region,
  type Room,
  regionOf,
  revealOf,
  type Site,
} from "#engine";
import type { EditStep, RecordKind } from "../../contract.ts";
import { recordOf } from "../pick.ts";
import { insideRing, nearestOn } from "../shapes.ts";
import { standing } from "./motion.ts";
import { asDrawn, leastOf, toPiece, toRim } from "./rims.ts";
import { placedKinds } from "./selected.ts";
import { putStep, setStep } from "./steps.ts";

export type SplitRoom =
  | { readonly steps: readonly EditStep[]; readonly rooms: readonly string[] }
  /** "across": the line does not part the floor; "opening": the wall would end in a door or window. */
  | { readonly refused: "across" | "opening" };

/** Less floor than this is no room but a niche that the wall fills. [m²] */
const leastRoom = 0.05;

/** A wall without thickness is cut this thick and closed again. [m] */
const hairline: Metres = 4e-5;

/** An opening's jamb lies on the rim of its room, give or take what hands and readers round to. [m] */
const onRim: Metres = 0.05;

/**
 * Steps that part a room by a wall along a line.
 *
 * The line is drawn on at both ends to the room's outline, through holes, so that it need not be drawn to the millimetre. The
 * wall lies with half of its thickness on either side of it. The largest part stays the room that it was; the others are new
 * rooms with what lies in them, their openings and their share of barred ceiling.
 *
 * @param wall.thickness - 0 parts the floor without a wall between. [m]
 */
export function splitRoom(
  site: Site,
  id: string,
  line: { readonly from: Point; readonly to: Point },
  wall: { readonly thickness: Metres; readonly newId: (kind: RecordKind) => string },
): SplitRoom {
  const room = recordOf(site, "rooms", id);
  if (!room) return { refused: "across" };
  const parts = partsOf(room, line, wall.thickness);
  if (parts.length < 2) return { refused: "across" };
  const ids = parts.map((_, i) => (i === 0 ? id : wall.newId("rooms")));
  const doors = openingsOf(site, room, parts);
  if (doors.some(({ off }) => off > onRim)) return { refused: "opening" };
  return {
    rooms: ids,
    steps: [
      ...parts.map((part, i) => roomStep(room, part, { id: ids[i] as string, number: i })),
      ...doors.map(({ opening, part }) => openingStep(opening, id, ids[part] as string)),
      ...contentSteps(site, room, { parts, ids }),
    ],
  };
}

/** The floor on either side of the wall, the largest part first. */
function partsOf(
  room: Room,
  line: { readonly from: Point; readonly to: Point },
  thickness: Metres,
): readonly Piece[] {
  const strip = stripOf(room.outline, line, Math.max(thickness, hairline));
  if (!strip) return [];
  const left = difference(regionOf(room.outline, room.holes), regionOf(strip));
  const closed = thickness < hairline ? left.map((piece) => closedOn(piece, line)) : left;
  return [...asDrawn(closed, [room.outline, ...room.holes])]
    .filter((piece) => areaOf([piece]) > leastRoom)
    .sort((a, b) => areaOf([b]) - areaOf([a]));
}

/** The wall's own floor: the line, drawn on to the outline and a little through it, as wide as the wall. */
function stripOf(
  outline: Outline,
  { from, to }: { readonly from: Point; readonly to: Point },
  width: Metres,
): Outline | undefined {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < 1e-3) return undefined;
  const way: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const crossings = crossingsOf(outline, from, way);
  const end = insideRing(outline, to) ? crossings.find((t) => t > length - 1e-6) : length;
  const start = insideRing(outline, from) ? crossings.findLast((t) => t < 1e-6) : 0;
  if (start === undefined || end === undefined) return undefined;
  // Through a slanting wall the strip's corners need room, but must not reach the next part of the same room.
  const next = crossings.find((t) => t > end + 1e-6) ?? Infinity;
  const last = crossings.findLast((t) => t < start - 1e-6) ?? -Infinity;
  const through = 6 * width + 0.01;
  const [a, b] = [start - Math.min(through, (start - last) / 2), end + Math.min(through, (next - end) / 2)];
  const at = (along: Metres, aside: Metres): Point => [
    from[0] + way[0] * along - way[1] * aside,
    from[1] + way[1] * along + way[0] * aside,
  ];
  return [at(a, -width / 2), at(b, -width / 2), at(b, width / 2), at(a, width / 2)];
}

/** Where a line crosses a ring, counted along the line. [m], rising */
function crossingsOf(ring: Outline, from: Point, way: Point): readonly Metres[] {
  const off = ring.map(([x, y]) => (y - from[1]) * way[0] - (x - from[0]) * way[1]);
  const along = ring.map(([x, y]) => (x - from[0]) * way[0] + (y - from[1]) * way[1]);
  return ring
    .flatMap((_, i): Metres[] => {
      const j = (i + 1) % ring.length;
      const [a, b] = [off[i] as Metres, off[j] as Metres];
      if (a > 0 === b > 0) return [];
      return [(along[i] as Metres) + (a / (a - b)) * ((along[j] as Metres) - (along[i] as Metres))];
    })
    .sort((a, b) => a - b);
}

/** A piece whose corners beside the hairline lie on the line itself. */
function closedOn(piece: Piece, { from, to }: { readonly from: Point; readonly to: Point }): Piece {
  const far: [Point, Point] = [
    [from[0] - (to[0] - from[0]) * 1e4, from[1] - (to[1] - from[1]) * 1e4],
    [to[0] + (to[0] - from[0]) * 1e4, to[1] + (to[1] - from[1]) * 1e4],
  ];
  const close = (corner: Point): Point => {
    const on = nearestOn(far[0], far[1], corner);
    return Math.hypot(on[0] - corner[0], on[1] - corner[1]) < hairline ? on : corner;
  };
  return { outline: piece.outline.map(close), holes: piece.holes.map((hole) => hole.map(close)) };
}

function roomStep(room: Room, part: Piece, as: { readonly id: string; readonly number: number }): EditStep {
  const { outline, holes } = part;
  const noDevices = room.noDevices.flatMap((ring) =>
    intersection(regionOf(ring), [part]).map((piece) => piece.outline),
  );
  const shape = { outline, holes, noDevices };
  // Parted by hand the room is no longer a proposal.
  if (as.number === 0) return setStep("rooms", as.id, { ...shape, proposed: undefined });
  const { proposed: _, ...own } = room;
  const name = room.name === "" ? "" : `${room.name} ${as.number + 1}`;
  return putStep("rooms", { ...own, ...shape, id: as.id, name, number: "" });
}

/** Each opening of the room with the part on whose rim it lies, and how far off that rim its jambs are. */
function openingsOf(
  site: Site,
  room: Room,
  parts: Region,
): readonly { readonly opening: Opening; readonly part: number; readonly off: Metres }[] {
  return site.openings
    .filter(({ rooms }) => rooms.includes(room.id))
    .map((opening) => {
      const home = recordOf(site, "rooms", opening.rooms[0]);
      const [from, to] =
        opening.rooms[0] === room.id || !home ? [opening.from, opening.to] : revealOf(opening, home).far;
      const offs = parts.map((piece) => Math.max(toRim(piece, from), toRim(piece, to)));
      const before = Math.max(toRim(room, from), toRim(room, to));
      const part = leastOf(offs);
      return { opening, part, off: (offs[part] as Metres) - before };
    });
}

const openingStep = (opening: Opening, from: string, to: string): EditStep => {
  const [first, second] = opening.rooms.map((id) => (id === from ? to : id));
  return setStep("openings", opening.id, {
    rooms: [first as string, second as string | null],
    opensInto: opening.opensInto === from ? to : opening.opensInto,
  });
};

/** What stood in the room belongs to the part that it stands in; detectors elsewhere that switched the room switch all parts. */
function contentSteps(
  site: Site,
  room: Room,
  into: { readonly parts: Region; readonly ids: readonly string[] },
): EditStep[] {
  const { parts, ids } = into;
  return placedKinds.flatMap((kind): EditStep[] => {
    if (kind === "detectors")
      return site.detectors
        .filter((one) => one.room === room.id || one.controls.includes(room.id))
        .map((one) => {
          const inside = one.room === room.id;
          const own = ids[leastOf(parts.map((piece) => toPiece(piece, one.at)))] as string;
          const controls = one.controls.flatMap((id) => (id !== room.id ? [id] : inside ? [own] : ids));
          return setStep("detectors", one.id, { room: inside ? own : one.room, controls });
        });
    return site[kind]
      .filter((record) => record.room === room.id)
      .flatMap((record) => {
        const at = standing(record);
        const part = at ? leastOf(parts.map((piece) => toPiece(piece, at))) : 0;
        return part === 0 ? [] : [setStep(kind, record.id, { room: ids[part] as string })];
      });
  });
}
