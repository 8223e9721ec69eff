import type { ZoneKind } from "../detector/index.ts";
import { distanceToRings, outlineContains } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { Detector } from "../site/index.ts";
import { openLeaf } from "./open-leaf.ts";
import type { PreparedRoom } from "./prepared-room.ts";
import { deviceOf } from "./watchers.ts";
import { zoneInScene } from "./zone.ts";
import type { DeviceLike, Zone } from "./zone-types.ts";

/** A device that switches a room's light, with the room it hangs in. */
export type CountedDevice = DeviceLike & { readonly id: string; readonly room: string };

/** Zones of the devices of one room, each computed once. */
export interface ZoneBook {
  /** @param of.open - The opening that stands open; undefined: all doors closed. @param of.sightHeight - The kind's own if absent. [m] */
  readonly zone: (of: {
    readonly device: CountedDevice;
    readonly kind: ZoneKind;
    readonly open: string | undefined;
    readonly sightHeight?: Metres;
  }) => Zone;
  /** The scene that shows what a device sees of the room while an opening stands open: "closed", or the opening. */
  readonly sceneOf: (device: CountedDevice, open: string) => string;
}

/**
 * A book of the zones of given devices in one prepared room.
 *
 * Whoever hangs in the room sees no more of it when a door opens, and less only where the leaf swings into the room within reach: in all
 * other cases the closed scene gives the same zone, and is used.
 *
 * @param prepared - The prepared room.
 * @returns A book for one set of devices at their places; make a new one when they move.
 * @source SIGHT-GEOMETRY
 * @example Thirteen doors that swing out of a corridor need one zone of each kind and device, not fourteen
 */
export function zoneBook(prepared: PreparedRoom): ZoneBook {
  const zones = new Map<string, Zone>();
  const sceneOf: ZoneBook["sceneOf"] = (device, open) =>
    isSameAsClosed(prepared, device, open) ? "closed" : open;
  return {
    sceneOf,
    zone: ({ device, kind, open, sightHeight }) => {
      const scene = open === undefined ? "closed" : sceneOf(device, open);
      const key = `${scene} ${kind} ${sightHeight} ${device.id}`;
      const known = zones.get(key);
      if (known) return known;
      const zone = zoneInScene(scene === "closed" ? prepared.closed() : prepared.withOpen(scene), {
        device,
        kind,
        ...(sightHeight === undefined ? {} : { sightHeight }),
      });
      zones.set(key, zone);
      return zone;
    },
  };
}

/** Devices that switch a room's light, as zones want them; those of unknown models are left out. @param prepared - The room. @param detectors - Records. @example One device for each record whose model is in the list */
export function countedDevices(
  prepared: PreparedRoom,
  detectors: readonly Detector[],
): readonly CountedDevice[] {
  return detectors.flatMap((detector) => {
    const model = prepared.look.modelById.get(detector.model);
    return model ? [{ ...deviceOf(detector, model), room: detector.room }] : [];
  });
}

function isSameAsClosed({ look, room }: PreparedRoom, device: CountedDevice, open: string): boolean {
  const opening = look.openingById.get(open);
  if (device.room !== room.id || !opening) return false;
  if (opening.kind !== "door" || opening.opensInto !== room.id) return true;
  const leaf = openLeaf(opening, look);
  return (
    !leaf || (!outlineContains(leaf, device.at) && distanceToRings(device.at, [leaf]) > longestRow(device))
  );
}

/** No zone of a model reaches further than its longest row. [m] */
function longestRow({ model }: DeviceLike): Metres {
  const radii = Object.values(model.zones).flatMap((rows) =>
    rows.flatMap((row) => ("radius" in row ? [row.radius] : row.outline.map(([, radius]) => radius))),
  );
  return Math.max(0, ...radii);
}
