// biome-ignore-all lint/a11y/useSemanticElements: of 500 rows only those in sight are in the page, which no table element can be
// biome-ignore-all lint/a11y/useFocusableInteractive: the grid itself has the focus and names the active cell
// biome-ignore-all lint/a11y/useKeyWithClickEvents: keys go to the grid, which has the focus
import { memo, type ReactNode } from "react";
import type { Room } from "#engine";
import { t } from "../../texts/rooms.ts";
import { type CellContext, columns } from "./columns.ts";

interface GridRowProps {
  readonly room: Room;
  /** From 0 among the rooms. */
  readonly index: number;
  readonly height: number;
  readonly context: CellContext;
  /** First and last selected column; -1: none of this row. */
  readonly left: number;
  readonly right: number;
  /** Column of the cell that has the keyboard; -1: in another row. */
  readonly active: number;
  /** The field of the cell that is being edited. */
  readonly field: ReactNode;
  readonly onCell: (row: number, column: number, stretch: boolean) => void;
}

export const cellId = (row: number, column: number): string => `rooms-cell-${row}-${column}`;

/** One room of the table. Drawn again only when something of it changes: 500 of them must move smoothly. */
export const GridRow = memo(function GridRow(props: GridRowProps) {
  const { room, index, height, context, left, right, active, field, onCell } = props;
  return (
    <div
      role="row"
      className={room.proposed ? "rooms-row rooms-row-proposed" : "rooms-row"}
      aria-rowindex={index + 2}
      aria-selected={left >= 0}
      style={{ transform: `translateY(${index * height}px)`, blockSize: height }}
    >
      {columns.map((column, at) => {
        const chosen = left >= 0 && at >= left && at <= right;
        return (
          <div
            key={column.key}
            id={cellId(index, at)}
            role="gridcell"
            aria-colindex={at + 1}
            aria-selected={chosen}
            {...(column.read ? {} : { "aria-readonly": true })}
            className={`rooms-cell${column.figures ? " rooms-figure" : ""}${chosen ? " rooms-chosen" : ""}${at === active ? " rooms-active" : ""}`}
            onClick={(event) => onCell(index, at, event.shiftKey)}
          >
            {at === active && field ? (
              field
            ) : (
              <span className="rooms-text">{column.shown(room, context)}</span>
            )}
            {column.key === "name" && room.proposed ? (
              <span className="rooms-proposed">{t("rooms.proposed")}</span>
            ) : null}
          </div>
        );
      })}
    </div>
  );
});
