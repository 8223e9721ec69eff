import type { DetectorModel } from "../detector/index.ts";
import type { Outline } from "../geometry/index.ts";
import { type Obstacle, type Opening, planningDefaults, type Room, type Site } from "../site/index.ts";
import type { CoverSolver, PlacementWorld } from "./contract.ts";

/** Rooms, models and hosts that the tests of placing share. */

/** A round model whose effective reach, after the planning margin, is the given one. */
export const roundModel = (reach: number, more: Partial<DetectorModel> = {}): DetectorModel => {
  const { margin } = planningDefaults;
  return {
    id: `round-${reach}`,
    title: `Round, ${reach} m effective`,
    mounting: { min: 2, max: 6 },
    zones: {
      towards: [{ height: 3, radius: reach / (1 - margin.towards) }],
      across: [{ height: 3, radius: reach / (1 - margin.across) }],
      seated: [{ height: 3, radius: (reach * 0.75) / (1 - margin.seated) }],
    },
    declaration: "assumed",
    declaredBy: "test",
    cost: 1,
    ...more,
  };
};

export const rectangle = (x: number, y: number, width: number, depth: number): Outline => [
  [x, y],
  [x + width, y],
  [x + width, y + depth],
  [x, y + depth],
];

export const roomOf = (outline: Outline, more: Partial<Room> = {}): Room => ({
  id: "room",
  storey: "ground",
  number: "1",
  name: "Room",
  use: "other",
  outline,
  holes: [],
  floor: 0,
  ceilingHeight: 3,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
  ...more,
});

export const siteOf = (room: Room, more: Partial<Site> = {}): Site => ({
  name: "test",
  defaults: planningDefaults,
  storeys: [{ id: "ground", name: "Ground", elevation: 0 }],
  rooms: [room],
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  switches: [],
  ceilingThings: [],
  luminaires: [],
  models: [roundModel(4)],
  detectors: [],
  ...more,
});

export const doorOf = (
  from: readonly [number, number],
  to: readonly [number, number],
  more: Partial<Opening> = {},
): Opening => ({
  id: "door",
  rooms: ["room", null],
  kind: "door",
  from,
  to,
  sill: 0,
  head: 2.1,
  thickness: 0.15,
  hinge: "from",
  opensInto: null,
  angle: Math.PI / 2,
  state: "closed",
  ...more,
});

export const obstacleOf = (id: string, footprint: Outline, more: Partial<Obstacle> = {}): Obstacle => ({
  id,
  room: "room",
  kind: "rack",
  name: id,
  footprint,
  base: 0,
  top: 2,
  seeThrough: false,
  ...more,
});

/** An L-room of 20 × 15 m with legs 10 m and 5 m wide. */
export const lRoom: Outline = [
  [0, 0],
  [20, 0],
  [20, 8],
  [9, 8],
  [9, 15],
  [0, 15],
];

/** The clock of a search under test: time that this process had the processor, so that a busy machine searches as far as a quiet one. [s] */
const processorTime = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

export const worldOf = (solver: CoverSolver, more: Partial<PlacementWorld> = {}): PlacementWorld => ({
  solver,
  now: processorTime,
  cancelled: () => false,
  progress: () => {},
  breathe: async () => {},
  ...more,
});
