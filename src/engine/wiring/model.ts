import type { Words } from "../check/index.ts";
import type { Contact, DetectorInputs, LoadKind } from "../detector/index.ts";
import type {
  AmpereSquareSeconds,
  Amperes,
  Celsius,
  Farads,
  Metres,
  Ohms,
  Seconds,
  Share,
  SquareMillimetres,
  Volts,
  Watts,
} from "../quantity/index.ts";
import type { Arrangement, InstallationMethod, Insulation } from "./tables/capacity.ts";
import type { BreakerType } from "./tables/protection.ts";
import type { ConductorMaterial } from "./tables/resistance.ts";
import type { Gauge } from "./tables/united-states.ts";
import type { WetZone } from "./wet-zones.ts";

/** Nothing is guessed: what nobody looked at stays unknown, and what depends on it is not proven. */
export type Known = "yes" | "no" | "unknown";
export type EarthingSystem = "TN-S" | "TN-C-S" | "TN-C" | "TT" | "IT" | "unknown";
export type Line = "L1" | "L2" | "L3";

/** What comes in from the network. */
export interface Supply {
  readonly region: "IEC" | "US";
  readonly system: EarthingSystem;
  readonly voltage: Volts;
  readonly frequency: 50 | 60;
  readonly neutral: Known;
  /** public: from the low-voltage network · private: from a transformer of one's own. */
  readonly network: "public" | "private";
  /** Voltage factor of the lowest supply voltage in fault calculations: 1 by the plain formula, 0.95 in the UK. */
  readonly voltageFactor: number;
}

/** A distribution board. Line-to-earth data at its bars. */
export interface Board {
  readonly id: string;
  readonly name: string;
  readonly loopImpedance?: Ohms;
  readonly faultCurrent?: Amperes;
  /** Share of the voltage already lost on the way to it; 1 % if nobody knows. */
  readonly dropUsed?: Share;
  /** Resistance of the earth electrode with its conductor, TT. [Ω] */
  readonly earthResistance?: Ohms;
  /** Whether its isolator breaks the neutral as well, TT. */
  readonly isolatesNeutral?: Known;
  /** Where it is another than the installation's. */
  readonly supply?: Supply;
}

/** Points of a breaker's curve below 10 ms: how many times its magnetic limit a pulse of that width may reach. */
export type PulseCurve = readonly (readonly [width: Seconds, factor: number])[];

export interface ProtectiveDevice {
  readonly id: string;
  readonly board: string;
  readonly name: Words;
  readonly type: BreakerType | "fuse-gG" | "unknown";
  readonly rating?: Amperes;
  readonly breakingCapacity?: Amperes;
  /** Let-through at the prospective fault current. [A²s] */
  readonly letThrough?: AmpereSquareSeconds;
  readonly pulseCurve?: PulseCurve;
  readonly rcd?: { readonly id: string; readonly name?: Words; readonly residual: Amperes } | "none";
  readonly poles?: "one" | "one-and-neutral" | "three" | "three-and-neutral";
}

/** A final circuit: one device, one neutral, its line conductors. */
export interface Circuit {
  readonly id: string;
  readonly name: string;
  readonly device: string;
  readonly phases: "single-phase" | "three-phase";
  readonly lines: readonly Line[];
  /** Neutral of another circuit used with it. */
  readonly sharedNeutral: Known;
  /** People can switch the circuit off and lock it: isolation that no contact of a detector gives. */
  readonly isolator: Known;
  /** Share of the line current that is third harmonic. */
  readonly thirdHarmonic?: Share;
}

export type ConductorSize =
  | { readonly kind: "metric"; readonly section: SquareMillimetres; readonly protective?: SquareMillimetres }
  | {
      readonly kind: "gauge";
      readonly gauge: Gauge;
      readonly form: "solid" | "stranded";
      /** Of the equipment grounding conductor, where it is another. */
      readonly protective?: Gauge;
    };

