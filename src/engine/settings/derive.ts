import type { SourceId } from "../source/index.ts";
import type {
  ChosenSettings,
  DeviceSettings,
  Setting,
  SettingContext,
  SettingName,
  SettingValues,
} from "./device-settings.ts";

const MINUTE = 60;

type Derived<Value> = Extract<Setting<Value>, { readonly kind: "derived" }>;

const because = <Value>(
  value: Value,
  reason: string,
  source: SourceId = "SETTING-CHOICE",
): Derived<Value> => ({
  kind: "derived",
  value,
  reason,
  source,
});

/**
 * Settings of a device: what a person chose stays, everything else is derived with its reason in one sentence.
 *
 * @param context - Device, room, group, rules, readings
 * @param chosen - What a person chose
 * @returns Every setting, chosen and derived kept apart
 * @source SETTING-CHOICE
 * @example A windowless room: threshold off, because no daylight reaches it
 */
export function settingsOf(context: SettingContext, chosen: ChosenSettings = {}): DeviceSettings {
  const pick = <Name extends SettingName>(
    name: Name,
    derive: () => Derived<SettingValues[Name]>,
  ): Setting<SettingValues[Name]> =>
    chosen[name] === undefined ? derive() : { kind: "chosen", value: chosen[name] as SettingValues[Name] };
  return {
    mode: pick("mode", () => modeOf(context)),
    button: pick("button", () => buttonOf(context)),
    offDelay: pick("offDelay", () => delayOf(context)),
    impulse: pick("impulse", () =>
      context.stairTimer
        ? because(
            { pulse: 1, pause: 9 },
            "A stair timer sets the light time; the pulse only starts it.",
            "CONTROL-MACHINE",
          )
        : because("none", "No timer is driven: the contact holds the light."),
    ),
    threshold: pick("threshold", () => thresholdOf(context)),
    sensitivity: pick("sensitivity", () =>
      context.use === "sitting"
        ? because("high", "People who sit move little.")
        : because("medium", "People who walk are seen at medium sensitivity, with fewer false starts."),
    ),
    soundSensitivity: pick("soundSensitivity", () => soundOf(context)),
    mask: pick("mask", () =>
      context.masks > 0
        ? because("as-drawn", "The plan masks a part of the lens; put it on before the device goes up.")
        : because("none", "The plan needs no mask."),
    ),
    lock: pick("lock", () =>
      because("open", "Open until the room has been tested; lock it at handing over."),
    ),
    testMode: pick("testMode", () =>
      because("off", "Test mode belongs to the test; it ignores delay and light."),
    ),
    groupRole: pick("groupRole", () => because(context.group.role, roleReasons[context.group.role])),
  };
}

const roleReasons: Readonly<Record<SettingValues["groupRole"], string>> = {
  alone: "It is the only device on its load.",
  master: "It measures the light and switches for its group.",
  slave: "It reports presence only; its master measures the light and switches.",
  parallel: "Its contact is joined with others on one load; the longest delay wins.",
};

function modeOf({ use, escapeRoute, hasButton, daylight }: SettingContext): Derived<SettingValues["mode"]> {
  if (escapeRoute) return because("automatic", "On an escape route nobody may have to look for a button.");
  if (use === "sitting" && hasButton && daylight)
    return because(
      "semi-automatic",
      "People who stay decide by the button whether daylight is enough; absence switches off.",
    );
  if (use === "sitting" && !hasButton) return because("automatic", "There is no button to switch on with.");
  return because("automatic", "People who come in have their hands full or do not know the button.");
}

function buttonOf({ use, escapeRoute }: SettingContext): Derived<SettingValues["button"]> {
  if (escapeRoute || use === "stair" || use === "plant")
    return because("on-only", "Nobody may be put in the dark here by somebody else's press.");
  return because("on-and-off", "Whoever stays may want it dark.");
}

/** Delays by use: ours, meant to be trimmed after the first weeks. @source SETTING-CHOICE */
const usualDelays: Readonly<Record<SettingContext["use"], readonly [minutes: number, why: string]>> = {
  passing: [3, "People walk through and are seen all the time"],
  stair: [3, "People walk through and are seen all the time"],
  moving: [10, "People move about, with pauses"],
  sitting: [15, "People who sit still must not be left in the dark"],
  sanitary: [10, "People are out of sight in a cubicle for minutes"],
  changing: [10, "People stand still or behind lockers for minutes"],
  plant: [15, "Somebody at work out of sight must not be left in the dark"],
  other: [10, "The use is not known"],
};

function delayOf({ use, longestDelay, recommendedDelay }: SettingContext): Derived<number> {
  const [minutes, why] = usualDelays[use];
  const wished = recommendedDelay?.delay ?? minutes * MINUTE;
  if (longestDelay && longestDelay.delay < wished)
    return because(longestDelay.delay, `The longest that ${longestDelay.rule} allows.`, longestDelay.source);
  if (recommendedDelay)
    return because(
      recommendedDelay.delay,
      "The shortest of the simulated delays that leaves people in the light.",
      "CONTROL-MACHINE",
    );
  return because(wished, `${why}: ${minutes} min.`);
}

function thresholdOf(context: SettingContext): Derived<SettingValues["threshold"]> {
  const { group, daylight, thresholdFromReadings, stairTimer } = context;
  if (group.role === "slave") return because("off", "The master alone looks at the light.");
  if (!daylight) return because("off", "No daylight reaches what it lights.");
  if (thresholdFromReadings !== undefined)
    return because(thresholdFromReadings, "From ceiling and work-plane readings.", "CEILING-READING");
  if (stairTimer)
    return because("off", "Nothing was read yet; on stairs light that is always called is the safe side.");
  return because("off", "Nothing was read yet: until then presence alone decides.");
}

function soundOf({ hears, fanNear, use }: SettingContext): Derived<SettingValues["soundSensitivity"]> {
  if (!hears) return because("off", "The device has no microphone.");
  if (fanNear) return because("off", "A fan near by would hold the light without anybody there.");
  if (use === "sanitary" || use === "changing")
    return because("medium", "Sound holds the light for whoever is out of sight.");
  return because("off", "Everybody can be seen here; sound would only hold the light longer.");
}
