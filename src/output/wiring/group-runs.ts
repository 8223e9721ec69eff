import type { WiredDetector } from "#engine";
import type { ConductorKind } from "./conductors.ts";
import { type CableRun, loop, type Placed } from "./group-cables.ts";
import type { GroupFeed, PlannedButton } from "./plan.ts";

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
}): readonly CableRun[] {
  const { places, feed, detectors, buttons } = group;
  const circuit = feed?.circuit.id;
  const line: ConductorKind = feed?.line ?? "unknown";
  const protective: readonly ConductorKind[] =
    feed?.found?.protectiveConductor === "no" ? [] : ["protective"];
  const place = (id: string): Placed | { readonly id: string } => places.get(id) ?? { id };
  const [first] = detectors;
  if (first === undefined) return [];
  const supply = loop([place(group.source ?? ""), place(first.id)], circuit, [
    line,
    "neutral",
    ...protective,
  ]);
  const between = loop(
    detectors.map(({ id }) => place(id)),
    circuit,
    [
      line,
      ...(detectors.filter(({ output }) => output !== undefined).length > 1 ? (["switched"] as const) : []),
      "neutral",
      ...protective,
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
    ...loop([last, ...group.loads.map(place)], circuit, ["switched", "neutral", ...protective]),
    ...loop([last, ...group.emergency.map(place)], circuit, [line, "neutral", ...protective]),
    ...buttons.flatMap(({ button, from }) => {
      const spoken = detectors.find(({ id }) => button.detectors.includes(id));
      return spoken === undefined
        ? []
        : loop([place(spoken.id), place(button.id)], circuit, [from, "button", ...protective]);
    }),
  ];
}
