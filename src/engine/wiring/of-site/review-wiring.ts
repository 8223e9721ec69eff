import { type Check, type Problem, say } from "../../check/index.ts";
import type { Site } from "../../site/index.ts";
import { breakerChecks } from "../breaker-checks.ts";
import { designCurrent } from "../circuit-case.ts";
import { circuitChecks } from "../circuit-checks.ts";
import { circuitTree } from "../circuit-tree.ts";
import { coilCable } from "../coil-cable.ts";
import { contactChecks } from "../contact-checks.ts";
import { problemOf, wiringFindings } from "../findings.ts";
import { type Standby, standbyOf } from "../leakage.ts";
import type { Supply, WiringModel } from "../model.ts";
import { type Mounting, mountingsOf } from "../mounting.ts";
import { packChecks } from "../relay-pack.ts";
import { coveredWiring, supplyOfCircuit } from "../supply.ts";
import { driversIn } from "../switched-group.ts";
import type { WiringCheck } from "../wiring-check.ts";
import { circuitTitle, deviceId } from "./circuits-of.ts";
import type { FoundCircuit, FoundInstallation, WiringAssumption } from "./found.ts";
import { type BuiltWiring, hasWiring, wiringOfSite } from "./of-site.ts";
import { toldProblems } from "./told-problems.ts";

/** One circuit with its load, its cable and its checks. */
export interface CircuitReview {
  readonly id: string;
  readonly name: string;
  readonly board: string | undefined;
  readonly breaker: FoundCircuit["breaker"];
  readonly rating: number | undefined;
  readonly luminaires: number;
  readonly drivers: number;
  /** Together; undefined where the power of one of them is unknown. [W] */
  readonly power: number | undefined;
  /** By the heaviest line; undefined where the power of one of them is unknown. [A] */
  readonly current: number | undefined;
  readonly detectors: readonly string[];
  readonly section: number | undefined;
  readonly length: number | undefined;
  readonly checks: readonly Check[];
}

/** The contact of one detector with its duty. */
export interface ContactReview {
  readonly detector: string;
  readonly tag: string;
  readonly luminaires: number;
  readonly drivers: number;
  readonly checks: readonly Check[];
}

export interface WiringReview {
  /** Of every board that has none of its own. */
  readonly supply: Supply;
  readonly circuits: readonly CircuitReview[];
  /** Of each detector that switches something. */
  readonly contacts: readonly ContactReview[];
  /** Of each detector in its ceiling. */
  readonly mountings: readonly Mounting[];
  /** Of all detectors. */
  readonly standby: Standby;
  readonly problems: readonly Problem[];
  readonly assumptions: readonly WiringAssumption[];
}

/**
 * The wiring of a whole site, checked.
 *
 * @param site - The site. @param found - Boards and circuits as entered.
 * @returns Circuits with their checks, findings with evidence, assumptions; undefined where nothing of the wiring is on record.
 * @example Eight luminaires of 30 A inrush on a contact of 165 A: "contact-inrush-too-large"
 */
export function reviewWiring(site: Site, found: FoundInstallation): WiringReview | undefined {
  if (!hasWiring(site, found)) return undefined;
  const built = wiringOfSite(site, found);
  const { model } = coveredWiring(built.model);
  const mountings = mountingsOf(site);
  const breakers = model ? breakerChecks(model) : [];
  const covered = new Set(model?.circuits.map(({ id }) => id));
  return {
    supply: built.model.supply,
    circuits: found.circuits.map((circuit) =>
      circuitReview(built, circuit, covered.has(circuit.id) ? breakers : undefined),
    ),
    contacts: model ? contactReviews(model) : [],
    mountings,
    problems: toldProblems(
      built,
      [
        ...wiringFindings(built.model),
        ...(model ? built.doubts : []),
        ...mountings.flatMap(({ checks }) => checks.flatMap(problemOf)),
      ].map((problem) => withProvenDrop(built, problem)),
    ),
    standby: standbyOf(built.model.detectors),
    assumptions: built.assumptions,
  };
}

