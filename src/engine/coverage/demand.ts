import type { Problem } from "../check/index.ts";
import {
  areaOf,
  convexHull,
  difference,
  intersection,
  poleOf,
  type Region,
  regionOf,
  union,
} from "../geometry/index.ts";
import {
  anyDwellPlace,
  calculable,
  dwellKindNames,
  isCalculable,
  isUsableOutline,
  lookUp,
  openingInSentence,
  type Room,
  type RoomUse,
  roomTitle,
  rounded,
  type Site,
  type SiteLookUp,
} from "../site/index.ts";
import { dwellDemand } from "./dwell-demand.ts";
import type { DwellDemand, RoomDemand } from "./results.ts";
import { type StandingArea, standingArea } from "./standing-area.ts";

/** Floor that nobody can walk to is mentioned from this size on: less is the space behind a cupboard. [m²] */
const WORTH_MENTIONING = 0.25;

/**
 * What must be seen in a room: its standing area, the bays in it, and its dwell places.
 *
 * @param site - Snapshot of the job. @param roomId - Id of a room of the site.
 * @returns The demand; a room whose outline cannot be calculated with has none, and `siteProblems` says why. Which demands hold stands in `asked`.
 * @source COMMON-PRACTICE
 * @example A room 4 × 3 m with a door 0.9 m wide demands 9.46 m² of walk
 */
export function roomDemand(site: Site, roomId: string): RoomDemand {
  const look = lookUp(site);
  const room = look.roomById.get(roomId);
  if (!room) throw new Error(`No room ${roomId}`);
  return demandOf(room, lookUp(calculable(roomOf(look, roomId)))).demand;
}

/**
 * Demand of a room together with the standing area and entrances that it was made from.
 *
 * @param room - The room. @param look - Records at hand that can be calculated with: the room's own at least.
 * @returns Demand, and the standing area; undefined where the room cannot be calculated with.
 * @example See `roomDemand`
 */
export function demandOf(
  room: Room,
  look: SiteLookUp,
): { readonly demand: RoomDemand; readonly standing: StandingArea | undefined } {
  if (!isCalculable(room)) return { demand: noDemand(room), standing: undefined };
  const roomId = room.id;
  const standing = standingArea(look, roomId);
  const bays = soundServes(room.use) ? baysOf(look, roomId) : [];
  const dwell = look
    .dwellPlacesOf(roomId)
    .map((place) => dwellDemand(place, { look, floor: standing.floor, bays }));
  const demand: RoomDemand = {
    room: roomId,
    asked: room.demand,
    standing: standing.reached,
    bays: intersection(standing.reached, bays),
    unreachable: standing.unreached,
    dwell,
    problems: problemsOf({ look, room, standing, dwell }),
  };
  return { demand, standing };
}

/**
 * Bays of the cubicles of a room: for each obstacle of kind "cubicle" the convex hull of its footprint less the footprint.
 *
 * Draw a row of cubicles as one outline of its panels (a comb); a single straight panel has no bay.
 *
 * @param look - The site's records at hand. @param roomId - Id of the room.
 * @returns The bays. [m]
 * @example A comb of three panels 1.5 m deep and 1 m apart, 0.02 m thick, has two bays of about 1 × 1.5 m each
 */
export function baysOf(look: SiteLookUp, roomId: string): Region {
  return union(
    look
      .obstaclesOf(roomId)
      .filter((obstacle) => obstacle.kind === "cubicle" && isUsableOutline(obstacle.footprint))
      .map(({ footprint }) => difference(regionOf(convexHull(footprint)), regionOf(footprint))),
  );
}

/** What the demand of a room depends on: the room, its openings with the rooms on their other side, and what stands in it. */
function roomOf(look: SiteLookUp, roomId: string): Site {
  const openings = look.openingsOf(roomId);
  const rooms = new Set([
    roomId,
    ...openings.flatMap((opening) => opening.rooms.filter((room) => room !== null)),
  ]);
  return {
    ...look.site,
    rooms: look.site.rooms.filter((room) => rooms.has(room.id)),
    openings,
    floorPieces: look.floorPiecesOf(roomId),
    obstacles: look.obstaclesOf(roomId),
    dwellPlaces: look.dwellPlacesOf(roomId),
    interference: [],
    ceilingThings: [],
    luminaires: [],
    detectors: [],
  };
}

/** Uses in whose bays one who is heard counts as seen. @example Sanitary and changing rooms */
const soundServes = (use: RoomUse): boolean => use === "sanitary" || use === "changing";

const noDemand = (room: Room): RoomDemand => ({
  room: room.id,
  asked: room.demand,
  standing: [],
  bays: [],
  unreachable: [],
  dwell: [],
  problems: [],
});

interface Found {
  readonly look: SiteLookUp;
  readonly room: Room;
  readonly standing: StandingArea;
  readonly dwell: readonly DwellDemand[];
}

function problemsOf({ look, room, standing, dwell }: Found): Problem[] {
  const title = roomTitle(room);
  const here = { room: room.id };
  const problems: Problem[] = [];
  if (standing.entrances.length === 0) {
    problems.push({ code: "room-without-door", values: { room: title }, ...here, records: [room.id] });
  }
  if (standing.reached.length === 0)
    problems.push({
      code: "room-without-standing-area",
      values: { room: title },
      ...here,
      records: [room.id],
    });
  for (const { opening, at, free } of standing.entrances) {
    if (free) continue;
    const values = { opening: openingInSentence(opening, look), room: title };
    problems.push({ code: "door-blocked", values, ...here, records: [opening.id], at: [at[0], at[1]] });
  }
  for (const piece of standing.unreached) {
    const area = areaOf([piece]);
    if (area < WORTH_MENTIONING) continue;
    const { at } = poleOf(piece);
    problems.push({
      code: "cannot-be-walked-to",
      values: { room: title, area: rounded(area, 2) },
      ...here,
      at: [at[0], at[1]],
    });
  }
  for (const place of dwell) {
    if (place.area > 0) continue;
    const kind = look.dwellPlacesOf(room.id).find(({ id }) => id === place.id)?.kind;
    problems.push({
      code: "dwell-place-taken",
      values: { kind: kind ? dwellKindNames[kind] : anyDwellPlace, room: title },
      ...here,
      records: [place.id],
    });
  }
  if (room.use === "plant")
    problems.push({ code: "manual-override-needed", values: { room: title }, ...here, records: [room.id] });
  return problems;
}
