import type { DetectorModel, Fixing, LensMask, LoadKind } from "../detector/index.ts";
import type { Outline, Point } from "../geometry/index.ts";
import type {
  AmpereSquareSeconds,
  Amperes,
  Celsius,
  Farads,
  Metres,
  MetresPerSecond,
  Radians,
  Seconds,
  Share,
  SquareMetres,
  Watts,
} from "../quantity/index.ts";

export type RoomUse =
  | "passing"
  | "stair"
  | "moving"
  | "sitting"
  | "sanitary"
  | "changing"
  | "plant"
  | "other";
/** Kinds of space that codes tell apart. */
export type SpaceKind =
  | "classroom"
  | "meeting"
  | "copy"
  | "break-room"
  | "office-enclosed"
  | "office-open"
  | "restroom"
  | "storage"
  | "locker-room"
  | "corridor"
  | "stairway"
  | "lobby"
  | "library-stacks"
  | "parking"
  | "warehouse"
  | "other";
export type OpeningKind = "door" | "passage" | "window" | "glazing";
export type ObstacleKind =
  | "rack"
  | "partition"
  | "glass"
  | "cubicle"
  | "column"
  | "duct"
  | "beam"
  | "furniture"
  | "other";
export type DwellKind = "desk" | "seat" | "wc" | "bench" | "basin" | "shower" | "bath" | "panel" | "machine";
export type InterferenceKind = "heater" | "air-outlet" | "machine" | "sunlit-window" | "door-curtain";
export type CeilingThingKind =
  | "smoke-head"
  | "sprinkler"
  | "speaker"
  | "hatch"
  | "luminaire-emergency"
  | "other";
export type LuminaireMounting = "flush" | "surface" | "pendant";

export interface Storey {
  readonly id: string;
  readonly name: string;
  readonly elevation: Metres;
}

/** A room: outline with holes, floor offset from the storey's finished floor, ceiling height above the room's floor. */
export interface Room {
  readonly id: string;
  readonly storey: string;
  readonly number: string;
  readonly name: string;
  readonly use: RoomUse;
  readonly outline: Outline;
  readonly holes: readonly Outline[];
  readonly floor: Metres;
  readonly ceilingHeight: Metres;
  /** Highest temperature that the room reaches. Absent: 22 °C. */
  readonly highestTemperature?: Celsius;
  readonly ceilingGrid?: {
    readonly tile: readonly [Metres, Metres];
    readonly origin: Point;
    readonly turn: Radians;
  };
  /** Which demands hold here; all by default. */
  readonly demand: { readonly catch: boolean; readonly walk: boolean; readonly hold: boolean };
  /** Parts of the ceiling where nothing may be mounted. */
  readonly noDevices: readonly Outline[];
  /** How sure a reader of plans was, 0 … 1, and why; absent once a person has confirmed or drawn the room. */
  readonly proposed?: { readonly confidence: Share; readonly reason: string };
  /** Kind of space for rules, as somebody chose; what its use leaves open if absent. */
  readonly space?: SpaceKind;
  /** People leave the building through here. */
  readonly escapeRoute?: boolean;
  /** Daylight reaches it, or none does. Absent: nobody said, and windows speak for themselves. */
  readonly daylight?: boolean;
  /** The ceiling holds back fire: no cut-out without its seal. */
  readonly fireRatedCeiling?: boolean;
  /** Holes in the fire-rated ceiling are sealed. */
  readonly penetrationsSealed?: boolean;
  /** Thickness of the ceiling's panel. */
  readonly ceilingThickness?: Metres;
  /** Free height above the panel; 0: nothing is free above it. */
  readonly ceilingVoid?: Metres;
  /** Depth of the boxes in the ceiling. */
  readonly ceilingBoxDepth?: Metres;
  /** Water may splash here. */
  readonly wet?: boolean;
  /** Highest fixed water outlet of a bath or shower, above the floor. */
  readonly highestOutlet?: Metres;
}

/** A part of a room's floor with its own height. A flight rises evenly from the edge nearest `from` to the edge nearest `to`. Heights above the room's floor. */
export interface FloorPiece {
  readonly id: string;
  readonly room: string;
  readonly kind: "flight" | "landing";
  readonly footprint: Outline;
  readonly from: Point;
  readonly to: Point;
  readonly low: Metres;
  readonly high: Metres;
}

