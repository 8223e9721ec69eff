import type { Said } from "../../check/index.ts";
import type { Point } from "../../geometry/index.ts";
import type {
  AmpereSquareSeconds,
  Amperes,
  Celsius,
  Metres,
  Ohms,
  Seconds,
  Share,
  Volts,
} from "../../quantity/index.ts";
import type { CableSegment, EarthingSystem, Known, Line, ProtectiveDevice, PulseCurve } from "../model.ts";
import type { Arrangement, InstallationMethod, Insulation } from "../tables/capacity.ts";
import type { ConductorMaterial } from "../tables/resistance.ts";
import type { Gauge } from "../tables/united-states.ts";

/** A board as a person entered it. What nobody looked at is absent. */
export interface FoundBoard {
  readonly id: string;
  readonly name: string;
  readonly storey?: string;
  readonly at?: Point;
  readonly system: EarthingSystem;
  /** Line to neutral. */
  readonly voltage?: Volts;
  readonly loopImpedance?: Ohms;
  readonly faultCurrent?: Amperes;
  readonly dropUsed?: Share;
  readonly earthResistance?: Ohms;
  readonly isolatesNeutral?: Known;
  readonly network?: "public" | "private";
  /** Where its readings come from. */
  readonly readings: "measured" | "assumed" | "to-be-measured";
}

/** The cable of a circuit as entered, one kind from the board to its last luminaire. */
export interface FoundCable {
  readonly section?: number;
  /** Instead of a section. */
  readonly gauge?: Gauge;
  /** Stranded, which loses a little more, if nobody entered it. */
  readonly form?: "solid" | "stranded";
  readonly protective?: number;
  /** Of the equipment grounding conductor, where it is another than that of the lines. */
  readonly protectiveGauge?: Gauge;
  readonly cores?: number;
  readonly material?: ConductorMaterial;
  readonly insulation?: Insulation;
  readonly method?: InstallationMethod;
  readonly ambient?: Celsius;
  readonly grouping?: { readonly arrangement: Arrangement; readonly circuits: number };
  /** From the board to the last luminaire. */
  readonly length?: Metres;
  readonly inInsulation?: Metres;
  readonly concealed?: Known;
  readonly withSignals?: NonNullable<CableSegment["withSignals"]>;
}

/** A contactor as a person entered it; its main contacts feed from the circuit that it stands at. */
export interface FoundContactor {
  readonly id: string;
  readonly name: string;
  /** relay-pack: feeds low-voltage detectors, whose signal holds it; a contactor if absent. */
  readonly kind?: "contactor" | "relay-pack";
  /** What a relay pack gives to its detectors, and whether their wires keep apart from the mains. */
  readonly supplies?: Amperes;
  readonly apart?: Known;
  /** Detectors whose outputs feed its coil. */
  readonly detectors: readonly string[];
  /** Luminaires behind its main contacts; those that its detectors would switch if absent. */
  readonly luminaires?: readonly string[];
  readonly rated?: Amperes;
  /** Largest inrush peak that its main contacts make, and the longest pulse for which it is declared. */
  readonly makingPeak?: Amperes;
  readonly makingWidth?: Seconds;
  /** Most drivers on its main contacts. */
  readonly drivers?: number;
  /** Largest protective device before its main contacts. */
  readonly backUp?: Amperes;
  readonly coilCurrent?: Amperes;
  /** Current of the coil while it closes. */
  readonly coilPullIn?: Amperes;
  /** Least share of the nominal voltage at which the coil surely closes. */
  readonly coilLeast?: Share;
  /** The cable from the nearest detector that holds the coil: as it lies, and of its conductors [mm²]. */
  readonly coilLength?: Metres;
  readonly coilSection?: number;
  /** It stands in the board of its circuit. */
  readonly inBoard?: Known;
  /** Somebody calculated the cable to its coil, and it holds. */
  readonly coilCable?: Known;
  readonly suppressor: Known;
  readonly labelled: Known;
  readonly isolatesAllPoles: Known;
}

/** A stretch of cable between two devices that a person leads past places, in order from the one to the other. */
export interface PinnedStretch {
  readonly from: string;
  readonly to: string;
  readonly via: readonly Point[];
}

/** A circuit as a person entered it. */
export interface FoundCircuit {
  readonly id: string;
  readonly board?: string;
  readonly name: string;
  readonly breaker: ProtectiveDevice["type"];
  readonly rating?: Amperes;
  readonly rcd: Known;
  readonly residualCurrent?: Amperes;
  /** What the RCD is called: circuits of one board with the same name share it. */
  readonly rcdName?: string;
  readonly protectiveConductor: Known;
  readonly sharedNeutral: Known;
  readonly breakingCapacity?: Amperes;
  readonly letThrough?: AmpereSquareSeconds;
  readonly pulseCurve?: PulseCurve;
  readonly poles?: NonNullable<ProtectiveDevice["poles"]>;
  readonly phases?: "single-phase" | "three-phase";
  readonly line?: Line;
  readonly isolator?: Known;
  readonly thirdHarmonic?: Share;
  readonly cable?: FoundCable;
  /** Places that its cable passes on its way from the board to the first device, in order. */
  readonly via?: readonly Point[];
  /** Stretches between two devices that are led past places, in either direction. */
  readonly pinned?: readonly PinnedStretch[];
  readonly contactors?: readonly FoundContactor[];
  /** Where its breaker and its cable come from. */
  readonly readings?: "measured" | "assumed" | "to-be-measured";
}

/** What the site does not hold of an installation. */
export interface FoundInstallation {
  readonly boards: readonly FoundBoard[];
  readonly circuits: readonly FoundCircuit[];
}

/** Something taken for granted, and the records that it speaks of. */
export interface WiringAssumption {
  readonly text: Said;
  readonly records: readonly string[];
}
