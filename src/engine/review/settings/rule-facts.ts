import { areaOf, regionOf } from "../../geometry/index.ts";
import { type RuleFacts, type RuleMeasure, spacesOf } from "../../rules/index.ts";
import type { SetDevice } from "../../settings/index.ts";
import { controlledRooms, type Luminaire, type Room, roomTitle, type SiteLookUp } from "../../site/index.ts";

/** What stands beside the site when a room is judged. */
export interface JudgedWith {
  /** Devices that switch light in the room. */
  readonly devices: readonly SetDevice[];
  /** By luminaire whether some output switches it; absent where its circuit is not on record. */
  readonly switched: ReadonlyMap<string, boolean>;
  readonly day?: string;
  /** Rated output of heating and air conditioning of the building. [W] */
  readonly plant?: number;
}

/**
 * What rules look at in a room. What is not on record is left out, so that the rule is not proven.
 *
 * @param look - The site. @param room - A room of it. @param known - Its devices with their settings, luminaires switched, day.
 * @returns Kinds of space, area [m²], measures.
 * @source DERIVED-HERE
 * @example A corridor with one detector at 3 min and all luminaires switched: off delay 180 s, nothing left on
 */
export function ruleFactsOf(look: SiteLookUp, room: Room, known: JudgedWith): RuleFacts {
  const { devices, switched, day, plant } = known;
  const spaces = spacesOf(room);
  const area = areaOf(regionOf(room.outline, room.holes));
  const left = shareLeftOn(look.luminairesOf(room.id), { switched, background: backgroundOf(devices) });
  const measures: Partial<Record<RuleMeasure, number>> = { "automatic-control": devices.length > 0 ? 1 : 0 };
  const measure = (name: RuleMeasure, value: number | undefined): void => {
    if (value !== undefined) measures[name] = value;
  };
  if (devices.length > 0) {
    measure("off-delay", longestDelay(devices));
    measure("switched-area", switchedArea(look, devices));
    measure("automatic-on-share", automaticShare(devices));
    measure("manual-off", offByHand(devices));
    measure("vacant-share", left?.share);
    measure("residual-power", left?.power === undefined ? undefined : left.power / area);
  }
  return {
    room: room.id,
    title: roomTitle(room),
    ...(spaces && { spaces }),
    area,
    ...(day === undefined ? {} : { day }),
    ...(plant === undefined ? {} : { plant }),
    measures,
  };
}

/** The light is off when the last of them lets go. Pulses leave the time to a timer. [s] */
const longestDelay = (devices: readonly SetDevice[]): number | undefined =>
  devices.some(({ settings }) => settings.impulse.value !== "none")
    ? undefined
    : Math.max(...devices.map(({ settings }) => settings.offDelay.value));

/** Rooms that one load spreads over; with several loads nobody entered how the room is parted. [m²] */
function switchedArea(look: SiteLookUp, devices: readonly SetDevice[]): number | undefined {
  if (new Set(devices.map(({ context }) => context.group.id)).size !== 1) return undefined;
  const rooms = new Set(
    devices.flatMap(({ context }) => {
      const detector = look.detectorById.get(context.device);
      return detector ? controlledRooms(detector) : [];
    }),
  );
  return [...rooms]
    .flatMap((id) => look.roomById.get(id) ?? [])
    .reduce((sum, room) => sum + areaOf(regionOf(room.outline, room.holes)), 0);
}

function automaticShare(devices: readonly SetDevice[]): number | undefined {
  const modes = new Set(devices.map(({ settings }) => settings.mode.value));
  return modes.size > 1 ? undefined : modes.has("automatic") ? 1 : 0;
}

function offByHand(devices: readonly SetDevice[]): number | undefined {
  const each = devices.map(({ context, settings }) =>
    context.hasButton === undefined ? undefined : context.hasButton && settings.button.value === "on-and-off",
  );
  if (each.every((one) => one === true)) return 1;
  return each.every((one) => one === false) ? 0 : undefined;
}

/** Share of the switched power that stays on when vacant; of several devices the highest. Undefined: nobody knows the level. */
const backgroundOf = (devices: readonly SetDevice[]): number | undefined => {
  const levels = devices.map(({ settings }) => settings.output.value);
  if (levels.some((one) => one === "dimming-broadcast" || one === "addressed-bus")) return undefined;
  return Math.max(0, ...levels.map((one) => (typeof one === "object" ? one.background : 0)));
};

/** What no detector switches off, and the background level of what they do. [share, W] */
function shareLeftOn(
  luminaires: readonly Luminaire[],
  {
    switched,
    background,
  }: { readonly switched: ReadonlyMap<string, boolean>; readonly background: number | undefined },
): { readonly share: number; readonly power: number } | undefined {
  // Dimming, and what a bus does, leave a level that nobody entered.
  if (background === undefined) return undefined;
  if (luminaires.length === 0 || luminaires.some(({ id }) => !switched.has(id))) return undefined;
  const left = luminaires.filter(({ id }) => switched.get(id) === false);
  if (left.length === 0 && background === 0) return { share: 0, power: 0 };
  const power = (some: readonly Luminaire[]): number | undefined =>
    some.some((one) => one.power === undefined) ? undefined : some.reduce((sum, one) => sum + one.power!, 0);
  const [still, all] = [power(left), power(luminaires)];
  return still === undefined || all === undefined || all === 0
    ? undefined
    : { share: (still + background * (all - still)) / all, power: still + background * (all - still) };
}
