import type { Point } from "../geometry/index.ts";
import type { Metres, Seconds } from "../quantity/index.ts";

/**
 * What is tested.
 * enter: through a door from outside · towards, across: the boundary of a zone · corner: a far corner · still: a dwell place, sitting ·
 * behind: behind a partition or rack · pass-by: outside an open door, must not trigger · empty: nobody in the room, must not trigger.
 */
export type StationKind =
  | "enter"
  | "towards"
  | "across"
  | "corner"
  | "still"
  | "behind"
  | "pass-by"
  | "empty";

/** What must happen. Distances: from the door along the way for "lit-within", from the detector in plan for "seen-from". [m] */
export type Expectation =
  | { readonly kind: "seen" }
  | { readonly kind: "seen-from"; readonly distance: Metres }
  | { readonly kind: "lit-within"; readonly distance: Metres }
  | { readonly kind: "not-seen" };

/** Why a place is worth a station. */
export type StationReason =
  | "planned-boundary"
  | "way-in"
  | "farthest-corner"
  | "dwell-place"
  | "seen-over-obstacle"
  | "obstacle-see-through"
  | "hidden-from-another"
  | "plan-sees-out"
  | "next-door"
  | "sources-in-view"
  | "sources-near"
  | "empty-room";

export interface Station {
  /** Permanent: derived from what is tested. */
  readonly id: string;
  readonly room: string;
  readonly kind: StationKind;
  /** Record that it is about. */
  readonly subject: {
    readonly kind: "opening" | "device" | "corner" | "dwell-place" | "obstacle" | "room";
    readonly id: string;
  };
  /** Where one walks; a single place where one stands or sits. [m] */
  readonly path: readonly Point[];
  /** Times that the path is walked, forth and back in turn. */
  readonly passes: number;
  readonly expected: Expectation;
  /** The plan's own figure, where it has one: distance of the planned boundary, or metres in the dark. [m] */
  readonly planned: Metres | undefined;
  /** Devices that must, or must not, react; the likeliest first. */
  readonly devices: readonly string[];
  readonly why: StationReason;
  /** How far the plan is from failing here: the smaller, the more worth testing. [m] */
  readonly headroom: Metres;
  /** Attended. [s] */
  readonly seconds: Seconds;
  /** Waiting that needs nobody. [s] */
  readonly waiting: Seconds;
  /** A place in a bay where hearing serves as well: one may make a small noise. */
  readonly heard: boolean;
  /** How the tested devices hang: a reading taken with another basis proves nothing of them. */
  readonly basis: string;
}

/** A planned walk test of one room. */
export interface WalkTest {
  readonly room: string;
  /** In the order of the tour. */
  readonly stations: readonly Station[];
  /** The rest of a short test, thinnest margin first: what was read there before counts all the same. */
  readonly others: readonly Station[];
  /** Way between the stations, from the door. [m] */
  readonly way: Metres;
  readonly seconds: { readonly attended: Seconds; readonly waiting: Seconds };
  /** Of a short test: how many stations a full one has, and which devices no station names, and the tags of those. */
  readonly left: {
    readonly stations: number;
    readonly devices: readonly string[];
    readonly tags: Readonly<Record<string, string>>;
  };
  /** The plan leaves gaps open that no station can prove closed. */
  readonly openGaps: number;
}
