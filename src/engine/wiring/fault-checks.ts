import { say } from "../check/index.ts";
import type { AmpereSquareSeconds, Ohms } from "../quantity/index.ts";
import type { CircuitCase } from "./circuit-case.ts";
import {
  disconnectionTime,
  largestEarthResistance,
  largestLoopImpedance,
  loopResistance,
  sureTrip,
  withstand,
} from "./fault.ts";
import type { Board } from "./model.ts";
import { adiabaticFactors, type BreakerType, touchVoltage } from "./tables/protection.ts";
import { warmFactor } from "./tables/resistance.ts";
import { groundingConductors } from "./tables/united-states.ts";
import { atMost, type WiringCheck, withDoubts } from "./wiring-check.ts";

/** Time within which the magnetic release of a breaker has surely opened. [s] */
const MAGNETIC = 0.1;

/**
 * Fault protection of one circuit: loop and disconnection, earth of TT, heat of the fault near and far, breaking capacity.
 *
 * @param about - The circuit.
 * @returns Checks of the IEC set; in the United States the equipment grounding conductor and the breaking capacity, since loop and time are not asked there.
 * @source IEC-60364-4-41, IEC-60364-4-43, NEC-250
 * @example Zdb 0.35 Ω, 60 m of 1.5 mm² on a C10: 0.35 + 60 · 0.0242 · 1.2 = 2.09 Ω of 2.3 Ω passes
 */
export function faultChecks(about: CircuitCase): readonly WiringCheck[] {
  const { model, device } = about;
  const board = model.boards.find(({ id }) => id === device.board);
  if (model.supply.region === "US") return [groundingCheck(about), breakingCheck(about, board)];
  return [
    ...(model.supply.system === "TT" ? earthChecks(about, board) : [loopCheck(about, board)]),
    nearHeatCheck(about),
    farHeatCheck(about, board),
    breakingCheck(about, board),
  ];
}

/** The equipment grounding conductor against the least one behind the device; a smaller number is a thicker wire. */
function groundingCheck(about: CircuitCase): WiringCheck {
  const { tree, device, missing, gaps } = about;
  const gauges = tree.segments.flatMap(({ size }) =>
    size.kind === "gauge" ? [size.protective ?? size.gauge] : [],
  );
  const { rating } = device;
  const actual = gauges.length === 0 ? undefined : Math.max(...gauges);
  const limit =
    rating === undefined ? undefined : groundingConductors.rows.find(([upTo]) => rating <= upTo)?.[1];
  return {
    verdict: withDoubts(atMost(actual, limit), tree.segments.length === 0 ? gaps : []),
    what: say`Equipment grounding conductor behind the protective device`,
    actual,
    limit,
    unit: "AWG",
    source: groundingConductors.source,
    assumptions: [
      say`A smaller number is a thicker wire`,
      say`As thick as the line conductors where nobody entered it`,
      say`Verify the size against your edition`,
    ],
    missing: [
      ...missing.cables,
      ...(actual === undefined ? [say`the gauge of the cable`] : []),
      ...(rating === undefined ? [say`the rating of the protective device`] : []),
    ],
    code: "grounding-conductor-too-thin",
    ...named(about),
  };
}

const DEVICE = say`type and rating of the protective device`;
const RCD = say`whether there is an RCD, and its rated residual current`;

const isBreaker = (type: string): type is BreakerType => type === "B" || type === "C" || type === "D";

/** Impedance at the far end of the worst branch, conductors warm; undefined where a section or the board is unknown. @param tree - Of the circuit. @param board - Its board. @returns Zs. [Ω] @source DERIVED-HERE @example 0.35 Ω at the board and 50 m of 1.5 mm²: 0.35 + 50 · 0.02904 = 1.802 Ω */
export function farLoop({ tree }: Pick<CircuitCase, "tree">, board: Board | undefined): Ohms | undefined {
  if (board?.loopImpedance === undefined) return undefined;
  const at = new Map<string, number>([[tree.root, board.loopImpedance]]);
  for (const { size, material, from, to, length } of tree.segments) {
    const perMetre =
      size.kind === "metric" && material === "copper"
        ? loopResistance(size.section, size.protective ?? size.section)
        : undefined;
    if (perMetre === undefined) return undefined;
    at.set(to, (at.get(from) ?? 0) + perMetre * warmFactor.rows * length);
  }
  return Math.max(...at.values());
}

