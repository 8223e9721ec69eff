import { type Said, say } from "../check/index.ts";
import type { SourceId } from "../source/index.ts";
import type {
  ChosenSettings,
  DeviceSettings,
  Setting,
  SettingContext,
  SettingName,
  SettingValues,
} from "./device-settings.ts";
import { outputChoice } from "./output.ts";
import { unknownFacts } from "./unknown-facts.ts";

const MINUTE = 60;

type Derived<Value> = Extract<Setting<Value>, { readonly kind: "derived" }>;

const because = <Value>(value: Value, reason: Said, source: SourceId = "SETTING-CHOICE"): Derived<Value> => ({
  kind: "derived",
  value,
  reason,
  source,
});

/** The same, resting on something that nobody entered. */
const assuming = <Value>(derived: Derived<Value>, assumption: Said | undefined): Derived<Value> =>
  assumption === undefined ? derived : { ...derived, assumption };

/**
 * Settings of a device: what a person chose stays, everything else is derived with its reason in one sentence.
 *
 * What nobody knows is taken on the safe side, and the value says what it rests on.
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
    output: pick("output", () => outputOf(context)),
    impulse: pick("impulse", () =>
      context.stairTimer
        ? because(
            { pulse: 1, pause: 9 },
            say`A stair timer sets the light time; the pulse only starts it.`,
            "CONTROL-MACHINE",
          )
        : because("none", say`No timer is driven: the contact holds the light.`),
    ),
    threshold: pick("threshold", () => thresholdOf(context, chosen.groupRole ?? context.group.role)),
    sensitivity: pick("sensitivity", () =>
      context.use === "sitting"
        ? because("high", say`People who sit move little.`)
        : because("medium", say`People who walk are seen at medium sensitivity, with fewer false starts.`),
    ),
    soundSensitivity: pick("soundSensitivity", () => soundOf(context)),
    mask: pick("mask", () =>
      context.masks > 0
        ? because("as-drawn", say`The plan masks a part of the lens; put it on before the device goes up.`)
        : because("none", say`The plan needs no mask.`),
    ),
    lock: pick("lock", () =>
      because("open", say`Open until the room has been tested; lock it at handing over.`),
    ),
    testMode: pick("testMode", () =>
      because("off", say`Test mode belongs to the test; it ignores delay and light.`),
    ),
    groupRole: pick("groupRole", () =>
      assuming(
        because(context.group.role, context.group.reason ?? roleReasons[context.group.role]),
        context.group.assumption,
      ),
    ),
  };
}

const roleReasons: Readonly<Record<SettingValues["groupRole"], Said>> = {
  alone: say`It is the only device on its load.`,
  master: say`It measures the light and switches for its group.`,
  slave: say`It reports presence only; its master measures the light and switches.`,
  parallel: say`Its contact is joined with others on one load; the longest delay wins.`,
};

function modeOf({ use, escapeRoute, hasButton, daylight }: SettingContext): Derived<SettingValues["mode"]> {
  if (escapeRoute) return because("automatic", say`On an escape route nobody may have to look for a button.`);
  if (use !== "sitting")
    return because("automatic", say`People who come in have their hands full or do not know the button.`);
  if (hasButton === false) return because("automatic", say`There is no button to switch on with.`);
  if (daylight === false)
    return because("automatic", say`Without daylight whoever comes in needs the light every time.`);
  if (hasButton === undefined)
    return assuming(
      because("automatic", say`Automatic as long as nobody knows of a button.`),
      unknownFacts.button,
    );
  if (daylight === undefined)
    return assuming(
      because("automatic", say`Automatic as long as nobody knows of daylight.`),
      unknownFacts.daylight,
    );
  return assuming(
    because(
      "semi-automatic",
      say`People who stay decide by the button whether daylight is enough; absence switches off.`,
    ),
    escapeRoute === undefined ? unknownFacts.escapeRoute : undefined,
  );
}

function buttonOf({ use, escapeRoute }: SettingContext): Derived<SettingValues["button"]> {
  if (escapeRoute || use === "stair" || use === "plant")
    return because("on-only", say`Nobody may be put in the dark here by somebody else's press.`);
  return assuming(
    because("on-and-off", say`Whoever stays may want it dark.`),
    escapeRoute === undefined ? unknownFacts.escapeRoute : undefined,
  );
}

/** Delays by use: ours, meant to be trimmed after the first weeks. @source SETTING-CHOICE */
const usualDelays: Readonly<Record<SettingContext["use"], readonly [minutes: number, why: Said]>> = {
  passing: [5, say`People walk through and are seen all the time`],
  stair: [5, say`People walk through and are seen all the time`],
  moving: [10, say`People move about, with pauses`],
  sitting: [15, say`People who sit still must not be left in the dark`],
  sanitary: [10, say`People stand still for minutes`],
  changing: [15, say`People stand still or behind lockers for minutes`],
  plant: [20, say`Somebody at work out of sight must not be left in the dark`],
  other: [10, say`The use is not known`],
};

