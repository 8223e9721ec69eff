import type { Metres } from "../quantity/index.ts";
import type { Column, Watch } from "./columns.ts";
import type { DemandRow } from "./demand-rows.ts";
import { type PlaceField, placeField } from "./place-field.ts";

/** Rows by place and sort. */
export interface RowField {
  /** Puts a row in; true if it is the first of its sort. */
  readonly add: (row: DemandRow) => boolean;
  /** Numbers of the rows that a column may cover, and how far it reaches. */
  readonly near: (
    column: Column,
    watch: Watch,
  ) => { readonly farthest: Metres; readonly near: readonly number[] };
}

/**
 * An empty field of rows.
 *
 * @returns The field; rows are numbered from 0 as they come.
 * @example A hall with a thousand rows and a device that reaches 4 m: the rows round about it
 */
export function rowField(): RowField {
  const field: PlaceField = placeField();
  const sorts = new Set<string>();
  const each: DemandRow[] = [];
  return {
    add: (row) => {
      field.add(row.at);
      const sort = `${row.kind} ${row.sightHeight} ${row.doors} ${row.sound}`;
      if (sorts.has(sort)) return false;
      sorts.add(sort);
      each.push(row);
      return true;
    },
    near: (column, watch) => {
      let farthest = -1;
      for (const row of each) farthest = Math.max(farthest, watch.farthest(row));
      return { farthest, near: field.near(column.device.at, farthest) };
    },
  };
}

/** Rows that stay as they are, by place. */
export interface RowsAtHand {
  readonly rows: readonly DemandRow[];
  readonly near: RowField["near"];
}

/** Rows put into a field. @param rows - The rows. @returns They, and which of them are near a column. @example As many rows as were given */
export function rowsAtHand(rows: readonly DemandRow[]): RowsAtHand {
  const field = rowField();
  for (const row of rows) field.add(row);
  return { rows, near: field.near };
}
