import type { Block, Cell } from "./table-block.ts";

/** The row of headings, above the first room. */
export const headRow = -1;

export interface GridSize {
  readonly rows: number;
  readonly columns: number;
  /** Rows that are in sight: as far as Page down goes. */
  readonly page: number;
}

/** What a key does in the table while no cell is being edited. */
export type GridDeed =
  | { readonly do: "go"; readonly block: Block }
  | { readonly do: "edit"; readonly typed: string | undefined }
  | { readonly do: "sort" | "fill" | "clear" | "undo" | "redo" | "leave" };

interface Key {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

/** Meaning of a key at a place of the table; undefined: not the table's affair, the browser may have it. */
export function gridDeed(event: Key, block: Block, size: GridSize): GridDeed | undefined {
  const { key, shiftKey } = event;
  const command = event.ctrlKey || event.metaKey;
  if (event.altKey) return undefined;
  const inHead = block.to.row === headRow;
  if (command) {
    switch (key.toLowerCase()) {
      case "d":
        return inHead ? undefined : { do: "fill" };
      case "z":
        return { do: shiftKey ? "redo" : "undo" };
      case "y":
        return { do: "redo" };
      case "a":
        return {
          do: "go",
          block: { from: { row: 0, column: 0 }, to: { row: size.rows - 1, column: size.columns - 1 } },
        };
    }
  }
  const to = target(event, block.to, size);
  if (to !== undefined) {
    const stretch = shiftKey && key !== "Tab" && to.row !== headRow && !inHead;
    return { do: "go", block: { from: stretch ? block.from : to, to } };
  }
  switch (key) {
    case "Enter":
    case "F2":
      return inHead ? { do: "sort" } : { do: "edit", typed: undefined };
    case "Escape":
      return isOne(block) ? { do: "leave" } : { do: "go", block: { from: block.to, to: block.to } };
    case "Delete":
    case "Backspace":
      return inHead ? undefined : { do: "clear" };
    case " ":
      return inHead ? { do: "sort" } : { do: "edit", typed: "" };
  }
  return [...key].length === 1 && !command && !inHead ? { do: "edit", typed: key } : undefined;
}

/** Where a key leads to; Tab at the end of a row leads out of the table, so that nobody is caught in it. */
function target({ key, shiftKey, ctrlKey, metaKey }: Key, at: Cell, size: GridSize): Cell | undefined {
  const far = ctrlKey || metaKey;
  const last = { row: size.rows - 1, column: size.columns - 1 };
  const cell = (row: number, column: number): Cell => ({
    row: Math.min(last.row, Math.max(headRow, row)),
    column: Math.min(last.column, Math.max(0, column)),
  });
  switch (key) {
    case "ArrowUp":
      return cell(far ? Math.min(0, at.row) : at.row - 1, at.column);
    case "ArrowDown":
      return cell(far ? last.row : at.row + 1, at.column);
    case "ArrowLeft":
      return cell(at.row, far ? 0 : at.column - 1);
    case "ArrowRight":
      return cell(at.row, far ? last.column : at.column + 1);
    case "PageUp":
      return cell(Math.max(0, at.row - size.page), at.column);
    case "PageDown":
      return cell(at.row + size.page, at.column);
    case "Home":
      return cell(far ? 0 : at.row, 0);
    case "End":
      return cell(far ? last.row : at.row, last.column);
    case "Tab": {
      const column = at.column + (shiftKey ? -1 : 1);
      return column < 0 || column > last.column ? undefined : cell(at.row, column);
    }
  }
  return undefined;
}

export const isOne = ({ from, to }: Block): boolean => from.row === to.row && from.column === to.column;

/** The block where rows went or came: still inside the table. */
export function within({ from, to }: Block, rows: number): Block {
  const held = (cell: Cell): Cell => ({ ...cell, row: Math.max(headRow, Math.min(rows - 1, cell.row)) });
  return { from: held(from), to: held(to) };
}
