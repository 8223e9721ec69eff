import { type Said, say } from "../../check/index.ts";
import type { Metres } from "../../quantity/index.ts";
import type { Site } from "../../site/index.ts";
import type { CableSegment, WiringModel } from "../model.ts";
import { sizeOf } from "../of-site/cables-of.ts";
import { circuitTitle } from "../of-site/circuits-of.ts";
import type { FoundCircuit, FoundInstallation, WiringAssumption } from "../of-site/found.ts";
import { wiringOfSite } from "../of-site/of-site.ts";
import { lengthAllowance } from "../routes/route.ts";
import { type SectionChoice, smallestSection } from "../smallest-section.ts";
import { coveredWiring } from "../supply.ts";
import { type CeilingWays, ceilingWays } from "./ceiling-ways.ts";
import { type CircuitRoute, circuitRoute } from "./circuit-route.ts";
import { type GroupChoice, groupChoices } from "./group-choices.ts";
import { partsOf } from "./route-parts.ts";

/** What can be derived for one circuit. */
export interface DerivedCircuit {
  readonly id: string;
  readonly name: string;
  /** Undefined where the board has no place, or nothing hangs on the circuit. */
  readonly route: CircuitRoute | undefined;
  /** From the board to the last device: as a person entered it, otherwise along the route. [m] */
  readonly length: { readonly value: Metres; readonly from: "entered" | "route" } | undefined;
  /** Smallest section with that length; undefined without one. */
  readonly section: SectionChoice | undefined;
}

/** Everything that follows from the plan where nobody has decided. Plain data. */
export interface DerivedWiring {
  readonly circuits: readonly DerivedCircuit[];
  readonly groups: readonly GroupChoice[];
  readonly assumptions: readonly WiringAssumption[];
}

/**
 * Cables, sections and groups of a site as they would be built.
 *
 * A length that a person entered stays and decides the section; the route beside it shows where the cable would lie.
 *
 * @param site - The site. @param found - Boards and circuits as entered.
 * @returns One entry for each circuit, one for each switched line, and what was taken for granted.
 * @source HELD-KARP, DERIVED-HERE, COMMON-PRACTICE
 * @example A board without a place: circuits without a route, and an assumption that names the board
 */
export function deriveWiring(site: Site, found: FoundInstallation): DerivedWiring {
  const { model } = wiringOfSite(site, found);
  const covered = coveredWiring(model).model;
  const judged = new Set(covered?.circuits.map(({ id }) => id));
  const onStorey = new Map<string, CeilingWays>();
  const waysOn = (storey: string): CeilingWays => {
    const known = onStorey.get(storey) ?? ceilingWays(site, storey);
    onStorey.set(storey, known);
    return known;
  };
  const circuits = found.circuits.map((circuit): DerivedCircuit => {
    const parts = partsOf(site, found, { model, circuit, waysOn });
    const route = parts.length === 0 ? undefined : circuitRoute(circuit.id, parts);
    const entered = circuit.cable?.length;
    const length =
      entered !== undefined && entered > 0
        ? ({ value: entered, from: "entered" } as const)
        : route && ({ value: route.toLast, from: "route" } as const);
    const laid = route && (entered === undefined || !hasCable(model, circuit.id));
    return {
      id: circuit.id,
      name: circuitTitle(circuit),
      route,
      length,
      section:
        length === undefined || !judged.has(circuit.id)
          ? undefined
          : smallestSection(
              laid ? withRoute(model, { circuit, route, length: length.value }) : model,
              circuit.id,
            ),
    };
  });
  return {
    circuits,
    groups: covered ? groupChoices(covered) : [],
    assumptions: assumptionsOf(site, found, circuits),
  };
}

const hasCable = ({ segments }: WiringModel, circuit: string): boolean =>
  segments.some((segment) => segment.circuit === circuit);

/** The wiring with one circuit's cables as its route has them; an entered length longer than it lies before the first device. */
function withRoute(
  model: WiringModel,
  {
    circuit,
    route,
    length,
  }: { readonly circuit: FoundCircuit; readonly route: CircuitRoute; readonly length: Metres },
): WiringModel {
  const { cable = {} } = circuit;
  const slack = Math.max(0, length - route.toLast);
  const [first] = route.cables;
  return {
    ...model,
    segments: [
      ...model.segments.filter((segment) => segment.circuit !== circuit.id),
      ...route.cables
        .filter(({ use }) => use !== "button")
        .map(
          (one): CableSegment => ({
            id: `${circuit.id}: ${one.from} to ${one.to}`,
            circuit: circuit.id,
            from: one.from,
            to: one.to,
            length: one.length + ENDS + (one === first ? slack : 0),
            cores: one.cores,
            // Any size will do where none is entered: the search for the smallest puts in one after the other.
            size: sizeOf(cable) ?? { kind: "metric", section: 1.5 },
            material: cable.material ?? "copper",
            insulation: cable.insulation ?? "PVC",
            ...(cable.method === undefined ? {} : { method: cable.method }),
            ...(cable.ambient === undefined ? {} : { ambient: cable.ambient }),
            ...(cable.grouping === undefined ? {} : { grouping: cable.grouping }),
            ...(cable.inInsulation === undefined ? {} : { inInsulation: cable.inInsulation }),
            concealed: cable.concealed ?? "unknown",
            withSignals: cable.withSignals ?? "unknown",
          }),
        ),
    ],
  };
}

/** Both ends of a cable into its terminals. [m] */
const ENDS = 2 * lengthAllowance.end;

function assumptionsOf(
  site: Site,
  found: FoundInstallation,
  circuits: readonly DerivedCircuit[],
): readonly WiringAssumption[] {
  const routed = circuits.flatMap(({ id, route }) => (route ? [{ id, route }] : []));
  const some = (test: (route: CircuitRoute) => boolean): readonly string[] =>
    routed.filter(({ route }) => test(route)).map(({ id }) => id);
  const said = (text: Said, records: readonly string[]): readonly WiringAssumption[] =>
    records.length === 0 ? [] : [{ text, records }];
  const storeys = (route: CircuitRoute): number => new Set(route.nodes.map(({ storey }) => storey)).size;
  return [
    ...said(
      say`Cables lie along the ceilings, along and square to the longest wall of each room, and cross walls above doors`,
      some(() => true),
    ),
    ...said(
      say`Straight through walls where no doors lead from room to room`,
      some(({ cables }) => cables.some(({ walls }) => walls === "through-walls")),
    ),
    ...said(
      say`To buttons straight down the wall above them, where the button itself shows that a cable is there`,
      some(({ cables }) => cables.some(({ use }) => use === "button")),
    ),
    ...said(
      say`From storey to storey straight up or down at the place of the board`,
      some((route) => storeys(route) > 1),
    ),
    ...said(
      say`The top of the board is 1.8 m above the floor`,
      some(() => true),
    ),
    ...said(
      say`0.3 m more at each end of each cable, and 10 % waste in what is bought`,
      some(() => true),
    ),
    ...said(
      say`Shorter ways may exist; so many devices on one chain are not searched to the end`,
      some(({ exact }) => !exact),
    ),
    ...said(
      say`No route without the place of the board on the plan`,
      found.boards
        .filter(({ at, storey }) => !at || !site.storeys.some(({ id }) => id === storey))
        .map(({ id }) => id),
    ),
  ];
}
