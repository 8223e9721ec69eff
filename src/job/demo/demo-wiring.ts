import type { RecordInputs } from "../schema/job-file.ts";
import type { Drawn } from "./drawing.ts";

type Circuit = RecordInputs["circuits"];
type Luminaire = RecordInputs["luminaires"];

/** Rooms on each circuit, and the cable from the board to its last luminaire. [m] */
const lighting = [
  { id: "lighting-1", rooms: ["corridor", "entrance", "plant"], length: 46 },
  { id: "lighting-2", rooms: ["back-office", "meeting", "first-aid"], length: 44 },
  { id: "lighting-3", rooms: ["changing-west", "changing-east", "toilets", "drying"], length: 52 },
  { id: "lighting-4", rooms: ["rest", "luggage", "cleaner"], length: 58 },
  { id: "lighting-5", rooms: ["stair", "archive"], length: 49 },
] as const;

const nameOf = (id: string): string => `Lighting ${id.at(-1)}`;

/** Points below 10 ms of the invented breakers: width [s], factor on the lower end of their band. */
const pulseCurve: [number, number][] = [
  [0.0001, 22],
  [0.0003, 9],
  [0.001, 4],
  [0.01, 1],
];

const circuit = (
  { id, length }: (typeof lighting)[number],
  line: "L1" | "L2" | "L3",
  rcdName: string,
): Circuit => ({
  id,
  board: "board-plant",
  name: nameOf(id),
  breaker: "C",
  rating: 10,
  rcd: "yes",
  residualCurrent: 0.03,
  rcdName,
  protectiveConductor: "yes",
  neutralAtSwitch: "yes",
  twoWay: id === "lighting-5" ? "yes" : "no",
  sharedNeutral: "no",
  oldColours: "no",
  driversKnown: "yes",
  breakingCapacity: 6000,
  letThrough: 12_000,
  pulseCurve,
  poles: "one-and-neutral",
  phases: "single-phase",
  line,
  isolator: "yes",
  cable: {
    section: 1.5,
    cores: 3,
    material: "copper",
    insulation: "PVC",
    method: "C",
    ambient: 30,
    grouping: { arrangement: "bunched", circuits: 3 },
    inInsulation: 0,
    length,
    concealed: "no",
    withSignals: "none",
  },
});

/** What the labels on panels and battens say. */
const panel = {
  type: "Panel, 32 W",
  power: 32,
  drivers: 1,
  load: "led",
  powerFactor: 0.95,
  inrush: { peak: 26, width: 0.00018 },
  leakage: 0.0005,
  protectionClass: "I",
} as const satisfies Partial<Luminaire>;
const batten = {
  ...panel,
  type: "Batten, 24 W",
  power: 24,
  inrush: { peak: 18, width: 0.00015 },
  leakage: 0.0004,
} as const satisfies Partial<Luminaire>;

/** Luminaires with their circuits, and with what their labels say. */
export const fed = (luminaires: readonly Luminaire[]): readonly Luminaire[] =>
  luminaires.map((one) => {
    const own = lighting.find(({ rooms }) => rooms.some((room) => room === one.room));
    return {
      ...one,
      ...(one.mounting === "flush" ? panel : batten),
      ...(own ? { circuit: nameOf(own.id) } : {}),
    };
  });

/** Rooms with their ceilings: panels of mineral fibre on a grid, or a solid ceiling with boxes cast into it. */
export const ceilinged = (rooms: readonly RecordInputs["rooms"][]): readonly RecordInputs["rooms"][] =>
  rooms.map((room) => ({
    ...room,
    ...(room.ceilingGrid ? { ceilingThickness: 0.015, ceilingVoid: 0.3 } : { ceilingBoxDepth: 0.065 }),
  }));

/** The lighting board in the plant room, its five circuits, and the switches on the walls, all as they should be. */
export const wiring: Drawn = {
  boards: [
    {
      id: "board-plant",
      name: "Lighting board, plant room",
      storey: "ground",
      at: [4.9, 3.4],
      system: "TN-S",
      voltage: 230,
      loopImpedance: 0.32,
      faultCurrent: 1440,
      dropUsed: 0.006,
      isolatesNeutral: "yes",
      network: "public",
      readings: "measured",
    },
  ],
  circuits: lighting.map((one, index) =>
    circuit(one, (["L1", "L2", "L3"] as const)[index % 3] ?? "L1", `RCD ${index + 1}`),
  ),
  switches: [
    {
      id: "entrance-switch",
      room: "entrance",
      at: [4.9, 7.9],
      circuit: nameOf("lighting-1"),
      planned: "removed",
    },
    {
      id: "corridor-switch",
      room: "corridor",
      at: [29.9, 7.6],
      circuit: nameOf("lighting-1"),
      planned: "removed",
    },
    // Somebody at work at the machines is not left in the dark.
    {
      id: "plant-switch",
      room: "plant",
      at: [3.3, 3.78],
      circuit: nameOf("lighting-1"),
      planned: "parallel",
    },
    {
      id: "meeting-button",
      room: "meeting",
      kind: "push-button",
      at: [15.8, 8.02],
      circuit: nameOf("lighting-2"),
      planned: "button",
      detectors: ["meeting-table"],
    },
    {
      id: "stair-switch-below",
      room: "stair",
      kind: "two-way",
      at: [20.85, 8.02],
      circuit: nameOf("lighting-5"),
    },
    {
      id: "stair-switch-above",
      room: "archive",
      kind: "two-way",
      at: [21.1, 7.7],
      circuit: nameOf("lighting-5"),
    },
  ],
};
