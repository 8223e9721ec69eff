import { say } from "#engine";
import { broken } from "../drawing/lettering.ts";
import type { Mark, Millimetres } from "../drawing/mark.ts";
import { cellEdges, fittedColumns } from "../setting-out/fitted-columns.ts";
import { type Column, rowHeight, tableMarks } from "../setting-out/table.ts";
import type { Speak } from "../words/speak.ts";
import { groupCableColumns, groupCableRows } from "./cable-rows.ts";
import type { GroupPlan, WiringPlan } from "./plan.ts";

/** The cables of a group under its drawing, as many as there is room for; the schedule has them all. */
export function cableTable(
  { plan, group, speak }: { readonly plan: WiringPlan; readonly group: GroupPlan; readonly speak: Speak },
  at: { readonly left: Millimetres; readonly top: Millimetres; readonly bottom: Millimetres },
): readonly Mark[] {
  const cells = groupCableRows(group, plan.names, group.supply.region).map((row) => row.map(speak));
  const columns = fittedColumns(groupCableColumns, cells, speak);
  const rows = cells.flatMap((row) => overLines(row, columns));
  const fits = Math.floor((at.bottom - at.top - 6.4) / rowHeight);
  if (rows.length === 0 || fits < 1) return [];
  const shown =
    rows.length > fits
      ? [...rows.slice(0, fits - 1), [say`more`, "", say`see the cable schedule`, "", "", ""]]
      : rows;
  return tableMarks([at.left, at.top], { columns, rows: shown, speak });
}

/** A row whose names or conductors are longer than their column goes on in lines without a first cell. */
function overLines(row: readonly string[], columns: readonly Column[]): readonly (readonly string[])[] {
  const [cable = "", from = "", to = "", conductors = "", ...figures] = row;
  const cell = (text: string, column: 2 | 3): readonly string[] =>
    broken(text, columns[column]!.width - cellEdges, 2.5);
  const [names, wires] = [cell(to, 2), cell(conductors, 3)];
  return Array.from({ length: Math.max(1, names.length, wires.length) }, (_, i) => [
    ...(i === 0 ? [cable, from] : ["", ""]),
    names[i] ?? "",
    wires[i] ?? "",
    ...(i === 0 ? figures : figures.map(() => "")),
  ]);
}
