import type { Problem } from "#engine";

/** A line of the file, cut into fields, with the number of the line that it began in. */
export interface LogRow {
  readonly line: number;
  readonly fields: readonly string[];
}

/** Separator of a header: the one of comma, semicolon and tab that stands there most often outside quotes. */
export function separatorOf(header: string): "," | ";" | "\t" {
  const bare = header.replace(/"[^"]*"/g, "");
  const count = (sign: string): number => bare.split(sign).length - 1;
  return ([",", ";", "\t"] as const).reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}

/** Cuts a text into rows: quoted fields may hold separators, doubled quotes and line ends; empty lines are left out. */
export function rowsOf(
  text: string,
  separator: string,
): { readonly rows: readonly LogRow[] } | { readonly problem: Problem } {
  const rows: LogRow[] = [];
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
      if (close === -1) return { problem: { code: "log-quote-open", values: { line: opened } } };
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
  return { rows };
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