/** Without the checks of the breakers the supply is refused, and nothing is judged. */
function circuitReview(
  built: BuiltWiring,
  circuit: FoundCircuit,
  breakers: readonly WiringCheck[] | undefined,
): CircuitReview {
  const model = { ...built.model, supply: supplyOfCircuit(built.model, circuit.id) };
  const loads = model.loads.filter((load) => load.circuit === circuit.id);
  const tree = circuitTree(model, circuit.id);
  const known = loads.every(({ power }) => power !== undefined);
  return {
    id: circuit.id,
    name: circuitTitle(circuit),
    board: model.boards.find(({ id }) => id === circuit.board)?.name,
    breaker: circuit.breaker,
    rating: circuit.rating,
    luminaires: loads.reduce((sum, { count }) => sum + count, 0),
    drivers: loads.reduce((sum, load) => sum + driversIn(load), 0),
    power: known ? loads.reduce((sum, { count, power }) => sum + count * (power ?? 0), 0) : undefined,
    current: known && tree && breakers ? designCurrent({ model, tree, loads }) : undefined,
    detectors: model.detectors.flatMap(({ tag, line }) =>
      line.kind === "line" && line.circuit === circuit.id ? [tag] : [],
    ),
    section: circuit.cable?.section,
    length: circuit.cable?.length,
    checks: !breakers
      ? []
      : [
          ...circuitChecks(model, circuit.id),
          ...breakers.filter(({ records }) => records.includes(deviceId(circuit.id))),
          ...contactorChecks(built.model, circuit.id),
        ].map((check) =>
          check.code === "voltage-drop-too-large"
            ? dropAsBuilt(evidenceOf(check), built, circuit.id)
            : evidenceOf(check),
        ),
  };
}

/** Main contacts that feed from a circuit, and cables to coils that hang on it. */
function contactorChecks(model: WiringModel, circuit: string): readonly WiringCheck[] {
  const own = model.contactors.filter(({ main }) => main.circuit === circuit).map(({ id }) => id);
  return [
    ...(own.length === 0
      ? []
      : contactChecks(model).filter(({ records }) => records.some((id) => own.includes(id)))),
    ...packChecks(model).filter(({ records }) => records.includes(circuit)),
    ...model.contactors.flatMap((one) => {
      const cable = coilCable(model, one);
      return cable.kind === "calculated"
        ? cable.checks.filter(({ records }) => records.includes(circuit))
        : [];
    }),
  ];
}

function contactReviews(model: WiringModel): readonly ContactReview[] {
  const checks = contactChecks(model);
  return model.detectors.flatMap(({ id, tag, output }) => {
    if (output === undefined) return [];
    const loads = model.loads.filter(({ switchedLine }) => switchedLine === output);
    return [
      {
        detector: id,
        tag,
        luminaires: loads.reduce((sum, { count }) => sum + count, 0),
        drivers: loads.reduce((sum, load) => sum + driversIn(load), 0),
        checks: checks.filter(({ records }) => records.includes(id)).map(evidenceOf),
      },
    ];
  });
}

const evidenceOf = ({
  code: _,
  name: __,
  room: ___,
  records: ____,
  missing: _____,
  ...check
}: WiringCheck): Check => check;

/** With all luminaires at the far end a drop that fails is only the most that it can be. */
function dropAsBuilt(check: Check, { atFarEnd }: BuiltWiring, circuit: string): Check {
  return check.verdict === "fail" && atFarEnd.includes(circuit)
    ? { ...check, verdict: "not-proven", assumptions: [...check.assumptions, FAR_END] }
    : check;
}

const FAR_END = say`All luminaires at the far end; with the way of the cable between them it may pass`;

function withProvenDrop(built: BuiltWiring, problem: Problem): Problem {
  const [circuit = ""] = problem.records ?? [];
  if (problem.code !== "voltage-drop-too-large" || !built.atFarEnd.includes(circuit)) return problem;
  return {
    ...problem,
    code: "wiring-not-proven",
    values: {
      name: problem.values.name ?? "",
      what: problem.values.what ?? "",
      missing: say`the place of the board on the plan, and the length of its cable through all luminaires`,
    },
    evidence: (problem.evidence ?? []).map((check) => dropAsBuilt(check, built, circuit)),
  };
}
