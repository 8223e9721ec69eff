/** A line of the file, cut into fields, with the number of the line that it began in. */
export interface CsvRow {
  readonly line: number;
  readonly fields: readonly string[];
}

export type Separator = "," | ";" | "\t";

/**
 * Cuts a text into rows: quoted fields may hold separators, doubled quotes and line ends; empty lines and a byte-order mark are left out.
 *
 * The separator is the one of comma, semicolon and tab that stands most often in the first line, outside quotes.
 *
 * @returns The rows, or the line in which a quote opens that never closes; what to say of it is its reader's business.
 */
export function rowsOf(
  text: string,
): { readonly rows: readonly CsvRow[]; readonly separator: Separator } | { readonly openQuote: number } {
  const bare = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  const separator = separatorOf(/[^\r\n]*\S[^\r\n]*/.exec(bare)?.[0] ?? "");
  const rows = cut(bare, separator);
  return typeof rows === "number" ? { openQuote: rows } : { rows, separator };
}

function separatorOf(header: string): Separator {
  const bare = header.replace(/"[^"]*"/g, "");
  const count = (sign: string): number => bare.split(sign).length - 1;
  return ([",", ";", "\t"] as const).reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}

function cut(text: string, separator: Separator): readonly CsvRow[] | number {
  const rows: CsvRow[] = [];
  let fields: string[] = [];
  let line = 1;
  let began = 1;
  let at = 0;
  const end = (): void => {
    if (fields.length > 1 || fields[0]?.trim()) rows.push({ line: began, fields });
    fields = [];
  };
  while (at <= text.length) {
    let field: string;
    const opened = line;
    if (text[at] === '"') {
      const close = closingQuote(text, at);
      if (close === -1) return opened;
      const inside = text.slice(at + 1, close);
      line += inside.split("\n").length - 1;
      field = inside.replaceAll('""', '"');
      at = close + 1;
      // What stands between the quote and the separator belongs to the field: nothing is dropped unseen.
      const rest = fieldEnd(text, at, separator);
      field += text.slice(at, rest);
      at = rest;
    } else {
      const rest = fieldEnd(text, at, separator);
      field = text.slice(at, rest);
      at = rest;
    }
    fields.push(field.trim());
    if (text[at] === separator) {
      at++;
      continue;
    }
    end();
    if (text[at] === "\r" && text[at + 1] === "\n") at++;
    at++;
    line++;
    began = line;
  }
  return rows;
}

function closingQuote(text: string, open: number): number {
  for (let at = text.indexOf('"', open + 1); at !== -1; at = text.indexOf('"', at + 2)) {
    if (text[at + 1] !== '"') return at;
  }
  return -1;
}

function fieldEnd(text: string, from: number, separator: string): number {
  let at = from;
  while (at < text.length && text[at] !== separator && text[at] !== "\n" && text[at] !== "\r") at++;
  return at;
}
