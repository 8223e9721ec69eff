/** One group of a drawing: code and value. */
export type Group = readonly [number, string | number];

export interface WrittenDrawing {
  /** "AC1009", "AC1015" … Absent: no header at all. */
  readonly release?: string;
  readonly header?: readonly Group[];
  readonly layers?: readonly { name: string; flags?: number; colour?: number }[];
  readonly blocks?: readonly {
    readonly name: string;
    readonly base?: readonly [number, number];
    readonly flags?: number;
    readonly entities: readonly Group[];
  }[];
  readonly entities: readonly Group[];
}

/** An entity on a layer. */
export const entity = (type: string, layer: string, ...groups: readonly Group[]): readonly Group[] => [
  [0, type],
  [8, layer],
  ...groups,
];

export const line = (x1: number, y1: number, x2: number, y2: number, layer = "0"): readonly Group[] =>
  entity("LINE", layer, [10, x1], [20, y1], [30, 0], [11, x2], [21, y2], [31, 0]);

export const insert = (block: string, x: number, y: number, ...more: readonly Group[]): readonly Group[] =>
  entity("INSERT", "0", [2, block], [10, x], [20, y], [30, 0], ...more);

/** All groups of a drawing, in order. */
export function groupsOf(drawing: WrittenDrawing): readonly Group[] {
  const groups: Group[] = [];
  const section = (name: string, content: readonly Group[]): void => {
    groups.push([0, "SECTION"], [2, name], ...content, [0, "ENDSEC"]);
  };
  if (drawing.release !== undefined || drawing.header)
    section("HEADER", [[9, "$VERSION"], [1, drawing.release ?? "none"], ...(drawing.header ?? [])]);
  if (drawing.layers)
    section("TABLES", [
      [0, "TABLE"],
      [2, "LAYER"],
      [70, drawing.layers.length],
      ...drawing.layers.flatMap(({ name, flags = 0, colour = 7 }): Group[] => [
        [0, "LAYER"],
        [2, name],
        [70, flags],
        [62, colour],
        [6, "CONTINUOUS"],
      ]),
      [0, "ENDTAB"],
    ]);
  if (drawing.blocks)
    section(
      "BLOCKS",
      drawing.blocks.flatMap(({ name, base = [0, 0], flags = 0, entities }): Group[] => [
        [0, "BLOCK"],
        [8, "0"],
        [2, name],
        [70, flags],
        [10, base[0]],
        [20, base[1]],
        [30, 0],
        [3, name],
        ...entities,
        [0, "ENDBLK"],
        [8, "0"],
      ]),
    );
  section("ENTITIES", drawing.entities);
  groups.push([0, "EOF"]);
  return groups;
}

/** A drawing as text. Letters beyond ASCII are written as UTF-8. */
export const textOf = (drawing: WrittenDrawing, lineEnd = "\n"): string =>
  groupsOf(drawing)
    .map(([code, value]) => `${String(code).padStart(3)}${lineEnd}${value}${lineEnd}`)
    .join("");

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A drawing as text, in bytes. */
export const written = (drawing: WrittenDrawing, lineEnd = "\n"): Uint8Array =>
  bytesOf(textOf(drawing, lineEnd));

/** A drawing as text with letters of one byte each: every code unit of a string is one byte of the file. */
export const writtenInBytes = (drawing: WrittenDrawing): Uint8Array =>
  Uint8Array.from(textOf(drawing), (letter) => letter.charCodeAt(0));

/**
 * A drawing in binary.
 *
 * @param codes - "short": one byte a group code, as before R13; "long": two
 */
export function writtenBinary(drawing: WrittenDrawing, codes: "short" | "long"): Uint8Array {
  const bytes: number[] = [...bytesOf("Example Binary DXF\r\n"), 26, 0];
  const number = (size: number, put: (view: DataView) => void): void => {
    const view = new DataView(new ArrayBuffer(size));
    put(view);
    bytes.push(...new Uint8Array(view.buffer));
  };
  for (const [code, value] of groupsOf(drawing)) {
    if (codes === "short" && code < 255) bytes.push(code);
    else {
      if (codes === "short") bytes.push(255);
      number(2, (view) => view.setInt16(0, code, true));
    }
    if (typeof value === "string") bytes.push(...bytesOf(value), 0);
    else if (isDouble(code)) number(8, (view) => view.setFloat64(0, value, true));
    else if (code >= 290 && code < 300) bytes.push(value);
    else if ((code >= 90 && code < 100) || code === 1071) number(4, (view) => view.setInt32(0, value, true));
    else number(2, (view) => view.setInt16(0, value, true));
  }
  return Uint8Array.from(bytes);
}

const isDouble = (code: number): boolean =>
  (code >= 10 && code < 60) || (code >= 110 && code < 150) || (code >= 210 && code < 240);
