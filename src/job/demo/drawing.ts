import type { RecordInputs } from "../schema/job-file.ts";

/** Records of one part of the demo building, as a hand would write them. */
export type Drawn = { readonly [Kind in keyof RecordInputs]?: readonly RecordInputs[Kind][] };

/** A rectangle by two opposite corners. [m] */
export const box = (left: number, bottom: number, right: number, top: number): [number, number][] => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];

export const partition = 0.12;
export const outerWall = 0.3;

/** Centre of a tile, columns from the left and rows from below. [m] */
export const tileCentre = (
  room: { readonly left: number; readonly bottom: number },
  column: number,
  row: number,
): [number, number] => [settled(room.left + (column + 0.5) * 0.6), settled(room.bottom + (row + 0.5) * 0.6)];

export const tiles = (left: number, bottom: number): NonNullable<RecordInputs["rooms"]["ceilingGrid"]> => ({
  tile: [0.6, 0.6],
  origin: [left, bottom],
  turn: 0,
});

/** Square luminaires let into the ceiling, one id after the other. */
export const panels = (
  room: string,
  height: number,
  places: readonly [number, number][],
): readonly RecordInputs["luminaires"][] =>
  places.map((at, index) => ({
    id: `${room}-panel-${index + 1}`,
    room,
    name: "LED panel",
    at,
    height,
    mounting: "flush",
    length: 0.6,
    width: 0.6,
  }));

/** Long luminaires under the ceiling. */
export const battens = (
  room: string,
  height: number,
  places: readonly [number, number][],
  turn = 0,
): readonly RecordInputs["luminaires"][] =>
  places.map((at, index) => ({
    id: `${room}-batten-${index + 1}`,
    room,
    name: "LED batten",
    at,
    height,
    mounting: "surface",
    length: 1.2,
    width: 0.1,
    turn,
  }));

/** Several dwell places of one kind. */
export const dwell = (
  room: string,
  kind: RecordInputs["dwellPlaces"]["kind"],
  radius: number,
  places: readonly [number, number][],
): readonly RecordInputs["dwellPlaces"][] =>
  places.map((at, index) => ({ id: `${room}-${kind}-${index + 1}`, room, kind, at, radius }));

const settled = (value: number): number => Math.round(value * 1000) / 1000;
