/** What a column of a list may hold. */
export type ListColumn = "number" | "name" | "length" | "width" | "height" | "use";
/** What a figure without a unit counts in. */
export type ListUnit = "m" | "cm" | "mm" | "ft" | "in";

export interface Heading {
  readonly column: ListColumn | undefined;
  /** The unit that stands in the heading: "Length (mm)". */
  readonly unit: ListUnit | undefined;
  readonly text: string;
}

/** Words that head the columns of room lists, in English, German, French, Dutch, Italian, Spanish and Nordic. */
const headings: readonly (readonly [ListColumn, RegExp])[] = [
  [
    "number",
    /^(#|n°|nº|no|nr|num|numbers?|id|(room|raum|space|rom|rum)[ -]?(no|nr|num(ber)?|nummer|id)|raumnummer|num[ée]ro|n[uú]mero|nummer|numero)$/,
  ],
  [
    "name",
    /^(names?|rooms?|room name|raum|raumname|raumbezeichnung|bezeichnung|description|designation|nom|pi[eè]ce|local|naam|ruimte|nome|stanza|locale|nombre|sala|rom|rum|navn|namn)$/,
  ],
  ["length", /^(lengths?|long|l|l[äa]nge|longueur|lengte|lunghezza|largo|lengde|l[äæ]ngd|depth|tiefe|x)$/],
  ["width", /^(widths?|wide|breadth|w|b|breite|largeur|breedte|larghezza|ancho|bredde|bredd|y)$/],
  [
    "height",
    /^(heights?|high|h|z|ceilings?|ceiling height|room height|clear height|h[öo]he|raumh[öo]he|lichte h[öo]he|hauteur|hoogte|altezza|alto|altura|h[øö]yde|h[öø]jd|takh[öø]jd)$/,
  ],
  ["use", /^(use|usage|room use|function|nutzung|funktion|utilisation|gebruik|uso|bruk)$/],
];

const units: Readonly<Record<string, ListUnit>> = {
  m: "m",
  metres: "m",
  meters: "m",
  cm: "cm",
  mm: "mm",
  ft: "ft",
  feet: "ft",
  "'": "ft",
  in: "in",
  inches: "in",
  '"': "in",
};

/** The headings of a line, or undefined where it heads no list of sizes: both sides of a room must have a column. */
export function headingsOf(cells: readonly string[]): readonly Heading[] | undefined {
  if (cells.some((cell) => /\d/.test(cell))) return undefined;
  const read = cells.map(headingOf);
  const has = (column: ListColumn): boolean => read.filter((one) => one.column === column).length === 1;
  return has("length") && has("width") ? read : undefined;
}

/** A first line of words that is clearly meant to head the columns, also where blanks part them. */
export const looksLikeHeadings = (cells: readonly string[]): boolean =>
  !cells.some((cell) => /\d/.test(cell)) && cells.filter((cell) => headingOf(cell).column).length >= 2;

function headingOf(cell: string): Heading {
  const text = cell.trim();
  const said = /^(.*?)[\s,]*(?:[([]\s*(\S+?)\s*[)\]]|(?:^|\s)in\s+(\S+)|(?<=[,\s])(mm|cm|m|ft))\s*$/i.exec(
    text,
  );
  const unit = said && units[(said[2] ?? said[3] ?? said[4] ?? "").toLowerCase()];
  const word = (unit ? said[1]! : text)
    .toLowerCase()
    .replace(/[\s_]+/g, " ")
    .replace(/[.:]+$/, "")
    .trim();
  const column = headings.find(([, pattern]) => pattern.test(word))?.[0];
  return { column, unit: unit || undefined, text };
}
