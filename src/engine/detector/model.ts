import type { Amperes, Metres, Radians, Seconds, Watts } from "../quantity/index.ts";
import type { Contact, DetectorInputs, TerminalKind } from "./contact.ts";

/** What a zone row declares at one mounting height: a circle, or a polar outline (angles from the notch, counter-clockwise seen from above, straight between points). */
export type ZoneRow =
  | { readonly height: Metres; readonly radius: Metres }
  | { readonly height: Metres; readonly outline: readonly (readonly [angle: Radians, radius: Metres])[] };

/** seated: small movements · towards: radial walk · across: tangential walk · sound: heard. */
export type ZoneKind = "seated" | "towards" | "across" | "sound";

/** How a figure of the data sheet came to be known. */
export type Declaration = "standard-test" | "data-sheet" | "measured-on-site" | "assumed";

/** Lens as seen from the room: rings of facets by off-nadir angle, and where the sensing element sits. */
export interface Lens {
  readonly shape: "dome" | "flat";
  readonly rings: readonly { readonly offNadir: Radians; readonly facets: number }[];
  readonly sectors?: number;
  /** Radius of the dome; of a flat lens its distance from the element. [m] */
  readonly radius?: Metres;
  /** Offset of the element from the dome's centre along the axis into the room. [m] */
  readonly elementOffset?: Metres;
}

/** box: in a ceiling box · surface: under the ceiling · ceiling-panel: through a panel, held by springs or claws. */
export type Fixing = "box" | "surface" | "ceiling-panel";

/** switch: on and off · two-level: falls to a background level · dimming-broadcast: one level for all on its pair · addressed-bus: luminaires by address, which is not covered. */
export type OutputKind = "switch" | "two-level" | "dimming-broadcast" | "addressed-bus";

/** A sign that a detector gives, such as "red, blinks once a second", and its meaning. */
export interface Indicator {
  readonly sign: string;
  readonly meaning: string;
}

/** The data sheet of a detector as data. What is not known stays absent: it is shown as "unknown until entered". */
export interface DetectorModel {
  readonly id: string;
  readonly title: string;
  readonly mounting: { readonly min: Metres; readonly max: Metres };
  readonly zones: Readonly<Partial<Record<ZoneKind, readonly ZoneRow[]>>>;
  readonly declaration: Declaration;
  readonly declaredBy: string;
  /** Metres of walk without a break that make it react; the job's default if absent. */
  readonly onset?: Metres;
  /** Time from reaction to switched contact. */
  readonly response?: Seconds;
  readonly warmUp?: Seconds;
  /** State of the output during warm-up and delivery settings, as the data sheet says. */
  readonly deliveryState?: string;
  readonly lens?: Lens;
  readonly cutOut?: Metres;
  /** How it is fixed. */
  readonly fixing?: Fixing;
  /** Other ways of fixing that its data sheet declares. */
  readonly otherFixings?: readonly Fixing[];
  /** Side on which cables enter it. */
  readonly cableEntry?: "back" | "side" | "either";
  /** What closes the entry around the cable. */
  readonly entrySeal?: "none" | "grommet" | "gland";
  /** What its indicators show, and what that means: words of its own data sheet. */
  readonly indicators?: readonly Indicator[];
  /** Room that it needs above the ceiling, or in the box. [m] */
  readonly depth?: Metres;
  /** Thickness of ceiling that its springs or claws hold. [m] */
  readonly ceilingThickness?: { readonly min: Metres; readonly max: Metres };
  /** Degree of protection against water, the second numeral of the IP code. */
  readonly waterProtection?: number;
  /** low-voltage: fed by a relay pack at some twenty volts, and switching nothing of its own; mains if absent. */
  readonly supply?: "mains" | "low-voltage";
  /** Drawn from the relay pack. [A] */
  readonly supplyCurrent?: Amperes;
  readonly contact?: Contact;
  /** Kinds of output that its data sheet declares. */
  readonly outputKinds?: readonly OutputKind[];
  readonly terminals?: readonly TerminalKind[];
  readonly inputs?: DetectorInputs;
  /** Whether the output is on while it warms up after power returns. */
  readonly warmUpOutput?: "on" | "off";
  /** Power drawn by itself all the year. [W] */
  readonly standby?: Watts;
  /** Current in its protective conductor, or through its filter. [A] */
  readonly leakage?: Amperes;
  /** Cost of one, placed, in the job's currency; used to compare models. */
  readonly cost: number;
  /** True for the invented models of the demo: an order list is refused while they are in it. */
  readonly demo?: boolean;
}

/** A masked part of the lens: sector counter-clockwise from the notch (may cross 0; 0 → 2π is a ring) × band of off-nadir angles. */
export interface LensMask {
  readonly from: Radians;
  readonly to: Radians;
  readonly inner: Radians;
  readonly outer: Radians;
}