/** One length of cable between two pieces of equipment; the segments of a circuit make a tree from its board. */
export interface CableSegment {
  readonly id: string;
  readonly circuit: string;
  readonly from: string;
  readonly to: string;
  readonly length: Metres;
  readonly size: ConductorSize;
  readonly cores: number;
  readonly material: ConductorMaterial;
  readonly insulation: Insulation;
  readonly method?: InstallationMethod;
  readonly ambient?: Celsius;
  readonly grouping?: { readonly arrangement: Arrangement; readonly circuits: number };
  /** Length of it inside thermal insulation. [m] */
  readonly inInsulation?: Metres;
  /** Less than 50 mm deep in a wall without earthed cover. */
  readonly concealed?: Known;
  /** Extra-low voltage or bus conductors in the same cable, conduit or box. */
  readonly withSignals?: "none" | "insulated-for-highest" | "separated" | "not-separated" | "unknown";
  /** Cable above a suspended ceiling. */
  readonly suspended?: {
    readonly ownSupport: Known;
    readonly clearOfHeat: Known;
    readonly fromSignals?: Metres;
  };
}

/** One peak of inrush as its driver's data sheet states it. */
export interface Inrush {
  readonly peak: Amperes;
  /** Width at half the peak. [s] */
  readonly width: Seconds;
  readonly integral?: AmpereSquareSeconds;
}

/** How many drivers the maker of the driver declares for one breaker. */
export interface DriversPerBreaker {
  readonly type: BreakerType;
  readonly rating: Amperes;
  readonly count: number;
}

/** Equal luminaires or other loads at one point of the wiring. Figures are of one of them. */
export interface Load {
  readonly id: string;
  readonly name: Words;
  readonly room?: string;
  readonly kind: LoadKind;
  readonly circuit: string;
  readonly line?: Line;
  readonly count: number;
  readonly power?: Watts;
  readonly powerFactor?: number;
  readonly drivers?: number;
  readonly inrush?: Inrush;
  readonly inputCapacitance?: Farads;
  readonly driversPerBreaker?: readonly DriversPerBreaker[];
  readonly leakage?: Amperes;
  readonly classOne?: Known;
  readonly protectiveConductor?: Known;
  /** Switched line that feeds it; absent: always on. */
  readonly switchedLine?: string;
  /** Escape lighting: where its unswitched line is taken, and from which circuit it senses a failure. */
  readonly emergency?: {
    readonly taken: "before-contact" | "after-contact" | "unknown";
    readonly senses: string;
  };
}

/** What a terminal is connected to. */
export type Feed =
  | { readonly kind: "line"; readonly circuit: string; readonly line: Line }
  | { readonly kind: "switched-line"; readonly switchedLine: string }
  | { readonly kind: "neutral"; readonly circuit: string }
  | { readonly kind: "none" }
  | { readonly kind: "unknown" };

/** A detector with what its data sheet says and where its terminals go. */
export interface WiredDetector {
  readonly id: string;
  readonly tag: string;
  readonly room: string;
  readonly role: "alone" | "parallel" | "master" | "slave";
  /** Fed by a relay pack, at low voltage: no conductor of the mains comes to it. */
  readonly lowVoltage?: { readonly current?: Amperes };
  readonly line: Feed;
  readonly neutral: Feed;
  readonly protectiveConductor: Known;
  /** Switched line that its contact feeds; absent: it only signals. */
  readonly output?: string;
  /** Conductor that its contact breaks. */
  readonly breaks?: "line" | "neutral" | "protective-conductor";
  /** Another detector or dimmer in series, and whether both data sheets allow it. */
  readonly inSeries?: { readonly with: "detector" | "dimmer"; readonly declared: Known };
  readonly contact?: Contact;
  readonly inputs?: DetectorInputs;
  readonly warmUpOutput?: "on" | "off";
  readonly standby?: Watts;
  readonly leakage?: Amperes;
  readonly waterProtection?: number;
  readonly recessed?: boolean;
  readonly testedCover?: Known;
  readonly cyclesPerYear?: number;
}

