import type { AmpereSquareSeconds, Amperes, Farads, Seconds, Watts } from "../quantity/index.ts";

/** Kinds of load that a data sheet rates a contact for. "led" is anything with an electronic driver. */
export type LoadKind = "resistive" | "incandescent" | "fluorescent" | "led" | "inductive";

/** The switched output of a detector as its data sheet declares it. What is not declared stays absent, and what depends on it is "not proven". */
export interface Contact {
  /** relay: a contact fed from the detector's own line · potential-free: a contact with both ends brought out · electronic: a semiconductor. */
  readonly kind: "relay" | "potential-free" | "electronic";
  /** Rated current by kind of load. [A] */
  readonly rated: Readonly<Partial<Record<LoadKind, Amperes>>>;
  /** Rated power by kind of load. [W] */
  readonly ratedPower?: Readonly<Partial<Record<LoadKind, Watts>>>;
  /** Largest peak that it may make. [A] */
  readonly makingPeak?: Amperes;
  /** Longest pulse at half its peak for which `makingPeak` holds. [s] */
  readonly makingWidth?: Seconds;
  /** Largest Joule integral that it may make. [A²s] */
  readonly makingIntegral?: AmpereSquareSeconds;
  /** Largest number of drivers. */
  readonly drivers?: number;
  /** Largest input capacitance of all drivers together. [F] */
  readonly capacitance?: Farads;
  /** Switching cycles under rated load. */
  readonly life?: number;
  /** Closes where the voltage crosses zero, so the inrush is smaller; declared peaks already count it. */
  readonly zeroCross?: boolean;
  /** Largest protective device upstream that still protects it. [A] */
  readonly backUp?: Amperes;
  /** Most outputs that may be joined. */
  readonly joined?: number;
  /** Leakage through it while open, for instance of a suppressor inside. [A] */
  readonly openLeakage?: Amperes;
}

/** Terminals that a detector has. */
export type TerminalKind =
  | "line-in"
  | "neutral"
  | "switched-line"
  | "protective-conductor"
  | "push-button"
  | "extension-in"
  | "extension-out"
  | "control-plus"
  | "control-minus";

/** Inputs of a detector for buttons and other detectors. */
export interface DetectorInputs {
  /** What a push-button connects its terminal to. Absent: it takes no button. */
  readonly pushButton?: "line" | "neutral";
  /** Current below which the button's input is surely off; glow lamps must stay below it. [A] */
  readonly holdOff?: Amperes;
  /** Takes pulses of slaves. */
  readonly extension?: boolean;
}
