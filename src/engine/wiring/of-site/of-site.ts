import { type Problem, say } from "../../check/index.ts";
import type { DetectorModel } from "../../detector/index.ts";
import { type Room, roomTitle, type Site } from "../../site/index.ts";
import { coilWay } from "../derive/coil-way.ts";
import type {
  Contactor,
  Known,
  Line,
  PushButton,
  SwitchedLine,
  WiredDetector,
  WiringModel,
  WiringRoom,
} from "../model.ts";
import { fixingOf } from "../mounting.ts";
import { wetZones, zoneExtent } from "../wet-zones.ts";
import { cablesOf } from "./cables-of.ts";
import { circuitNamed, circuitsOf } from "./circuits-of.ts";
import type { PlacedContactor } from "./coil-lines.ts";
import type { FoundCircuit, FoundInstallation, WiringAssumption } from "./found.ts";
import { circuitDoubts, loadsOf, placedLuminaires } from "./loads-of.ts";
import { type JoinedOutputs, type Outputs, outputsOf } from "./outputs-of.ts";
import { boardsOf, supplyOf } from "./supply-of.ts";

/** The wiring of a site with everything that had to be taken for granted, and everything that nobody knows. */
export interface BuiltWiring {
  readonly model: WiringModel;
  readonly assumptions: readonly WiringAssumption[];
  readonly doubts: readonly Problem[];
  /** Circuits whose luminaires all stand at the far end of their cable: a drop that fails there is not proven to fail as built. */
  readonly atFarEnd: readonly string[];
}

/**
 * Whether there is anything to say about the wiring.
 *
 * @param site - The site. @param found - Boards and circuits.
 * @returns True with a circuit, or with a luminaire of which a circuit or a figure is known.
 * @example A survey of outlines alone: false
 */
export const hasWiring = (site: Site, found: FoundInstallation): boolean =>
  found.circuits.length > 0 ||
  site.luminaires.some(
    ({ circuit, power, drivers, inrush }) =>
      Boolean(circuit?.trim()) || power !== undefined || drivers !== undefined || inrush !== undefined,
  );

/**
 * The wiring of a site as far as it is on record.
 *
 * What nobody entered stays unknown, so that the checks say "not proven"; what is taken for granted is listed, each with the records it speaks of.
 *
 * @param site - Rooms, luminaires, switches, detectors with their data sheets. @param found - Boards and circuits as entered.
 * @returns Model, assumptions, open questions.
 * @example A room with one detector and four luminaires on "Lighting 1": one switched line with four loads
 */
export function wiringOfSite(site: Site, found: FoundInstallation): BuiltWiring {
  const placed = placedLuminaires(site, found);
  const outputs = outputsOf(site, found, placed);
  const supply = supplyOf(found);
  const boards = boardsOf(found);
  const circuits = circuitsOf(found);
  const loads = loadsOf(site, found, outputs.luminaires);
  const cables = cablesOf(site, found, outputs.luminaires);
  const rooms = site.rooms.map((room) => wiringRoom(site, room));
  const byExtent = rooms.flatMap(({ use, zones = {}, zonesByExtent = [] }) =>
    use === "shower" ? zonesByExtent.filter((id) => zones[id] === "outside") : [],
  );
  return {
    model: {
      supply: supply.supply,
      boards: boards.boards,
      devices: circuits.devices,
      circuits: circuits.circuits,
      segments: cables.segments,
      loads: loads.loads,
      switchedLines: outputs.lines.map((line) => switchedLine(site, found, outputs, line)),
      detectors: outputs.detectors.map((fed) => wiredDetector(site, found, outputs, fed)),
      buttons: buttonsOf(site, found, outputs),
      contactors: outputs.contactors.map((one) => contactorOf(site, found, outputs, one)),
      rooms,
    },
    assumptions: [
      ...supply.assumptions,
      ...boards.assumptions,
      ...circuits.assumptions,
      ...outputs.assumptions,
      ...loads.assumptions,
      ...cables.assumptions,
      ...linesTaken(found, outputs),
      ...(byExtent.length > 0
        ? [
            {
              text: say`Outside the zones of the baths and showers on the plan, taken as all there are: ${zoneExtent.rows.besideTub} m beside a tub or tray, ${zoneExtent.rows.roundOutlet} m round a shower without one; from memory, verify`,
              records: byExtent,
            },
          ]
        : []),
      ...(outputs.lines.length > 0
        ? [
            {
              text: say`No suppressor, base load or contactor on switched lines where none is entered`,
              records: outputs.lines.flatMap(({ detectors }) => detectors.map(({ id }) => id)),
            },
          ]
        : []),
    ],
    doubts: [...circuits.doubts, ...circuitDoubts(site, placed), ...outputs.doubts, ...cables.doubts],
    atFarEnd: cables.atFarEnd,
  };
}

