import type { Metres } from "../quantity/index.ts";

/** A place in the plan, x right and y up. [m] */
export type Point = readonly [x: Metres, y: Metres];

/** A closed ring; the first point is not repeated. Outer rings run counter-clockwise, holes clockwise. [m] */
export type Outline = readonly Point[];

/** One connected piece of plane: an outer ring and its holes. */
export interface Piece {
  readonly outline: Outline;
  readonly holes: readonly Outline[];
}

/** Any part of the plane: pieces that do not overlap. Empty list: nothing. */
export type Region = readonly Piece[];
