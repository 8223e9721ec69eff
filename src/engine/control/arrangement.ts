import type { Words } from "../check/index.ts";
import type { Lux, Seconds } from "../quantity/index.ts";
import type { ControlParameters } from "./parameters.ts";

/** How a controller passes its decision on. */
export type ControlOutput =
  /** Closes a contact while it wants light; several contacts on one load are ORed. */
  | { readonly kind: "contact"; readonly load: string }
  /** A pulse, then a pause, then a further pulse if movement goes on: for a stair timer. */
  | { readonly kind: "impulse"; readonly load: string; readonly pulse: Seconds; readonly pause: Seconds }
  /** Reports presence to the extension input of a master, at most once an interval. */
  | { readonly kind: "slave"; readonly master: string; readonly interval: Seconds };

export interface ControlDevice {
  readonly id: string;
  readonly parameters: ControlParameters;
  readonly output: ControlOutput;
  /** Time zero is the end of the warm-up (ready), or power has yet to come. Ready by default. */
  readonly start?: "ready" | "without-power";
}

/** Lamps that are switched together. */
export interface ControlLoad {
  readonly id: string;
  /** What people call it, for sentences; its id if absent. */
  readonly title?: Words;
  /** What they add at a controller's light sensor while they burn. [lx] */
  readonly lightAt?: Readonly<Record<string, Lux>>;
  /** Driven by pulses: stays lit for `time`; a pulse while lit starts it anew, or is ignored. */
  readonly stairTimer?: { readonly time: Seconds; readonly retriggerable: boolean };
}

/**
 * What reaches the controllers from outside. Events of one instant take effect in this order, whatever their order in the
 * list: power off, power on, daylight, test off, test on, button, movement, extension, sound; then what runs out at that
 * instant. So a movement at the very instant at which the delay runs out still holds the light.
 */
export type ControlEvent =
  | {
      readonly kind: "movement" | "extension" | "sound" | "button" | "test-on" | "test-off";
      readonly at: Seconds;
      readonly device: string;
    }
  /** Daylight at the controller's light sensor from now on. Of several values at one instant the highest holds. */
  | { readonly kind: "daylight"; readonly at: Seconds; readonly device: string; readonly value: Lux }
  /** Power of one controller, or of everything where no device is named. */
  | { readonly kind: "power-on" | "power-off"; readonly at: Seconds; readonly device?: string };

/** Somebody is there from … to. [s] */
export type Interval = readonly [from: Seconds, to: Seconds];

export interface ControlTask {
  readonly devices: readonly ControlDevice[];
  readonly loads: readonly ControlLoad[];
  readonly events: readonly ControlEvent[];
  /** Long rows of movements by device, ascending, beside those among the events. */
  readonly movements?: Readonly<Record<string, ArrayLike<Seconds>>>;
  /** When people really are where a load lights, ascending; without it, faults about people are not looked for. */
  readonly people?: Readonly<Record<string, readonly Interval[]>>;
  /** Faults and holds count from here on: what is before it only leads in. 0 by default. */
  readonly watchFrom?: Seconds;
  readonly until: Seconds;
}
