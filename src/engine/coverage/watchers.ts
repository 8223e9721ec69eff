import {
  DECLARED_AT,
  type DetectorModel,
  type ReachShape,
  reachOfWalk,
  reachTowards,
} from "../detector/index.ts";
import type { Point } from "../geometry/index.ts";
import type { Metres, Radians } from "../quantity/index.ts";
import type { Detector, Room, SiteLookUp } from "../site/index.ts";
import type { Watcher } from "./dark-walk.ts";
import { standingHeight } from "./floors.ts";
import { planningReach } from "./zone.ts";
import type { DeviceLike, Zone } from "./zone-types.ts";

/**
 * Devices as they watch one who walks in a room.
 *
 * In sight: the place lies in the device's zone across or towards, which holds the planning margin, warmth, masks and all solids.
 * Within reach: the distance is at most R(ψ), with the reach towards and across in the walker's own direction from the device.
 *
 * @param question.look - The site's records at hand. @param question.room - Room that is walked.
 * @param question.devices - Devices that switch its light. @param question.zoneOf - Zone of a device with the doors as they stand.
 * @returns One watcher for each device.
 * @source DIRECTION-ELLIPSE
 * @example Towards 4 m and across 8 m: one who walks past at 4 m is within reach from 3.46 m before the nearest point
 */
export function watchersOf<
  Device extends DeviceLike & { readonly id: string; readonly room: string },
>(question: {
  readonly look: SiteLookUp;
  readonly room: Room;
  readonly devices: readonly Device[];
  readonly zoneOf: (device: Device, kind: "across" | "towards") => Zone;
}): readonly Watcher[] {
  const { look, room, devices, zoneOf } = question;
  const { defaults } = look.site;
  return devices.map((device): Watcher => {
    const zones = [zoneOf(device, "across"), zoneOf(device, "towards")];
    const within = withinWalkReach({ look, room, device });
    return {
      device: device.id,
      onset: device.model.onset ?? defaults.onset,
      response:
        device.model.response === undefined ? defaults.response : device.model.response + defaults.lampStart,
      sees: (at, heading) => within(at, heading) && zones.some((zone) => zone.has(at[0], at[1])),
    };
  });
}

/** A detector of the site as zones want it. @param detector - The record. @param model - Its data sheet. @example Its place, height, turn and masks with the model */
export const deviceOf = (detector: Detector, model: DetectorModel): DeviceLike & { readonly id: string } => ({
  id: detector.id,
  model,
  at: detector.at,
  height: detector.height,
  turn: detector.turn,
  masks: detector.masks,
});

interface ReachQuestion {
  readonly look: SiteLookUp;
  readonly room: Room;
  readonly device: DeviceLike & { readonly room: string };
}

function withinWalkReach({ look, room, device }: ReachQuestion): Watcher["sees"] {
  const { defaults } = look.site;
  const temperature = room.highestTemperature ?? DECLARED_AT;
  const pieces = look.floorPiecesOf(room.id);
  const hung = look.roomById.get(device.room) ?? room;
  const lens = standingHeight({ room: hung, pieces: look.floorPiecesOf(hung.id) }, device.at) + device.height;
  const known = new Map<number, Readonly<Record<"towards" | "across", ReachShape>>>();
  // Floors are level or stepped, so few heights occur; each is worked out once.
  const reachAt = (height: Metres): Readonly<Record<"towards" | "across", ReachShape>> => {
    const key = Math.round(height * 1e4);
    const before = known.get(key);
    if (before) return before;
    const shapeOf = (kind: "towards" | "across"): ReachShape =>
      planningReach(defaults, {
        device,
        kind,
        height,
        sight: defaults.sightHeights.walking,
        purpose: "coverage",
        temperature,
      }).shape;
    const reach = { towards: shapeOf("towards"), across: shapeOf("across") };
    known.set(key, reach);
    return reach;
  };
  return (at, heading) => {
    const [dx, dy] = [at[0] - device.at[0], at[1] - device.at[1]];
    const distance = Math.hypot(dx, dy);
    const { towards, across } = reachAt(lens - standingHeight({ room, pieces }, at));
    const angle = Math.atan2(dy, dx) - device.turn;
    const reach = { towards: reachTowards(towards, angle), across: reachTowards(across, angle) };
    return distance <= reachOfWalk(reach, angleBetween(heading, [-dx, -dy]));
  };
}

/** @returns Angle between two directions, 0 … π; 0 where one of them has no length. [rad] */
const angleBetween = (a: Point, b: Point): Radians =>
  Math.atan2(Math.abs(a[0] * b[1] - a[1] * b[0]), a[0] * b[0] + a[1] * b[1]);
