import type { Problem } from "../check/index.ts";
import type { Board, Supply, WiringModel } from "./model.ts";

/** Supplies that the program covers: region, voltage to neutral, frequency. */
export const coveredSupplies = [
  { region: "IEC", voltage: 230, frequency: 50 },
  { region: "US", voltage: 120, frequency: 60 },
  { region: "US", voltage: 277, frequency: 60 },
] as const;

/**
 * What speaks against calculating with a supply.
 *
 * @param supply - What comes in.
 * @returns Problems: IT systems, no neutral, or a voltage that is not covered. Empty: go on.
 * @example 230 V, 50 Hz, TN-S with neutral: none
 */
export function supplyProblems(supply: Supply): readonly Problem[] {
  const { voltage, frequency } = supply;
  const covered = coveredSupplies.some(
    (known) => known.region === supply.region && known.voltage === voltage && known.frequency === frequency,
  );
  return [
    ...(supply.system === "IT" ? [{ code: "supply-it-system", values: {} } as const] : []),
    ...(supply.neutral === "no" ? [{ code: "supply-without-neutral", values: {} } as const] : []),
    ...(covered ? [] : [{ code: "supply-not-known", values: { voltage, frequency } } as const]),
  ];
}

/** The supply behind a circuit: of its board where that has one of its own. @param model - The wiring. @param circuit - Id. @returns Supply. @example A circuit without a board: the installation's */
export function supplyOfCircuit(model: WiringModel, circuit: string): Supply {
  const device = model.circuits.find(({ id }) => id === circuit)?.device;
  const board = model.devices.find(({ id }) => id === device)?.board;
  return model.boards.find(({ id }) => id === board)?.supply ?? model.supply;
}

/** A wiring split into what can be calculated, and the sentences about what cannot. */
export interface CoveredWiring {
  /** Circuits on supplies that are covered, with what hangs on them; undefined where there are none. */
  readonly model: WiringModel | undefined;
  readonly problems: readonly Problem[];
}

/**
 * What of a wiring can be calculated.
 *
 * @param model - The wiring.
 * @returns The wiring without the circuits of boards whose supply is refused, and one problem for each reason with the boards that it speaks of.
 * @example Two boards, one of an IT system: the circuits of the other, and "supply-it-system"
 */
export function coveredWiring(model: WiringModel): CoveredWiring {
  const boards: readonly (Pick<Board, "id"> & { readonly supply: Supply })[] = model.boards.map(
    ({ id, supply = model.supply }) => ({ id, supply }),
  );
  const devices = new Map(model.devices.map(({ id, board }) => [id, board]));
  const feeding = new Set(model.circuits.map(({ device }) => devices.get(device)));
  const refused = new Map(
    boards
      .filter(({ id }) => feeding.has(id))
      .flatMap(({ id, supply }) => {
        const problems = supplyProblems(supply);
        return problems.length === 0 ? [] : [[id, problems] as const];
      }),
  );
  const rest = supplyProblems(model.supply);
  if (refused.size === 0 && rest.length === 0) return { model, problems: [] };
  const lost = new Set(
    model.circuits
      .filter(({ device }) => {
        const board = devices.get(device) ?? "";
        return refused.has(board) || (rest.length > 0 && !boards.some(({ id }) => id === board));
      })
      .map(({ id }) => id),
  );
  const reasons = new Map<string, Problem>();
  for (const [id, problems] of [
    ...refused,
    ...(rest.length > 0 && refused.size === 0 ? [["", rest] as const] : []),
  ])
    for (const problem of problems) {
      const key = JSON.stringify([problem.code, problem.values]);
      const records = [...(reasons.get(key)?.records ?? []), ...(id === "" ? [] : [id])];
      reasons.set(key, { ...problem, ...(records.length > 0 ? { records } : {}) });
    }
  return {
    model: model.circuits.every(({ id }) => lost.has(id)) ? undefined : withoutCircuits(model, lost),
    problems: [...reasons.values()],
  };
}

function withoutCircuits(model: WiringModel, lost: ReadonlySet<string>): WiringModel {
  const kept = ({ circuit }: { readonly circuit: string }): boolean => !lost.has(circuit);
  const circuits = model.circuits.filter(({ id }) => !lost.has(id));
  return {
    ...model,
    circuits,
    devices: model.devices.filter(({ id }) => circuits.some(({ device }) => device === id)),
    segments: model.segments.filter(kept),
    loads: model.loads.filter(kept),
    detectors: model.detectors.filter(({ line }) => line.kind !== "line" || kept(line)),
    contactors: model.contactors.filter(({ main }) => kept(main)),
  };
}
