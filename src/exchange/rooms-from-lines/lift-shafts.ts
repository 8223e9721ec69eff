import type { SquareMetres } from "#engine";
import type { Faces } from "./faces.ts";
import { ringArea } from "./faces.ts";

/** Shafts of lifts, walls inside to walls inside. [m²] @source COMMON-PRACTICE */
const least: SquareMetres = 1.5;
const most: SquareMetres = 14;
/** Share of a shaft that its car takes at least. */
const CAR = 0.45;
/** Share of a shaft's edge that has a wall, a door or another shaft behind it. */
const WALLED = 0.6;

/** A shaft and what is drawn in it: the narrow face round the car, and all faces of the car. */
export interface LiftShaft {
  readonly round: number;
  readonly car: readonly number[];
}

/**
 * Lift shafts: a narrow face all round an island, the car, which is often crossed by two diagonals, with walls outside of it.
 *
 * A free-standing room within one wall looks the same but for the walls outside; it is no shaft.
 *
 * @param closed - All faces. @param of.strips - 1: too narrow for a room. @param of.length - Of each edge. [m]
 * @param of.shut - A line that shuts an opening.
 * @returns The shafts; none of their faces is in two.
 * @source DERIVED-HERE
 */
export function liftShafts(
  { faces, faceOf }: Faces,
  of: {
    readonly strips: Uint8Array;
    readonly length: Float64Array;
    readonly shut: (edge: number) => boolean;
  },
): readonly LiftShaft[] {
  return faces.flatMap((face, round): LiftShaft[] => {
    const whole = Math.abs(ringArea(face.outline));
    if (of.strips[round] !== 1 || face.islands.length === 0 || whole < least || whole > most) return [];
    const island = face.islands.reduce((a, b) =>
      Math.abs(ringArea(b.outline)) > Math.abs(ringArea(a.outline)) ? b : a,
    );
    if (Math.abs(ringArea(island.outline)) < CAR * whole) return [];
    let [walled, all] = [0, 0];
    for (const h of face.edges) {
      const other = faceOf[h ^ 1]!;
      all += of.length[h >> 1]!;
      if (of.shut(h >> 1) || (other >= 0 && of.strips[other] === 1)) walled += of.length[h >> 1]!;
    }
    if (walled < WALLED * all) return [];
    const car = new Set<number>();
    const waiting = island.edges.map((h) => faceOf[h ^ 1]!);
    for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
      if (at < 0 || at === round || car.has(at)) continue;
      car.add(at);
      for (const h of faces[at]!.edges) waiting.push(faceOf[h ^ 1]!);
    }
    return [{ round, car: [...car] }];
  });
}
