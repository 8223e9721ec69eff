import { UNRELIABLE_FROM } from "../detector/index.ts";
import { areaOf, difference, intersection, type Region, union } from "../geometry/index.ts";
import { controlledRooms, type Detector, type Opening, type Site } from "../site/index.ts";
import { coverageChecks } from "./coverage-checks.ts";
import { coverageProblems } from "./coverage-problems.ts";
import { type Watcher, walkInTheDark, worstWalk } from "./dark-walk.ts";
import { type FoundGap, markTolerated, uncoveredPieces, worstCause } from "./gaps.ts";
import { clearancesBroken, interferenceSeen } from "./interference.ts";
import { takenByLeaf } from "./open-leaf.ts";
import { type PreparedRoom, prepareRoom } from "./prepared-room.ts";
import type { DarkWalk, GapCause, RoomCoverage } from "./results.ts";
import type { Scene } from "./scene.ts";
import { spillOf } from "./spill.ts";
import { type StairLight, stairLights } from "./stair-light.ts";
import { unseenReason } from "./unseen-reason.ts";
import { deviceOf, watchersOf } from "./watchers.ts";
import { zoneInScene } from "./zone.ts";
import type { DeviceLike, Zone } from "./zone-types.ts";

/**
 * Coverage of one room by the detectors of the site that switch its light.
 *
 * @param site - Snapshot of the job. @param roomId - Id of a room of the site; throws on another.
 * @returns Demand, what of it is covered, gaps with their causes, spill, sources in view, the worst walk in the dark of each door, checks with evidence, problems.
 * @source COMMON-PRACTICE
 * @example An empty room without detector: covered 0, one gap the size of the demand, cause "no-device"
 */
export function roomCoverage(site: Site, roomId: string): RoomCoverage {
  return coverageOf(prepareRoom(site, roomId), site.detectors);
}

/**
 * Coverage of a prepared room by given detectors.
 *
 * Doors closed, and again with each leaf that opens into the room open as an obstacle: a place counts as covered only if it is seen in each of
 * these states. Where the open leaf stands, nobody does; that floor is left out of its state.
 *
 * @param prepared - Result of `prepareRoom`. @param detectors - All detectors that may matter; those that neither hang in the room nor switch its light are passed over.
 * @returns As `roomCoverage`; covered + gaps = demand.
 * @source COMMON-PRACTICE
 * @example See `roomCoverage`
 */
export function coverageOf(prepared: PreparedRoom, detectors: readonly Detector[]): RoomCoverage {
  const { look, room, demand, standing } = prepared;
  const counted = detectors.filter((detector) => controlledRooms(detector).includes(room.id));
  const hung = detectors.filter((detector) => detector.room === room.id);
  const devices = counted.flatMap((detector) => {
    const model = look.modelById.get(detector.model);
    return model ? [deviceOf(detector, model)] : [];
  });
  const states = doorStates(prepared);
  const found = [
    ...(demand.asked.walk ? walkGaps({ prepared, devices, states }) : []),
    ...(demand.asked.hold ? holdGaps({ prepared, devices, states }) : []),
  ];
  const demanded = {
    walk: demand.asked.walk ? areaOf(demand.standing) : 0,
    hold: demand.asked.hold ? sum(demand.dwell.map((place) => place.area)) : 0,
    catch: demand.asked.catch ? prepared.ways().length : 0,
  };
  const gaps = markTolerated(found, {
    defaults: look.site.defaults,
    demanded: demanded.walk + demanded.hold,
    entrances: standing?.entrances ?? [],
    dwell: demand.dwell.map((place) => place.region),
    flights: look.floorPiecesOf(room.id).filter((piece) => piece.kind === "flight"),
  });
  const { darkWalks, stairs } = walksOf(prepared, counted);
  const area = (kind: "walk" | "hold"): number =>
    sum(gaps.filter((gap) => gap.demand === kind).map((gap) => gap.area));
  const inTime = darkWalks.filter((walk) => walk.metres <= look.site.defaults.darkWalkLimit).length;
  const results = {
    demanded,
    covered: {
      walk: Math.max(0, demanded.walk - area("walk")),
      hold: Math.max(0, demanded.hold - area("hold")),
      catch: demand.asked.catch ? inTime : 0,
    },
    gaps,
    spill: spillOf(prepared, hung),
    interference: interferenceSeen(prepared, hung),
    darkWalks,
  };
  const evidence = {
    prepared,
    counted,
    hung,
    ...results,
    stairs,
    broken: clearancesBroken(prepared, hung),
    verify: devices.some((device) => isExtrapolated(prepared, device)),
  };
  const checks = coverageChecks(evidence);
  return {
    room: room.id,
    demand,
    ...results,
    checks,
    problems: [...demand.problems, ...coverageProblems({ ...evidence, checks })],
  };
}

/** One way in which the doors of a room may stand while people are in it. */
export interface RoomDoorState {
  /** The leaf that is open; undefined: all doors closed. */
  readonly opening: Opening | undefined;
  readonly scene: Scene;
  /** Floor in which nobody stands because the open leaf is there. */
  readonly taken: Region;
}

