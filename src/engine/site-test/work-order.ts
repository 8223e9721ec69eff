import { controlledRooms, type Detector, lookUp, type Site } from "../site/index.ts";
import type { WiringModel } from "../wiring/index.ts";
import { circuitSteps } from "./circuit-steps.ts";
import { type IsolationGroup, isolationGroups } from "./isolation.ts";
import { roomSteps, type SetForTest } from "./room-steps.ts";
import { stepId, type WorkStage, type WorkStep, workStages } from "./work-step.ts";

export interface WorkOrderOptions {
  /** By id of the detector. */
  readonly settings?: ReadonlyMap<string, SetForTest>;
}

/** The order of work of a whole job: each group of circuits from isolation to functional tests, then room by room. */
export interface WorkOrder {
  readonly groups: readonly IsolationGroup[];
  /** In the order in which they are done. */
  readonly steps: readonly WorkStep[];
}

/**
 * The steps from safe isolation to emergency luminaires, in order, each with its cautions and with what must be done before.
 *
 * Isolation in the order of the region; inspection; dead tests with test links in; links out; fitting; power; warm-up; live tests; functional tests; then
 * for each room walk test, readings, empty room, afterglow; last the emergency luminaires.
 *
 * @param site - Snapshot of the job. @param model - Its wiring; detectors whose circuit nobody has entered are worked on as "unassigned".
 * @param options - What is set, for delays and brightness.
 * @returns Groups of circuits and steps; nothing for a site without detectors.
 * @source IEC-60364-6
 * @source EN-50110-1
 * @example One circuit with one detector: it is disconnected, locked, proved dead between six pairs of conductors, …
 */
export function workOrder(site: Site, model: WiringModel, options: WorkOrderOptions = {}): WorkOrder {
  const look = lookUp(site);
  const groups = isolationGroups(
    model,
    site.detectors.map(({ id }) => id),
  );
  const steps = groups.flatMap((group) =>
    circuitSteps({
      group,
      model,
      site,
      detectors: group.detectors.flatMap((wired) => {
        const record = look.detectorById.get(wired.id);
        return record ? [{ record, wired }] : [];
      }),
    }),
  );
  const rooms = site.rooms.filter((room) => look.detectorsFor(room.id).length > 0);
  const functional = new Set(steps.filter(({ name }) => name === "functional").map(({ id }) => id));
  const inRooms = rooms.flatMap((room) => {
    const detectors = look.detectorsFor(room.id);
    return roomSteps({
      room,
      site,
      detectors,
      settings: options.settings ?? new Map(),
      groups: groups
        .filter((group) => group.detectors.some(({ id }) => detectors.some((one) => one.id === id)))
        .map(({ id }) => id),
      needs: detectors
        .map(({ id }) => stepId("functional", { kind: "detector", id }))
        .filter((id) => functional.has(id)),
      isFirstRoomOf: (detector) => firstRoomOf(detector, rooms) === room.id,
    });
  });
  return { groups, steps: [...steps, ...inRooms] };
}

/** A detector that switches several rooms is timed in the first of them. */
const firstRoomOf = (detector: Detector, rooms: Site["rooms"]): string | undefined =>
  rooms.find((room) => controlledRooms(detector).includes(room.id))?.id;

/**
 * The steps of one circuit's group, or of one room, stage by stage.
 *
 * @param order - The order of work. @param of - Which steps.
 * @returns Stages that have steps, in their order.
 * @example The stages of a room: walk test, readings
 */
export function stagesOf(
  order: WorkOrder,
  of: { readonly group: string } | { readonly room: string },
): readonly { readonly stage: WorkStage; readonly steps: readonly WorkStep[] }[] {
  const own = order.steps.filter((step) =>
    "room" in of ? step.room === of.room : step.groups.includes(of.group),
  );
  return workStages
    .map((stage) => ({ stage, steps: own.filter((step) => step.stage === stage) }))
    .filter(({ steps }) => steps.length > 0);
}
