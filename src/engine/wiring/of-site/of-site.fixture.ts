import type { DetectorModel } from "../../detector/index.ts";
import type { Point } from "../../geometry/index.ts";
import {
  type Detector,
  type Luminaire,
  planningDefaults,
  type Room,
  type Site,
  type Switch,
} from "../../site/index.ts";
import type { FoundBoard, FoundCircuit, FoundInstallation } from "./found.ts";

/** A room of 10 m by 4 m. */
export const room: Room = {
  id: "hall",
  storey: "ground",
  number: "0.1",
  name: "Hall",
  use: "passing",
  outline: [
    [0, 0],
    [10, 0],
    [10, 4],
    [0, 4],
  ],
  holes: [],
  floor: 0,
  ceilingHeight: 2.7,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
  fireRatedCeiling: false,
};

/** A data sheet with every figure that the wiring asks for. */
export const model: DetectorModel = {
  id: "model",
  title: "Round",
  mounting: { min: 2, max: 4 },
  zones: { towards: [{ height: 2.5, radius: 4 }] },
  declaration: "assumed",
  declaredBy: "a test",
  fixing: "surface",
  waterProtection: 4,
  contact: {
    kind: "relay",
    rated: { led: 2, resistive: 10 },
    makingPeak: 165,
    makingWidth: 0.0002,
    drivers: 12,
    backUp: 16,
    joined: 4,
  },
  inputs: { pushButton: "line", holdOff: 0.002, extension: true },
  warmUpOutput: "off",
  standby: 0.4,
  leakage: 0.0001,
  cost: 1,
} as DetectorModel;

export const luminaire = (id: string, at: Point, more: Partial<Luminaire> = {}): Luminaire => ({
  id,
  room: "hall",
  name: "Panel",
  at,
  height: 2.7,
  mounting: "flush",
  hot: false,
  length: 0.6,
  width: 0.6,
  turn: 0,
  power: 32,
  powerFactor: 0.95,
  drivers: 1,
  load: "led",
  inrush: { peak: 26, width: 0.00018 },
  leakage: 0.0005,
  protectionClass: "I",
  circuit: "Lighting 1",
  ...more,
});

export const detector = (id: string, more: Partial<Detector> = {}): Detector => ({
  id,
  tag: id.toUpperCase(),
  room: "hall",
  controls: ["hall"],
  group: "",
  model: "model",
  at: [5, 2],
  height: 2.7,
  turn: 0,
  masks: [],
  pinned: false,
  ...more,
});

/** A switch that goes once the detector is there. */
export const oldSwitch: Switch = {
  id: "s1",
  room: "hall",
  kind: "switch",
  at: [0.5, 0],
  height: 1.1,
  circuit: "Lighting 1",
  planned: "removed",
};

export const board: FoundBoard = {
  id: "b1",
  name: "Sub-board",
  storey: "ground",
  at: [0, 0],
  system: "TN-S",
  voltage: 230,
  loopImpedance: 0.35,
  faultCurrent: 1300,
  dropUsed: 0.01,
  network: "public",
  readings: "measured",
};

export const circuit: FoundCircuit = {
  id: "c1",
  board: "b1",
  name: "Lighting 1",
  breaker: "C",
  rating: 10,
  rcd: "yes",
  residualCurrent: 0.03,
  rcdName: "RCD 1",
  protectiveConductor: "yes",
  sharedNeutral: "no",
  breakingCapacity: 6000,
  letThrough: 12_000,
  pulseCurve: [
    [0.0001, 22],
    [0.001, 4],
  ],
  poles: "one-and-neutral",
  phases: "single-phase",
  line: "L1",
  isolator: "yes",
  cable: {
    section: 1.5,
    protective: 1.5,
    cores: 3,
    material: "copper",
    insulation: "PVC",
    method: "C",
    ambient: 30,
    grouping: { arrangement: "bunched", circuits: 1 },
    inInsulation: 0,
    length: 30,
    concealed: "no",
    withSignals: "none",
  },
};

export const installation = (more: Partial<FoundInstallation> = {}): FoundInstallation => ({
  boards: [board],
  circuits: [circuit],
  ...more,
});

/** Four panels in a row, one detector, everything on record. */
export const site = (more: Partial<Site> = {}): Site => ({
  name: "",
  defaults: planningDefaults,
  storeys: [{ id: "ground", name: "Ground floor", elevation: 0 }],
  rooms: [room],
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  ceilingThings: [],
  luminaires: [2, 4, 6, 8].map((x) => luminaire(`e${x}`, [x, 2])),
  switches: [oldSwitch],
  models: [model],
  detectors: [detector("d1")],
  ...more,
});
