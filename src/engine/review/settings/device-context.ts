import type { Problem } from "../../check/index.ts";
import { declaredReachAt, longestReach } from "../../detector/index.ts";
import { distanceToSegment } from "../../geometry/index.ts";
import type { SettingContext, ThresholdResult } from "../../settings/index.ts";
import { lampsAlone, thresholdFrom } from "../../settings/index.ts";
import {
  clearanceOf,
  controlledRooms,
  type Detector,
  type Room,
  roomTitle,
  type SiteLookUp,
} from "../../site/index.ts";
import type { LightReadings } from "./choices.ts";

/** What the readings at a detector give: set values, or why they cannot carry any. */
export type ReadThreshold = ThresholdResult | { readonly problems: readonly Problem[] };

/**
 * The set values that the readings at a detector carry.
 *
 * @param room - Name of the room on paper. @param readings - As read; the lamps alone are the difference to the last reading without them.
 * @returns As `thresholdFrom`.
 * @source CEILING-READING
 * @example Task 320, ceiling 96, target 500: on below 150 lx
 */
export function readThreshold(room: string, readings: LightReadings): ReadThreshold {
  const { target, lampsOff, lampsOn, sunPatch } = readings;
  const last = lampsOff.at(-1);
  return thresholdFrom({
    room,
    target,
    lampsOff,
    sunPatch,
    ...(lampsOn && last ? { lamps: lampsAlone(lampsOn, last) } : {}),
  });
}

/** What is known of the place of a detector, before group and rules. */
export type PlaceContext = Omit<SettingContext, "group">;

/**
 * What the site says of the place that a detector lights. What nobody entered stays unknown.
 *
 * @param look - The site. @param detector - One of its detectors. @param known.read - What its readings give, if somebody read.
 * @param known.seenByTwo - Whether each point of rooms is seen by two devices that feed its load.
 * @returns Use and daylight over all rooms that it lights: one escape route makes all of them one.
 * @source SETTING-CHOICE
 * @example A corridor without an entered window: daylight unknown
 */
export function placeContext(
  look: SiteLookUp,
  detector: Detector,
  known: {
    readonly read?: ReadThreshold | undefined;
    readonly seenByTwo: (rooms: readonly Room[]) => boolean;
  },
): PlaceContext {
  const { read } = known;
  const lit = controlledRooms(detector).flatMap((id) => look.roomById.get(id) ?? []);
  const own = look.roomById.get(detector.room);
  const on = read && !("problems" in read) ? read.on : undefined;
  const escapeRoute = anyOf(lit.map((room) => room.escapeRoute));
  const daylight = anyOf(lit.map((room) => daylightOf(look, room))) ?? (on === undefined ? undefined : true);
  const hasButton = buttonOf(look, detector, lit);
  const hears = hearingOf(look, detector);
  const fanNear = fanWithin(look, detector);
  const outputKinds = look.modelById.get(detector.model)?.outputKinds;
  return {
    device: detector.id,
    tag: detector.tag || detector.id,
    room: roomTitle(own),
    place: { room: detector.room, at: detector.at },
    use: mostCareful(lit),
    masks: detector.masks.length,
    ...(lit.some(({ id }) => look.obstaclesOf(id).some(({ kind }) => kind === "cubicle"))
      ? { cubicles: true }
      : {}),
    // Two sights count where being left in the dark is worst; elsewhere nothing hangs on them.
    ...(lit.some(({ use }) => use === "stair") || escapeRoute === true
      ? { seenByTwo: known.seenByTwo(lit) }
      : {}),
    ...(outputKinds === undefined ? {} : { outputKinds }),
    ...(escapeRoute === undefined ? {} : { escapeRoute }),
    ...(daylight === undefined ? {} : { daylight }),
    ...(hasButton === undefined ? {} : { hasButton }),
    ...(hears === undefined ? {} : { hears }),
    ...(fanNear === undefined ? {} : { fanNear }),
    ...(on === undefined ? {} : { thresholdFromReadings: on }),
  };
}

/** True if one is; false only if all are known not to be. */
function anyOf(facts: readonly (boolean | undefined)[]): boolean | undefined {
  if (facts.includes(true)) return true;
  return facts.length > 0 && facts.every((fact) => fact === false) ? false : undefined;
}

/** Of several uses the one where being left in the dark is worst decides. */
const byCare: readonly Room["use"][] = [
  "sitting",
  "plant",
  "sanitary",
  "changing",
  "other",
  "moving",
  "stair",
  "passing",
];
const mostCareful = (rooms: readonly Room[]): Room["use"] =>
  byCare.find((use) => rooms.some((room) => room.use === use)) ?? "other";

/** What somebody said; else a window or glazing to the outside, or sun through a window. Without these nobody knows. */
function daylightOf(look: SiteLookUp, room: Room): boolean | undefined {
  if (room.daylight !== undefined) return room.daylight;
  const outward = look
    .openingsOf(room.id)
    .some(({ kind, rooms }) => (kind === "window" || kind === "glazing") && rooms.includes(null));
  const sunlit = look.interferenceOf(room.id).some(({ kind }) => kind === "sunlit-window");
  return outward || sunlit ? true : undefined;
}

/** A button that is planned for it, or for a room that it lights. That a detector takes one is for its data sheet to say. */
function buttonOf(look: SiteLookUp, detector: Detector, lit: readonly Room[]): boolean | undefined {
  const inputs = look.modelById.get(detector.model)?.inputs;
  if (inputs && inputs.pushButton === undefined) return false;
  const there = look.site.switches.filter(({ room }) => lit.some(({ id }) => id === room));
  const speaking = look.site.switches.filter(
    ({ planned, detectors }) => planned !== "removed" && detectors?.includes(detector.id),
  );
  const planned = there.filter(
    ({ planned, detectors }) => planned === "button" && (detectors === undefined || detectors.length === 0),
  );
  if (speaking.length + planned.length > 0) return inputs ? true : undefined;
  // A switch that nobody has decided on may still become the button.
  return there.length > 0 && there.every((one) => one.planned !== undefined) ? false : undefined;
}

const hearingOf = (look: SiteLookUp, detector: Detector): boolean | undefined => {
  const model = look.modelById.get(detector.model);
  return model && (model.zones.sound?.length ?? 0) > 0;
};

/** Within its clearance, or within the declared reach of sound. That none is entered does not show that there is none. */
function fanWithin(look: SiteLookUp, detector: Detector): boolean | undefined {
  const rows = look.modelById.get(detector.model)?.zones.sound;
  const heard = rows
    ? longestReach(declaredReachAt(rows, { height: detector.height, sightHeight: 0 }).shape)
    : 0;
  const near = look
    .interferenceOf(detector.room)
    .filter(({ kind }) => kind === "air-outlet" || kind === "machine")
    .some((source) => {
      const distance = distanceToSegment(detector.at, [source.at, source.to ?? source.at]);
      return distance <= Math.max(heard, clearanceOf(source, look.site.defaults));
    });
  return near ? true : undefined;
}
