import type { Matrix } from "../plan/page/matrix.ts";
import type { Stroke } from "./stroke.ts";

/** What an entity puts into its block or into the drawing. Coordinates of the block. */
export type Item = StrokeItem | TextItem | InsertItem;

export interface StrokeItem {
  readonly kind: "stroke";
  readonly stroke: Stroke;
  readonly layer: string;
  /** The outline of a hatch, which is kept apart from the lines of the same layer. */
  readonly hatch: boolean;
}

export interface TextItem {
  readonly kind: "text";
  readonly text: string;
  /** Lower left corner of the first letter. */
  readonly x: number;
  readonly y: number;
  readonly height: number;
  /** Direction of the line of text, of length 1. */
  readonly along: readonly [number, number];
  /** Upwards, of length 1: text may be mirrored. */
  readonly up: readonly [number, number];
  readonly layer: string;
}

export interface InsertItem {
  readonly kind: "insert";
  readonly block: string;
  /** Turns and moves the block's plane to where it is put, without scale. */
  readonly placing: Matrix;
  readonly scale: readonly [number, number];
  readonly columns: number;
  readonly rows: number;
  /** Distances of columns and rows, along the turned axes. */
  readonly spacing: readonly [number, number];
  readonly attributes: Readonly<Record<string, string>>;
  readonly layer: string;
}

/** Coordinates farther out are no plan's; doubles could not tell their millimetres either. */
export const farthest = 1e12;

/** Whether a coordinate is a number that a plan can have. */
export const isPlace = (value: number): boolean => Math.abs(value) <= farthest;

/** Whether all points of a stroke are places. */
export function allPlaces(values: ArrayLike<number>): boolean {
  for (let i = 0; i < values.length; i++) if (!(Math.abs(values[i]!) <= farthest)) return false;
  return true;
}
