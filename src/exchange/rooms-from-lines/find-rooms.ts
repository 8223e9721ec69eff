import type { Metres } from "#engine";
import type { LineBox, Linework } from "../linework/linework.ts";
import { type FoundPlan, type FoundRoom, SURE } from "./found.ts";
import { layerChoices, layersToAdd } from "./layer-choices.ts";
import { namedByLayers } from "./layer-names.ts";
import { planLines } from "./plan-lines.ts";
import { roomsInLines } from "./rooms-in-lines.ts";
import { withRoomsWithin } from "./rooms-within.ts";

export interface FindRoomsOptions {
  /** Metres in one drawing unit; the drawing's own proposal if absent. */
  readonly metres?: Metres;
  /** Names of the layers to look at; the finder tries several choices if absent. */
  readonly layers?: readonly string[];
  /** Part of the drawing, in its own units. */
  readonly box?: LineBox;
  /** Ends closer than this belong together. [m] */
  readonly tolerance?: Metres;
}

/** Ends that a draughtsman missed by this much were meant to meet. [m] @source COMMON-PRACTICE */
const TOLERANCE: Metres = 0.015;

/**
 * Rooms of a plan from its lines.
 *
 * 1. lines of likely layers, in metres  2. ends joined, crossings cut  3. gaps of doors and passages shut  4. closed faces
 * 5. strips are walls, faces that only furniture parts are put together  6. names from lettering inside, or from a layer that holds one room
 * Several choices of layers are tried, and the one whose rooms are the surest is kept.
 *
 * @param linework - The drawing. @param options - Unit, layers, part, tolerance.
 * @returns Rooms with their confidence, openings between them.
 * @source DERIVED-HERE
 */
export function findRooms(linework: Linework, options: FindRoomsOptions = {}): FoundPlan {
  const metres = options.metres ?? linework.unit.metres;
  const tolerance = options.tolerance ?? TOLERANCE;
  const names = linework.layers.map(({ name }) => name);
  const tried = (layers: readonly number[]): Tried => {
    const plan = planLines(linework, {
      metres,
      layers: new Set(layers),
      ...(options.box === undefined ? {} : { box: options.box }),
    });
    const found = roomsInLines(plan, { names, tolerance });
    return { layers, found, worth: worthOf(found.rooms) };
  };
  const first = layerChoices(linework, options.layers).map(tried);
  let best = first.reduce((most, one) => (one.worth > most.worth ? one : most));
  if (options.layers === undefined) {
    // A layer that only closes what the others leave open is worth nothing alone.
    const others = layersToAdd(linework, best.layers);
    for (const layer of others) {
      const more = tried([...best.layers, layer].sort((p, q) => p - q));
      if (more.worth > best.worth * WORTH_ADDING) best = more;
    }
  }
  const layers = best.layers.map((index) => names[index]!);
  const found =
    options.layers === undefined
      ? withRoomsWithin(
          best.found,
          first.filter((one) => one !== best).map((one) => one.found),
        )
      : best.found;
  const rooms = namedByLayers(found.rooms, { linework, metres, shift: found.shift });
  return { ...found, rooms, layers };
}

interface Tried {
  readonly layers: readonly number[];
  readonly found: Omit<FoundPlan, "layers">;
  readonly worth: number;
}

/** A layer is taken in when the rooms get better by this much. */
const WORTH_ADDING = 1.08;

/** Sure rooms of ordinary size count; small faces with neither door nor name count against a choice: tiles are not rooms. */
const worthOf = (rooms: readonly FoundRoom[]): number =>
  rooms.reduce(
    (sum, { area, confidence }) =>
      sum + (area < TILE && confidence < SURE ? -0.15 : confidence * Math.min(1, area / 4)),
    0,
  );

/** Larger slabs are seldom drawn. [m²] */
const TILE = 2;
