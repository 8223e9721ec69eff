import { type DeviceLike, type Scene, type SharedSight, sharedSight } from "../coverage/index.ts";
import { type DetectorModel, longestReach, reachOf, type ZoneKind } from "../detector/index.ts";
import type { Metres, Radians } from "../quantity/index.ts";

/** Scene for a state of the doors: "closed", or the id of the one opening whose leaf stands open. */
export type Scenes = (doors: string) => Scene;

/** Tests that many columns share: sight from one place, reach of one model. */
export interface SightBook {
  /** Test of points for a device; undefined where the zone itself must be asked (masks, floors of several heights). */
  readonly test: (
    device: DeviceLike,
    question: {
      readonly kind: Exclude<ZoneKind, "sound">;
      readonly sightHeight: Metres;
      readonly doors: string;
    },
  ) => ((x: Metres, y: Metres) => boolean) | undefined;
}

interface Look {
  readonly farthest: Metres;
  readonly sight: SharedSight | undefined;
}

/**
 * A book of looks: sight from a place is worked out once, whichever models are tried there.
 *
 * @param options.scenes - Scenes round the room. @param options.purpose - "coverage" to find layouts, "outward" with eroded scenes for bounds.
 * @returns The book, empty.
 * @example Ten round models at 150 places: 150 looks instead of 1 500
 */
export function sightBook(options: {
  readonly scenes: Scenes;
  readonly purpose: "coverage" | "outward";
}): SightBook {
  const looks = new Map<string, Look>();
  const reaches = new Map<string, (dx: Metres, dy: Metres) => boolean>();
  let farthest = 0;
  return {
    test: (device, { kind, sightHeight, doors }) => {
      if (device.masks.length > 0) return undefined;
      const { at, height, model, turn } = device;
      const needed = farthestOf(model, { kind, height, sightHeight });
      farthest = Math.max(farthest, needed);
      const key = `${at[0]} ${at[1]} ${height} ${sightHeight} ${doors}`;
      let look = looks.get(key);
      if (look === undefined || look.farthest < needed) {
        const question = { at, height, sightHeight, farthest, purpose: options.purpose };
        look = { farthest, sight: sharedSight(options.scenes(doors), question) };
        looks.set(key, look);
      }
      const { sight } = look;
      if (sight === undefined) return undefined;
      const reach = reachIn(sight, { model, kind, turn, sightHeight });
      return (x, y) => reach(x - at[0], y - at[1]) && sight.sees(x, y);
    },
  };

  function reachIn(
    sight: SharedSight,
    asked: {
      readonly model: DetectorModel;
      readonly kind: Exclude<ZoneKind, "sound">;
      readonly turn: Radians;
      readonly sightHeight: Metres;
    },
  ): (dx: Metres, dy: Metres) => boolean {
    const key = `${asked.model.id} ${asked.kind} ${asked.turn} ${asked.sightHeight} ${sight.standing}`;
    let known = reaches.get(key);
    if (known === undefined) {
      known = sight.reachTest(asked);
      reaches.set(key, known);
    }
    return known;
  }
}

/** Declared reach, which planning never exceeds. [m] */
const farthestOf = (
  model: DetectorModel,
  question: { readonly kind: ZoneKind; readonly height: Metres; readonly sightHeight: Metres },
): Metres => longestReach(reachOf(model, question).shape);
