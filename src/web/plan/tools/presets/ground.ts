import type { Point, Room, Site } from "#engine";
import type { EditStep, RecordKind, RecordOf, RecordRef } from "../../../contract.ts";
import { roomAt, roomsOn } from "../../pick.ts";
import { rimDistance } from "../../shapes.ts";
import type { View } from "../../view.ts";

/** What setting something down works with. */
export interface Ground {
  readonly site: Site;
  readonly storey: string;
  readonly view: View;
  readonly newId: (kind: RecordKind) => string;
}

/** The two ends of the gesture; the same place twice for a touch. */
export interface Span {
  readonly from: Point;
  readonly to: Point;
}

/** What adding came to: the steps, and the thing to select. */
export interface Added {
  readonly name: string;
  readonly steps: readonly EditStep[];
  readonly made: RecordRef;
}

/** Why a thing cannot be set down: no wall near, no room around, an opening in the way, no closed lines round it, no model to choose from. */
export interface Refusal {
  readonly refused: "wall" | "room" | "opening" | "lines" | "models";
}

/** Collects the records of one thing that is set down, the thing itself first. */
export function collected(ground: Ground): {
  readonly put: <Kind extends RecordKind>(kind: Kind, record: Omit<RecordOf<Kind>, "id">) => void;
  readonly added: () => Added | undefined;
} {
  const steps: EditStep[] = [];
  let made: RecordRef | undefined;
  return {
    put: (kind, record) => {
      const id = ground.newId(kind);
      made ??= { kind, id };
      steps.push({ do: "put", kind, record: { ...record, id } } as unknown as EditStep);
    },
    added: () => made && { name: "plan.edit.add", steps, made },
  };
}

export const millimetres = ([x, y]: Point): Point => [
  Math.round(x * 1000) / 1000,
  Math.round(y * 1000) / 1000,
];

/** The room that a gesture is about: where it began, ended or has its middle; on a wall, the room of the nearest face. */
export function roomOf({ site, storey }: Ground, { from, to }: Span): Room | undefined {
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const inside = roomAt(site, storey, from) ?? roomAt(site, storey, to) ?? roomAt(site, storey, middle);
  if (inside) return inside;
  const near = [...roomsOn(site, storey).values()]
    .map((room) => ({ room, away: rimDistance(room.outline, middle) }))
    .sort((a, b) => a.away - b.away)[0];
  return near && near.away < besideWall ? near.room : undefined;
}

/** So far off its walls a gesture is still about a room. [m] */
const besideWall = 0.15;

/** Counter-clockwise rectangle between two opposite corners. */
export function rectangle({ from, to }: Span): Point[] {
  const [left, right] = [Math.min(from[0], to[0]), Math.max(from[0], to[0])];
  const [bottom, top] = [Math.min(from[1], to[1]), Math.max(from[1], to[1])];
  return (
    [
      [left, bottom],
      [right, bottom],
      [right, top],
      [left, top],
    ] as Point[]
  ).map(millimetres);
}

/** A rectangle of usable size, also where someone only touched. */
export function atLeast({ from, to }: Span, least: number): Span {
  const grown = (a: number, b: number): number =>
    Math.abs(b - a) < least ? a + (b < a ? -least : least) : b;
  return { from, to: [grown(from[0], to[0]), grown(from[1], to[1])] };
}
