import type { Check, Problem, Words } from "../check/index.ts";
import type { ZoneKind } from "../detector/index.ts";
import type { Point, Region } from "../geometry/index.ts";
import type { Metres, SquareMetres } from "../quantity/index.ts";

/** How doors stand in a calculation. "drawn": as each opening's own state says. */
export type DoorState = "closed" | "open" | "drawn";

/** A dwell place as a demand: the disc, less floor under something taller than the sight height. */
export interface DwellDemand {
  readonly id: string;
  readonly region: Region;
  readonly area: SquareMetres;
  readonly sightHeight: Metres;
  /** Inside a bay of a sanitary or changing room: seated or sound serves. */
  readonly inBay: boolean;
}

/** What must be seen in a room. */
export interface RoomDemand {
  readonly room: string;
  /** Which of the three demands hold in this room; the areas below are given in any case. */
  readonly asked: { readonly catch: boolean; readonly walk: boolean; readonly hold: boolean };
  /** Standing area that a door leads to. */
  readonly standing: Region;
  /** The part of `standing` inside bays, where sound serves as well. */
  readonly bays: Region;
  /** Standing area that no door leads to: listed, not demanded. */
  readonly unreachable: Region;
  readonly dwell: readonly DwellDemand[];
  readonly problems: readonly Problem[];
}

export type GapCause =
  | { readonly kind: "beyond-reach" }
  | {
      readonly kind: "hidden";
      readonly behind: {
        readonly kind: "obstacle" | "wall" | "door-leaf" | "opening";
        readonly id: string;
        /** As it stands inside a sentence. */
        readonly name: Words;
      };
    }
  | { readonly kind: "masked"; readonly device: string }
  | { readonly kind: "mounting-limits"; readonly device: string }
  | { readonly kind: "too-warm" }
  | { readonly kind: "no-device" };

/** A connected piece of demand that no counted device covers. */
export interface Gap {
  readonly demand: "walk" | "hold";
  readonly region: Region;
  readonly area: SquareMetres;
  /** A point inside, farthest from the edge. */
  readonly at: Point;
  readonly cause: GapCause;
  /** Dwell place it belongs to, for "hold". */
  readonly dwellPlace?: string;
  /** Within the tolerance of `check` (never for placing). */
  readonly tolerated: boolean;
}

export interface DarkWalk {
  readonly opening: string;
  readonly toward: {
    readonly kind: "dwell-place" | "opening" | "corner";
    readonly id: string;
    readonly at: Point;
  };
  /** Metres in the dark: way to the reaction + speed × response; the whole way if never seen. */
  readonly metres: Metres;
  readonly lit: boolean;
  readonly path: readonly Point[];
  /** Where the light comes on. */
  readonly litAt?: Point;
  /** Device that reacts first. */
  readonly device?: string;
}

export interface Spill {
  readonly room: string | null;
  readonly region: Region;
  readonly area: SquareMetres;
  readonly devices: readonly string[];
}

export interface InterferenceSeen {
  readonly source: string;
  readonly device: string;
  readonly distance: Metres;
}

/** Coverage of one room by the devices that control it; doors closed and leaves open, the worse counts. */
export interface RoomCoverage {
  readonly room: string;
  readonly demand: RoomDemand;
  /** Demanded and covered area: walk and hold in m², catch as the number of doors. */
  readonly demanded: { readonly walk: SquareMetres; readonly hold: SquareMetres; readonly catch: number };
  readonly covered: { readonly walk: SquareMetres; readonly hold: SquareMetres; readonly catch: number };
  readonly gaps: readonly Gap[];
  readonly spill: readonly Spill[];
  readonly interference: readonly InterferenceSeen[];
  /** The worst walk of each door. */
  readonly darkWalks: readonly DarkWalk[];
  readonly checks: readonly Check[];
  readonly problems: readonly Problem[];
}

export interface ZoneQuestion {
  readonly device: string;
  readonly kind: ZoneKind;
  readonly doors: DoorState;
}
