import type {
  DwellPlace,
  FloorPiece,
  Interference,
  Luminaire,
  Metres,
  Obstacle,
  Opening,
  Point,
  Problem,
  Radians,
  Room,
  SquareMetres,
  Storey,
  Words,
} from "#engine";

/** Plain survey records read out of a foreign file. Metres; plan coordinates shifted near the origin; heights as in a job. */
export interface SurveyRecords {
  readonly storeys: readonly Storey[];
  readonly rooms: readonly Room[];
  readonly floorPieces: readonly FloorPiece[];
  readonly openings: readonly Opening[];
  readonly obstacles: readonly Obstacle[];
  readonly dwellPlaces: readonly DwellPlace[];
  readonly interference: readonly Interference[];
  readonly luminaires: readonly Luminaire[];
  /** Luminaires that hang in no room of the file, with the storey they belong to; their `room` is "". */
  readonly looseLuminaires: readonly { readonly storey: string; readonly luminaire: Luminaire }[];
  /** Detectors that the file shows. What they can see is in no model: a job takes them over where it knows theirs. */
  readonly detectors?: readonly FoundDetector[];
  /** Drawings to lie under the plan, as lines: the plan itself, or the walls of a building model's storeys that have no rooms. */
  readonly drawings: readonly SurveyDrawing[];
  /** What was taken off the file's x and y: file = record + shift. [m] */
  readonly shift: Point;
}

/** A detector as a foreign file shows it. */
export interface FoundDetector {
  readonly id: string;
  readonly tag: string;
  /** Id of its room. */
  readonly room: string;
  /** What the file calls its model; "" where it does not say. */
  readonly model: string;
  readonly at: Point;
  /** Above the local floor. */
  readonly height: Metres;
  readonly turn: Radians;
}

/** A drawing under the plan of a storey. */
export interface SurveyDrawing {
  readonly id: string;
  readonly storey: string;
  readonly name: string;
  readonly file: string;
  /** x1 y1 x2 y2 of each line. [m] */
  readonly lines: Float64Array;
  /** Index into `layers` of each line. */
  readonly layerOf: Uint16Array;
  readonly layers: readonly { readonly name: string; readonly shown: boolean; readonly colour?: string }[];
  /** Blocks that were put into it, for a person to say which of them are luminaires. */
  readonly blocks?: readonly DrawingBlock[];
}

/** All blocks of one name in a drawing. */
export interface DrawingBlock {
  readonly name: string;
  /** Picture of one of them: x1 y1 x2 y2 of each line about its middle, the longer side along x. [m] */
  readonly lines: readonly number[];
  readonly places: readonly BlockPlace[];
}

/** Where a block lies. */
export interface BlockPlace {
  /** Middle of its outline, as the drawing's lines lie. [m] */
  readonly at: Point;
  /** Direction of the longer side. [rad] */
  readonly turn: Radians;
  /** Longer and shorter side; 0 where the block has no lines. [m] */
  readonly length: Metres;
  readonly width: Metres;
  /** What its attributes say of it. */
  readonly type?: string;
  readonly circuit?: string;
}

export interface ReportedRoom {
  readonly id: string;
  readonly name: string;
  readonly storey: string;
  readonly area: SquareMetres;
  readonly height: Metres;
}

export interface LeftOut {
  readonly what: Words;
  readonly why: Words;
  readonly count: number;
}

/** What every reading says: what was left out and why, and what is worth a look. */
export interface ReadingReport {
  readonly file: string;
  readonly leftOut: readonly LeftOut[];
  /** Read, but worth a look: assumptions and mends, with the place named. */
  readonly notes: readonly Problem[];
}

/** What was read and what was not, and why. */
export interface ImportReport extends ReadingReport {
  readonly schema: string;
  readonly unit: Words;
  readonly storeys: readonly { readonly name: string; readonly elevation: Metres; readonly rooms: number }[];
  readonly rooms: readonly ReportedRoom[];
  readonly openings: number;
  readonly obstacles: number;
  /** Luminaires in rooms and outside of rooms together. */
  readonly luminaires: number;
}

/** Either a survey with its report, or the problems that stopped the reading. */
export type ImportResult =
  | { readonly survey: SurveyRecords; readonly report: ImportReport }
  | { readonly problems: readonly Problem[] };
