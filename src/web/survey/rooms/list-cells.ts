/** What stands between the cells of a list that was copied from somewhere. */
export type Separator = "tab" | "semicolon" | "comma" | "space";

/** One line that is not blank. */
export interface ListLine {
  /** Counted from 1, blank lines counted too: as an editor shows it. */
  readonly line: number;
  readonly text: string;
  readonly cells: readonly string[];
}

/**
 * Lines of a list with their cells. Tabs go first, since a spreadsheet copies with them; then semicolons; commas only
 * where they can be no decimal commas; what is left is parted by blanks, and its cells are words.
 */
export function listCells(text: string): {
  readonly separator: Separator;
  readonly lines: readonly ListLine[];
} {
  const lines = text
    .split(/\r\n|[\n\r\u2028\u2029]/)
    .map((line, index) => ({ line: index + 1, text: line }))
    .filter(({ text: line }) => line.trim() !== "");
  const separator = separatorOf(lines.map(({ text: line }) => line));
  return {
    separator,
    lines: lines.map((one) => ({ ...one, cells: cellsOf(one.text, separator) })),
  };
}

function separatorOf(lines: readonly string[]): Separator {
  if (lines.some((line) => /\S\t|\t\S/.test(line))) return "tab";
  if (lines.some((line) => line.includes(";"))) return "semicolon";
  const withCommas = lines.filter((line) => line.includes(","));
  return withCommas.length > 0 && withCommas.every(partsByComma) ? "comma" : "space";
}

/** A comma parts cells where it does not stand between two figures, or where the figures beside it have points of their own. */
const partsByComma = (line: string): boolean => /[^\d],|,[^\d]/.test(line) || /\.\d+,|,\d+\.\d/.test(line);

function cellsOf(line: string, separator: Separator): readonly string[] {
  switch (separator) {
    case "tab":
      return quoted(line, "\t");
    case "semicolon":
      return quoted(line, ";");
    case "comma":
      // "Office, 3,42, 4,10": here a comma with a blank parts, and one between figures is decimal.
      return /,\s/.test(line) && !/\d\.\d/.test(line) && !line.includes('"')
        ? line.split(/,(?!\d)|(?<!\d),/).map((cell) => cell.trim())
        : quoted(line, ",");
    case "space":
      return line.trim().split(/\s+/);
  }
}

/** Cells of a line, those in quotation marks whole; a mark that is nowhere closed is only a mark, as in 8′ 2". */
function quoted(line: string, separator: string): readonly string[] {
  const cells: string[] = [];
  let rest = line;
  for (;;) {
    const whole = /^\s*"((?:[^"]|"")*)"\s*/.exec(rest);
    const after = whole === null ? undefined : rest.slice(whole[0].length);
    if (whole !== null && after !== undefined && (after === "" || after.startsWith(separator))) {
      cells.push(whole[1]!.replaceAll('""', '"').trim());
      if (after === "") return cells;
      rest = after.slice(separator.length);
      continue;
    }
    const end = rest.indexOf(separator);
    if (end < 0) {
      cells.push(rest.trim());
      return cells;
    }
    cells.push(rest.slice(0, end).trim());
    rest = rest.slice(end + separator.length);
  }
}