function outputOf(context: SettingContext): Derived<SettingValues["output"]> {
  const { value, reason, assumption } = outputChoice(context);
  return assuming(because(value, reason), assumption);
}

/** Where somebody sits behind the walls of a cubicle. @source SETTING-CHOICE */
const delayWithCubicles = [15, say`People are out of sight in a cubicle for minutes`] as const;

function delayOf({ use, cubicles, longestDelay, recommendedDelay }: SettingContext): Derived<number> {
  const [minutes, why] = use === "sanitary" && cubicles ? delayWithCubicles : usualDelays[use];
  const wished = recommendedDelay?.delay ?? minutes * MINUTE;
  if (longestDelay && longestDelay.delay < wished)
    return because(
      longestDelay.delay,
      say`The longest that ${longestDelay.rule} allows.`,
      longestDelay.source,
    );
  if (recommendedDelay)
    return because(
      recommendedDelay.delay,
      recommendedDelay.saving === undefined
        ? say`The shortest of the simulated delays that leaves people in the light.`
        : say`The shortest of the simulated delays that leaves people in the light; it spares ${Math.round(recommendedDelay.saving * 100)} % of the lit hours.`,
      "CONTROL-MACHINE",
    );
  return because(wished, say`${why}: ${minutes} min.`);
}

function thresholdOf(
  context: SettingContext,
  role: SettingValues["groupRole"],
): Derived<SettingValues["threshold"]> {
  const { daylight, thresholdFromReadings, stairTimer } = context;
  if (role === "slave") return because("off", say`The master alone looks at the light.`);
  if (daylight === false) return because("off", say`No daylight reaches what it lights.`);
  if (thresholdFromReadings !== undefined)
    return because(thresholdFromReadings, say`From ceiling and work-plane readings.`, "CEILING-READING");
  if (daylight === undefined)
    return assuming(
      because("off", say`Presence alone decides: no daylight is known of.`),
      unknownFacts.daylight,
    );
  if (stairTimer)
    return because("off", say`Nothing was read yet; on stairs light that is always called is the safe side.`);
  return because("off", say`Nothing was read yet: until then presence alone decides.`);
}

function soundOf({ hears, fanNear, use }: SettingContext): Derived<SettingValues["soundSensitivity"]> {
  if (hears === undefined)
    return assuming(because("off", say`Nobody knows whether it hears.`), unknownFacts.hears);
  if (!hears) return because("off", say`Its data sheet declares no reach of sound.`);
  if (fanNear) return because("off", say`A fan near by would hold the light without anybody there.`);
  if (use === "sanitary" || use === "changing")
    return assuming(
      because("medium", say`Sound holds the light for whoever is out of sight.`),
      fanNear === undefined ? unknownFacts.fanNear : undefined,
    );
  return because("off", say`Everybody can be seen here; sound would only hold the light longer.`);
}
