import { roomTitle, type SiteLookUp } from "./look-up.ts";
import type { Obstacle, Opening } from "./site.ts";

/**
 * What a person calls an opening: its kind and the rooms that it joins.
 *
 * @param opening - The opening. @param look - The site's records at hand.
 * @returns A phrase that can begin a sentence.
 * @example "The door between 0.01 Corridor and 0.12 Drying room"
 */
export function nameOfOpening(opening: Opening, look: SiteLookUp): string {
  const [first, second] = opening.rooms;
  const inside = roomTitle(look.roomById.get(first));
  if (second === null) return `The ${opening.kind} between ${inside} and outside`;
  return `The ${opening.kind} between ${inside} and ${roomTitle(look.roomById.get(second))}`;
}

/** What a person calls an obstacle. @example A rack without a name is "A rack" */
export const nameOfThing = (obstacle: Obstacle): string =>
  obstacle.name.trim() === "" ? `A ${obstacle.kind}` : obstacle.name.trim();

/** A kind in words. @example readable("air-outlet") = "air outlet" */
export const readable = (kind: string): string => kind.replaceAll("-", " ");

/** A figure rounded for a sentence. @param value - Any number. @param digits - Places after the point. @example rounded(1.2345, 2) = 1.23 */
export const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

/** A name that begins a sentence, put inside one. @example "The door between …" becomes "the door between …" */
export const insideSentence = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** A kind in words with its article. @example withArticle("air-outlet") = "an air outlet" */
export const withArticle = (kind: string): string =>
  `${/^[aeiou]/.test(kind) ? "an" : "a"} ${readable(kind)}`;
