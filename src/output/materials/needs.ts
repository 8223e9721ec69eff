import {
  fixingOf,
  type LabourKind,
  lengthAllowance,
  type MaterialNeed,
  type Metres,
  type Site,
} from "#engine";
import { branchPoints } from "../wiring/branch-points.ts";
import type { PlannedCable, WiringPlan } from "../wiring/plan.ts";

/** What a plan needs to be bought and done. */
export interface PlanNeeds {
  readonly materials: readonly MaterialNeed[];
  readonly work: readonly {
    readonly kind: LabourKind;
    readonly number: number;
    readonly reach: "easy" | "hard";
  }[];
  /** Cables whose length the plan does not give: they stand in no sum. */
  readonly unmeasured: number;
  /** Items that are invented models, which nobody can order. */
  readonly invented: ReadonlySet<string>;
  /** Switches that go, whose places are to be covered. */
  readonly removed: number;
  /** Detectors above 3 m or on stairs. */
  readonly hard: number;
}

/** Height above which work takes longer and a ladder does no more. [m] */
const easyReach = 3;

/** Materials and work of a plan: detectors, mountings, buttons, cables, connectors, and plates over switches that go. Without wiring only what hangs on the ceiling. */
export function needsOf(site: Site, plan: WiringPlan | undefined): PlanNeeds {
  const models = new Map(site.models.map((model) => [model.id, model]));
  const rooms = new Map(site.rooms.map((room) => [room.id, room]));
  const nameOf = (model: string): string => models.get(model)?.title.trim() || `detector ${model}`;
  const reachOf = (room: string, height: number): "easy" | "hard" =>
    height > easyReach || rooms.get(room)?.use === "stair" ? "hard" : "easy";
  const cables = plan?.groups.flatMap((group) => group.cables) ?? [];
  const buttons = new Set(
    plan?.groups.flatMap((group) => group.buttons.map(({ button }) => button.id)) ?? [],
  );
  const removed = site.switches.filter(({ planned }) => planned === "removed").length;
  const detectors = site.detectors.map((one) => ({ ...one, reach: reachOf(one.room, one.height) }));
  const fixed = (one: (typeof detectors)[number]) => fixingOf(one, models.get(one.model));
  const pieces = (item: string, quantity: number): readonly MaterialNeed[] =>
    quantity > 0 ? [{ item, unit: "piece", quantity }] : [];
  const branches = plan ? branchPoints(plan).length : 0;
  const circuits = new Set(plan?.groups.flatMap(({ feed }) => (feed ? [feed.circuit.id] : [])) ?? []);
  return {
    materials: [
      ...detectors.flatMap(({ model }) => pieces(nameOf(model), 1)),
      ...pieces("ceiling box", detectors.filter((one) => fixed(one) === "box").length),
      ...pieces(
        "tested cover for a fire-rated ceiling",
        detectors.filter(
          (one) => fixed(one) === "ceiling-panel" && rooms.get(one.room)?.fireRatedCeiling === true,
        ).length,
      ),
      ...pieces(
        "cable gland",
        cables
          .flatMap(({ from, to }) => [from, to])
          .filter((end) =>
            detectors.some(({ id, model }) => id === end && models.get(model)?.entrySeal === "gland"),
          ).length,
      ),
      ...pieces(
        "push-button",
        site.switches.filter(({ id, kind }) => buttons.has(id) && kind !== "push-button").length,
      ),
      ...pieces("blanking plate", removed),
      ...pieces("branch box", branches),
      ...cables.flatMap((cable): readonly MaterialNeed[] =>
        cable.length === undefined
          ? []
          : [{ item: cableName(cable), unit: "metre", quantity: withoutWaste(cable.length) }],
      ),
      ...pieces("connector", connectorsOf(cables)),
    ],
    work: [
      ...(["fit-detector", "set-detector", "test-detector"] as const).flatMap((kind) =>
        (["easy", "hard"] as const).map((reach) => ({
          kind,
          reach,
          number: detectors.filter((one) => one.reach === reach).length,
        })),
      ),
      {
        kind: "surface-cable" as const,
        reach: "easy" as const,
        number: cables.reduce((sum, { length }) => sum + withoutWaste(length ?? 0), 0),
      },
      { kind: "branch-box" as const, reach: "easy" as const, number: branches },
      { kind: "test-circuit" as const, reach: "easy" as const, number: circuits.size },
    ].filter(({ number }) => number > 0),
    unmeasured: cables.filter(({ length }) => length === undefined).length,
    invented: new Set(detectors.flatMap(({ model }) => (models.get(model)?.demo ? [nameOf(model)] : []))),
    removed,
    hard: detectors.filter(({ reach }) => reach === "hard").length,
  };
}

/** Length as it lies: the list of materials adds its own share for waste, and that once. */
const withoutWaste = (length: Metres): Metres => length / (1 + lengthAllowance.waste);

/** A neutral name by which one buys it. */
const cableName = ({ conductors, size }: PlannedCable): string =>
  size === undefined
    ? `cable, ${conductors.length} cores, section unknown`
    : `cable ${conductors.length} × ${size.text}`;

/** One connector for each conductor that goes on at a device, taken as with one clamp for each terminal: an estimate. */
function connectorsOf(cables: readonly PlannedCable[]): number {
  const ends = new Map<string, number>();
  for (const { from, to, conductors } of cables)
    for (const id of [from, to])
      for (const conductor of conductors)
        ends.set(`${id} ${conductor}`, (ends.get(`${id} ${conductor}`) ?? 0) + 1);
  return [...ends.values()].filter((count) => count > 1).length;
}
