import type { Said, Words } from "../check/index.ts";
import type { OutputKind } from "../detector/index.ts";
import type { Lux, Seconds, Share } from "../quantity/index.ts";
import type { SourceId } from "../source/index.ts";

/** A value with where it comes from: a person chose it, or it was derived for a reason. The two are never mixed. */
export type Setting<Value> =
  | { readonly kind: "chosen"; readonly value: Value; readonly reason?: string }
  | {
      readonly kind: "derived";
      readonly value: Value;
      readonly reason: Said;
      readonly source: SourceId;
      /** What had to be taken for granted, because nobody entered it. */
      readonly assumption?: Said;
    };

export type SettingGrade = "low" | "medium" | "high";

/** What is set on one device. */
export interface SettingValues {
  readonly mode: "automatic" | "semi-automatic";
  readonly button: "on-only" | "on-and-off";
  readonly offDelay: Seconds;
  /** What it does with the light: switches it, lets it fall to a share of its power, dims all on its pair alike. An addressed bus is named and not covered. */
  readonly output: "switch" | "dimming-broadcast" | "addressed-bus" | { readonly background: Share };
  /** A pulse and its pause for a stair timer or a central timer; none: a contact. */
  readonly impulse: { readonly pulse: Seconds; readonly pause: Seconds } | "none";
  /** At the ceiling; "off": light is not looked at. */
  readonly threshold: Lux | "off";
  readonly sensitivity: SettingGrade;
  readonly soundSensitivity: SettingGrade | "off";
  readonly mask: "none" | "as-drawn";
  /** Against changes on site or by remote. */
  readonly lock: "open" | "locked";
  readonly testMode: "off" | "on";
  readonly groupRole: "alone" | "master" | "slave" | "parallel";
}

export type SettingName = keyof SettingValues;
export type DeviceSettings = { readonly [Name in SettingName]: Setting<SettingValues[Name]> };

/** What is set on a device, without how it came to be. @param settings - Chosen and derived. @returns Values alone. @example Off delay derived as 900 s: 900 */
export const valuesOfSettings = (settings: DeviceSettings): SettingValues =>
  Object.fromEntries(
    Object.entries(settings).map(([name, setting]) => [name, setting.value]),
  ) as unknown as SettingValues;
export type ChosenSettings = Readonly<Partial<SettingValues>>;

/** What is known of the device and of the place it lights. Absent: nobody knows, and nothing that hangs on it counts as shown. */
export interface SettingContext {
  readonly device: string;
  /** Tag on paper. */
  readonly tag: string;
  /** Name on paper. */
  readonly room: string;
  /** Where its findings belong: id of the room, and place on the plan. [m] */
  readonly place?: { readonly room: string; readonly at: readonly [number, number] };
  readonly use: "passing" | "stair" | "moving" | "sitting" | "sanitary" | "changing" | "plant" | "other";
  readonly escapeRoute?: boolean;
  /** Whether daylight reaches what it lights. */
  readonly daylight?: boolean;
  /** Set value from readings. */
  readonly thresholdFromReadings?: Lux;
  /** Whether a button speaks to it. */
  readonly hasButton?: boolean;
  readonly hears?: boolean;
  /** A fan, an air outlet or a machine within hearing. */
  readonly fanNear?: boolean;
  readonly masks: number;
  readonly group: {
    readonly id: string;
    /** As wired, and as others of the group were chosen. */
    readonly role: SettingValues["groupRole"];
    /** Why, where it is more than the role's own sentence. */
    readonly reason?: Said;
    readonly assumption?: Said;
  };
  /** Cubicles stand in what it lights. */
  readonly cubicles?: boolean;
  /** Whether each point of what it lights is seen by two devices that switch it. */
  readonly seenByTwo?: boolean;
  /** Kinds of output that its data sheet declares. */
  readonly outputKinds?: readonly OutputKind[];
  /** The timer that its pulses start. */
  readonly stairTimer?: { readonly time: Seconds };
  /** The strictest rule on the delay. */
  readonly longestDelay?: { readonly delay: Seconds; readonly rule: Words; readonly source: SourceId };
  /** What delay against saving recommends. */
  readonly recommendedDelay?: { readonly delay: Seconds; readonly saving?: Share };
}

/** A device with its settings and what is known of its place. */
export interface SetDevice {
  readonly context: SettingContext;
  readonly settings: DeviceSettings;
}
