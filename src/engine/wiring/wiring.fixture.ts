import type {
  Board,
  CableSegment,
  Circuit,
  Load,
  ProtectiveDevice,
  WiredDetector,
  WiringModel,
} from "./model.ts";

export const board: Board = {
  id: "board",
  name: "Board",
  loopImpedance: 0.35,
  faultCurrent: 3000,
  dropUsed: 0.01,
};

export const breaker: ProtectiveDevice = {
  id: "breaker",
  board: "board",
  name: "F1",
  type: "B",
  rating: 10,
  breakingCapacity: 6000,
  letThrough: 12_000,
  rcd: { id: "rcd", residual: 0.03 },
  poles: "one-and-neutral",
};

export const circuit: Circuit = {
  id: "circuit",
  name: "Lighting 1",
  device: "breaker",
  phases: "single-phase",
  lines: ["L1"],
  sharedNeutral: "no",
  isolator: "yes",
};

export const segment = (
  from: string,
  to: string,
  length: number,
  more: Partial<CableSegment> = {},
): CableSegment => ({
  id: `${from}-${to}`,
  circuit: "circuit",
  from,
  to,
  length,
  size: { kind: "metric", section: 1.5 },
  cores: 3,
  material: "copper",
  insulation: "PVC",
  method: "C",
  ambient: 30,
  grouping: { arrangement: "bunched", circuits: 1 },
  inInsulation: 0,
  concealed: "no",
  withSignals: "none",
  ...more,
});

export const load = (id: string, more: Partial<Load> = {}): Load => ({
  id,
  name: `Luminaire ${id}`,
  room: "room",
  kind: "led",
  circuit: "circuit",
  count: 1,
  power: 46,
  powerFactor: 1,
  drivers: 1,
  leakage: 0.0005,
  classOne: "yes",
  protectiveConductor: "yes",
  switchedLine: "switched",
  ...more,
});

export const detector = (id: string, more: Partial<WiredDetector> = {}): WiredDetector => ({
  id,
  tag: id.toUpperCase(),
  room: "room",
  role: "alone",
  line: { kind: "line", circuit: "circuit", line: "L1" },
  neutral: { kind: "neutral", circuit: "circuit" },
  protectiveConductor: "yes",
  output: "switched",
  breaks: "line",
  contact: {
    kind: "relay",
    rated: { led: 4, resistive: 10, inductive: 1 },
    makingPeak: 165,
    makingWidth: 0.0002,
    makingIntegral: 5,
    drivers: 20,
    backUp: 16,
    joined: 4,
  },
  inputs: { pushButton: "line", holdOff: 0.002, extension: true },
  warmUpOutput: "on",
  standby: 0.5,
  leakage: 0,
  ...more,
});

/** Ten luminaires of 0.2 A, the first at 15 m, then every 3 m, on 1.5 mm². */
export function row(more: Partial<WiringModel> = {}): WiringModel {
  const names = Array.from({ length: 10 }, (_, i) => `e${i}`);
  return {
    supply: {
      region: "IEC",
      system: "TN-S",
      voltage: 230,
      frequency: 50,
      neutral: "yes",
      network: "public",
      voltageFactor: 1,
    },
    boards: [board],
    devices: [breaker],
    circuits: [circuit],
    segments: names.map((name, i) => segment(i === 0 ? "board" : `e${i - 1}`, name, i === 0 ? 15 : 3)),
    loads: names.map((name) => load(name)),
    switchedLines: [{ id: "switched", name: "S1", suppressors: [], override: "no" }],
    detectors: [detector("d1")],
    buttons: [],
    contactors: [],
    rooms: [{ id: "room", name: "Corridor", use: "ordinary", household: "no", fireRatedCeiling: "no" }],
    ...more,
  };
}
