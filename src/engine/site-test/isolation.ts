import {
  type Circuit,
  type EarthingSystem,
  type Supply,
  supplyOfCircuit,
  type WiredDetector,
  type WiringModel,
} from "../wiring/index.ts";

/** Circuits that must be dead together before a cover of any of them is opened: all supplies that meet in one switched group. */
export interface IsolationGroup {
  /** The first of its circuits by id; "unassigned" for detectors whose circuit nobody has entered. */
  readonly id: string;
  readonly circuits: readonly string[];
  readonly boards: readonly string[];
  readonly detectors: readonly WiredDetector[];
  /** Several supplies meet: one of them can keep alive what the other has left. */
  readonly mayBackFeed: boolean;
  /** A neutral is, or may be, used by another circuit as well. */
  readonly sharedNeutral: boolean;
  /** Of its first circuit: its region decides the order of the steps. */
  readonly supply: Supply;
  /** One of its circuits is TT, and the isolator of that board is not known to break the neutral. */
  readonly neutralOpen: boolean;
}

/** Group of what nobody has wired on paper yet. */
export const UNASSIGNED = "unassigned";

/** A tester is proved before and after every proof; pairs of conductors stand between. */
export const TESTER_BEFORE = "tester-before";
export const TESTER_AFTER = "tester-after";

/**
 * The pairs of conductors between which voltage is looked for at a detector: all combinations of L, L′, N and PE.
 *
 * @param detector.hasOutput - Whether a switched line leaves it.
 * @returns Six pairs, or three where no switched line leaves.
 * @source EN-50110-1
 * @example With output: L–L′, L–N, L–PE, L′–N, L′–PE, N–PE
 */
export function deadPairs(detector: { readonly hasOutput: boolean }): readonly string[] {
  const conductors = detector.hasOutput ? ["L", "L′", "N", "PE"] : ["L", "N", "PE"];
  return conductors.flatMap((a, i) => conductors.slice(i + 1).map((b) => `${a}–${b}`));
}

/** Order in which an installation is made dead. earth: only where it can become live from elsewhere. */
export type IsolationStep =
  | "prepare"
  | "shut-down"
  | "disconnect"
  | "secure"
  | "release-energy"
  | "prove-dead"
  | "earth"
  | "adjacent";

/**
 * Steps that make an installation dead, in the order of the job's region.
 *
 * @param region - Of the supply.
 * @returns Steps in order.
 * @source EN-50110-1
 * @source OSHA-1910
 * @example IEC: disconnect, secure, prove dead, earth, cover what is live beside it
 */
export const isolationSteps = (region: Supply["region"]): readonly IsolationStep[] =>
  region === "US"
    ? ["prepare", "shut-down", "disconnect", "secure", "release-energy", "prove-dead"]
    : ["disconnect", "secure", "prove-dead", "earth", "adjacent"];

/**
 * Circuits that must be dead together.
 *
 * Two circuits belong together where they feed detectors, loads or contactors of one switched line, line and neutral of one detector, or a button and its detectors.
 *
 * @param model - The wiring. @param detectors - Ids of all detectors of the site; those that no circuit is known for make a group of their own.
 * @returns Groups in the order of their ids; the unassigned last.
 * @source DERIVED-HERE
 * @example Two detectors on two circuits with joined outputs: one group, two supplies
 */
export function isolationGroups(model: WiringModel, detectors: readonly string[]): readonly IsolationGroup[] {
  const sets = joined(model);
  const wired = new Map(model.detectors.map((one) => [one.id, one]));
  const groupOf = (id: string): string | undefined => {
    const one = wired.get(id);
    const circuit = one && circuitsOf(model, one)[0];
    return circuit === undefined ? undefined : sets.get(circuit);
  };
  const roots = [...new Set([...sets.values()])].toSorted();
  const groups = roots.flatMap((root) => {
    const circuits = [...sets].flatMap(([circuit, own]) => (own === root ? [circuit] : [])).toSorted();
    const own = detectors.flatMap((id) => (groupOf(id) === root ? [wired.get(id) as WiredDetector] : []));
    return own.length === 0 ? [] : [groupLike(model, { id: root, circuits, detectors: own })];
  });
  const lost = detectors.filter((id) => groupOf(id) === undefined);
  if (lost.length === 0) return groups;
  return [
    ...groups,
    groupLike(model, {
      id: UNASSIGNED,
      circuits: [],
      detectors: lost.map((id) => wired.get(id) ?? unknownDetector(id)),
    }),
  ];
}

