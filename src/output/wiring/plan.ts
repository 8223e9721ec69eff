import type {
  BuiltWiring,
  Circuit,
  Contactor,
  Detector,
  DetectorModel,
  FoundCircuit,
  Line,
  Load,
  ProtectiveDevice,
  PushButton,
  Supply,
  SwitchedLine,
  TerminalKind,
  WiredDetector,
  Words,
} from "#engine";
import type { ConductorKind } from "./conductors.ts";
import type { Designations } from "./designations.ts";
import type { CableRun } from "./group-cables.ts";

/** A terminal of a detector with the conductor that belongs on it. */
export interface Terminal {
  readonly kind: TerminalKind;
  readonly label: Words;
  /** "none": nothing goes on it; unknown: something does, and nobody knows what. */
  readonly conductor: ConductorKind | "none";
  /** Whether the data sheet lists it; unknown where the data sheet lists no terminals at all. */
  readonly declared: "yes" | "no" | "unknown";
}

/** A detector of a group with everything that its papers say. */
export interface PlannedDetector {
  readonly wired: WiredDetector;
  readonly detector: Detector | undefined;
  readonly model: DetectorModel | undefined;
  readonly room: string;
  readonly terminals: readonly Terminal[];
  /** Protective device of the circuit that it is on, if that is not the group's. */
  readonly foreign: string | undefined;
}

export interface PlannedButton {
  readonly button: PushButton;
  readonly designation: Words;
  readonly room: string;
  /** Conductor that it connects to the detectors' inputs, by their data sheet. */
  readonly from: ConductorKind;
  /** Protective device of the circuit that it is on, if that circuit or its line is not the group's. */
  readonly foreign: string | undefined;
}

/** Equal luminaires of one room. */
export interface LoadGroup {
  readonly ids: readonly string[];
  /** "E1–E8" */
  readonly designation: Words;
  readonly count: number;
  readonly name: Words;
  readonly room: string;
  readonly kind: Load["kind"];
  /** Of one luminaire. [W] */
  readonly power: number | undefined;
  readonly drivers: number | undefined;
  readonly emergency: NonNullable<Load["emergency"]>["taken"] | undefined;
  /** Line conductor of a three-phase circuit that it is on, as entered. */
  readonly line: Line | undefined;
  /** Protective device of the circuit that it is on, if that is not the group's. */
  readonly foreign: string | undefined;
}

/** Where a group is fed from. */
export interface GroupFeed {
  readonly circuit: Circuit;
  readonly found: FoundCircuit | undefined;
  readonly device: ProtectiveDevice | undefined;
  readonly line: ConductorKind;
  /** All line conductors of the circuit: three where it is three-phase. */
  readonly lines: readonly Line[];
  readonly board: { readonly id: string; readonly designation: Words; readonly name: Words } | undefined;
}

export interface PlannedCable extends CableRun {
  /** W1, W2, … over the whole job. */
  readonly designation: string;
  /** "1.5 mm²" or "12 AWG"; calculated: nobody entered it, and it is the smallest with which every check of the circuit passes. */
  readonly size: { readonly text: string; readonly from: "entered" | "calculated" } | undefined;
}

/** Everything on one switched line. */
export interface GroupPlan {
  readonly line: SwitchedLine;
  /** Tags of its detectors: what the group is called on paper. */
  readonly name: Words;
  readonly feed: GroupFeed | undefined;
  /** Of its circuit's board. */
  readonly supply: Supply;
  readonly detectors: readonly PlannedDetector[];
  readonly buttons: readonly PlannedButton[];
  readonly coils: readonly Contactor[];
  readonly mains: readonly Contactor[];
  readonly loads: readonly LoadGroup[];
  /** The relay pack that feeds its detectors at low voltage, where they are such. */
  readonly pack: Contactor | undefined;
  /** pair: its detectors set a level by two conductors of their own, beside the switched line. */
  readonly control: "pair" | "none";
  /** Escape luminaires in its rooms, unswitched. */
  readonly emergency: readonly LoadGroup[];
  readonly cables: readonly PlannedCable[];
}

/** The wiring of a job as its papers show it. */
export interface WiringPlan {
  readonly built: BuiltWiring;
  readonly names: Designations;
  readonly groups: readonly GroupPlan[];
  /** Tags of detectors that stand on no sheet, since nobody knows what they switch or whom they signal to. */
  readonly leftOut: readonly string[];
}