/** Sits in the outline between two rooms, or a room and outside (null). `from` → `to` on the face of the first room; the reveal reaches `thickness` away from that room. */
export interface Opening {
  readonly id: string;
  readonly rooms: readonly [string, string | null];
  readonly kind: OpeningKind;
  readonly from: Point;
  readonly to: Point;
  readonly sill: Metres;
  readonly head: Metres;
  readonly thickness: Metres;
  readonly hinge: "from" | "to";
  /** Room into which the leaf swings; null: outside. */
  readonly opensInto: string | null;
  /** Angle of the open leaf from its closed position; π/2 by default. */
  readonly angle: Radians;
  /** Only how it is drawn: coverage and spill set the doors themselves. */
  readonly state: "open" | "closed";
}

/** A prism. Heights above the local floor at the footprint. Kind "cubicle": the panels; its bays are the convex hull less the footprint. */
export interface Obstacle {
  readonly id: string;
  readonly room: string;
  readonly kind: ObstacleKind;
  readonly name: string;
  readonly footprint: Outline;
  readonly base: Metres;
  readonly top: Metres;
  /** Mesh or open shelving; carries "verify". */
  readonly seeThrough: boolean;
}

export interface DwellPlace {
  readonly id: string;
  readonly room: string;
  readonly kind: DwellKind;
  readonly at: Point;
  readonly radius: Metres;
}

/** A source of false triggering: a point, or a line from `at` to `to`, at its height above the local floor. */
export interface Interference {
  readonly id: string;
  readonly room: string;
  readonly kind: InterferenceKind;
  readonly at: Point;
  readonly to?: Point;
  readonly height: Metres;
  /** Least distance of a detector; the kind's default if absent. */
  readonly clearance?: Metres;
}

export interface CeilingThing {
  readonly id: string;
  readonly room: string;
  readonly kind: CeilingThingKind;
  readonly at: Point;
}

export interface Luminaire {
  readonly id: string;
  readonly room: string;
  readonly name: string;
  readonly at: Point;
  /** Underside above the local floor. */
  readonly height: Metres;
  readonly mounting: LuminaireMounting;
  /** Lamp that gets hot. */
  readonly hot: boolean;
  readonly length: Metres;
  readonly width: Metres;
  readonly turn: Radians;
  /** What the label or the list of luminaires calls it. */
  readonly type?: string;
  /** Power drawn from the mains, driver included. */
  readonly power?: Watts;
  /** Number of drivers in it. */
  readonly drivers?: number;
  /** Name of the circuit that feeds it. */
  readonly circuit?: string;
  /** What it is to a contact; anything with an electronic driver is "led". */
  readonly load?: LoadKind;
  readonly powerFactor?: number;
  /** Of one driver. */
  readonly inrush?: {
    readonly peak: Amperes;
    /** At half the peak. */
    readonly width: Seconds;
    readonly integral?: AmpereSquareSeconds;
  };
  /** Of one driver. */
  readonly inputCapacitance?: Farads;
  /** How many of its drivers their maker declares for one breaker. */
  readonly driversPerBreaker?: readonly {
    readonly type: "B" | "C" | "D";
    readonly rating: Amperes;
    readonly count: number;
  }[];
  /** In its protective conductor. */
  readonly leakage?: Amperes;
  readonly protectionClass?: "I" | "II" | "III";
  /** Line conductor of a three-phase circuit that feeds it. */
  readonly line?: "L1" | "L2" | "L3";
  /** Escape lighting: where its unswitched line is taken, and the circuit whose failure it senses. */
  readonly emergency?: {
    readonly taken: "before-contact" | "after-contact" | "unknown";
    readonly senses: string;
  };
}

export type SwitchKind = "switch" | "two-way" | "intermediate" | "push-button" | "dimmer";

