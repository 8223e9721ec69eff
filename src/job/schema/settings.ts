import * as z from "zod";
import { kept } from "./values.ts";

export const controlModes = ["automatic", "semi-automatic"] as const;
export const buttonRoles = ["on-only", "on-and-off"] as const;
export const settingGrades = ["low", "medium", "high"] as const;
export const settingLocks = ["open", "locked"] as const;
export const groupRoles = ["alone", "master", "slave", "parallel"] as const;

/** A controller has no time of nothing. [s] */
const time = z.number().positive().max(1_000_000);

/** What a person chose to set on a detector; what is absent nobody chose, and it is derived where it is needed. */
export const settings = kept({
  mode: z.enum(controlModes).optional(),
  buttonRole: z.enum(buttonRoles).optional(),
  /** From the last presence to off. [s] */
  offDelay: time.optional(),
  /** Pulse and pause for a stair timer or a central timer [s]; "none": a contact. */
  impulse: z.union([kept({ pulse: time, pause: time }), z.literal("none")]).optional(),
  /** At the ceiling [lx]; "off": light is not looked at. */
  brightnessThreshold: z.union([z.number().positive().max(200_000), z.literal("off")]).optional(),
  sensitivity: z.enum(settingGrades).optional(),
  soundSensitivity: z.enum([...settingGrades, "off"]).optional(),
  /** Against changes on site or by remote. */
  lock: z.enum(settingLocks).optional(),
  groupRole: z.enum(groupRoles).optional(),
});
