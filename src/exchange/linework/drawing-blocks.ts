import type { Metres, Point } from "#engine";
import type { BlockPlace, DrawingBlock } from "../survey.ts";
import { tidy } from "../tidy.ts";
import { type BlockLuminaire, blockKinds, luminaireOf } from "./block-luminaires.ts";
import type { LineBlock, LineBox, Linework } from "./linework.ts";

/** What a job keeps of the blocks of a drawing, at most: beyond that they are furniture that nobody goes through. */
const most = { kinds: 200, places: 6000, lines: 60, words: 200 } as const;

/** Longer than any luminaire: a whole floor that was put in as a block, a frame. [m] */
const longest: Metres = 12;

/** Names that a drawing program gives by itself to dimensions, hatches and tables. */
const nameless = /^\*[DXT]\d*$/i;

/**
 * Blocks of a drawing that could stand for something on the ceiling: name, picture of one, and where each lies.
 *
 * @param linework - The drawing. @param of.metres - Metres in one drawing unit. @param of.shift - Taken off its places. [m]
 * @param of.box - Only those put in within it; all of them if absent.
 * @returns The most frequent first; none longer than 12 m, and no more than 6000 places in all.
 */
export function drawingBlocks(
  linework: Linework,
  of: { readonly metres: Metres; readonly shift: Point; readonly box?: LineBox },
): readonly DrawingBlock[] {
  const byName = new Map<string, LineBlock[]>();
  for (const block of linework.blocks) {
    if (nameless.test(block.name) || block.name.length > most.words) continue;
    if (of.box !== undefined && !touches(block.box, of.box)) continue;
    const key = block.name.toUpperCase();
    const list = byName.get(key);
    if (list) list.push(block);
    else byName.set(key, [block]);
  }
  let left: number = most.places;
  const kept: DrawingBlock[] = [];
  for (const { name, length } of blockKinds(linework, of)) {
    const list = byName.get(name.toUpperCase());
    if (!list || length > longest || list.length > left || kept.length === most.kinds) continue;
    left -= list.length;
    const drawn = list.find(({ lines: [from, to] }) => to > from);
    kept.push({
      name,
      lines: drawn === undefined ? [] : pictureOf(drawn, linework, of.metres),
      places: list.map((block) => placeOf(luminaireOf(block, linework, of))),
    });
  }
  return kept;
}

const placeOf = ({ at, turn, length, width, attributes }: BlockLuminaire): BlockPlace => {
  const [type, circuit] = [said(attributes, typeTags), said(attributes, circuitTags)];
  return {
    at: [tidy(at[0]), tidy(at[1])],
    turn,
    length: tidy(length),
    width: tidy(width),
    ...(type === undefined ? {} : { type }),
    ...(circuit === undefined ? {} : { circuit }),
  };
};

/** Tags of attributes that name the type or the circuit, in the languages of the words of rooms. */
const typeTags = /^(TYPE?|MODELL?|ART)$/i;
const circuitTags = /^(CIRCUIT|CCT|CIRC|STROMKREIS|KREIS)$/i;

const said = (attributes: Readonly<Record<string, string>>, tags: RegExp): string | undefined =>
  Object.entries(attributes)
    .find(([tag, value]) => tags.test(tag) && value.trim() !== "")?.[1]
    .trim()
    .slice(0, most.words);

/** Lines of one block about the middle of its outline, its longer side along x. [m] */
function pictureOf(block: LineBlock, linework: Linework, metres: Metres): readonly number[] {
  const { at, turn } = luminaireOf(block, linework, { metres });
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const lines: number[] = [];
  const end = Math.min(block.lines[1], block.lines[0] + most.lines);
  for (let i = 4 * block.lines[0]; i < 4 * end; i += 2) {
    const [x, y] = [linework.lines[i]! * metres - at[0], linework.lines[i + 1]! * metres - at[1]];
    lines.push(tidy(x * c + y * s), tidy(y * c - x * s));
  }
  return lines;
}

const touches = (a: LineBox, b: LineBox): boolean =>
  a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];