function groupLike(
  model: WiringModel,
  group: Pick<IsolationGroup, "id" | "circuits" | "detectors">,
): IsolationGroup {
  const circuits = model.circuits.filter(({ id }) => group.circuits.includes(id));
  const boardOf = ({ device }: Circuit): string | undefined =>
    model.devices.find(({ id }) => id === device)?.board;
  const isolatesNeutral = (circuit: Circuit): boolean =>
    model.boards.find(({ id }) => id === boardOf(circuit))?.isolatesNeutral === "yes";
  const supplies = circuits.map((circuit) => supplyOfCircuit(model, circuit.id));
  const [supply = model.supply] = supplies;
  return {
    ...group,
    boards: [...new Set(circuits.flatMap((circuit) => boardOf(circuit) ?? []))],
    mayBackFeed: circuits.length !== 1,
    sharedNeutral: circuits.some((circuit) => circuit.sharedNeutral !== "no"),
    supply,
    // Every supply that meets here counts, not the first alone.
    neutralOpen:
      circuits.length === 0
        ? breaksNeutral(supply.system)
        : circuits.some(
            (circuit, i) => breaksNeutral((supplies[i] as Supply).system) && !isolatesNeutral(circuit),
          ),
  };
}

const breaksNeutral = (system: EarthingSystem): boolean => system === "TT";

/** For each circuit the first, by id, of those that it belongs together with. */
function joined(model: WiringModel): ReadonlyMap<string, string> {
  const sets = new Map<string, Set<string>>(model.circuits.map(({ id }) => [id, new Set([id])]));
  const join = (ids: readonly string[]): void => {
    const known = ids.filter((id) => sets.has(id));
    const all = new Set(known.flatMap((id) => [...(sets.get(id) as Set<string>)]));
    for (const id of all) sets.set(id, all);
  };
  const ofDetector = new Map(model.detectors.map((one) => [one.id, circuitsOf(model, one)]));
  for (const circuits of ofDetector.values()) join(circuits);
  for (const { id } of model.switchedLines) {
    join([
      ...model.detectors.filter(({ output }) => output === id).flatMap((one) => ofDetector.get(one.id) ?? []),
      ...model.loads.filter(({ switchedLine }) => switchedLine === id).map(({ circuit }) => circuit),
      // The main contacts bring a second supply; it meets the coil's in the contactor's own box.
      ...model.contactors
        .filter(({ main, coil }) => main.switchedLine === id || coil.switchedLine === id)
        .map(({ main }) => main.circuit),
    ]);
  }
  for (const { feed, detectors } of model.buttons) {
    join([
      ...(feed.kind === "line" || feed.kind === "neutral" ? [feed.circuit] : []),
      ...detectors.flatMap((id) => ofDetector.get(id) ?? []),
    ]);
  }
  return new Map([...sets].map(([id, all]) => [id, [...all].toSorted()[0] as string]));
}

/** Circuits whose conductors end in a detector. */
function circuitsOf(model: WiringModel, detector: WiredDetector): readonly string[] {
  const known = new Set(model.circuits.map(({ id }) => id));
  const direct = [detector.line, detector.neutral].flatMap((feed) =>
    feed.kind === "line" || feed.kind === "neutral" ? [feed.circuit] : [],
  );
  const lines = [
    ...[detector.line, detector.neutral].flatMap((feed) =>
      feed.kind === "switched-line" ? [feed.switchedLine] : [],
    ),
    ...(detector.output === undefined ? [] : [detector.output]),
  ];
  const over = model.loads.flatMap((load) =>
    load.switchedLine !== undefined && lines.includes(load.switchedLine) ? [load.circuit] : [],
  );
  return [...new Set([...direct, ...over])].filter((id) => known.has(id));
}

const unknownDetector = (id: string): WiredDetector => ({
  id,
  tag: id,
  room: "",
  role: "alone",
  line: { kind: "unknown" },
  neutral: { kind: "unknown" },
  protectiveConductor: "unknown",
  // Where nothing is known a switched line is looked for as well.
  output: "",
});
