import { figured, type Said, say } from "../check/index.ts";
import { capacityOf } from "./capacity-checks.ts";
import { circuitTree, dropsOnTree } from "./circuit-tree.ts";
import type { CableSegment, Circuit, Contactor, WiringModel } from "./model.ts";
import { supplyOfCircuit } from "./supply.ts";
import { assumedDropUsed } from "./tables/assumed.ts";
import { voltageDrop } from "./voltage-drop.ts";
import { atMost, type WiringCheck, withDoubts } from "./wiring-check.ts";

/** Conductors of the cable to a coil: switched line, neutral of the same circuit, protective conductor. */
export const COIL_CORES = 3;

/** The cable to a coil as far as its data go. */
export type CoilCable =
  | { readonly kind: "calculated"; readonly checks: readonly WiringCheck[] }
  | { readonly kind: "open"; readonly missing: readonly Said[] };

/**
 * The cable to the coil of a contactor: voltage left while it closes, and protection of the cable.
 *
 * u = (drop used + drop of the circuit + 2 · (ρ₁/S) · L · I) / U0, I the current while the coil closes, cos φ = 1, which takes the most
 *
 * @param model - The wiring. @param contactor - With what its data sheet says of the coil: current while it closes [A], least share of the voltage at which it surely closes.
 * @returns Two checks; or what nobody has entered. The drop up to the detector is taken as that of the circuit's last luminaire, the worst place.
 * @source IEC-60364-5-52-DROP, IEC-60364-4-43, DERIVED-HERE
 * @example 0.2 A over 30 m of 1.5 mm²: 0.18 V, 0.08 % of 230 V
 */
export function coilCable(model: WiringModel, contactor: Contactor): CoilCable {
  const { coil, name, id } = contactor;
  // The signal of a relay pack is low voltage: what its detectors draw is another check.
  if (contactor.pack) return { kind: "open", missing: [] };
  const { pullIn, least, wire } = coil;
  const feed = model.detectors.find(({ output }) => output === coil.switchedLine)?.line;
  const circuit = feed?.kind === "line" ? model.circuits.find((one) => one.id === feed.circuit) : undefined;
  const missing = [
    ...(circuit === undefined ? [say`the circuit of the detector that holds its coil`] : []),
    ...(pullIn === undefined ? [say`the current of its coil while it closes`] : []),
    ...(least === undefined ? [say`the least voltage at which its coil closes`] : []),
    ...(wire?.length === undefined ? [say`the length of the cable to its coil`] : []),
    ...(wire?.section === undefined ? [say`the section of the cable to its coil`] : []),
  ];
  if (!circuit || pullIn === undefined || least === undefined || !wire?.length || !wire.section)
    return { kind: "open", missing };
  const { length, section } = wire;
  const supply = supplyOfCircuit(model, circuit.id);
  const device = model.devices.find((one) => one.id === circuit.device);
  const board = model.boards.find((one) => one.id === device?.board);
  const before = board?.dropUsed ?? assumedDropUsed.rows;
  const tree = circuitTree(model, circuit.id);
  const drops = tree ? [...dropsOnTree(tree, { ...model, supply }).drop.values()] : [];
  const unpowered = model.loads.filter((load) => load.circuit === circuit.id && load.power === undefined);
  const doubts = [
    ...(board?.dropUsed === undefined
      ? [say`${100 * before} % is lost on the way to the board; nobody has measured it`]
      : []),
    ...(tree === undefined || tree.segments.length === 0 ? [say`No cable of its circuit is on record`] : []),
    ...unpowered.map((load) => say`Power of ${load.name} is unknown`),
  ];
  const own = voltageDrop({
    current: pullIn,
    length,
    section,
    material: "copper",
    powerFactor: 1,
    phases: "single-phase",
  });
  const actual = 100 * (before + (Math.max(0, ...drops) + own) / supply.voltage);
  const limit = 100 * (1 - least);
  const about = { name, records: [id, circuit.id] } as const;
  return {
    kind: "calculated",
    checks: [
      {
        ...about,
        verdict: withDoubts(atMost(actual, limit), doubts),
        what: say`Voltage drop at the coil while it closes`,
        actual,
        limit,
        unit: "%",
        source: "IEC-60364-5-52-DROP",
        assumptions: [
          say`${figured(own.toPrecision(2))} V of it on ${figured(length.toPrecision(3))} m to the coil, ${COIL_CORES} cores of ${section} mm² copper`,
          wire.from === "plan"
            ? say`Length along the ceilings of the plan, from the nearest detector that holds it to the board`
            : say`Length as entered`,
          say`Up to the detector as much as to the last luminaire of its circuit, the worst place`,
          ...doubts,
        ],
        missing: [
          ...(board?.dropUsed === undefined ? [say`the voltage drop already used up to the board`] : []),
          ...(unpowered.length > 0 ? [say`the power of each luminaire`] : []),
          ...(tree === undefined || tree.segments.length === 0
            ? [say`section and length of the cable from the board to the last luminaire`]
            : []),
        ],
        code: "coil-drop-too-large",
      },
      protectionCheck({ model, circuit, section, length, about }),
    ],
  };
}

/** The device of the coil's circuit against the cable to the coil, which lies as the circuit's own does. */
function protectionCheck(of: {
  readonly model: WiringModel;
  readonly circuit: Circuit;
  readonly section: number;
  readonly length: number;
  readonly about: Pick<WiringCheck, "name" | "records">;
}): WiringCheck {
  const { model, circuit, section, length, about } = of;
  const device = model.devices.find((one) => one.id === circuit.device);
  const like = model.segments.find((one) => one.circuit === circuit.id);
  const segment: CableSegment = {
    ...like,
    id: `coil cable of ${circuit.id}`,
    circuit: circuit.id,
    from: "",
    to: "",
    length,
    cores: COIL_CORES,
    size: { kind: "metric", section },
    material: "copper",
    insulation: like?.insulation ?? "PVC",
  };
  const { capacity, assumed, untold } = capacityOf(segment, {
    circuit: { ...circuit, phases: "single-phase" },
    rating: device?.rating,
  });
  const doubts = [
    ...untold.map(({ taken }) => taken),
    ...(capacity.kind === "unknown" ? [capacity.why] : []),
  ];
  const limit = capacity.kind === "capacity" ? capacity.value : undefined;
  return {
    ...about,
    verdict: withDoubts(atMost(device?.rating, limit), doubts),
    what: say`Rating of the protective device against the cable to the coil`,
    actual: device?.rating,
    limit,
    unit: "A",
    source: "IEC-60364-5-52-CAPACITY",
    assumptions: [
      ...assumed,
      say`Laid like the cable of its circuit`,
      say`Verify the capacity against your edition`,
      ...doubts,
    ],
    missing: [
      ...(device?.rating === undefined ? [say`the rating of the protective device`] : []),
      ...(capacity.kind === "unknown" ? [say`how the cable lies`] : []),
      ...untold.map((one) => one.missing),
    ],
    code: "cable-too-thin",
  };
}