/** The conductor that one or several contacts feed, and what hangs on it beside the loads. */
export interface SwitchedLine {
  readonly id: string;
  readonly name: Words;
  readonly suppressors: readonly { readonly across: "contact" | "load"; readonly capacitance: Farads }[];
  /** Length in which line and switched line run side by side. [m] */
  readonly besideLine?: Metres;
  readonly baseLoad?: Known;
  /** A switch parallel to the contacts, which they cannot switch off. */
  readonly override?: Known;
}

export interface PushButton {
  readonly id: string;
  readonly room: string;
  readonly detectors: readonly string[];
  readonly kind: "push-button" | "latching-switch";
  readonly feed: Feed;
  readonly glowLamp?: { readonly current: Amperes; readonly ownNeutral: Known };
}

/** A contactor or relay: coil on a switched line, main contacts between a circuit and another switched line. */
export interface Contactor {
  readonly id: string;
  readonly name: string;
  /** A relay pack: it feeds low-voltage detectors, and their signal holds its relay. */
  readonly pack?: {
    /** What its low-voltage supply gives. */
    readonly supplies?: Amperes;
    /** Its low-voltage wires keep apart from the mains. */
    readonly apart: Known;
  };
  readonly coil: {
    readonly switchedLine: string;
    readonly current?: Amperes;
    readonly suppressor: Known;
    /** Current while it closes, more than what holds it. */
    readonly pullIn?: Amperes;
    /** Least share of the nominal voltage at which it surely closes. */
    readonly least?: Share;
    /** The cable to it, from the detector that holds it; as entered, or along the plan. */
    readonly wire?: {
      readonly start?: string;
      readonly length?: Metres;
      readonly section?: SquareMillimetres;
      readonly from: "entered" | "plan";
    };
    /** Somebody calculated the cable to it by other means: section, drop, protection. Absent: nobody did. */
    readonly cable?: Known;
  };
  /** It stands in the board of the circuit that it switches. */
  readonly inBoard?: Known;
  /** Main contacts, with what they bear and make as declared for their kind of load. */
  readonly main: {
    readonly circuit: string;
    readonly switchedLine: string;
    readonly rated?: Amperes;
  } & Pick<Contact, "makingPeak" | "makingWidth" | "drivers" | "backUp">;
  readonly labelled: Known;
  readonly isolatesAllPoles: Known;
}

/** What the rules ask of a room. */
export interface WiringRoom {
  readonly id: string;
  readonly name: string;
  readonly use: "ordinary" | "plant" | "electrical" | "escape" | "stair" | "shower" | "drying" | "store-wet";
  /** Zone of a bath or shower that a device stands in, by the id of the device. */
  readonly zones?: Readonly<Record<string, WetZone>>;
  /** Devices whose zone follows from how far they hang from baths and showers on the plan. */
  readonly zonesByExtent?: readonly string[];
  readonly household?: Known;
  readonly fireRatedCeiling?: Known;
  readonly penetrationsSealed?: Known;
  readonly suspendedCeiling?: boolean;
}

/** The wiring of a building as far as it serves its lighting. Records refer to each other by id. */
export interface WiringModel {
  /** Of every board that has none of its own. */
  readonly supply: Supply;
  readonly boards: readonly Board[];
  readonly devices: readonly ProtectiveDevice[];
  readonly circuits: readonly Circuit[];
  readonly segments: readonly CableSegment[];
  readonly loads: readonly Load[];
  readonly switchedLines: readonly SwitchedLine[];
  readonly detectors: readonly WiredDetector[];
  readonly buttons: readonly PushButton[];
  readonly contactors: readonly Contactor[];
  readonly rooms: readonly WiringRoom[];
}
