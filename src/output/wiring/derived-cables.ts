import type { CircuitRoute, DerivedWiring, RouteCable, WiringModel } from "#engine";
import { type ConductorKind, controlPair } from "./conductors.ts";
import { type CableRun, laid } from "./group-cables.ts";
import type { GroupFeed, GroupPlan, PlannedButton } from "./plan.ts";

/** What hangs on a switched line and on the circuit that feeds it, by id. */
export interface OnOwnCircuit {
  readonly line: string;
  readonly circuit: string | undefined;
  readonly detectors: readonly string[];
  readonly loads: readonly string[];
  readonly emergency: readonly string[];
  /** Whether some of its detectors only signal to another. */
  readonly signals: "some" | "none";
}

/**
 * The cables that the engine derived, by switched line: the same on paper as on the screen.
 *
 * A circuit is left out whole where its route does not have every conductor that the papers name: a signal to a master, a line that
 * two storeys share, what a contactor feeds, a detector that belongs to another circuit's group; or where it has no route.
 */
export function derivedCables(
  { circuits }: DerivedWiring,
  model: WiringModel,
  groups: readonly OnOwnCircuit[],
): ReadonlyMap<string, readonly RouteCable[]> {
  const found = new Map<string, RouteCable[]>();
  for (const { id, route } of circuits) {
    const own = groups.filter(({ circuit }) => circuit === id);
    const [first] = own;
    if (!route || !first || !isWhole(route, model, own)) continue;
    for (const { line } of own) found.set(line, []);
    for (const cable of route.cables) {
      const end = cable.use === "button" ? cable.from : cable.to;
      // What is always on and in no group stands with the first, since the supply goes through it.
      const group = own.find((one) => membersOf(one).includes(end)) ?? first;
      found.get(group.line)?.push(cable);
    }
  }
  return found;
}

const membersOf = ({ detectors, loads, emergency }: OnOwnCircuit): readonly string[] => [
  ...detectors,
  ...loads,
  ...emergency,
];

function isWhole(
  { circuit, nodes }: CircuitRoute,
  { contactors }: WiringModel,
  own: readonly OnOwnCircuit[],
): boolean {
  const storeyOf = new Map(nodes.map(({ id, storey }) => [id, storey]));
  const grouped = new Set(own.flatMap(({ detectors }) => detectors));
  return (
    contactors.every(({ main }) => main.circuit !== circuit) &&
    nodes.every(({ id, kind }) => kind !== "detector" || grouped.has(id)) &&
    own.every(
      (group) =>
        group.signals === "none" &&
        membersOf(group).every((id) => storeyOf.has(id)) &&
        new Set([...group.detectors, ...group.loads].map((id) => storeyOf.get(id))).size === 1,
    )
  );
}

/** Derived cables of a group as the papers write them, with what each conductor is for. */
export function derivedRuns(
  cables: readonly RouteCable[],
  {
    feed,
    buttons,
    control,
  }: {
    readonly feed: GroupFeed;
    readonly buttons: readonly PlannedButton[];
    readonly control: GroupPlan["control"];
  },
): readonly CableRun[] {
  const protective: readonly ConductorKind[] = feed.found?.protectiveConductor === "no" ? [] : ["protective"];
  const run = (
    from: string,
    to: string,
    conductors: readonly ConductorKind[],
    length: CableRun["length"],
  ): CableRun => ({
    from,
    to,
    circuit: feed.circuit.id,
    conductors: [...conductors, ...protective],
    length,
  });
  const along = cables.filter(({ use }) => use !== "button");
  return [
    ...along.map(({ from, to, use, length }) =>
      run(
        from,
        to,
        [
          ...(use === "switched" ? [] : feed.lines),
          ...(use === "supply" ? [] : (["switched"] as const)),
          "neutral",
          // What lies behind a contact goes to luminaires and to the group's other detectors: the pair goes with it.
          ...(use === "supply" || control === "none" ? [] : controlPair),
        ],
        laid(length, 0),
      ),
    ),
    ...buttons.flatMap(({ button, from: conductor }) => {
      const cable = cables.find(({ use, to }) => use === "button" && to === button.id);
      const from = cable?.from ?? button.detectors[0];
      return from === undefined
        ? []
        : [run(from, button.id, [conductor, "button"], cable && laid(cable.length, 0))];
    }),
  ];
}