const named = ({ tree }: CircuitCase): Pick<WiringCheck, "name" | "records"> => ({
  name: tree.circuit.name,
  records: [tree.circuit.id],
});

function loopCheck(about: CircuitCase, board: Board | undefined): WiringCheck {
  const { model, device, gaps, missing } = about;
  const { supply } = model;
  const actual = farLoop(about, board);
  const limit =
    isBreaker(device.type) && device.rating !== undefined
      ? largestLoopImpedance({
          voltage: supply.voltage,
          type: device.type,
          rating: device.rating,
          voltageFactor: supply.voltageFactor,
        })
      : undefined;
  const time = disconnectionTime({ system: supply.system, voltage: supply.voltage, circuit: "final" });
  const unknown = [
    ...(board?.loopImpedance === undefined ? [say`The loop impedance at the board is unknown`] : []),
    ...(limit === undefined ? [say`What surely trips ${device.name} is not on record`] : []),
    ...(time === undefined ? [say`The earthing system is unknown`] : []),
    ...gaps,
  ];
  return {
    verdict: withDoubts(atMost(actual, limit), unknown),
    what:
      time === undefined
        ? say`Fault loop at the far end`
        : say`Fault loop at the far end, off within ${time} s`,
    actual,
    limit,
    unit: "Ω",
    source: "IEC-60364-4-41",
    assumptions: [
      say`Conductors warm, 1.20 times their resistance at 20 °C`,
      say`Voltage factor ${supply.voltageFactor}`,
      ...unknown,
    ],
    missing: [
      ...(board?.loopImpedance === undefined ? [say`the impedance of the fault loop at the board`] : []),
      ...(limit === undefined ? [DEVICE] : []),
      ...(time === undefined ? [say`the earthing system`] : []),
      ...missing.cables,
    ],
    code: "fault-loop-too-large",
    ...named(about),
  };
}

function earthChecks(about: CircuitCase, board: Board | undefined): readonly WiringCheck[] {
  const { device } = about;
  const rcd = typeof device.rcd === "object" ? device.rcd : undefined;
  const earth = board?.earthResistance;
  return [
    {
      verdict: rcd
        ? atMost(earth, largestEarthResistance(rcd.residual))
        : device.rcd === "none"
          ? "fail"
          : "not-proven",
      what: say`Earth resistance with the RCD as fault protection`,
      actual: earth,
      limit: rcd ? largestEarthResistance(rcd.residual) : undefined,
      unit: "Ω",
      source: "IEC-60364-4-41",
      assumptions: [
        ...(device.rcd === "none" ? [say`There is no RCD`] : []),
        ...(device.rcd === undefined ? [say`Nobody knows whether there is an RCD`] : []),
        ...(earth === undefined ? [say`The earth resistance is unknown`] : []),
        ...(earth !== undefined && earth > touchVoltage.rows.unreliable
          ? [say`Above 200 Ω an earth may not be stable`]
          : []),
      ],
      missing: [
        ...(rcd || device.rcd === "none" ? [] : [RCD]),
        ...(earth === undefined ? [say`the resistance to earth`] : []),
      ],
      code: "earth-resistance-too-large",
      ...named(about),
    },
    {
      verdict:
        board?.isolatesNeutral === "yes" ? "pass" : board?.isolatesNeutral === "no" ? "fail" : "not-proven",
      what: say`The isolator of the board breaks the neutral too`,
      actual: undefined,
      limit: undefined,
      unit: "",
      source: "IEC-60364-4-46",
      assumptions: [say`Verify against your edition`],
      missing: [say`whether the isolator of the board breaks the neutral`],
      code: "neutral-not-isolated",
      ...named(about),
    },
  ];
}

