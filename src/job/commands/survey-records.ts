import type {
  CeilingThing,
  Detector,
  DwellPlace,
  FloorPiece,
  Interference,
  Luminaire,
  Metres,
  Obstacle,
  Opening,
  Point,
  Radians,
  Room,
  Storey,
  Switch,
} from "#engine";

/** What a reader of foreign files hands over: records of the engine's site with ids given, metres and radians. */
export interface SurveyRecords {
  readonly storeys: readonly Storey[];
  readonly rooms: readonly Room[];
  readonly openings: readonly Opening[];
  readonly obstacles: readonly Obstacle[];
  readonly luminaires: readonly Luminaire[];
  readonly floorPieces?: readonly FloorPiece[];
  readonly dwellPlaces?: readonly DwellPlace[];
  readonly interference?: readonly Interference[];
  readonly ceilingThings?: readonly CeilingThing[];
  readonly switches?: readonly Switch[];
  /** Detectors as the file shows them: what they can see is for the job to know, by their model. */
  readonly detectors?: readonly Pick<Detector, "id" | "tag" | "room" | "model" | "at" | "height" | "turn">[];
  /** Drawings to lie under the plan, as lines. [m] */
  readonly drawings?: readonly SurveyDrawing[];
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
  /** Blocks that were put into it: for each name a picture of one, as lines about its middle, and where each lies. [m], [rad] */
  readonly blocks?: readonly {
    readonly name: string;
    readonly lines: readonly number[];
    readonly places: readonly {
      readonly at: Point;
      readonly turn: Radians;
      readonly length: Metres;
      readonly width: Metres;
      readonly type?: string;
      readonly circuit?: string;
    }[];
  }[];
}