/** Detectors of three-phase circuits with the line that they are taken to be on. */
function linesTaken(found: FoundInstallation, outputs: Outputs): readonly WiringAssumption[] {
  const threePhase = new Map(
    found.circuits.filter(({ phases }) => phases === "three-phase").map((one) => [one.id, one]),
  );
  const on = (["L1", "L2", "L3"] as const).map((line) => ({
    line,
    records: outputs.detectors.flatMap(({ detector, circuit, switchedLine }) => {
      const own = threePhase.get(circuit ?? "");
      return own && lineOf(own, outputs, switchedLine) === line ? [detector.id] : [];
    }),
  }));
  return on
    .filter(({ records }) => records.length > 0)
    .map(({ line, records }) => ({
      text: say`On line ${line} of a three-phase circuit: that of the luminaires that they switch, L1 where none is entered`,
      records,
    }));
}

/** A switch that stays beside the contact overrides it; only where each switch of the circuit there is known to go is there surely none. */
function switchedLine(
  site: Site,
  found: FoundInstallation,
  outputs: Outputs,
  { id, name }: JoinedOutputs,
): SwitchedLine {
  const own = outputs.luminaires.filter((one) => one.switchedLine === id);
  const rooms = new Set(own.map(({ luminaire }) => luminaire.room));
  const circuits = new Set(own.map(({ circuit }) => circuit));
  const beside = site.switches.filter(({ room, circuit }) => {
    const named = circuitNamed(found, circuit)?.id;
    return rooms.has(room) && (named === undefined || circuits.has(named));
  });
  const stays = beside.some(({ planned, circuit }) => planned === "parallel" && circuit !== undefined);
  const settled =
    beside.length > 0 && beside.every(({ planned }) => planned === "button" || planned === "removed");
  const detectors = outputs.detectors
    .filter((one) => one.switchedLine === id)
    .map(({ detector }) => detector);
  const told = (field: "override" | "baseLoad"): Known | undefined =>
    (["yes", "no"] as const).find((known) => detectors.some((one) => one[field] === known));
  const baseLoad = told("baseLoad");
  return {
    id,
    name,
    suppressors: detectors.flatMap(({ suppressors = [] }) => suppressors),
    ...(baseLoad === undefined ? {} : { baseLoad }),
    override: told("override") ?? (stays ? "yes" : settled ? "no" : "unknown"),
  };
}

const contactorOf = (
  site: Site,
  installation: FoundInstallation,
  outputs: Outputs,
  { found, circuit, coil, main }: PlacedContactor,
): Contactor => ({
  id: found.id,
  name: found.name.trim() || found.id,
  ...(found.kind === "relay-pack"
    ? {
        pack: {
          apart: found.apart ?? "unknown",
          ...(found.supplies === undefined ? {} : { supplies: found.supplies }),
        },
      }
    : {}),
  coil: {
    switchedLine: coil.id,
    suppressor: found.suppressor,
    ...(found.coilCurrent === undefined ? {} : { current: found.coilCurrent }),
    ...(found.coilPullIn === undefined ? {} : { pullIn: found.coilPullIn }),
    ...(found.coilLeast === undefined ? {} : { least: found.coilLeast }),
    ...coilWire(site, installation, outputs, { found, circuit }),
    ...(found.coilCable === undefined ? {} : { cable: found.coilCable }),
  },
  main: {
    circuit,
    switchedLine: main.id,
    ...(found.rated === undefined ? {} : { rated: found.rated }),
    ...(found.makingPeak === undefined ? {} : { makingPeak: found.makingPeak }),
    ...(found.makingWidth === undefined ? {} : { makingWidth: found.makingWidth }),
    ...(found.drivers === undefined ? {} : { drivers: found.drivers }),
    ...(found.backUp === undefined ? {} : { backUp: found.backUp }),
  },
  labelled: found.labelled,
  isolatesAllPoles: found.isolatesAllPoles,
  ...(found.inBoard === undefined ? {} : { inBoard: found.inBoard }),
});

/** The cable to a coil: as entered, otherwise along the plan back to the board, as thick as the cable of the detector's circuit. */
function coilWire(
  site: Site,
  { boards, circuits }: FoundInstallation,
  { detectors }: Outputs,
  { found, circuit }: Pick<PlacedContactor, "found" | "circuit">,
): Pick<Contactor["coil"], "wire"> {
  const { coilLength, coilSection, inBoard } = found;
  const holding = detectors.filter(({ detector }) => found.detectors.includes(detector.id));
  const board = boards.find(({ id }) => id === circuits.find((one) => one.id === circuit)?.board);
  const way =
    inBoard === "yes"
      ? coilWay(
          site,
          board,
          holding.map(({ detector }) => detector),
        )
      : undefined;
  const feeding = circuits.find(({ id }) => id === holding[0]?.circuit);
  const section = coilSection ?? feeding?.cable?.section;
  const start = way?.start ?? holding[0]?.detector.id;
  const length = coilLength ?? way?.length;
  return {
    wire: {
      ...(start === undefined ? {} : { start }),
      ...(length === undefined ? {} : { length }),
      ...(section === undefined ? {} : { section }),
      from: coilLength === undefined && way !== undefined ? "plan" : "entered",
    },
  };
}

