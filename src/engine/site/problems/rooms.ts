import { type Problem, say } from "../../check/index.ts";
import {
  areaOf,
  boundsOf,
  difference,
  intersection,
  type Outline,
  type Region,
  regionOf,
} from "../../geometry/index.ts";
import { linksOf } from "../connected.ts";
import { flightEdge } from "../floor.ts";
import { roomTitle, type SiteLookUp } from "../look-up.ts";
import { rounded } from "../names.ts";
import type { FloorPiece, Room } from "../site.ts";
import { isUsableOutline } from "./outlines.ts";

/** Overlap of two rooms that drawing by hand leaves along a shared wall; more is a mistake. [m²] */
const OVERLAP_ALLOWED = 0.01;
/** Ceilings outside this range are asked about: lower than a door, or higher than any ceiling detector hangs. [m] */
const USUAL_HEIGHT = { least: 1.9, most: 16 };

/**
 * What is wrong with the rooms of a site and with the pieces of their floors.
 *
 * @param look - The site's records at hand.
 * @returns One problem for each fault; shapes that cannot be calculated with are left to `outlineProblems`.
 * @example A room in which no door was drawn gives "room-without-door"
 */
export function roomProblems(look: SiteLookUp): readonly Problem[] {
  const { site } = look;
  const usable = site.rooms.filter((room) => [room.outline, ...room.holes].every(isUsableOutline));
  return [
    ...site.rooms.flatMap((room) => [...heights(room), ...doors(look, room), ...temperature(room)]),
    ...usable.flatMap((room) => [
      ...holes(room),
      ...look.floorPiecesOf(room.id).flatMap((piece) => floorPiece(piece, room)),
    ]),
    ...overlaps(usable),
  ];
}

/** Floor of a room as a region: outline less holes. */
export const floorOf = (room: Room): Region => regionOf(room.outline, room.holes);

const piece = (outline: Outline): Region[number] => ({ outline, holes: [] });

function heights(room: Room): Problem[] {
  const height = room.ceilingHeight;
  const common = {
    values: { room: roomTitle(room), height: rounded(height, 2) },
    room: room.id,
    records: [room.id],
  };
  if (!(height > 0) || !Number.isFinite(height)) return [{ code: "ceiling-height-missing", ...common }];
  return height < USUAL_HEIGHT.least || height > USUAL_HEIGHT.most
    ? [{ code: "ceiling-height-unusual", ...common }]
    : [];
}

function doors(look: SiteLookUp, room: Room): Problem[] {
  if (linksOf(look, room.id).length > 0) return [];
  return [
    { code: "room-without-door", values: { room: roomTitle(room) }, room: room.id, records: [room.id] },
  ];
}

function temperature(room: Room): Problem[] {
  if (room.use !== "plant" || room.highestTemperature !== undefined) return [];
  return [
    { code: "temperature-unknown", values: { room: roomTitle(room) }, room: room.id, records: [room.id] },
  ];
}

function holes(room: Room): Problem[] {
  return room.holes
    .filter((hole) => areaOf(difference([piece(hole)], [piece(room.outline)])) > OVERLAP_ALLOWED)
    .map(() => ({
      code: "hole-outside-room",
      values: { room: roomTitle(room) },
      room: room.id,
      records: [room.id],
    }));
}

function floorPiece(part: FloorPiece, room: Room): Problem[] {
  if (!isUsableOutline(part.footprint)) return [];
  const owner = { room: room.id, records: [part.id] };
  const problems: Problem[] = [];
  if (areaOf(difference([piece(part.footprint)], [piece(room.outline)])) > OVERLAP_ALLOWED) {
    problems.push({
      code: "floor-piece-outside-room",
      values: { kind: part.kind === "flight" ? say`flight` : say`landing`, room: roomTitle(room) },
      ...owner,
    });
  }
  if (part.kind === "flight") {
    const [foot, head] = [flightEdge(part, "foot"), flightEdge(part, "head")];
    if (!(part.high > part.low) || (foot[0] === head[0] && foot[1] === head[1])) {
      problems.push({ code: "flight-does-not-rise", values: { room: roomTitle(room) }, ...owner });
    }
  }
  return problems;
}

function overlaps(rooms: readonly Room[]): Problem[] {
  const boxes = rooms.map((room) => ({ room, box: boundsOf([room.outline]), floor: floorOf(room) }));
  const problems: Problem[] = [];
  for (const [i, one] of boxes.entries()) {
    for (const other of boxes.slice(i + 1)) {
      if (one.room.storey !== other.room.storey) continue;
      if (one.box.maxX <= other.box.minX || other.box.maxX <= one.box.minX) continue;
      if (one.box.maxY <= other.box.minY || other.box.maxY <= one.box.minY) continue;
      const area = areaOf(intersection(one.floor, other.floor));
      if (area <= OVERLAP_ALLOWED) continue;
      problems.push({
        code: "rooms-overlap",
        values: { room: roomTitle(one.room), other: roomTitle(other.room), area: rounded(area, 2) },
        room: one.room.id,
        records: [one.room.id, other.room.id],
      });
    }
  }
  return problems;
}
