import { areaOf } from "../geometry/index.ts";
import type { SquareMetres } from "../quantity/index.ts";
import { controlledRooms, type Detector, type Site } from "../site/index.ts";
import { coverageChecks } from "./coverage-checks.ts";
import { coverageProblems } from "./coverage-problems.ts";
import { walkInTheDark, worstWalk } from "./dark-walk.ts";
import { markTolerated } from "./gaps.ts";
import { clearancesBroken, interferenceSeen } from "./interference.ts";
import { type PreparedRoom, prepareRoom } from "./prepared-room.ts";
import type { DarkWalk, Gap, RoomCoverage } from "./results.ts";
import { spillOf } from "./spill.ts";
import { type StairLight, stairLights } from "./stair-light.ts";
import { unseenDemand } from "./unseen-demand.ts";
import { watchersOf } from "./watchers.ts";
import { type CountedDevice, countedDevices, type ZoneBook, zoneBook } from "./zone-book.ts";

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
  const { look, room, demand } = prepared;
  const hung = prepared.standing ? usable(detectors).filter((detector) => detector.room === room.id) : [];
  const watch = watchOf(prepared, detectors);
  const found = coveredAreas(watch);
  const { darkWalks, stairs } = walksOf(watch);
  const inTime = darkWalks.filter((walk) => walk.metres <= look.site.defaults.darkWalkLimit).length;
  const results = {
    demanded: { ...found.demanded, catch: demand.asked.catch ? darkWalks.length : 0 },
    covered: { ...found.covered, catch: demand.asked.catch ? inTime : 0 },
    gaps: found.gaps,
    spill: spillOf(prepared, hung),
    interference: interferenceSeen(prepared, hung),
    darkWalks,
  };
  const evidence = {
    prepared,
    counted: watch.counted,
    hung,
    ...results,
    stairs,
    broken: clearancesBroken(prepared, hung),
    verify: watch.devices.some((device) => isExtrapolated(watch.book, device)),
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

/**
 * Only what is seen and what is not: for a screen that follows a detector while it is dragged.
 *
 * @param prepared - Result of `prepareRoom`. @param detectors - As for `coverageOf`.
 * @returns Demanded and covered areas [m²] and the gaps, equal to those of `coverageOf`; no ways, no spill, no checks.
 * @source COMMON-PRACTICE
 * @example A room all of whose floor is seen: no gaps, covered equals demanded
 */
export function gapsOf(prepared: PreparedRoom, detectors: readonly Detector[]): CoveredAreas {
  return coveredAreas(watchOf(prepared, detectors));
}

/** Areas asked for and seen, without the ways in. */
export interface CoveredAreas {
  readonly demanded: { readonly walk: SquareMetres; readonly hold: SquareMetres };
  readonly covered: { readonly walk: SquareMetres; readonly hold: SquareMetres };
  readonly gaps: readonly Gap[];
}

interface Watch {
  readonly prepared: PreparedRoom;
  readonly counted: readonly Detector[];
  readonly devices: readonly CountedDevice[];
  readonly book: ZoneBook;
}

function watchOf(prepared: PreparedRoom, detectors: readonly Detector[]): Watch {
  const counted = usable(detectors).filter((detector) =>
    controlledRooms(detector).includes(prepared.room.id),
  );
  return { prepared, counted, devices: countedDevices(prepared, counted), book: zoneBook(prepared) };
}

function coveredAreas(watch: Watch): CoveredAreas {
  const { look, room, demand, standing } = watch.prepared;
  const demanded = {
    walk: demand.asked.walk ? areaOf(demand.standing) : 0,
    hold: demand.asked.hold ? sum(demand.dwell.map((place) => place.area)) : 0,
  };
  const gaps = markTolerated(unseenDemand(watch), {
    defaults: look.site.defaults,
    demanded: demanded.walk + demanded.hold,
    entrances: standing?.entrances ?? [],
    dwell: demand.dwell.map((place) => place.region),
    flights: look.floorPiecesOf(room.id).filter((piece) => piece.kind === "flight"),
  });
  const left = (kind: Gap["demand"]): SquareMetres =>
    Math.max(0, demanded[kind] - sum(gaps.filter((gap) => gap.demand === kind).map((gap) => gap.area)));
  return { demanded, covered: { walk: left("walk"), hold: left("hold") }, gaps };
}

function walksOf({ prepared, devices, book }: Watch): {
  readonly darkWalks: readonly DarkWalk[];
  readonly stairs: readonly StairLight[];
} {
  const { look, room } = prepared;
  const { speed } = look.site.defaults;
  const darkWalks: DarkWalk[] = [];
  const stairs: StairLight[] = [];
  for (const ways of prepared.ways()) {
    const { opening } = ways.entrance;
    const open = opening.kind === "door" ? opening.id : undefined;
    const watchers = watchersOf({
      look,
      room,
      devices,
      zoneOf: (device, kind) => book.zone({ device, kind, open }),
    });
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

const isExtrapolated = (book: ZoneBook, device: CountedDevice): boolean =>
  (["towards", "seated"] as const).some((kind) => book.zone({ device, kind, open: undefined }).verify);

/** Devices at places and heights that are numbers; `siteProblems` names the others. */
const usable = (detectors: readonly Detector[]): readonly Detector[] =>
  detectors.filter(({ at, height, turn }) => [...at, height, turn].every(Number.isFinite) && height > 0);

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