/** A switch or button on the wall, as found or as planned. */
export interface Switch {
  readonly id: string;
  readonly room: string;
  readonly kind: SwitchKind;
  readonly at: Point;
  /** Above the local floor. */
  readonly height: Metres;
  /** Name of the circuit whose light it switches. */
  readonly circuit?: string;
  /** parallel: it stays beside the contact · button: it speaks to detectors only. */
  readonly planned?: "parallel" | "button" | "removed";
  /** Detectors that it speaks to. */
  readonly detectors?: readonly string[];
  readonly glowLamp?: { readonly current: Amperes; readonly ownNeutral: "yes" | "no" | "unknown" };
}

/** A detector on the ceiling. Height above the local floor; turn of the notch counter-clockwise from +x. */
export interface Detector {
  readonly id: string;
  readonly tag: string;
  readonly room: string;
  /** Rooms whose light it switches; the room it hangs in by default. */
  readonly controls: readonly string[];
  readonly group: string;
  readonly model: string;
  readonly at: Point;
  readonly height: Metres;
  readonly turn: Radians;
  readonly masks: readonly LensMask[];
  readonly pinned: boolean;
  /** Name of the circuit that feeds it. */
  readonly circuit?: string;
  /** Luminaires that its contact switches; those of its rooms on one circuit if absent. */
  readonly luminaires?: readonly string[];
  /** signals: its contact is not used, it only speaks to another detector. */
  readonly output?: "switches" | "signals";
  /** Capacitors of suppressors at its output. */
  readonly suppressors?: readonly { readonly across: "contact" | "load"; readonly capacitance: Farads }[];
  /** A base load hangs beside the luminaires. */
  readonly baseLoad?: "yes" | "no" | "unknown";
  /** A switch that it cannot overrule keeps its light on. */
  readonly override?: "yes" | "no" | "unknown";
  /** How this one is fixed, where its data sheet allows several ways. */
  readonly fixing?: Fixing;
  /** Recessed in a fire-rated ceiling: whether in a cover that was tested with it. */
  readonly testedCover?: "yes" | "no" | "unknown";
  /** Zone of a bath or shower that it hangs in, where somebody measured. */
  readonly wetZone?: "0" | "1" | "2" | "outside";
  /** The swap that put this device here. Absent: the first one hangs here still. */
  readonly fitted?: string;
}

/** Numbers that a person may change per job; printed wherever they were used. */
export interface PlanningDefaults {
  /** Shares of the declared reach kept in hand for coverage; `spill` is added for spill and nuisance. */
  readonly margin: {
    readonly seated: Share;
    readonly towards: Share;
    readonly across: Share;
    readonly spill: Share;
  };
  readonly bodyRadius: Metres;
  readonly seatedRadius: Metres;
  readonly sightHeights: Readonly<Record<DwellKind, Metres>> & { readonly walking: Metres };
  readonly speed: MetresPerSecond;
  readonly onset: Metres;
  /** Device response and lamp start together, where the data sheet gives no response. */
  readonly response: Seconds;
  /** From switched contact to light; added to the response that a data sheet gives. */
  readonly lampStart: Seconds;
  readonly darkWalkLimit: Metres;
  /** Stairs are lit this far before the first step. */
  readonly stairLead: Metres;
  readonly gapArea: SquareMetres;
  readonly gapShare: Share;
  /** Sample and free-grid spacing of the search. */
  readonly spacing: Metres;
  readonly clearances: {
    readonly wall: Metres;
    readonly wallLeast: Metres;
    readonly luminaireFlush: Metres;
    readonly luminaireHot: Metres;
    readonly airOutlet: Metres;
    readonly heater: Metres;
    readonly smokeHead: Metres;
  };
}

/** Immutable snapshot of a whole job that every calculation takes. Records refer to each other by id. */
export interface Site {
  readonly name: string;
  readonly defaults: PlanningDefaults;
  readonly storeys: readonly Storey[];
  readonly rooms: readonly Room[];
  readonly floorPieces: readonly FloorPiece[];
  readonly openings: readonly Opening[];
  readonly obstacles: readonly Obstacle[];
  readonly dwellPlaces: readonly DwellPlace[];
  readonly interference: readonly Interference[];
  readonly ceilingThings: readonly CeilingThing[];
  readonly luminaires: readonly Luminaire[];
  readonly switches: readonly Switch[];
  readonly models: readonly DetectorModel[];
  readonly detectors: readonly Detector[];
}
