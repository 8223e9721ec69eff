import { type FoundInstallation, type Luminaire, type Site, wiringOfSite } from "#engine";
import { ferryWing } from "../ferry-wing.fixture.ts";
import { wiringPlan } from "./wiring-plan.ts";

/** The small storey of the other papers with its wiring: a corridor with two joined detectors, an office with a button, a toilet of which little is known. */
const luminaire = (
  id: string,
  room: string,
  at: readonly [number, number],
  more: Partial<Luminaire> = {},
): Luminaire => ({
  id,
  room,
  name: "LED panel",
  at,
  height: 2.5,
  mounting: "flush",
  hot: false,
  length: 0.6,
  width: 0.6,
  turn: 0,
  power: 36,
  drivers: 1,
  circuit: "Lighting 1",
  load: "led",
  ...more,
});

export const wiredWing: Site = {
  ...ferryWing,
  luminaires: [
    ...[1.5, 4.5, 7.5, 10.5, 13].map((x, i) =>
      luminaire(`c${i}`, "corridor", [x, 1], { name: "Downlight", power: 18 }),
    ),
    luminaire("x1", "corridor", [14.9, 1], {
      name: "Exit luminaire",
      power: 3,
      emergency: { taken: "before-contact", senses: "Lighting 1" },
    }),
    ...[1.6, 3.2, 4.8, 6.4].map((x, i) => luminaire(`o${i}`, "office", [x, 4], { circuit: "Lighting 2" })),
    luminaire("t1", "toilet", [14, 3.3], {
      name: "Round light",
      power: undefined as never,
      drivers: undefined as never,
    }),
  ].map((one) => JSON.parse(JSON.stringify(one)) as Luminaire),
  switches: [
    {
      id: "s1",
      room: "office",
      kind: "push-button",
      at: [1.2, 2.15],
      height: 1.1,
      circuit: "Lighting 2",
      planned: "button",
      detectors: ["b3"],
      glowLamp: { current: 0.0007, ownNeutral: "yes" },
    },
    {
      id: "s2",
      room: "corridor",
      kind: "switch",
      at: [0.2, 0.4],
      height: 1.1,
      circuit: "Lighting 1",
      planned: "parallel",
    },
    {
      id: "s3",
      room: "toilet",
      kind: "switch",
      at: [15.6, 2.15],
      height: 1.1,
      circuit: "Lighting 3",
      planned: "removed",
    },
  ],
  models: ferryWing.models.map((model) =>
    model.id === "round-8"
      ? {
          ...model,
          fixing: "ceiling-panel" as const,
          depth: 0.08,
          terminals: ["line-in", "neutral", "switched-line", "push-button", "extension-in"] as const,
          inputs: { pushButton: "line" as const, extension: true },
          contact: { kind: "relay" as const, rated: { led: 4 }, makingPeak: 165, makingWidth: 0.0002 },
        }
      : model,
  ),
  detectors: ferryWing.detectors.map((one) =>
    one.id === "b4"
      ? { ...one, output: "signals" as const, circuit: "Lighting 2", controls: ["store", "office"] }
      : one,
  ),
};

export const wiredInstallation: FoundInstallation = {
  boards: [
    {
      id: "board",
      name: "Board staff wing",
      storey: "ground",
      at: [0.3, 0.2],
      system: "TN-S",
      voltage: 230,
      loopImpedance: 0.35,
      faultCurrent: 3000,
      readings: "measured",
    },
  ],
  circuits: [
    {
      id: "circuit-1",
      board: "board",
      name: "Lighting 1",
      breaker: "B",
      rating: 10,
      rcd: "yes",
      residualCurrent: 0.03,
      rcdName: "RCD 1",
      protectiveConductor: "yes",
      sharedNeutral: "no",
      poles: "one-and-neutral",
      line: "L1",
      cable: { section: 1.5, cores: 3, length: 31, method: "C" },
    },
    {
      id: "circuit-2",
      board: "board",
      name: "Lighting 2",
      breaker: "fuse-gG",
      rating: 10,
      rcd: "no",
      protectiveConductor: "yes",
      sharedNeutral: "no",
      line: "L2",
      cable: { section: 1.5 },
    },
    {
      id: "circuit-3",
      name: "Lighting 3",
      breaker: "unknown",
      rcd: "unknown",
      protectiveConductor: "unknown",
      sharedNeutral: "unknown",
    },
  ],
};

export const wiredSite: Site = {
  ...wiredWing,
  luminaires: wiredWing.luminaires.map((one) =>
    one.room === "toilet" ? { ...one, circuit: "Lighting 3" } : one,
  ),
};

export const wiredPlan = wiringPlan(wiredSite, wiredInstallation, wiringOfSite(wiredSite, wiredInstallation));
