import { difference, intersection, type Point, type Region, union } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import { doorStates, type RoomDoorState } from "./door-states.ts";
import { type FoundGap, uncoveredPieces, worstCause } from "./gaps.ts";
import type { PreparedRoom } from "./prepared-room.ts";
import type { GapCause } from "./results.ts";
import { floorIn, type Scene } from "./scene.ts";
import { unseenReason } from "./unseen-reason.ts";
import type { CountedDevice, ZoneBook } from "./zone-book.ts";

interface Question {
  readonly prepared: PreparedRoom;
  readonly devices: readonly CountedDevice[];
  readonly book: ZoneBook;
  readonly floorOf: typeof floorIn;
}

/**
 * The pieces of a room's demand that its devices do not see, for each demand that is asked for, with their causes.
 *
 * A place counts as seen only if it is seen with all doors closed and with each leaf that opens into the room open on its own.
 *
 * @param asking.prepared - The prepared room. @param asking.devices - Devices that switch its light. @param asking.book - Their zones.
 * @returns Gaps of walk, then of hold in the order of the dwell places.
 * @source COMMON-PRACTICE
 * @example Without devices: all of the demand, cause "no-device"
 */
export function unseenDemand(asking: Omit<Question, "floorOf">): readonly FoundGap[] {
  const question = { ...asking, floorOf: floorsRemembered() };
  const { asked } = question.prepared.demand;
  const states = doorStates(question.prepared).filter((state) => differs(question, state));
  return [
    ...(asked.walk ? walkGaps(question, states) : []),
    ...(asked.hold ? holdGaps(question, states) : []),
  ];
}

/** Whether an open leaf changes what any device sees; if not, the closed state has all of its gaps. */
function differs({ devices, book }: Question, { opening }: RoomDoorState): boolean {
  return opening === undefined || devices.some((device) => book.sceneOf(device, opening.id) !== "closed");
}

function walkGaps(question: Question, states: readonly RoomDoorState[]): FoundGap[] {
  const { prepared, devices, book } = question;
  const { demand } = prepared;
  const unseen = states.map(({ opening, taken }): Region => {
    const zones = (kind: "towards" | "sound"): Region[] =>
      devices.map((device) => book.zone({ device, kind, open: opening?.id }).region());
    const heard =
      demand.bays.length === 0 ? [] : zones("sound").map((zone) => intersection(zone, demand.bays));
    return difference(demand.standing, union([...zones("towards"), ...heard, taken]));
  });
  return uncoveredPieces(joined(unseen), []).map((piece) => ({
    demand: "walk",
    ...piece,
    cause: causeOf(question, { states, kind: "towards", at: piece.at }),
  }));
}

function holdGaps(question: Question, states: readonly RoomDoorState[]): FoundGap[] {
  const { prepared, devices, book } = question;
  return prepared.demand.dwell.flatMap(({ id, region, sightHeight, inBay }) => {
    const unseen = states.map(({ opening, taken }): Region => {
      const zones = (kind: "seated" | "sound"): Region[] =>
        devices.map((device) => book.zone({ device, kind, open: opening?.id, sightHeight }).region());
      return difference(region, union([...zones("seated"), ...(inBay ? zones("sound") : []), taken]));
    });
    return uncoveredPieces(joined(unseen), []).map(
      (piece): FoundGap => ({
        demand: "hold",
        ...piece,
        cause: causeOf(question, { states, kind: "seated", sightHeight, at: piece.at }),
        dwellPlace: id,
      }),
    );
  });
}

interface Place {
  readonly states: readonly RoomDoorState[];
  readonly kind: "towards" | "seated";
  readonly sightHeight?: Metres;
  readonly at: FoundGap["at"];
}

function causeOf({ devices, floorOf }: Question, { states, kind, sightHeight, at }: Place): GapCause {
  if (devices.length === 0) return { kind: "no-device" };
  for (const { scene } of states) {
    const height = sightHeight === undefined ? {} : { sightHeight };
    const reasons: GapCause[] = [];
    for (const device of devices) {
      const reason = unseenReason(scene, { device, kind, point: at, ...height, floorOf });
      // A device without a reason sees the place in this state: the gap comes from another one.
      if (reason === undefined) break;
      reasons.push(reason);
    }
    if (reasons.length === devices.length) return worstCause(reasons);
  }
  return { kind: "beyond-reach" };
}

/** `floorIn` that works out each place of a scene once. */
function floorsRemembered(): typeof floorIn {
  const known = new Map<Scene, Map<Point, Metres>>();
  return (scene, at) => {
    const floors = known.get(scene) ?? new Map<Point, Metres>();
    known.set(scene, floors);
    const floor = floors.get(at) ?? floorIn(scene, at);
    floors.set(at, floor);
    return floor;
  };
}

const joined = (regions: readonly Region[]): Region =>
  regions.length === 1 ? (regions[0] as Region) : union(regions);
