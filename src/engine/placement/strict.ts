import {
  areaOf,
  COVER_SKIN,
  difference,
  inset,
  intersection,
  type Point,
  poleOf,
  type Region,
  union,
} from "../geometry/index.ts";
import type { Watch } from "./columns.ts";
import type { DemandPart } from "./demand-rows.ts";

/** A piece of demand that a layout leaves uncovered beyond the skin. */
export interface Hole {
  readonly part: DemandPart;
  readonly region: Region;
  /** Places in it to be watched from now on: the deepest one first. [m] */
  readonly witnesses: readonly Point[];
}

/** Corners of a hole that become witnesses besides its deepest place: they cut off more of the next layout's tricks. */
const CORNERS_OF_A_HOLE = 6;

/**
 * What a layout leaves uncovered, by exact polygons: pieces into which a disc of 5 mm across fits.
 *
 * @param parts - Regions to be covered. @param watches - The layout's devices.
 * @returns Holes; none: the layout is strict.
 * @source DERIVED-HERE
 * @example One device in a room within its reach: no holes
 */
export function holesOf(parts: readonly DemandPart[], watches: readonly Watch[]): readonly Hole[] {
  const covered = new Map<string, Region>();
  const joined = (part: DemandPart, kind: "towards" | "seated" | "sound"): Region => {
    const key = `${kind} ${part.sightHeight} ${part.doors}`;
    let region = covered.get(key);
    if (region === undefined) {
      region = union(
        watches.map((watch) =>
          watch.zone({ kind, sightHeight: part.sightHeight, doors: part.doors }).region(),
        ),
      );
      covered.set(key, region);
    }
    return region;
  };
  return parts.flatMap((part) => {
    let left = difference(part.region, joined(part, part.kind === "walk" ? "towards" : "seated"));
    if (part.bays.length > 0 && left.length > 0) {
      const heard = joined(part, "sound");
      left = difference(left, intersection(part.bays, heard));
    }
    return inset(left, COVER_SKIN / 2)
      .filter((piece) => areaOf([piece]) > 0)
      .map((piece): Hole => ({ part, region: [piece], witnesses: witnessesIn(piece) }));
  });
}

function witnessesIn(piece: Region[number]): Point[] {
  const { outline } = piece;
  const step = Math.max(1, outline.length / CORNERS_OF_A_HOLE);
  const corners: Point[] = [];
  for (let i = 0; Math.floor(i) < outline.length; i += step) corners.push(outline[Math.floor(i)]!);
  return [poleOf(piece, 1e-3).at, ...corners];
}
