import type { Point } from "#engine";
import type { JobCircuit } from "#job";

/** A stretch of a route: "first" is what lies between the board and the first device on the board's storey. */
export type Stretch = "first" | { readonly from: string; readonly to: string };

/** A point of a stretch, and what the places that it passes become when that point stands elsewhere. */
export interface HeldPin {
  readonly circuit: string;
  readonly stretch: Stretch;
  readonly index: number;
  /** With the held point in it. */
  readonly via: readonly Point[];
}

type Pinned = NonNullable<JobCircuit["pinned"]>[number];

const joins = (one: Pinned, { from, to }: Exclude<Stretch, "first">): boolean =>
  (one.from === from && one.to === to) || (one.from === to && one.to === from);

/** Whether two names of a stretch mean the same one, whichever way it is gone. */
export const isSame = (one: Stretch, other: Stretch): boolean =>
  one === "first" || other === "first" ? one === other : joins({ ...one, via: [] }, other);

/** Places that a stretch passes, from its first end to its second. */
export function viaOf(
  { via, pinned = [] }: Pick<JobCircuit, "via" | "pinned">,
  stretch: Stretch,
): readonly Point[] {
  if (stretch === "first") return via ?? [];
  const own = pinned.find((one) => joins(one, stretch));
  return own === undefined ? [] : own.from === stretch.from ? own.via : own.via.toReversed();
}

/** Fields of a circuit with the places of one stretch; the others stay as they are. */
export function fieldsWith(
  { pinned = [] }: Pick<JobCircuit, "pinned">,
  { stretch, via }: Pick<HeldPin, "stretch" | "via">,
): Pick<JobCircuit, "via" | "pinned"> {
  return stretch === "first"
    ? { via: [...via] }
    : { pinned: [...pinned.filter((one) => !joins(one, stretch)), { ...stretch, via: [...via] }] };
}

/** How many places a circuit is led past. */
export const pinCount = ({ via = [], pinned = [] }: Pick<JobCircuit, "via" | "pinned">): number =>
  via.length + pinned.reduce((sum, one) => sum + one.via.length, 0);
