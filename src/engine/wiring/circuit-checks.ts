import { say } from "../check/index.ts";
import { capacityChecks } from "./capacity-checks.ts";
import type { CircuitCase } from "./circuit-case.ts";
import { circuitTree, dropsOnTree } from "./circuit-tree.ts";
import { faultChecks } from "./fault-checks.ts";
import { leakageCheck } from "./leakage.ts";
import type { WiringModel } from "./model.ts";
import { supplyOfCircuit } from "./supply.ts";
import { assumedDropUsed, assumedPowerFactor } from "./tables/assumed.ts";
import { necDropLimits } from "./tables/united-states.ts";
import { dropLimit } from "./voltage-drop.ts";
import { atMost, type WiringCheck, withDoubts } from "./wiring-check.ts";

/** What to enter where no cable leads to a load. */
const CABLE = say`section and length of the cable from the board to the last luminaire`;
const DROP_USED = say`the voltage drop already used up to the board`;

/**
 * Checks of one circuit: voltage drop, design current, capacity of each cable, fault loop, fault heat, breaking capacity, RCD, leakage.
 *
 * @param wiring - The wiring; the supply is that of the circuit's board. @param circuit - Id of the circuit.
 * @returns Checks with evidence; "not-proven" wherever something is unknown. Empty for an unknown circuit.
 * @source IEC-60364-5-52-DROP, IEC-60364-4-43, IEC-60364-4-41
 * @example 1.5 mm², 30 m, 10 A on a B10: the drop of 9 V is over 6.9 V less what the board has used
 */
export function circuitChecks(wiring: WiringModel, circuit: string): readonly WiringCheck[] {
  const model = { ...wiring, supply: supplyOfCircuit(wiring, circuit) };
  const tree = circuitTree(model, circuit);
  const device = model.devices.find(({ id }) => id === tree?.circuit.device);
  if (!tree || !device) return [];
  const loads = model.loads.filter((load) => load.circuit === circuit);
  const unpowered = loads.filter(({ power }) => power === undefined);
  const doubts = unpowered.map(({ name }) => say`Power of ${name} is unknown`);
  const bare = tree.segments.length === 0 && tree.loose.length === 0;
  const gaps = bare
    ? [say`No cable is on record`]
    : [
        ...tree.unreached.map(
          (id) => say`No cable to ${loads.find((load) => load.id === id)?.name ?? id} is on record`,
        ),
        ...tree.loose.map(({ id }) => say`Cable ${id} is connected to nothing, or closes a ring`),
      ];
  const missing = {
    loads: unpowered.length > 0 ? [say`the power of each luminaire`] : [],
    cables: gaps.length > 0 ? [CABLE] : [],
  };
  const about: CircuitCase = { model, tree, device, loads, doubts, gaps, missing };
  return [dropCheck(about), ...capacityChecks(about), ...faultChecks(about), leakageCheck(about)];
}

function dropCheck(about: CircuitCase): WiringCheck {
  const { model, tree, device, loads, missing } = about;
  const board = model.boards.find(({ id }) => id === device.board);
  const measured = board?.dropUsed !== undefined;
  const used = board?.dropUsed ?? assumedDropUsed.rows;
  const before = measured
    ? say`${100 * used} % is lost on the way to the board`
    : say`${100 * used} % is lost on the way to the board; nobody has measured it`;
  const doubts = [...about.doubts, ...about.gaps, ...(measured ? [] : [before])];
  const { drop, length } = dropsOnTree(tree, model);
  const worst = loads
    .map(({ id }) => ({ volts: drop.get(id) ?? 0, metres: length.get(id) ?? 0 }))
    .reduce((most, next) => (next.volts > most.volts ? next : most), { volts: 0, metres: 0 });
  const { supply } = model;
  const limit =
    supply.region === "US"
      ? necDropLimits.rows.total
      : dropLimit({ network: supply.network, load: "lighting", length: worst.metres });
  const actual = 100 * (used + worst.volts / supply.voltage);
  // Where even the drop without the doubtful loads is too much, more knowledge does not mend it.
  return {
    verdict: withDoubts(atMost(actual, 100 * limit), doubts),
    what: say`Voltage drop from the origin to the last luminaire`,
    actual,
    limit: 100 * limit,
    unit: "%",
    source: supply.region === "US" ? "NEC-CHAPTER-9" : "IEC-60364-5-52-DROP",
    assumptions: [
      ...(measured ? [before] : []),
      ...(loads.some(({ powerFactor }) => powerFactor === undefined)
        ? [
            say`Power factor ${assumedPowerFactor.rows.usual} where none is declared; in thin cables the power decides the drop, not the factor`,
          ]
        : []),
      say`Verify the limit against your edition and local rules; it is guidance`,
      ...doubts,
    ],
    missing: [...missing.loads, ...missing.cables, ...(measured ? [] : [DROP_USED])],
    code: "voltage-drop-too-large",
    name: tree.circuit.name,
    records: [tree.circuit.id],
  };
}