/**
 * The states of its doors in which a room must be covered: all closed, and each leaf that opens into the room open on its own.
 *
 * @param prepared - The prepared room.
 * @returns At least the closed state, which comes first.
 * @source COMMON-PRACTICE
 * @example A room with one door that swings into the corridor has one state
 */
export function doorStates(prepared: PreparedRoom): readonly RoomDoorState[] {
  const { look, room } = prepared;
  const leaves = look
    .openingsOf(room.id)
    .filter((opening) => opening.kind === "door" && opening.opensInto === room.id);
  return [
    { opening: undefined, scene: prepared.closed(), taken: [] },
    ...leaves.flatMap((opening): RoomDoorState[] => {
      const taken = takenByLeaf(opening, look);
      return taken.length === 0 ? [] : [{ opening, scene: prepared.withOpen(opening.id), taken }];
    }),
  ];
}

interface GapQuestion {
  readonly prepared: PreparedRoom;
  readonly devices: readonly (DeviceLike & { readonly id: string })[];
  readonly states: readonly RoomDoorState[];
}

function walkGaps({ prepared, devices, states }: GapQuestion): FoundGap[] {
  const { demand } = prepared;
  const unseen = states.map(({ scene, taken }): Region => {
    const towards = devices.map((device) => zoneInScene(scene, { device, kind: "towards" }).region());
    const heard =
      demand.bays.length === 0
        ? []
        : devices.map((device) =>
            intersection(zoneInScene(scene, { device, kind: "sound" }).region(), demand.bays),
          );
    return less(demand.standing, [...towards, ...heard, taken]);
  });
  return uncoveredPieces(unseen.length === 1 ? (unseen[0] as Region) : union(unseen), []).map((piece) => ({
    demand: "walk",
    ...piece,
    cause: causeOf({ prepared, devices, states, kind: "towards", at: piece.at }),
  }));
}

function holdGaps({ prepared, devices, states }: GapQuestion): FoundGap[] {
  return prepared.demand.dwell.flatMap((place) => {
    const unseen = states.map(({ scene, taken }): Region => {
      const seated = devices.map((device) =>
        zoneInScene(scene, { device, kind: "seated", sightHeight: place.sightHeight }).region(),
      );
      const heard = place.inBay
        ? devices.map((device) => zoneInScene(scene, { device, kind: "sound" }).region())
        : [];
      return less(place.region, [...seated, ...heard, taken]);
    });
    return uncoveredPieces(union(unseen), []).map(
      (piece): FoundGap => ({
        demand: "hold",
        ...piece,
        cause: causeOf({
          prepared,
          devices,
          states,
          kind: "seated",
          sightHeight: place.sightHeight,
          at: piece.at,
        }),
        dwellPlace: place.id,
      }),
    );
  });
}

function causeOf(
  question: GapQuestion & {
    readonly kind: "towards" | "seated";
    readonly sightHeight?: number;
    readonly at: FoundGap["at"];
  },
): GapCause {
  const { prepared, devices, states, kind, sightHeight, at } = question;
  if (devices.length === 0) return { kind: "no-device" };
  if ((prepared.room.highestTemperature ?? 0) >= UNRELIABLE_FROM + 4) return { kind: "too-warm" };
  for (const { scene } of states) {
    const reasons = devices.map((device) =>
      unseenReason(scene, { device, kind, point: at, ...(sightHeight === undefined ? {} : { sightHeight }) }),
    );
    // A device without a reason sees the place in this state: the gap comes from another one.
    if (reasons.every((reason) => reason !== undefined)) return worstCause(reasons);
  }
  return { kind: "beyond-reach" };
}

function walksOf(
  prepared: PreparedRoom,
  detectors: readonly Detector[],
): { readonly darkWalks: readonly DarkWalk[]; readonly stairs: readonly StairLight[] } {
  const { look, room } = prepared;
  const { speed } = look.site.defaults;
  const darkWalks: DarkWalk[] = [];
  const stairs: StairLight[] = [];
  for (const ways of prepared.ways()) {
    const { opening } = ways.entrance;
    const scene = opening.kind === "door" ? prepared.withOpen(opening.id) : prepared.closed();
    const watchers: readonly Watcher[] = watchersOf(scene, { look, room, detectors });
    const walked = ways.ways.map(({ toward, way }) => ({
      toward,
      way,
      walked: walkInTheDark(way, { watchers, speed }),
    }));
    const worst = worstWalk(opening.id, walked);
    if (worst) darkWalks.push(worst);
    stairs.push(...stairLights(ways, { watchers, speed }));
  }
  return { darkWalks, stairs };
}

function isExtrapolated(prepared: PreparedRoom, device: DeviceLike): boolean {
  const zones: readonly Zone[] = (["towards", "seated"] as const).map((kind) =>
    zoneInScene(prepared.closed(), { device, kind }),
  );
  return zones.some((zone) => zone.verify);
}

const less = (demand: Region, seen: readonly Region[]): Region => difference(demand, union(seen));
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
