import type { Metres, RoomUse } from "#engine";
import type { Units } from "../../texts/index.ts";
import { listCells } from "./list-cells.ts";
import { isBare, itemsOf, lengthOfFigure, likelyUnit } from "./list-figures.ts";
import { headingsOf, type ListUnit, looksLikeHeadings } from "./list-headings.ts";
import {
  type ListTrouble,
  type Parts,
  partsByHeading,
  partsByKind,
  type Reading,
  usualFigures,
} from "./list-parts.ts";
import { writtenUse } from "./uses.ts";

/** A room as a list gives it. */
export interface ListedRoom {
  /** Line of the list, from 1. */
  readonly line: number;
  readonly number: string;
  readonly name: string;
  /** Only where the list says it. */
  readonly use: RoomUse | undefined;
  readonly length: Metres;
  readonly width: Metres;
  /** Only where the list gives it. */
  readonly height: Metres | undefined;
}

export interface StrangeLine {
  readonly line: number;
  readonly text: string;
  readonly why: ListTrouble;
  /** The part that was not understood. */
  readonly part: string;
}

export interface SizesList {
  readonly rooms: readonly ListedRoom[];
  readonly strange: readonly StrangeLine[];
  /** What figures without a unit count in. */
  readonly unit: ListUnit;
  /** Some figure has no unit, so that the one assumed matters. */
  readonly unitMatters: boolean;
  /** Headings of columns that say nothing that is used here. */
  readonly unused: readonly string[];
}

/** Sides that a room may have, and heights as on its card. [m] */
export const sideLimits = { least: 0.3, most: 200 } as const;
export const heightLimits = { least: 1.8, most: 20 } as const;
/** Lines of one list: beyond it something else was pasted. */
export const mostLines = 2000;
const longestWords = 200;

/**
 * Reads rooms from a list of sizes. A line that heads the columns is followed; without one every line is taken by kind: a
 * number (a figure or a mark with figures before the name), a name, two sides, a height, a use. What does not fit is named.
 *
 * @param unit - What figures without a unit count in; absent: the likely one.
 * @example readSizes("101 Office 3.42 4.10 2.7", { units: "metric" }).rooms[0] is room 101, Office, 3.42 × 4.10 m, 2.7 m high
 */
export function readSizes(
  text: string,
  { unit: wished, units }: { readonly unit?: ListUnit | undefined; readonly units: Units },
): SizesList {
  const { lines, separator } = listCells(text);
  const headings = separator === "space" || !lines[0] ? undefined : headingsOf(lines[0].cells);
  const headed = headings !== undefined || (lines[0] !== undefined && looksLikeHeadings(lines[0].cells));
  const body = headed ? lines.slice(1) : lines;
  const read = body.slice(0, mostLines);
  const items = read.map(({ cells, text: line }) =>
    separator === "space" ? [itemsOf(line)] : cells.map(itemsOf),
  );
  const usual = usualFigures(items.map((line) => line.flat()));
  const parts = read.map((line, index): Reading<Parts> => {
    if (headings) return partsByHeading(line, headings);
    return partsByKind(items[index]!, { usual, celled: separator !== "space" });
  });
  const understood = parts.filter((part): part is Parts => "sides" in part);
  const bare = understood.flatMap(({ sides }) =>
    sides.filter((side) => side.unit === undefined && isBare(side.text)).map((side) => side.text),
  );
  const unit = wished ?? likelyUnit(bare, units);
  const rooms: ListedRoom[] = [];
  const strange: StrangeLine[] = [];
  for (const [index, part] of parts.entries()) {
    const { line, text: whole } = read[index]!;
    const room = "sides" in part ? roomOf(part, unit) : part;
    if ("why" in room) strange.push({ line, text: whole.trim().slice(0, longestWords), ...room });
    else rooms.push({ line, ...room });
  }
  const beyond = body[mostLines];
  if (beyond)
    strange.push({ line: beyond.line, text: beyond.text.trim().slice(0, 80), why: "long", part: "" });
  return {
    rooms,
    strange,
    unit,
    unitMatters: bare.length > 0,
    unused: (headings ?? [])
      .filter(({ column, text: word }) => !column && word !== "")
      .map(({ text: word }) => word),
  };
}

function roomOf(parts: Parts, unit: ListUnit): Reading<Omit<ListedRoom, "line">> {
  const lengths = parts.sides.map((side) => lengthOfFigure(side.text, side.unit ?? unit));
  for (const [index, length] of lengths.entries())
    if (length === undefined || length < sideLimits.least || length > sideLimits.most)
      return { why: "side", part: parts.sides[index]!.text };
  const height = parts.height && lengthOfFigure(parts.height.text, parts.height.unit ?? unit);
  if (parts.height && (height === undefined || height < heightLimits.least || height > heightLimits.most))
    return { why: "height", part: parts.height.text };
  const use = parts.use === "" ? undefined : writtenUse(parts.use);
  if (parts.use !== "" && use === undefined) return { why: "use", part: parts.use.slice(0, longestWords) };
  return {
    number: parts.number.slice(0, longestWords),
    name: parts.name.slice(0, longestWords),
    use,
    length: lengths[0]!,
    width: lengths[1]!,
    height,
  };
}
