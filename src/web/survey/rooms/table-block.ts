import type { Room } from "#engine";
import type { EditStep } from "../../contract.ts";
import { t } from "../../texts/rooms.ts";
import { type CellContext, type Column, columns, type RoomFields } from "./columns.ts";

/** A place in the table as it is shown. */
export interface Cell {
  readonly row: number;
  readonly column: number;
}
/** Cells from one corner to the opposite one, both within. */
export interface Block {
  readonly from: Cell;
  readonly to: Cell;
}
/** Steps of one undo, or a sentence for each cell that hinders them. */
export type BlockChange = { readonly steps: readonly EditStep[] } | { readonly troubles: readonly string[] };

/** First and last row and column of a block, whichever corner it was drawn from. */
export const edges = ({ from, to }: Block) => ({
  top: Math.min(from.row, to.row),
  bottom: Math.max(from.row, to.row),
  left: Math.min(from.column, to.column),
  right: Math.max(from.column, to.column),
});

/** More sentences than this help nobody. */
const mostTroubles = 5;

/** The cells of a block as a spreadsheet takes them. */
export function copied(rooms: readonly Room[], block: Block, context: CellContext): string {
  const { top, bottom, left, right } = edges(block);
  return rooms
    .slice(top, bottom + 1)
    .map((room) =>
      columns
        .slice(left, right + 1)
        .map((column) => column.shown(room, context).replace(/[\t\r\n]+/g, " "))
        .join("\t"),
    )
    .join("\n");
}

/**
 * Puts a block that was copied elsewhere into the cells from the upper left of the selection on. A single value goes into
 * every selected cell. Either every cell takes its value or nothing changes.
 */
export function pasted(
  text: string,
  rooms: readonly Room[],
  at: { readonly block: Block; readonly context: CellContext },
): BlockChange {
  const rows = cellsOf(text);
  const { top, bottom, left, right } = edges(at.block);
  const single = rows.length === 1 && rows[0]!.length === 1;
  const values: Value[] = single
    ? range(top, bottom).flatMap((row) =>
        range(left, right).map((column) => ({ cell: { row, column }, typed: rows[0]![0]! })),
      )
    : rows.flatMap((cells, i) =>
        cells.map((typed, j) => ({ cell: { row: top + i, column: left + j }, typed })),
      );
  const beyond = top + rows.length - rooms.length;
  if (!single && beyond > 0) return { troubles: [t("rooms.paste.rows", { count: beyond })] };
  if (!single && values.some(({ cell }) => cell.column >= columns.length))
    return { troubles: [t("rooms.paste.columns")] };
  return changeOf(values, rooms, at.context);
}

/** Fills each column of a block with its uppermost cell; a single row takes the cells above it. */
export function filledDown(rooms: readonly Room[], block: Block, context: CellContext): BlockChange {
  const { top, bottom, left, right } = edges(block);
  const source = top === bottom ? top - 1 : top;
  const from = rooms[source];
  if (!from) return { steps: [] };
  const values = range(source + 1, bottom).flatMap((row) =>
    range(left, right)
      .filter((column) => columns[column]!.read !== undefined)
      .map((column) => ({ cell: { row, column }, typed: typedOf(columns[column]!, from, context) })),
  );
  return changeOf(values, rooms, context);
}

/** Empties what may be empty in a block: numbers, names, temperatures. */
export function cleared(rooms: readonly Room[], block: Block, context: CellContext): BlockChange {
  const { top, bottom, left, right } = edges(block);
  const values = range(top, bottom).flatMap((row) =>
    range(left, right)
      .filter((column) => ["number", "name", "highestTemperature"].includes(columns[column]!.key))
      .map((column) => ({ cell: { row, column }, typed: "" })),
  );
  return changeOf(values, rooms, context);
}

/** What is typed into one cell. */
export const cellChange = (
  typed: string,
  rooms: readonly Room[],
  at: { readonly cell: Cell; readonly context: CellContext },
): BlockChange => changeOf([{ cell: at.cell, typed }], rooms, at.context);

interface Value {
  readonly cell: Cell;
  readonly typed: string;
}

function changeOf(values: readonly Value[], rooms: readonly Room[], context: CellContext): BlockChange {
  const fields = new Map<string, RoomFields>();
  const troubles: string[] = [];
  for (const { cell, typed } of values) {
    const room = rooms[cell.row];
    const column = columns[cell.column];
    if (!room || !column) continue;
    const before = column.shown(room, context);
    // What is pasted back where it came from changes nothing, be it calculated or rounded.
    if (typed === before) continue;
    const reading = column.read?.(typed, context) ?? { trouble: t("rooms.cell.calculated") };
    if ("trouble" in reading)
      troubles.push(
        t("rooms.cell.trouble", {
          room: `${room.number} ${room.name}`.trim() || t("name.room"),
          column: t(`rooms.column.${column.key}`),
          typed: typed.slice(0, 60),
          why: reading.trouble,
        }),
      );
    else fields.set(room.id, { ...fields.get(room.id), ...reading.fields });
  }
  if (troubles.length > 0)
    return {
      troubles:
        troubles.length > mostTroubles
          ? [
              ...troubles.slice(0, mostTroubles),
              t("rooms.paste.more", { count: troubles.length - mostTroubles }),
            ]
          : troubles,
    };
  return { steps: [...fields].map(([id, change]) => setRoom(id, change)) };
}

export const setRoom = (id: string, fields: RoomFields): EditStep =>
  ({ do: "set", kind: "rooms", id, fields }) as unknown as EditStep;

/** What a cell would be typed as, without loss: a storey by its id, since two may be called the same. */
const typedOf = (column: Column, room: Room, context: CellContext): string =>
  column.key === "storey"
    ? room.storey
    : column.key === "ceilingHeight"
      ? `${room.ceilingHeight} m`
      : column.key === "highestTemperature"
        ? `${room.highestTemperature ?? ""}`
        : column.shown(room, context);

const range = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => from + i);

/** Rows and cells of a copied block: tab-separated, the last line break belongs to the last row. */
function cellsOf(text: string): readonly (readonly string[])[] {
  const lines = text.replace(/(\r\n|\r|\n)$/, "").split(/\r\n|\r|\n/);
  return lines.map((line) => line.split("\t").map((cell) => cell.trim()));
}
