import type { Linework } from "../linework/linework.ts";
import { type LayerMeaning, meaningOf } from "./layer-words.ts";

/** Layers that are tried one by one, those with the most lines. */
const MOST_ALONE = 4;

/**
 * Choices of layers worth a try, the narrowest last: everything that may bound a room; walls, doors, windows and columns where layers
 * are called so; outlines of rooms where layers are called so.
 */
export function layerChoices(
  linework: Linework,
  wanted: readonly string[] | undefined,
): readonly (readonly number[])[] {
  const shown = linework.layers.flatMap((layer, index) =>
    layer.lines > 0 && (wanted === undefined ? layer.shown : wanted.includes(layer.name)) ? [index] : [],
  );
  if (wanted !== undefined) return [shown];
  const meanings = linework.layers.map(({ name }) => meaningOf(name));
  const having = (...kinds: readonly LayerMeaning[]): readonly number[] =>
    shown.filter((index) => kinds.includes(meanings[index]!));
  const alone = having("wall", "room", "unknown")
    .toSorted((a, b) => linework.layers[b]!.lines - linework.layers[a]!.lines)
    .slice(0, MOST_ALONE)
    .map((index) => [index]);
  const large = linework.layerOf.length > TOO_MANY_LINES;
  const linesOf = (choice: readonly number[]): number =>
    choice.reduce((sum, index) => sum + linework.layers[index]!.lines, 0);
  const choices = [
    having("wall", "door", "window", "column", "room", "unknown"),
    having("wall", "door", "window", "column"),
    having("wall", "door", "window", "column", "room"),
    having("wall", "window", "column"),
    having("room", "unknown"),
    having("room"),
    ...(alone.length > 1 && !large ? alone : []),
  ].filter((choice) => choice.length > 0);
  if (choices.length === 0) return [shown];
  const seen = new Set<string>();
  const taken: (readonly number[])[] = [];
  return choices.filter((choice) => {
    const key = choice.join();
    if (seen.has(key)) return false;
    seen.add(key);
    const nothingNew = (one: readonly number[]): boolean =>
      linesOf(one.filter((index) => !choice.includes(index))) +
        linesOf(choice.filter((index) => !one.includes(index))) <
      FEW * linesOf(shown);
    if (large && (linesOf(choice) < FEW * linesOf(shown) || taken.some(nothingNew))) return false;
    taken.push(choice);
    return true;
  });
}

/** Layers that may close what the chosen ones leave open, those with fewer lines first; none on drawings too large for many tries. */
export function layersToAdd(linework: Linework, chosen: readonly number[]): readonly number[] {
  if (linework.layerOf.length > TOO_MANY_LINES) return [];
  return linework.layers
    .flatMap((layer, index) => {
      const meaning = meaningOf(layer.name);
      const may = layer.shown && layer.lines > 0 && !chosen.includes(index);
      return may && meaning !== "note" && meaning !== "furniture" ? [{ index, lines: layer.lines }] : [];
    })
    .sort((a, b) => a.lines - b.lines)
    .slice(0, MOST_ADDED)
    .map(({ index }) => index);
}

const MOST_ADDED = 6;
const TOO_MANY_LINES = 60_000;
/** On large drawings a choice that leaves out nearly everything, or differs from another by as little, is not worth its time. */
const FEW = 0.05;
