import { joined, type Said, say } from "../check/index.ts";
import type { Share } from "../quantity/index.ts";
import type { SettingContext, SettingValues } from "./device-settings.ts";
import { unknownFacts } from "./unknown-facts.ts";

/** Background levels that ways are kept at: least, and most. Common practice, no source. */
export const backgroundLevels: { readonly least: Share; readonly most: Share } = { least: 0.1, most: 0.2 };

/** A derived kind of output with its reason. */
export interface OutputChoice {
  readonly value: SettingValues["output"];
  readonly reason: Said;
  readonly assumption?: Said;
}

/**
 * What a device does with the light, where nobody chose it.
 *
 * A stair, or an escape route without daylight, is not left dark by one device that fails: it falls to a background level, unless each
 * point is seen by two devices. Elsewhere the light is switched. What the place asks for is derived even where the data sheet does not
 * declare it, and is then a finding. Elsewhere a sheet that does not know plain switching is taken at its word, and one that knows
 * nothing but an addressed bus everywhere.
 *
 * @param context - Use, escape route, daylight, sight of two devices, kinds of output of the data sheet.
 * @returns Value with its reason, and what it takes for granted.
 * @source SETTING-CHOICE
 * @example A stair with one device: two-level, 10 %
 */
export function outputChoice(context: SettingContext): OutputChoice {
  const { use, escapeRoute, daylight, outputKinds } = context;
  if (outputKinds?.length === 1 && outputKinds[0] === "addressed-bus")
    return {
      value: "addressed-bus",
      reason: say`Its data sheet knows an addressed bus alone: addresses, groups and levels are not covered here.`,
    };
  if (!isWay(context))
    return withoutBackground(outputKinds, {
      reason: say`It lights no stair, and no escape route without daylight.`,
      ...(escapeRoute === undefined ? { assumption: unknownFacts.escapeRoute } : {}),
    });
  if (!asksForBackground(context))
    return withoutBackground(outputKinds, {
      reason: say`Each point is seen by two devices: one that fails leaves nobody in the dark.`,
    });
  return {
    value: { background: backgroundLevels.least },
    reason:
      use === "stair"
        ? say`A stair whose points are not all seen by two devices falls to a background level.`
        : say`An escape route without daylight whose points are not all seen by two devices falls to a background level.`,
    ...(use !== "stair" && daylight === undefined
      ? { assumption: say`No windows are entered for what it lights: taken as without daylight.` }
      : {}),
  };
}

/** The light is switched; by what a data sheet declares, where that is something else. */
function withoutBackground(
  declared: SettingContext["outputKinds"],
  why: Pick<OutputChoice, "reason" | "assumption">,
): OutputChoice {
  const other = declared?.find((kind) => kind !== "addressed-bus");
  if (other === undefined || declared?.includes("switch")) return { value: "switch", ...why };
  return {
    ...why,
    value: other === "two-level" ? { background: backgroundLevels.least } : other,
    reason: joined(
      [why.reason, say`Its data sheet declares no plain switching, so that what it does declare is taken.`],
      " ",
    ),
  };
}

const isWay = ({ use, escapeRoute, daylight }: SettingContext): boolean =>
  use === "stair" || (escapeRoute === true && daylight !== true);

/** Whether the place asks for a background level: a way that one failing device would leave dark. @param context - Use, escape route, daylight, sight of two devices. @returns True where it does. @source SETTING-CHOICE @example A stair with one device: true */
export const asksForBackground = (context: SettingContext): boolean =>
  isWay(context) && context.seenByTwo !== true;

/** The kind of output of a setting, as a data sheet names it. @param output - Value of the setting. @returns Kind. @example { background: 0.1 }: "two-level" */
export const outputKindOf = (
  output: SettingValues["output"],
): NonNullable<SettingContext["outputKinds"]>[number] => (typeof output === "object" ? "two-level" : output);