/** Least (k·S)² of the line conductors, and of the protective cores. */
function weakestConductor({ tree }: CircuitCase): AmpereSquareSeconds | undefined {
  const values = tree.segments.flatMap(({ size, material, insulation }) =>
    size.kind === "metric"
      ? [
          withstand(size.section, adiabaticFactors.rows.line[material][insulation]),
          ...(material === "copper"
            ? [withstand(size.protective ?? size.section, adiabaticFactors.rows.protectiveCore[insulation])]
            : []),
        ]
      : [],
  );
  return values.length === 0 ? undefined : Math.min(...values);
}

function nearHeatCheck(about: CircuitCase): WiringCheck {
  const { device, gaps, missing } = about;
  const limit = weakestConductor(about);
  return {
    verdict: atMost(device.letThrough, limit),
    what: say`Let-through of the protective device against what the cable withstands`,
    actual: device.letThrough,
    limit,
    unit: "A²s",
    source: "IEC-60364-4-43",
    assumptions: [
      ...(limit === undefined ? gaps : []),
      ...(device.letThrough === undefined
        ? [
            say`Let-through of ${device.name} at the prospective fault current is not on record; I²·t does not hold below 0.1 s`,
          ]
        : []),
    ],
    missing: [
      ...(limit === undefined ? missing.cables : []),
      ...(device.letThrough === undefined
        ? [say`what the protective device lets through at the fault current of the board`]
        : []),
    ],
    code: "cable-burns-in-a-fault",
    ...named(about),
  };
}

function farHeatCheck(about: CircuitCase, board: Board | undefined): WiringCheck {
  const { device, model, gaps, missing } = about;
  const loop = farLoop(about, board);
  const current = loop === undefined ? undefined : model.supply.voltage / loop;
  const trips =
    current !== undefined &&
    isBreaker(device.type) &&
    device.rating !== undefined &&
    current >= sureTrip(device.type, device.rating);
  const limit = weakestConductor(about);
  const actual = current === undefined || !trips ? undefined : current ** 2 * MAGNETIC;
  return {
    verdict: withDoubts(atMost(actual, limit), gaps),
    what: say`Heat of a fault at the far end against what the cable withstands`,
    actual,
    limit,
    unit: "A²s",
    source: "IEC-60364-4-43",
    assumptions: [
      say`The magnetic release opens within 0.1 s`,
      ...gaps,
      ...(trips ? [] : [say`Whether the magnetic release trips at the far end is not shown`]),
    ],
    missing: [
      ...missing.cables,
      ...(board?.loopImpedance === undefined ? [say`the impedance of the fault loop at the board`] : []),
      ...(isBreaker(device.type) && device.rating !== undefined ? [] : [DEVICE]),
    ],
    code: "cable-burns-in-a-fault",
    ...named(about),
  };
}

function breakingCheck(about: CircuitCase, board: Board | undefined): WiringCheck {
  const { device } = about;
  return {
    verdict: atMost(board?.faultCurrent, device.breakingCapacity),
    what: say`Prospective fault current against the breaking capacity`,
    actual: board?.faultCurrent,
    limit: device.breakingCapacity,
    unit: "A",
    source: "IEC-60364-4-43",
    assumptions: [
      ...(board?.faultCurrent === undefined ? [say`The fault current at the board is unknown`] : []),
      ...(device.breakingCapacity === undefined ? [say`Breaking capacity of ${device.name} is unknown`] : []),
    ],
    missing: [
      ...(board?.faultCurrent === undefined ? [say`the prospective fault current at the board`] : []),
      ...(device.breakingCapacity === undefined ? [say`the breaking capacity of the protective device`] : []),
    ],
    code: "breaking-capacity-too-small",
    ...named(about),
  };
}
