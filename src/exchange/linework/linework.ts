import type { Metres, Point, Radians, Words } from "#engine";

/**
 * A drawing as lines: what every reader of plans gives, and what rooms are found in. Lengths are in the drawing's own units
 * (y up); what one unit is in metres is a proposal with its reason until a person has agreed.
 */
export interface Linework {
  readonly file: string;
  readonly format: "dxf" | "pdf" | "svg";
  /** x1 y1 x2 y2 of each line. Curves are flattened, blocks are put in place; no NaN, no line of length 0. */
  readonly lines: Float64Array;
  /** Index into `layers` of each line. */
  readonly layerOf: Uint16Array;
  /** 1 + index into `arcs` of the arc that a line was flattened from; 0: drawn straight, or part of another curve. */
  readonly arcOf: Uint32Array;
  readonly layers: readonly LineLayer[];
  /** Circular arcs as drawn, whole circles among them: door leaves leave quarter circles behind. */
  readonly arcs: readonly LineArc[];
  readonly texts: readonly LineText[];
  /** Blocks that were put in, each before those within it: doors, furniture, luminaires often come as blocks. */
  readonly blocks: readonly LineBlock[];
  readonly unit: UnitProposal;
  /** Several sheets or floors in one file that a person must choose from; one entry at least. Boxes in drawing units. */
  readonly parts: readonly { readonly name: string; readonly box: LineBox }[];
}

/** Lines that were drawn together. Formats without layers tell them apart by pen: colour and width. */
export interface LineLayer {
  readonly name: string;
  readonly lines: number;
  /** Switched off or frozen in the file. */
  readonly shown: boolean;
  /** "#rrggbb" as drawn. */
  readonly colour?: string;
}

export interface LineArc {
  readonly centre: Point;
  readonly radius: number;
  /** Counter-clockwise from `from` to `to`, angles from +x. */
  readonly from: Radians;
  readonly to: Radians;
  readonly layer: number;
}

export interface LineText {
  readonly text: string;
  /** Lower left corner of the first letter. */
  readonly at: Point;
  /** Height of a capital letter. */
  readonly height: number;
  readonly turn: Radians;
  readonly layer: number;
}

export interface LineBlock {
  readonly name: string;
  readonly at: Point;
  readonly turn: Radians;
  readonly scale: readonly [number, number];
  readonly layer: number;
  readonly box: LineBox;
  /** First of its lines, and the first that is not; the lines of the blocks within it are among them. */
  readonly lines: readonly [number, number];
  /** Index of the block that it lies in; −1: put in by the drawing itself. */
  readonly within: number;
  readonly attributes: Readonly<Record<string, string>>;
}

/** Least x, least y, largest x, largest y, in drawing units. */
export type LineBox = readonly [number, number, number, number];

/** What one drawing unit is. */
export interface UnitProposal {
  /** Metres in one drawing unit. */
  readonly metres: Metres;
  /** Metres of paper in one drawing unit, where the drawing is a sheet: its scale is `metres` over this. */
  readonly paper?: Metres;
  /** As a word: "mm", "cm", "m", "in", "ft", "points at 1 : 100". */
  readonly name: Words;
  /** What the file says of itself, where it says anything. */
  readonly declared?: string;
  /** "declared": the file's own word fits what is drawn; "measured": doors, letters or extents say otherwise or alone; "guessed": nothing to go by. */
  readonly from: "declared" | "measured" | "guessed";
  /** One sentence: "Door leaves of 0.81 to 0.94 m fit millimetres." */
  readonly reason: Words;
}
