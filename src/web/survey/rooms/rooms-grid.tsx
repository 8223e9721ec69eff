// biome-ignore-all lint/a11y/useSemanticElements: of 500 rows only those in sight are in the page, which no table element can be
// biome-ignore-all lint/a11y/useFocusableInteractive: the grid itself has the focus and names the active cell
// biome-ignore-all lint/a11y/useKeyWithClickEvents: keys go to the grid, which has the focus
import { type KeyboardEvent, type ReactNode, useCallback, useLayoutEffect, useRef, useState } from "react";
import type { Room } from "#engine";
import type { OpenJob } from "../../contract.ts";
import { t } from "../../texts/rooms.ts";
import { CellField } from "./cell-field.tsx";
import { type CellContext, columns } from "./columns.ts";
import { gridDeed, headRow, within } from "./grid-keys.ts";
import { cellId, GridRow } from "./grid-row.tsx";
import { withDoors } from "./storey-doors.ts";
import {
  type Block,
  type BlockChange,
  type Cell,
  cellChange,
  cleared,
  copied,
  edges,
  filledDown,
  pasted,
} from "./table-block.ts";

interface RoomsGridProps {
  readonly job: OpenJob;
  /** In the order in which they are shown. */
  readonly rooms: readonly Room[];
  readonly context: CellContext;
  readonly sort: { readonly column: number; readonly down: boolean } | undefined;
  readonly block: Block;
  readonly onBlock: (block: Block) => void;
  readonly onSort: (column: number) => void;
  readonly onTroubles: (troubles: readonly string[]) => void;
  readonly onLeave: () => void;
}

/** Rows drawn above and below those in sight, so that none is missing while one scrolls. */
const beyondSight = 6;