function wiredDetector(
  site: Site,
  found: FoundInstallation,
  outputs: Outputs,
  { detector, circuit: id, switchedLine: output }: Outputs["detectors"][number],
): WiredDetector {
  const circuit = found.circuits.find((one) => one.id === id);
  const model = site.models.find((one) => one.id === detector.model);
  const low = model?.supply === "low-voltage";
  const fixing = fixingOf(detector, model);
  const others = outputs.detectors.filter((one) => output !== undefined && one.switchedLine === output);
  return {
    id: detector.id,
    tag: detector.tag || detector.id,
    room: detector.room,
    role: detector.output === "signals" ? "slave" : others.length > 1 ? "parallel" : "alone",
    ...(low ? { lowVoltage: model.supplyCurrent === undefined ? {} : { current: model.supplyCurrent } } : {}),
    line: low
      ? { kind: "none" }
      : circuit
        ? { kind: "line", circuit: circuit.id, line: lineOf(circuit, outputs, output) }
        : { kind: "unknown" },
    neutral: low
      ? { kind: "none" }
      : circuit
        ? { kind: "neutral", circuit: circuit.id }
        : { kind: "unknown" },
    protectiveConductor: low ? "no" : (circuit?.protectiveConductor ?? "unknown"),
    ...(output === undefined ? {} : { output }),
    // A relay of this kind is fed inside from the line terminal; of the other kinds nobody can tell from the data sheet.
    ...(model?.contact?.kind === "relay" ? { breaks: "line" as const } : {}),
    ...(model?.contact === undefined ? {} : { contact: model.contact }),
    ...(model?.inputs === undefined ? {} : { inputs: model.inputs }),
    ...(model?.warmUpOutput === undefined ? {} : { warmUpOutput: model.warmUpOutput }),
    ...(model?.standby === undefined ? {} : { standby: model.standby }),
    ...leakageOf(model),
    ...(model?.waterProtection === undefined ? {} : { waterProtection: model.waterProtection }),
    ...(fixing === undefined ? {} : { recessed: fixing === "ceiling-panel" }),
    testedCover: detector.testedCover ?? "unknown",
  };
}

/** Line conductor of a detector: that of its circuit, and in a three-phase one that of the luminaires which it switches; L1 where nothing says otherwise. */
function lineOf(circuit: FoundCircuit, { luminaires }: Outputs, output: string | undefined): Line {
  if (circuit.phases !== "three-phase") return circuit.line ?? "L1";
  return (
    luminaires.find(
      ({ switchedLine, luminaire }) =>
        output !== undefined && switchedLine === output && luminaire.line !== undefined,
    )?.luminaire.line ?? "L1"
  );
}

/** What has no terminal for a protective conductor cannot leak into one. */
const leakageOf = (model: DetectorModel | undefined): Pick<WiredDetector, "leakage"> =>
  model?.leakage !== undefined
    ? { leakage: model.leakage }
    : model?.terminals && !model.terminals.includes("protective-conductor")
      ? { leakage: 0 }
      : {};

const buttonsOf = (site: Site, found: FoundInstallation, outputs: Outputs): readonly PushButton[] =>
  site.switches.flatMap((one): readonly PushButton[] => {
    if (!one.detectors || one.detectors.length === 0 || one.planned === "removed") return [];
    const circuit = circuitNamed(found, one.circuit);
    return [
      {
        id: one.id,
        room: one.room,
        detectors: one.detectors,
        kind: one.kind === "push-button" ? "push-button" : "latching-switch",
        feed: circuit
          ? {
              kind: "line",
              circuit: circuit.id,
              // In a three-phase circuit it is taken to be on the line of the detector that it speaks to.
              line: lineOf(
                circuit,
                outputs,
                outputs.detectors.find(({ detector }) => one.detectors?.includes(detector.id))?.switchedLine,
              ),
            }
          : { kind: "unknown" },
        ...(one.glowLamp === undefined ? {} : { glowLamp: one.glowLamp }),
      },
    ];
  });

function wiringRoom(site: Site, room: Room): WiringRoom {
  const zones = Object.entries(wetZones(room, site.detectors, site.dwellPlaces));
  return {
    id: room.id,
    name: roomTitle(room),
    use: wiringUse(site, room),
    zones: Object.fromEntries(zones.map(([id, { zone }]) => [id, zone])),
    zonesByExtent: zones.flatMap(([id, { from }]) => (from === "extent" ? [id] : [])),
    household: "unknown",
    fireRatedCeiling: known(room.fireRatedCeiling),
    penetrationsSealed: known(room.penetrationsSealed),
  };
}

const known = (fact: boolean | undefined): Known => (fact === undefined ? "unknown" : fact ? "yes" : "no");

/** Where a bath or shower stands, or where water may splash and people wash or change: as a shower. Elsewhere wet rooms ask for protection against water alone. */
function wiringUse({ dwellPlaces }: Site, { id, use, wet, escapeRoute }: Room): WiringRoom["use"] {
  if (dwellPlaces.some(({ room, kind }) => room === id && (kind === "bath" || kind === "shower")))
    return "shower";
  if (wet) return use === "sanitary" || use === "changing" ? "shower" : "store-wet";
  if (use === "plant") return "plant";
  if (use === "stair") return "stair";
  return escapeRoute ? "escape" : "ordinary";
}
