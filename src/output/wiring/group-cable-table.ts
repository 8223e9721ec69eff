import { broken } from "../drawing/lettering.ts";
import type { Mark, Millimetres } from "../drawing/mark.ts";
import { rowHeight, tableMarks } from "../setting-out/table.ts";
import type { Speak } from "../words/speak.ts";
import { groupCableColumns, groupCableRows } from "./cable-rows.ts";
import type { GroupPlan, WiringPlan } from "./plan.ts";

/** The cables of a group under its drawing, as many as there is room for; the schedule has them all. */
export function cableTable(
  { plan, group, speak }: { readonly plan: WiringPlan; readonly group: GroupPlan; readonly speak: Speak },
  at: { readonly left: Millimetres; readonly top: Millimetres; readonly bottom: Millimetres },
): readonly Mark[] {
  const rows = groupCableRows(group, plan.names, group.supply.region).flatMap(overLines);
  const fits = Math.floor((at.bottom - at.top - 6.4) / rowHeight);
  if (rows.length === 0 || fits < 1) return [];
  const shown =
    rows.length > fits
      ? [...rows.slice(0, fits - 1), ["more", "", "see the cable schedule", "", "", ""]]
      : rows;
  return tableMarks([at.left, at.top], { columns: groupCableColumns, rows: shown, speak });
}

/** A row whose names or conductors are longer than their column goes on in lines without a first cell. */
function overLines(row: readonly string[]): readonly (readonly string[])[] {
  const [cable = "", from = "", to = "", conductors = "", ...figures] = row;
  const cell = (text: string, column: 2 | 3): readonly string[] =>
    broken(text, groupCableColumns[column]!.width - 3, 2.5);
  const [names, wires] = [cell(to, 2), cell(conductors, 3)];
  return Array.from({ length: Math.max(1, names.length, wires.length) }, (_, i) => [
    ...(i === 0 ? [cable, from] : ["", ""]),
    names[i] ?? "",
    wires[i] ?? "",
    ...(i === 0 ? figures : figures.map(() => "")),
  ]);
}
