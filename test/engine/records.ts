import type {
  Detector,
  DetectorModel,
  DwellPlace,
  FloorPiece,
  Interference,
  Luminaire,
  Obstacle,
  Opening,
  Outline,
  Point,
  Room,
  Site,
} from "#engine";
import { planningDefaults } from "#engine";

/** Small records for tests: whatever a test does not name has an ordinary value. */
export const box = (x: number, y: number, width: number, depth: number): Outline => [
  [x, y],
  [x + width, y],
  [x + width, y + depth],
  [x, y + depth],
];

export const roomLike = (
  given: Partial<Room> & { readonly id: string; readonly outline: Outline },
): Room => ({
  storey: "ground",
  number: "",
  name: given.id,
  use: "other",
  holes: [],
  floor: 0,
  ceilingHeight: 2.7,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
  ...given,
});

export const doorLike = (
  given: Partial<Opening> & {
    readonly id: string;
    readonly rooms: Opening["rooms"];
    readonly from: Point;
    readonly to: Point;
  },
): Opening => ({
  kind: "door",
  sill: 0,
  head: 2.0,
  thickness: 0.2,
  hinge: "from",
  opensInto: given.rooms[1],
  angle: Math.PI / 2,
  state: "closed",
  ...given,
});

export const obstacleLike = (
  given: Partial<Obstacle> & { readonly id: string; readonly room: string; readonly footprint: Outline },
): Obstacle => ({ kind: "furniture", name: given.id, base: 0, top: 0.75, seeThrough: false, ...given });

export const dwellLike = (
  given: Partial<DwellPlace> & { readonly id: string; readonly room: string; readonly at: Point },
): DwellPlace => ({
  kind: "desk",
  radius: 0.6,
  ...given,
});

export const flightLike = (
  given: Partial<FloorPiece> & {
    readonly id: string;
    readonly room: string;
    readonly footprint: Outline;
    readonly from: Point;
    readonly to: Point;
  },
): FloorPiece => ({
  kind: "flight",
  low: 0,
  high: 1.5,
  ...given,
});

export const sourceLike = (
  given: Partial<Interference> & { readonly id: string; readonly room: string; readonly at: Point },
): Interference => ({
  kind: "heater",
  height: 2.0,
  ...given,
});

export const luminaireLike = (
  given: Partial<Luminaire> & { readonly id: string; readonly room: string; readonly at: Point },
): Luminaire => ({
  name: given.id,
  height: 2.6,
  mounting: "surface",
  hot: false,
  length: 1.2,
  width: 0.2,
  turn: 0,
  ...given,
});

/** A round model: 8 m across towards, 12 m across when walking past, 5 m across seated, at 2.5 to 3 m. */
export const roundModel = (given: Partial<DetectorModel> = {}): DetectorModel => ({
  id: "round",
  title: "Round",
  mounting: { min: 2, max: 4 },
  zones: {
    towards: [
      { height: 2.5, radius: 4 },
      { height: 3, radius: 4 },
    ],
    across: [
      { height: 2.5, radius: 6 },
      { height: 3, radius: 6 },
    ],
    seated: [
      { height: 2.5, radius: 2.5 },
      { height: 3, radius: 2.5 },
    ],
  },
  declaration: "assumed",
  declaredBy: "test",
  cost: 1,
  ...given,
});

export const detectorLike = (
  given: Partial<Detector> & { readonly id: string; readonly room: string; readonly at: Point },
): Detector => ({
  tag: given.id.toUpperCase(),
  controls: [],
  group: "",
  model: "round",
  height: 2.7,
  turn: 0,
  masks: [],
  pinned: false,
  ...given,
});

export const siteLike = (given: Partial<Site> & { readonly rooms: readonly Room[] }): Site => ({
  name: "Test",
  defaults: planningDefaults,
  storeys: [{ id: "ground", name: "Ground floor", elevation: 0 }],
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  switches: [],
  ceilingThings: [],
  luminaires: [],
  models: [roundModel()],
  detectors: [],
  ...given,
});
