import type {
  CeilingThing,
  DwellPlace,
  FloorPiece,
  Interference,
  Luminaire,
  Obstacle,
  Opening,
  Room,
  Storey,
} from "#engine";
import type { RecordInputs } from "../schema/job-file.ts";

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
  /** Drawings under the plan, as the job keeps them: metres, degrees, packed lines. */
  readonly underlays?: readonly RecordInputs["underlays"][];
}
