import { say } from "../check/index.ts";
import type { Amperes, Metres, OhmsPerMetre, Volts } from "../quantity/index.ts";
import type { CableSegment, Circuit, Line, Load, WiringModel } from "./model.ts";
import { assumedPowerFactor } from "./tables/assumed.ts";
import { gaugeResistance } from "./tables/united-states.ts";
import { dropPerAmpereMetre } from "./voltage-drop.ts";

/** Segments of one circuit in order from the board, with what hangs below each. */
export interface CircuitTree {
  readonly circuit: Circuit;
  readonly root: string;
  /** Parents before children. */
  readonly segments: readonly CableSegment[];
  readonly segmentTo: ReadonlyMap<string, CableSegment>;
  /** Pieces of equipment with load that no cable reaches. */
  readonly unreached: readonly string[];
  /** Segments that would close a ring or hang in the air. */
  readonly loose: readonly CableSegment[];
}

/**
 * Cable segments of a circuit as a tree from its board.
 *
 * @param model - The wiring. @param circuit - Id of the circuit.
 * @returns Tree; segments that make a ring or are not connected come out as loose. Undefined for an unknown circuit.
 * @example Board–A–B with a branch A–C: three segments, A's before B's and C's
 */
export function circuitTree(model: WiringModel, circuit: string): CircuitTree | undefined {
  const found = model.circuits.find(({ id }) => id === circuit);
  const root = model.devices.find(({ id }) => id === found?.device)?.board;
  if (!found || root === undefined) return undefined;
  const open = new Set(model.segments.filter((segment) => segment.circuit === circuit));
  const segmentTo = new Map<string, CableSegment>();
  const ordered: CableSegment[] = [];
  const front = [root];
  const reached = new Set(front);
  for (let at = front.pop(); at !== undefined; at = front.pop())
    for (const segment of [...open]) {
      const far = segment.from === at ? segment.to : segment.to === at ? segment.from : undefined;
      if (far === undefined || reached.has(far)) continue;
      open.delete(segment);
      reached.add(far);
      const directed = { ...segment, from: at, to: far };
      segmentTo.set(far, directed);
      ordered.push(directed);
      front.push(far);
    }
  const loads = model.loads.filter((load) => load.circuit === circuit);
  return {
    circuit: found,
    root,
    segments: parentsFirst(ordered, root),
    segmentTo,
    unreached: loads.filter(({ id }) => !reached.has(id)).map(({ id }) => id),
    loose: [...open],
  };
}

function parentsFirst(segments: readonly CableSegment[], root: string): readonly CableSegment[] {
  const below = new Map<string, CableSegment[]>();
  for (const segment of segments) below.set(segment.from, [...(below.get(segment.from) ?? []), segment]);
  const result: CableSegment[] = [];
  const front = [root];
  for (let at = front.shift(); at !== undefined; at = front.shift())
    for (const segment of below.get(at) ?? []) {
      result.push(segment);
      front.push(segment.to);
    }
  return result;
}

/**
 * Line current of a load, all its pieces together.
 *
 * I = n · P / (U · cos φ)
 *
 * @param load - Count, power [W], power factor (0.8 if nobody declared it). @param voltage - To neutral. [V]
 * @returns Current [A]; undefined where the power is unknown.
 * @source DERIVED-HERE
 * @example Six of 10 W at cos φ = 1 on 230 V: 0.26 A
 */
export const currentOf = (load: Load, voltage: Volts): Amperes | undefined =>
  load.power === undefined
    ? undefined
    : (load.count * load.power) / (voltage * (load.powerFactor ?? assumedPowerFactor.rows.usual));

/**
 * Loads as they may be at worst: what passes with them passes whatever nobody declared turns out to be.
 *
 * @param loads - Any.
 * @returns The same, with the lowest plausible power factor where none is declared.
 * @source ASSUMED-POWER-FACTOR
 * @example 46 W without a factor on 230 V: 0.25 A by the usual factor, 0.5 A at worst
 */
export const atWorst = (loads: readonly Load[]): readonly Load[] =>
  loads.map((load) =>
    load.powerFactor === undefined ? { ...load, powerFactor: assumedPowerFactor.rows.worst } : load,
  );

/** What to say, and what to enter, where a limit holds by the usual power factor and not at worst. */
export const unsureFactor = {
  doubt: say`Power factor ${assumedPowerFactor.rows.usual} where none is declared; with ${assumedPowerFactor.rows.worst} it would not pass`,
  missing: say`the power factor of each luminaire`,
} as const;

