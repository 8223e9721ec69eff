import { english, figured, joined, type Said, say, type Words } from "../check/index.ts";
import { areaOf } from "../geometry/index.ts";
import { floorOf, lookUp, type Room, type Site, type SiteLookUp, useNames } from "../site/index.ts";
import type { Combination } from "./sampling.ts";

/** Sizes are one for a sample where they round to the same step. [m², m] @source COMMON-PRACTICE */
const SAME_AREA = 1;
const SAME_LENGTH = 0.1;

/**
 * The devices of a site by type of device and kind of space, as codes sample them.
 *
 * Equal are devices of one model at one height in rooms of one use, floor area, ceiling height, number of corners, obstacles and devices. What differs in any of these
 * is another combination: so rather too many are tested than too few.
 *
 * @param site - Snapshot of the job.
 * @returns Combinations, each with its devices in the order of their tags; devices without model or room stand alone.
 * @source IECC-C408
 * @example Twenty equal offices with one detector each: one combination of 20
 */
export function combinationsOf(site: Site): readonly Combination[] {
  const look = lookUp(site);
  const found = new Map<string, { readonly name: Said; readonly devices: { tag: string; id: string }[] }>();
  for (const { id, tag, model, room, height } of site.detectors) {
    const place = look.roomById.get(room);
    const title = look.modelById.get(model)?.title;
    const name =
      place && title !== undefined
        ? joined([title, `${stepped(height, SAME_LENGTH)} m`, ...spaceOf(place, look)], ", ")
        : say`${tag || id} alone, ${id}`;
    const alike = found.get(english(name)) ?? { name, devices: [] };
    alike.devices.push({ tag, id });
    found.set(english(name), alike);
  }
  return [...found]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { name, devices }]) => ({
      name,
      devices: devices
        .toSorted((a, b) => (a.tag === b.tag ? order(a.id, b.id) : order(a.tag, b.tag)))
        .map((device) => device.id),
    }));
}

function spaceOf(room: Room, look: SiteLookUp): readonly Words[] {
  return [
    useNames[room.use],
    figured(`${stepped(areaOf(floorOf(room)), SAME_AREA)} m²`),
    say`${figured(`${stepped(room.ceilingHeight, SAME_LENGTH)} m`)} high`,
    say`${room.outline.length} corners`,
    say`${look.obstaclesOf(room.id).length} obstacles`,
    say`${look.detectorsIn(room.id).length} detectors`,
  ];
}

const stepped = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(1));

const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
