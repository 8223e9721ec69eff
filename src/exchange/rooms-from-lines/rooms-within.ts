import { distinct, type Metres, type Piece, type Point, say } from "#engine";
import { boxOf, inPiece, pieceArea, pieceWidth, regionArea, remainderOf, sharedOf } from "../region.ts";
import { boxSearch } from "./box-index.ts";
import type { FoundOpening, FoundPlan, FoundRoom } from "./found.ts";

type Found = Omit<FoundPlan, "layers">;

/** A face that holds rooms of another choice is at least this many times as large as the largest of them. */
const LARGER = 1.5;
/** A room lies within another one when this share of it does. */
const WITHIN = 0.97;
/** Rooms of another choice fill a face that they replace by this share; else they may be niches along a corridor. */
const COVERED = 0.3;
/** Smaller faces of another choice are cupboards, tiles and letters. [m²] */
const LEAST = 5;

/**
 * Rooms of another choice of layers in place of a face that holds two of them at least: what one choice leaves open, another one parts.
 *
 * @param best - Rooms of the best choice. @param others - Those of the other choices, the most trusted first.
 * @returns The rooms of the best choice, those that hold others replaced; openings follow.
 */
export function withRoomsWithin(best: Found, others: readonly Found[]): Found {
  return others.reduce(parted, best);
}

function parted(found: Found, other: Found): Found {
  const near = boxSearch(other.rooms.map(({ outline }) => boxOf(outline)));
  const taken = new Set<number>();
  const replaced = new Map<number, readonly number[]>();
  found.rooms.forEach((room, index) => {
    const whole: Piece = { outline: room.outline, holes: room.holes };
    const inner = near(boxOf(room.outline)).filter((number) => {
      const one = other.rooms[number]!;
      if (taken.has(number) || one.area < LEAST || one.area * LARGER > room.area) return false;
      const piece: Piece = { outline: one.outline, holes: one.holes };
      return regionArea(sharedOf([whole], [piece])) > WITHIN * pieceArea(piece);
    });
    const covered = inner.reduce((sum, number) => sum + other.rooms[number]!.area, 0);
    if (inner.length < 2 || covered < COVERED * room.area) return;
    for (const number of inner) taken.add(number);
    replaced.set(index, inner);
  });
  if (replaced.size === 0) return found;
  const rooms: FoundRoom[] = [];
  found.rooms.forEach((room, index) => {
    const inner = replaced.get(index);
    if (inner === undefined) rooms.push(room);
    else
      rooms.push(
        ...inner.map((number) => other.rooms[number]!),
        ...leftOver(
          room,
          inner.map((number) => other.rooms[number]!),
        ),
      );
  });
  return { ...found, rooms, openings: besideRooms(found.openings, rooms) };
}

/** What is left of a room beside those within it, where people can walk: the corridor between them. */
function leftOver(room: FoundRoom, inner: readonly FoundRoom[]): readonly FoundRoom[] {
  return remainderOf([room], inner).flatMap((piece): FoundRoom[] => {
    const area = pieceArea(piece);
    if (area < LEAST || pieceWidth(piece) < WALKABLE) return [];
    const doubts = distinct([...room.doubts, say`bounded by single lines`]);
    return [{ ...piece, area, number: "", name: "", confidence: LEFT_OVER * room.confidence, doubts }];
  });
}

/** Narrower rests are what two outlines of one wall differ by. [m] */
const WALKABLE: Metres = 0.6;
/** By judgement, no source: nobody drew the outline of a rest. */
const LEFT_OVER = 0.8;

/** Openings with the rooms on both sides looked up anew. */
function besideRooms(
  openings: readonly FoundOpening[],
  rooms: readonly FoundRoom[],
): readonly FoundOpening[] {
  const near = boxSearch(rooms.map(({ outline }) => boxOf(outline)));
  const roomAt = ([x, y]: Point): number =>
    near([x, y, x, y]).find((index) =>
      inPiece([x, y], { outline: rooms[index]!.outline, holes: rooms[index]!.holes }),
    ) ?? -1;
  return openings.flatMap((opening): FoundOpening[] => {
    const { from, to, thickness, kind } = opening;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const n: Point = [-(to[1] - from[1]) / length, (to[0] - from[0]) / length];
    const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    // A window lies on the face of its room, the others in the middle of their wall.
    const off = kind === "window" ? 0.1 : thickness / 2 + 0.15;
    const sides = [
      roomAt([x + off * n[0], y + off * n[1]]),
      roomAt([x - off * n[0], y - off * n[1]]),
    ] as const;
    return sides[0] === sides[1] ? [] : [{ ...opening, rooms: sides }];
  });
}
