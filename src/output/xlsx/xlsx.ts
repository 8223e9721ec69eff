import type { Words } from "#engine";
import { guarded } from "../csv/csv.ts";
import type { Speak } from "../words/speak.ts";

/** One sheet of a workbook: a head, and rows of words, figures and empty cells. */
export interface WorkbookSheet {
  readonly name: Words;
  readonly head: readonly { readonly title: Words; readonly width: number }[];
  readonly rows: readonly (readonly (Words | number | undefined)[])[];
}

/** Stamped on every part of a workbook, so that the same tables give the same bytes. */
const moment = new Date(2000, 0, 1);

/** Tables as a workbook of Office Open XML. Words that a spreadsheet would take for a formula are guarded as in CSV. */
export async function xlsxOf(sheets: readonly WorkbookSheet[], speak: Speak): Promise<Uint8Array> {
  // Loaded with the first workbook: most commands write none.
  const [{ default: writeWorkbook }, { unzipSync, zipSync }] = await Promise.all([
    import("write-excel-file/universal"),
    import("fflate"),
  ]);
  const cellOf = (value: Words | number | undefined) =>
    value === undefined
      ? null
      : typeof value === "number"
        ? ({ value, type: Number } as const)
        : ({ value: guarded(speak(value)), type: String } as const);
  const blob = await writeWorkbook(
    sheets.map(({ name, head, rows }) => ({
      sheet: speak(name),
      data: [
        head.map(({ title }) => ({
          value: guarded(speak(title)),
          type: String,
          fontWeight: "bold" as const,
        })),
        ...rows.map((row) => row.map(cellOf)),
      ],
      columns: head.map(({ width }) => ({ width })),
      stickyRowsCount: 1,
    })),
  ).toBlob();
  const parts = unzipSync(new Uint8Array(await blob.arrayBuffer()));
  return zipSync(
    Object.fromEntries(
      Object.entries(parts)
        .toSorted(([a], [b]) => (a < b ? -1 : 1))
        .map(([path, bytes]) => [path, [bytes, { mtime: moment, level: 6 }]]),
    ),
  );
}
