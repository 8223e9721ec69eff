import { type Contactor, lengthAllowance, type WiredDetector } from "#engine";
import { type ConductorKind, controlPair, type SwitchedKind } from "./conductors.ts";
import { type CableRun, loop, type Placed } from "./group-cables.ts";
import type { GroupFeed, GroupPlan, PlannedButton } from "./plan.ts";

/**
 * The cables of a group: supply to its first detector, on to the others, from the last one through the luminaires, and to the buttons.
 * All loop in and out, so that no joint needs a box of its own.
 */
export function groupRuns(group: {
  readonly places: ReadonlyMap<string, Placed>;
  readonly feed: GroupFeed | undefined;
  /** Where the supply comes from: the board, or the group before on the same circuit. */
  readonly source: string | undefined;
  readonly detectors: readonly WiredDetector[];
  readonly loads: readonly string[];
  readonly emergency: readonly string[];
  readonly buttons: readonly PlannedButton[];
  readonly control: GroupPlan["control"];
  /** Contactors whose main contacts feed the group, where no detector does. */
  readonly mains: readonly Contactor[];
  readonly pack: Contactor | undefined;
}): readonly CableRun[] {
  const { places, feed, detectors, buttons } = group;
  const circuit = feed?.circuit.id;
  const lines: readonly ConductorKind[] = feed?.lines ?? ["unknown"];
  const control: readonly ConductorKind[] = group.control === "pair" ? controlPair : [];
  const protective: readonly ConductorKind[] =
    feed?.found?.protectiveConductor === "no" ? [] : ["protective"];
  const place = (id: string): Placed | { readonly id: string } => places.get(id) ?? { id };
  const [first] = detectors;
  if (first === undefined) return mainRuns(group);
  if (group.pack)
    return loop([place(group.pack.id), ...detectors.map(({ id }) => place(id))], undefined, [
      "low-plus",
      "low-minus",
      "low-signal",
    ]);
  const supply = loop([place(group.source ?? ""), place(first.id)], circuit, [
    ...lines,
    "neutral",
    ...protective,
  ]);
  const between = loop(
    detectors.map(({ id }) => place(id)),
    circuit,
    [
      ...lines,
      ...(detectors.filter(({ output }) => output !== undefined).length > 1 ? (["switched"] as const) : []),
      "neutral",
      ...protective,
      ...control,
      ...(detectors.some(({ role }) => role === "slave") ? (["signal"] as const) : []),
    ],
  );
  // A slave at the end of the chain has no switched line to hand on.
  const switching = [first.id, ...between.map(({ to }) => to)].filter((id) =>
    detectors.some((one) => one.id === id && one.output !== undefined),
  );
  const last = place(switching.at(-1) ?? first.id);
  return [
    ...supply,
    ...between,
    ...loop([last, ...group.loads.map(place)], circuit, ["switched", "neutral", ...protective, ...control]),
    ...loop([last, ...group.emergency.map(place)], circuit, [...lines, "neutral", ...protective]),
    ...buttons.flatMap(({ button, from }) => {
      const spoken = detectors.find(({ id }) => button.detectors.includes(id));
      return spoken === undefined
        ? []
        : loop([place(spoken.id), place(button.id)], circuit, [from, "button", ...protective]);
    }),
  ];
}

/** What main contacts feed: the supply up to the contactor, and from it through its luminaires. */
function mainRuns({
  places,
  feed,
  source,
  mains,
  loads,
  emergency,
}: Pick<
  Parameters<typeof groupRuns>[0],
  "places" | "feed" | "source" | "mains" | "loads" | "emergency"
>): readonly CableRun[] {
  const [contactor] = mains;
  if (contactor === undefined || feed === undefined) return [];
  const { lines } = feed;
  const circuit = feed.circuit.id;
  const protective: readonly ConductorKind[] = feed.found?.protectiveConductor === "no" ? [] : ["protective"];
  const place = (id: string): Placed | { readonly id: string } => places.get(id) ?? { id };
  const switched: readonly SwitchedKind[] =
    lines.length === 1 ? ["switched"] : lines.map((own) => `switched-${own}` as const);
  const behind: readonly ConductorKind[] = [...switched, "neutral", ...protective];
  const supply: readonly ConductorKind[] = [...lines, "neutral", ...protective];
  const inBoard = contactor.inBoard === "yes";
  return [
    ...(inBoard ? [] : loop([{ id: source ?? "" }, { id: contactor.id }], circuit, supply)),
    ...(places.has(contactor.id)
      ? loop([place(contactor.id), ...loads.map(place)], circuit, behind)
      : // From where nobody knows to the first of the shortest chain through them.
        chainFrom(contactor.id, loop(loads.map(place), circuit, behind), { loads, circuit, behind })),
    ...loop([place(source ?? ""), ...emergency.map(place)], circuit, supply),
  ];
}

const chainFrom = (
  start: string,
  chain: readonly CableRun[],
  of: {
    readonly loads: readonly string[];
    readonly circuit: string;
    readonly behind: readonly ConductorKind[];
  },
): readonly CableRun[] => {
  const to = chain[0]?.from ?? of.loads[0];
  return to === undefined
    ? chain
    : [{ from: start, to, circuit: of.circuit, conductors: of.behind, length: undefined }, ...chain];
};

/** The cables to the coils that a group holds, from the detector and with the length that the engine reckons with. */
export const coilRuns = (group: {
  readonly feed: GroupFeed | undefined;
  readonly detectors: readonly WiredDetector[];
  readonly coils: readonly Contactor[];
}): readonly CableRun[] =>
  group.coils.flatMap(({ id, coil: { wire }, pack }): readonly CableRun[] => {
    // The signal to a relay pack goes with the supply of its detectors.
    if (pack) return [];
    const from = wire?.start ?? group.detectors.find(({ output }) => output !== undefined)?.id;
    return from === undefined
      ? []
      : [
          {
            from,
            to: id,
            circuit: group.feed?.circuit.id,
            conductors: [
              "switched",
              "neutral",
              ...(group.feed?.found?.protectiveConductor === "no" ? [] : (["protective"] as const)),
            ],
            length: wire?.length === undefined ? undefined : wire.length * (1 + lengthAllowance.waste),
            ...(wire?.section === undefined ? {} : { section: wire.section }),
          },
        ];
  });