/** The rooms as a table that works like a spreadsheet: arrows, typing, filling down, copying and pasting. */
export function RoomsGrid(props: RoomsGridProps) {
  const { job, rooms, context, sort, block, onBlock, onSort, onTroubles, onLeave } = props;
  const grid = useRef<HTMLDivElement>(null);
  const [rowHeight] = useState(() => (matchMedia("(pointer: coarse)").matches ? 48 : 44));
  const [seen, setSeen] = useState({ first: 0, count: 16 });
  const [editing, setEditing] = useState<{ readonly cell: Cell; readonly start: string } | undefined>();
  const [wrong, setWrong] = useState(false);
  /** The field loses the keyboard when it is done with: what it then hands over is not to count again. */
  const live = useRef(false);
  /** Column where a run of Tabs began: Enter goes back to it, as when one fills in a form row by row. */
  const tabbed = useRef<number | undefined>(undefined);

  const look = useCallback((): void => {
    const element = grid.current;
    if (!element) return;
    const first = Math.floor(element.scrollTop / rowHeight);
    const count = Math.ceil(element.clientHeight / rowHeight);
    setSeen((now) => (now.first === first && now.count === count ? now : { first, count }));
  }, [rowHeight]);
  useLayoutEffect(() => {
    look();
    const watch = new ResizeObserver(look);
    if (grid.current) watch.observe(grid.current);
    return () => watch.disconnect();
  }, [look]);

  const at = within(block, rooms.length);
  // biome-ignore lint/correctness/useExhaustiveDependencies: follows the cell that has the keyboard, not the scrolling of a hand
  useLayoutEffect(() => {
    const element = grid.current;
    if (!element || at.to.row < 0) return;
    const [top, bottom] = [at.to.row * rowHeight, (at.to.row + 1) * rowHeight];
    // The row of headings lies over the first row in sight.
    if (top < element.scrollTop) element.scrollTop = top;
    else if (bottom + rowHeight > element.scrollTop + element.clientHeight)
      element.scrollTop = bottom + rowHeight - element.clientHeight;
    look();
  }, [at.to.row, at.to.column]);

  const go = (next: Block): void => {
    live.current = false;
    setEditing(undefined);
    setWrong(false);
    onTroubles([]);
    onBlock(within(next, rooms.length));
  };
  const goTo = (cell: Cell): void => go({ from: cell, to: cell });
  const change = (name: string, made: BlockChange): boolean => {
    if ("troubles" in made) {
      onTroubles(made.troubles);
      return false;
    }
    onTroubles([]);
    if (made.steps.length > 0) job.edit(name, withDoors(job.site, made.steps));
    return true;
  };
  const edit = (typed: string | undefined): void => {
    const room = rooms[at.to.row];
    const column = columns[at.to.column];
    if (!room || !column || job.readOnly) return;
    if (!column.read) {
      onTroubles([t("rooms.cell.calculated")]);
      return;
    }
    onBlock({ from: at.to, to: at.to });
    setWrong(false);
    live.current = true;
    setEditing({ cell: at.to, start: typed ?? column.shown(room, context) });
  };
  const finish = (typed: string, move: readonly [number, number] | "left"): void => {
    if (!editing || !live.current) return;
    const made = cellChange(typed, rooms, { cell: editing.cell, context });
    if (!change("rooms.edit.cell", made)) {
      setWrong(true);
      return;
    }
    live.current = false;
    setEditing(undefined);
    setWrong(false);
    if (move === "left") return;
    const [down, right] = move;
    const column = down !== 0 && tabbed.current !== undefined ? tabbed.current : editing.cell.column + right;
    tabbed.current = right !== 0 ? (tabbed.current ?? editing.cell.column) : undefined;
    const last = columns.length - 1;
    goTo({ row: Math.max(0, editing.cell.row + down), column: Math.min(last, Math.max(0, column)) });
    grid.current?.focus({ preventScroll: true });
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (editing) return;
    const deed = gridDeed(event, at, { rows: rooms.length, columns: columns.length, page: seen.count - 2 });
    if (!deed) return;
    event.preventDefault();
    event.stopPropagation();
    if (event.key === "Tab") tabbed.current ??= at.to.column;
    else if (deed.do !== "edit") tabbed.current = undefined;
    switch (deed.do) {
      case "go":
        go(deed.block);
        break;
      case "edit":
        edit(deed.typed);
        break;
      case "sort":
        onSort(at.to.column);
        break;
      case "fill":
        if (!job.readOnly) change("rooms.edit.fill", filledDown(rooms, at, context));
        break;
      case "clear":
        if (!job.readOnly) change("rooms.edit.clear", cleared(rooms, at, context));
        break;
      case "undo":
        job.undo();
        break;
      case "redo":
        job.redo();
        break;
      case "leave":
        onLeave();
    }
  };
  const onCell = useRef((_row: number, _column: number, _stretch: boolean): void => undefined);
  onCell.current = (row, column, stretch) => {
    if (editing && editing.cell.row === row && editing.cell.column === column) return;
    if (stretch) go({ from: at.from, to: { row, column } });
    else if (at.to.row === row && at.to.column === column && at.from.row === row) edit(undefined);
    else goTo({ row, column });
  };
  const [cellTouched] = useState(
    () =>
      (row: number, column: number, stretch: boolean): void =>
        onCell.current(row, column, stretch),
  );

  const area = edges(at);
  const first = Math.max(0, seen.first - beyondSight);
  const last = Math.min(rooms.length - 1, seen.first + seen.count + beyondSight);
  const shown = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
  if (at.to.row >= 0 && (at.to.row < first || at.to.row > last)) shown.push(at.to.row);
  const field = (row: number): ReactNode =>
    editing?.cell.row === row ? (
      <CellField
        key={`${editing.cell.row} ${editing.cell.column}`}
        column={columns[editing.cell.column]!}
        context={context}
        start={editing.start}
        wrong={wrong}
        onDone={finish}
        onBack={() => {
          live.current = false;
          setEditing(undefined);
          setWrong(false);
          onTroubles([]);
          grid.current?.focus({ preventScroll: true });
        }}
      />
    ) : undefined;
  return (
    <div
      ref={grid}
      className="rooms-grid"
      role="grid"
      tabIndex={editing ? -1 : 0}
      aria-label={t("rooms.grid")}
      aria-rowcount={rooms.length + 1}
      aria-colcount={columns.length}
      aria-multiselectable="true"
      aria-readonly={job.readOnly}
      aria-activedescendant={editing ? undefined : cellId(at.to.row, at.to.column)}
      aria-describedby="rooms-grid-keys"
      onKeyDown={onKeyDown}
      onScroll={look}
      onCopy={(event) => {
        if (editing || at.to.row === headRow) return;
        event.preventDefault();
        event.clipboardData.setData("text/plain", copied(rooms, at, context));
      }}
      onPaste={(event) => {
        if (editing || at.to.row === headRow || job.readOnly) return;
        event.preventDefault();
        change(
          "rooms.edit.paste",
          pasted(event.clipboardData.getData("text/plain"), rooms, { block: at, context }),
        );
      }}
    >
      <div role="row" className="rooms-row rooms-head" aria-rowindex={1} style={{ blockSize: rowHeight }}>
        {columns.map((column, index) => (
          <div
            key={column.key}
            id={cellId(headRow, index)}
            role="columnheader"
            aria-colindex={index + 1}
            aria-sort={sort?.column === index ? (sort.down ? "descending" : "ascending") : "none"}
            className={`rooms-cell${column.figures ? " rooms-figure" : ""}${at.to.row === headRow && at.to.column === index ? " rooms-active" : ""}`}
            onClick={() => onSort(index)}
          >
            {t(`rooms.column.${column.key}`)}
            {sort?.column === index ? <span aria-hidden="true">{sort.down ? " ↓" : " ↑"}</span> : null}
          </div>
        ))}
      </div>
      <div role="rowgroup" className="rooms-body" style={{ blockSize: rooms.length * rowHeight }}>
        {shown.map((row) => {
          const room = rooms[row] as Room;
          const chosen = row >= area.top && row <= area.bottom;
          return (
            <GridRow
              key={room.id}
              room={room}
              index={row}
              height={rowHeight}
              context={context}
              left={chosen ? area.left : -1}
              right={chosen ? area.right : -1}
              active={at.to.row === row ? at.to.column : -1}
              field={field(row)}
              onCell={cellTouched}
            />
          );
        })}
      </div>
    </div>
  );
}
