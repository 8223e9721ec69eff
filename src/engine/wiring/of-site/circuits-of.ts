import { type Problem, type Said, say, type Words } from "../../check/index.ts";
import type { Circuit, ProtectiveDevice } from "../model.ts";
import type { FoundCircuit, FoundInstallation, WiringAssumption } from "./found.ts";

/** Name of a circuit for sentences. @param named - Circuit as entered. @returns Its name, or its id where it has none. @example "" with id c1: "c1" */
export const circuitTitle = (named: { readonly id: string; readonly name: string }): string =>
  named.name.trim() || named.id;

const boardTitle = ({ boards }: FoundInstallation, id: string | undefined): string | undefined => {
  const board = boards.find((one) => one.id === id);
  return board && (board.name.trim() || board.id);
};

/** A circuit with its board. @param found - Boards and circuits. @param circuit - One of them. @returns Name, and its board where that is on record. @example "Lighting 2 (Sub-board)" */
export function circuitAtBoard(found: FoundInstallation, circuit: FoundCircuit): string {
  const board = boardTitle(found, circuit.board);
  return board === undefined ? circuitTitle(circuit) : `${circuitTitle(circuit)} (${board})`;
}

/**
 * The circuit that a text names: by id, otherwise by its name, letters large or small.
 *
 * @param found - Boards and circuits. @param text - As it stands at a luminaire.
 * @returns The circuit; undefined where none or more than one has that name.
 * @example "lighting 1" finds "Lighting 1"
 */
export function circuitNamed(found: FoundInstallation, text: string | undefined): FoundCircuit | undefined {
  const wanted = text?.trim().toLowerCase();
  if (!wanted) return undefined;
  const byId = found.circuits.find(({ id }) => id === text);
  const byName = found.circuits.filter(({ name }) => name.trim().toLowerCase() === wanted);
  return byId ?? (byName.length === 1 ? byName[0] : undefined);
}

/** Something that nobody knows, as the finding that it is. @param about - Name, what is open, what to enter. @returns Problem. @example "which circuit feeds it" */
export const open = (about: {
  readonly name: Words;
  readonly what: Said;
  readonly missing: Said;
  readonly room?: string;
  readonly records: readonly string[];
}): Problem => {
  const { name, what, missing, room, records } = about;
  return {
    code: "wiring-not-proven",
    values: { name, what, missing },
    ...(room === undefined ? {} : { room }),
    records,
  };
};

/** Id of the protective device of a circuit: each circuit has one of its own. @param circuit - Id. @returns Id. @example deviceId("c1") */
export const deviceId = (circuit: string): string => `device of ${circuit}`;

/**
 * Circuits and their protective devices.
 *
 * @param found - As entered.
 * @returns Both, with what was taken for granted and what is open: circuits whose RCD has no name may share one.
 * @example Two circuits behind unnamed RCDs of one board: leakage is summed for each alone, and a finding says that this is not proven
 */
export function circuitsOf(found: FoundInstallation): {
  readonly circuits: readonly Circuit[];
  readonly devices: readonly ProtectiveDevice[];
  readonly assumptions: readonly WiringAssumption[];
  readonly doubts: readonly Problem[];
} {
  const { circuits } = found;
  const unnamed = (circuit: FoundCircuit): boolean => rcdOf(circuit) === "there" && !circuit.rcdName?.trim();
  const sharing = circuits.filter(
    (circuit) =>
      unnamed(circuit) &&
      circuits.some(
        (other) => other !== circuit && other.board === circuit.board && rcdOf(other) === "there",
      ),
  );
  const onLine = circuits.filter(({ phases, line }) => phases !== "three-phase" && line === undefined);
  const unseen = circuits.filter(({ readings }) => readings !== undefined && readings !== "measured");
  const noPhases = circuits.filter(({ phases }) => phases === undefined);
  return {
    circuits: circuits.map((circuit) => ({
      id: circuit.id,
      name: circuitAtBoard(found, circuit),
      device: deviceId(circuit.id),
      phases: circuit.phases ?? "single-phase",
      lines: circuit.phases === "three-phase" ? ["L1", "L2", "L3"] : [circuit.line ?? "L1"],
      sharedNeutral: circuit.sharedNeutral,
      isolator: circuit.isolator ?? "unknown",
      ...(circuit.thirdHarmonic === undefined ? {} : { thirdHarmonic: circuit.thirdHarmonic }),
    })),
    devices: circuits.map((circuit) => deviceOf(found, circuit)),
    assumptions: [
      ...(unseen.length > 0
        ? [{ text: say`Breaker and cable as somebody assumed them; nobody has looked`, records: ids(unseen) }]
        : []),
      ...(noPhases.length > 0
        ? [{ text: say`Single-phase where nobody entered it`, records: ids(noPhases) }]
        : []),
      ...(onLine.length > 0
        ? [{ text: say`Line L1 where nobody entered the line conductor`, records: ids(onLine) }]
        : []),
    ],
    doubts: [
      ...sharing.map((circuit) =>
        open({
          name: circuitAtBoard(found, circuit),
          what: say`leakage behind its RCD, which other circuits may share`,
          missing: say`the name of the RCD of each circuit`,
          records: [circuit.id],
        }),
      ),
      ...circuits
        .filter(({ board }) => board === undefined || !found.boards.some(({ id }) => id === board))
        .map((circuit) =>
          open({
            name: circuitTitle(circuit),
            what: say`its fault protection and voltage drop, since its board is not on record`,
            missing: say`the board that it starts from`,
            records: [circuit.id],
          }),
        ),
    ],
  };
}

const ids = (records: readonly { readonly id: string }[]): readonly string[] => records.map(({ id }) => id);

/** A residual current on record means an RCD, unless somebody says there is none: then nobody knows. */
const rcdOf = ({ rcd, residualCurrent }: FoundCircuit): "there" | "none" | "unknown" =>
  residualCurrent !== undefined ? (rcd === "no" ? "unknown" : "there") : rcd === "no" ? "none" : "unknown";

function deviceOf(found: FoundInstallation, circuit: FoundCircuit): ProtectiveDevice {
  const { id, board, breaker, rating, breakingCapacity, letThrough, pulseCurve, poles, rcdName } = circuit;
  const rcd = rcdOf(circuit);
  const [own, title] = [rcdName?.trim(), boardTitle(found, board)];
  const shared = own
    ? { id: `${own} (${board ?? ""})`, name: title === undefined ? own : `${own} (${title})` }
    : { id: `RCD of ${id}`, name: say`The RCD of ${circuitAtBoard(found, circuit)}` };
  return {
    id: deviceId(id),
    board: board ?? "",
    name: say`The protective device of ${circuitAtBoard(found, circuit)}`,
    type: breaker,
    ...(rating === undefined ? {} : { rating }),
    ...(breakingCapacity === undefined ? {} : { breakingCapacity }),
    ...(letThrough === undefined ? {} : { letThrough }),
    ...(pulseCurve === undefined ? {} : { pulseCurve }),
    ...(poles === undefined ? {} : { poles }),
    ...(rcd === "none" ? { rcd: "none" } : {}),
    ...(rcd === "there" && circuit.residualCurrent !== undefined
      ? { rcd: { ...shared, residual: circuit.residualCurrent } }
      : {}),
  };
}
