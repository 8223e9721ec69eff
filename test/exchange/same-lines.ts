import type { Linework } from "#exchange";

export type Line = readonly [number, number, number, number];

/** Lines of a drawing, optionally of the layers whose name fits. */
export function linesIn(linework: Linework, layer?: RegExp): Line[] {
  const lines: Line[] = [];
  for (let i = 0; i < linework.layerOf.length; i++) {
    if (layer && !layer.test(linework.layers[linework.layerOf[i]!]!.name)) continue;
    lines.push([...linework.lines.subarray(4 * i, 4 * i + 4)] as unknown as Line);
  }
  return lines;
}

/** A line read from its lesser end, so that its direction does not count. */
const directed = ([x1, y1, x2, y2]: Line, off: number): Line =>
  x1 < x2 - off || (Math.abs(x1 - x2) <= off && y1 <= y2) ? [x1, y1, x2, y2] : [x2, y2, x1, y1];

/** Lines of the first set that have no partner in the second; each partner counts once. */
export function withoutPartner(lines: readonly Line[], others: readonly Line[], off: number): Line[] {
  const cell = (line: Line): string => `${Math.floor(line[0] / cellSize)},${Math.floor(line[1] / cellSize)}`;
  const cellSize = Math.max(off * 4, 1);
  const rest = new Map<string, Line[]>();
  for (const other of others.map((line) => directed(line, off)))
    rest.set(cell(other), [...(rest.get(cell(other)) ?? []), other]);
  const alone: Line[] = [];
  for (const line of lines.map((each) => directed(each, off))) {
    const cells = [-1, 0, 1].flatMap((x) =>
      [-1, 0, 1].map((y) => cell([line[0] + x * cellSize, line[1] + y * cellSize, 0, 0])),
    );
    const partner = cells
      .flatMap((key) => (rest.get(key) ?? []).map((other) => ({ key, other })))
      .find(({ other }) => other.every((value, i) => Math.abs(value - line[i]!) <= off));
    if (!partner) alone.push(line);
    else
      rest.set(
        partner.key,
        rest.get(partner.key)!.filter((other) => other !== partner.other),
      );
  }
  return alone;
}
