import * as z from "zod";
import { kept } from "./values.ts";

export const controlModes = ["automatic", "semi-automatic"] as const;
export const buttonRoles = ["on-only", "on-and-off"] as const;
export const settingGrades = ["low", "medium", "high"] as const;
export const settingLocks = ["open", "locked"] as const;
export const lensMasks = ["none", "as-drawn"] as const;
export const testModes = ["off", "on"] as const;
export const groupRoles = ["alone", "master", "slave", "parallel"] as const;

/** A controller has no time of nothing. [s] */
const time = z.number().positive().max(1_000_000);

/** What a person chose to set on a detector; what is absent nobody chose, and it is derived where it is needed. */
export const settings = kept({
  mode: z.enum(controlModes).optional(),
  buttonRole: z.enum(buttonRoles).optional(),
  /** From the last presence to off. [s] */
  offDelay: time.optional(),
  /** What it does with the light: switches, falls to a share of the power, dims alike, or speaks on a bus that is not covered. */
  output: z
    .union([
      z.enum(["switch", "dimming-broadcast", "addressed-bus"]),
      kept({ background: z.number().min(0.01).max(0.99) }),
    ])
    .optional(),
  /** Pulse and pause for a stair timer or a central timer [s]; "none": a contact. */
  impulse: z.union([kept({ pulse: time, pause: time }), z.literal("none")]).optional(),
  /** At the ceiling [lx]; "off": light is not looked at. */
  brightnessThreshold: z.union([z.number().positive().max(200_000), z.literal("off")]).optional(),
  sensitivity: z.enum(settingGrades).optional(),
  soundSensitivity: z.enum([...settingGrades, "off"]).optional(),
  mask: z.enum(lensMasks).optional(),
  testMode: z.enum(testModes).optional(),
  /** Against changes on site or by remote. */
  lock: z.enum(settingLocks).optional(),
  groupRole: z.enum(groupRoles).optional(),
});

const lux = z.number().min(0).max(200_000);
const readingPair = kept({ ceiling: lux, task: lux });

/** What stands beside the settings: readings that carry a threshold, the timer that its pulses start, and the words of the device at hand. */
export const detectorSetting = {
  /** Ceiling and work plane read on site. [lx] */
  lightReadings: kept({
    /** Illuminance wanted at the task. [lx] */
    target: lux,
    lampsOff: z.array(readingPair).max(100),
    /** Read with the lamps on, right after the last of `lampsOff`. */
    lampsOn: readingPair.optional(),
    /** The sun shone on floor or desk in view of the detector. */
    sunPatch: z.boolean().default(false),
  }).optional(),
  /** The stair timer or central timer that its pulses start. [s] */
  timer: kept({ time }).optional(),
  /** Delay [s] that a simulated day, or a log replayed, recommended, and what it spares of the lit hours; it stays derived. */
  recommended: kept({ delay: time, saving: z.number().min(-1).max(1).optional() }).optional(),
  /** What the device at hand calls a setting and its position: "position 2", by name of the setting. */
  deviceLabels: z.record(z.string().max(100), z.string().max(200)).optional(),
} as const;
