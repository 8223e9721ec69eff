import {
  type CountedDevice,
  countedDevices,
  coverageOf,
  type PreparedRoom,
  planningReach,
  prepareRoom,
  type RoomCoverage,
  sightHeightOf,
  type Zone,
  zoneInScene,
} from "../coverage/index.ts";
import { DECLARED_AT, longestReach, reachTowards, type ZoneKind } from "../detector/index.ts";
import {
  distanceBetween,
  type Point,
  prepareWays,
  type Region,
  simplified,
  type Ways,
} from "../geometry/index.ts";
import { type Metres, wholeTurn } from "../quantity/index.ts";
import { type Detector, lensOver, type Room, type Site, type SiteLookUp } from "../site/index.ts";

/** A device that sees a place, and how much of its planned reach is left there. */
export interface Watch {
  readonly device: string;
  readonly headroom: Metres;
}

/** A place as one kind of zone sees it. */
export interface PlaceQuestion {
  readonly at: Point;
  readonly kind: ZoneKind;
  readonly sightHeight?: Metres;
}

/** What planning a walk test needs to know of a room, each made once. */
export interface WalkContext {
  readonly site: Site;
  readonly prepared: PreparedRoom;
  readonly coverage: RoomCoverage;
  /** Devices that switch the room's light. */
  readonly devices: readonly CountedDevice[];
  readonly standing: Region;
  readonly ways: Ways;
  /** Zone of a device with the doors closed, planning margin taken off. */
  readonly zone: (device: CountedDevice, kind: ZoneKind, sightHeight?: Metres) => Zone;
  /** Planned reach of a device in the direction of a place. [m] */
  readonly reach: (device: CountedDevice, place: PlaceQuestion) => Metres;
  /** Devices that see a place, the one with most headroom first. */
  readonly watchers: (place: PlaceQuestion) => readonly Watch[];
  /** How devices hang, as one line: see `Station.basis`. */
  readonly basis: (devices: readonly string[]) => string;
}

/** A boundary nearer to the planned reach than this is made by the reach, not by a solid. [m] */
export const BY_REACH: Metres = 0.03;

/** Corners of ways are thinned to chords this deep, as coverage does. [m] */
const WAY_CHORD: Metres = 5e-3;

/**
 * A room made ready for planning its walk test.
 *
 * @param site - Snapshot of the job. @param roomId - Id of a room of the site; throws on another. @param known - Its coverage, if already at hand.
 * @returns Zones, planned reach and watchers of places, worked out at the first use.
 * @source SIGHT-GEOMETRY
 * @example In an empty room with one detector of 3.4 m planned reach a place 3 m away has 0.4 m of headroom
 */
export function walkContext(site: Site, roomId: string, known?: RoomCoverage): WalkContext {
  const prepared = prepareRoom(site, roomId);
  const coverage = known ?? coverageOf(prepared, site.detectors);
  const devices = countedDevices(prepared, prepared.look.detectorsFor(roomId).filter(isPlaced));
  const standing = simplified(coverage.demand.standing, WAY_CHORD);
  const zones = new Map<string, Zone>();
  const zone: WalkContext["zone"] = (device, kind, sightHeight) => {
    const key = `${device.id} ${kind} ${sightHeight ?? ""}`;
    const known = zones.get(key);
    if (known) return known;
    const made = zoneInScene(prepared.closed(), {
      device,
      kind,
      ...(sightHeight === undefined ? {} : { sightHeight }),
    });
    zones.set(key, made);
    return made;
  };
  const reach: WalkContext["reach"] = (device, place) =>
    reachTo(prepared.look, { device, room: prepared.room, purpose: "coverage", ...place });
  return {
    site,
    prepared,
    coverage,
    devices,
    standing,
    ways: prepareWays(standing),
    zone,
    reach,
    watchers: (place) =>
      devices
        .filter((device) => zone(device, place.kind, place.sightHeight).has(place.at[0], place.at[1]))
        .map((device) => ({
          device: device.id,
          headroom: Math.max(0, reach(device, place) - distanceBetween(device.at, place.at)),
        }))
        .toSorted((a, b) => b.headroom - a.headroom || (a.device < b.device ? -1 : 1)),
    basis: (ids) => basisOf(site, ids),
  };
}

/**
 * Reach of a device in the direction of a place.
 *
 * @param look - The site's records at hand. @param question.device - The device. @param question.room - Room of the place.
 * @param question.purpose - "coverage": with planning margin and warmth; "declared": as the data sheet says.
 * @returns Reach; 0 where the model has none, or hangs outside its limits. [m]
 * @source SIGHT-GEOMETRY
 * @example Towards 4 m, margin 15 %: 3.4 m for coverage, 4 m as declared
 */
export function reachTo(
  look: SiteLookUp,
  question: PlaceQuestion & {
    readonly device: CountedDevice;
    readonly room: Room;
    readonly purpose: "coverage" | "declared";
  },
): Metres {
  const { device, room, purpose, at, kind, sightHeight } = question;
  const { defaults } = look.site;
  const { shape } = planningReach(defaults, {
    device,
    kind,
    height: lensOver(look, device, { room: room.id, at }),
    sight: sightHeight ?? sightHeightOf(kind, defaults),
    purpose,
    temperature: room.highestTemperature ?? DECLARED_AT,
  });
  if (shape.kind === "round") return longestReach(shape);
  return reachTowards(shape, Math.atan2(at[1] - device.at[1], at[0] - device.at[0]) - device.turn);
}

/**
 * How devices hang, as one line: place and height to the centimetre, turn to the degree, masks, model, and which device it is where one was exchanged.
 *
 * @param site - Snapshot of the job. @param devices - Ids, in any order.
 * @returns Equal lines for devices that hang alike; ids that lead nowhere are named as missing.
 * @example A detector moved by 20 cm has another basis; one renamed has the same
 */
export function basisOf(site: Site, devices: readonly string[]): string {
  return devices
    .toSorted()
    .map((id) => {
      const one = site.detectors.find((detector) => detector.id === id);
      if (!one) return `${id} missing`;
      const degrees = Math.round((wholeTurn(one.turn) * 180) / Math.PI) % 360;
      const masks = one.masks.map(({ from, to, inner, outer }) =>
        [from, to, inner, outer].map((angle) => Math.round((angle * 180) / Math.PI)).join("-"),
      );
      const place = [one.at[0], one.at[1], one.height].map((metres) => Math.round(metres * 100)).join(",");
      const swapped = one.fitted === undefined ? [] : [`swapped ${one.fitted}`];
      return [id, one.model, place, degrees, ...masks, ...swapped].join(" ");
    })
    .join("; ");
}

const isPlaced = ({ at, height, turn }: Detector): boolean =>
  [...at, height, turn].every(Number.isFinite) && height > 0;
