import { nearestIn } from "../coverage/index.ts";
import type { Point } from "../geometry/index.ts";
import type { MetresPerSecond, Seconds } from "../quantity/index.ts";
import type { Station } from "./station.ts";
import type { WalkContext } from "./walk-context.ts";

/** Pace of a walk test: the speed that is usually stated beside towards and across figures. [m/s] @source COMMON-PRACTICE */
export const PACE: MetresPerSecond = 1;

/** Standing still before each pass, until the detector's test light is out again, and tapping the result. [s] @source COMMON-PRACTICE */
export const SETTLE: Seconds = 4;

/** A station that may be chosen, and where the tour meets it. */
export interface StationCandidate {
  readonly station: Station;
  /** Where one comes to it and leaves it again: inside the standing area, or as near as one gets. [m] */
  readonly from: Point;
  readonly to: Point;
}

/** What differs between stations; the rest follows from the room. */
export type StationDraft = Omit<Station, "room" | "waiting" | "heard" | "basis"> &
  Partial<Pick<Station, "waiting" | "heard">> & {
    /** Where the tour meets it, if not at the ends of its path. */
    readonly met?: Point;
  };

/**
 * A drafted station with its room, basis, and where the tour meets it.
 *
 * @param context - The room. @param draft - What differs.
 * @returns The candidate.
 * @example A dwell place that stands on a bench is met beside it
 */
export function candidateOf(context: WalkContext, draft: StationDraft): StationCandidate {
  const { met, ...station } = draft;
  const first = met ?? (draft.path[0] as Point);
  const last = met ?? (draft.path[draft.passes % 2 === 0 ? 0 : draft.path.length - 1] as Point);
  return {
    station: {
      waiting: 0,
      heard: false,
      ...station,
      room: context.prepared.room.id,
      basis: context.basis(draft.devices),
    },
    from: nearestIn(context.standing, first) ?? first,
    to: nearestIn(context.standing, last) ?? last,
  };
}
