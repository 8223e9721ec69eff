import type { Linework } from "../linework/linework.ts";
import { type LayerMeaning, meaningOf } from "./layer-words.ts";

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
  const choices = [
    having("wall", "door", "window", "column", "room", "unknown"),
    having("wall", "door", "window", "column"),
    having("wall", "window", "column"),
    having("room", "unknown"),
    having("room"),
    shown,
  ].filter((choice) => choice.length > 0);
  const seen = new Set<string>();
  return choices.filter((choice) => {
    const key = choice.join();
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
