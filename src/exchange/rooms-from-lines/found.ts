import type { Metres, Outline, Point, Said, SquareMetres } from "#engine";

/** A room as found in a plan, for a person to confirm. Metres; plan point + shift = drawing point in metres. */
export interface FoundRoom {
  readonly outline: Outline;
  readonly holes: readonly Outline[];
  readonly area: SquareMetres;
  readonly number: string;
  readonly name: string;
  /** How sure the finder is, 0 … 1. */
  readonly confidence: number;
  /** What speaks against it, in words: "no door found", "open on one side". */
  readonly doubts: readonly Said[];
}

/** An opening as found: between the jambs on both faces of its wall; a window on the face of its room, which is the first. */
export interface FoundOpening {
  readonly kind: "door" | "passage" | "window";
  readonly from: Point;
  readonly to: Point;
  readonly thickness: Metres;
  /** Where the leaf hangs and stands open, where a leaf was drawn. */
  readonly leaf?: { readonly hinge: Point; readonly latch: Point; readonly open: Point };
  /** Indices of the rooms on both sides; −1: outside or none found. */
  readonly rooms: readonly [number, number];
}

/** From here on a room is more likely right than to be looked at again. */
export const SURE = 0.6;

export interface FoundPlan {
  readonly rooms: readonly FoundRoom[];
  readonly openings: readonly FoundOpening[];
  readonly shift: Point;
  /** Layers that were taken for walls and the like. */
  readonly layers: readonly string[];
}
