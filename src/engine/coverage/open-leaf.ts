import { type Outline, outset, type Region } from "../geometry/index.ts";
import type { Opening, SiteLookUp } from "../site/index.ts";
import { fittedReveal } from "./fitted-reveal.ts";
import { leafOf } from "./scene.ts";

/**
 * Footprint of a door's leaf when it stands open at its angle.
 *
 * @param opening - A door. @param look - The site's records at hand.
 * @returns The leaf as the scenes hold it [m]; undefined where it opens outside, or does not lie on its wall.
 * @example A door 0.9 m wide at a right angle: a quad of 0.9 × 0.04 m into the room
 */
export function openLeaf(opening: Opening, look: SiteLookUp): Outline | undefined {
  const first = look.roomById.get(opening.rooms[0]);
  if (!first || opening.kind !== "door") return undefined;
  const second = opening.rooms[1] === null ? undefined : look.roomById.get(opening.rooms[1]);
  const fitted = fittedReveal(opening, {
    first,
    second: second?.storey === first.storey ? second : undefined,
  });
  return fitted && leafOf(fitted);
}

/**
 * Floor in which nobody stands while a leaf is open: the leaf grown by the body radius.
 *
 * @param opening - A door. @param look - The site's records at hand.
 * @returns Region [m]; empty where there is no leaf to stand in.
 * @source COMMON-PRACTICE
 * @example A leaf 0.9 × 0.04 m, body radius 0.2 m: 0.036 + 1.88 · 0.2 + π · 0.04 = 0.538 m²
 */
export function takenByLeaf(opening: Opening, look: SiteLookUp): Region {
  const leaf = openLeaf(opening, look);
  return leaf ? outset([{ outline: leaf, holes: [] }], look.site.defaults.bodyRadius) : [];
}