export type LineCurrents = Readonly<Record<Line, Amperes>>;

/** Currents by line below each segment; a load whose line nobody chose counts on the first line of its circuit. @param tree - Of one circuit. @param model - The wiring. @returns Segment id → currents. [A] @example Two loads of 1 A beyond a segment: 2 A */
export function currentsBelow(tree: CircuitTree, model: WiringModel): ReadonlyMap<string, LineCurrents> {
  const own = new Map<string, Record<Line, number>>();
  const first = tree.circuit.lines[0] ?? "L1";
  for (const load of model.loads.filter(({ circuit }) => circuit === tree.circuit.id)) {
    const line = tree.circuit.phases === "single-phase" ? first : (load.line ?? first);
    const at = own.get(load.id) ?? { L1: 0, L2: 0, L3: 0 };
    at[line] += currentOf(load, model.supply.voltage) ?? 0;
    own.set(load.id, at);
  }
  const result = new Map<string, LineCurrents>();
  for (const segment of tree.segments.toReversed()) {
    const sum = { ...(own.get(segment.to) ?? { L1: 0, L2: 0, L3: 0 }) };
    for (const next of tree.segments)
      if (next.from === segment.to) {
        const more = result.get(next.id);
        for (const line of ["L1", "L2", "L3"] as const) sum[line] += more?.[line] ?? 0;
      }
    result.set(segment.id, sum);
  }
  return result;
}

/**
 * Current in the neutral of a star, equal power factors, no harmonics.
 *
 * IN = √(a² + b² + c² − ab − bc − ca)
 *
 * @param L1 - Current of the first line; L2 and L3 likewise. [A]
 * @returns Neutral current. [A]
 * @source DERIVED-HERE
 * @example Balanced: 0; one line alone: its own current
 */
export const neutralCurrent = ({ L1, L2, L3 }: LineCurrents): Amperes =>
  Math.sqrt(Math.max(0, L1 * L1 + L2 * L2 + L3 * L3 - L1 * L2 - L2 * L3 - L3 * L1));

/** Voltage drop at every piece of equipment, and the length of route to it. */
export interface Drops {
  readonly drop: ReadonlyMap<string, Volts>;
  readonly length: ReadonlyMap<string, Metres>;
}

/**
 * Voltage drop along a tree with distributed loads.
 *
 * u = Σ over the way of (I_line + I_N) · r · l; this is 2·I for single phase and I for balanced three-phase
 *
 * @param tree - Of one circuit. @param model - The wiring.
 * @returns Drop [V] and length [m] from the board by id of equipment; the worst line counts.
 * @source IEC-60364-5-52-DROP, DERIVED-HERE
 * @example 10 × 0.2 A, first at 15 m, pitch 3 m, 1.5 mm²: 1.71 V at the last
 */
export function dropsOnTree(tree: CircuitTree, model: WiringModel): Drops {
  const currents = currentsBelow(tree, model);
  const drop = new Map<string, Volts>([[tree.root, 0]]);
  const length = new Map<string, Metres>([[tree.root, 0]]);
  const factor = decidingPowerFactor(tree, model);
  for (const segment of tree.segments) {
    const flowing = currents.get(segment.id) ?? { L1: 0, L2: 0, L3: 0 };
    const line = Math.max(flowing.L1, flowing.L2, flowing.L3);
    const moment = (line + neutralCurrent(flowing)) * segment.length;
    drop.set(segment.to, (drop.get(segment.from) ?? 0) + moment * perAmpereMetre(segment, factor));
    length.set(segment.to, (length.get(segment.from) ?? 0) + segment.length);
  }
  return { drop, length };
}

function decidingPowerFactor(tree: CircuitTree, model: WiringModel): number {
  const known = model.loads
    .filter(({ circuit }) => circuit === tree.circuit.id)
    .map(({ powerFactor }) => powerFactor ?? assumedPowerFactor.rows.usual);
  // Resistance decides in thin cables: the highest power factor gives the greatest drop for the same current.
  return known.length === 0 ? 1 : Math.max(...known);
}

function perAmpereMetre(segment: CableSegment, powerFactor: number): OhmsPerMetre {
  const { size } = segment;
  return size.kind === "metric"
    ? dropPerAmpereMetre({ section: size.section, material: segment.material, powerFactor })
    : (gaugeResistance.rows[size.form][size.gauge] ?? Number.NaN);
}
