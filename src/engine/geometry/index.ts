export type { Outline, Piece, Point, Region } from "./shapes.ts";
