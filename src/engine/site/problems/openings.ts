import { type Problem, say } from "../../check/index.ts";
import { distanceToRings, FACE_FIT, type Point } from "../../geometry/index.ts";
import type { Metres } from "../../quantity/index.ts";
import { roomInSentence, roomTitle, type SiteLookUp } from "../look-up.ts";
import { nameOfOpening, openingInSentence, rounded } from "../names.ts";
import { isWalkable, openingWidth, revealOf } from "../reveal.ts";
import type { Opening, Room } from "../site.ts";
import { isUsableOutline } from "./outlines.ts";

/** Nobody gets through a door that is narrower: two body radii. [m] */
const LEAST_DOOR: Metres = 0.4;
/** A sill above this is no threshold. [m] */
const HIGHEST_THRESHOLD: Metres = 0.3;
/** Walls outside this range are asked about. [m] */
const THICKEST_WALL: Metres = 1.5;

/**
 * What is wrong with the openings of a site: off their walls, upside down, too wide or too narrow, leading nowhere.
 *
 * @param look - The site's records at hand.
 * @returns One problem for each fault.
 * @example A door drawn half a metre inside the room gives "opening-off-wall" with that distance
 */
export function openingProblems(look: SiteLookUp): readonly Problem[] {
  return [
    ...look.site.openings.flatMap((opening) => [...ownFaults(opening, look), ...placeFaults(opening, look)]),
    ...overlapping(look),
  ];
}

function ownFaults(opening: Opening, look: SiteLookUp): Problem[] {
  const name = nameOfOpening(opening, look);
  const owner = { ...roomOf(opening, look), records: [opening.id] };
  const numbers = [
    [say`from`, opening.from[0] + opening.from[1]],
    [say`to`, opening.to[0] + opening.to[1]],
    [say`sill`, opening.sill],
    [say`head`, opening.head],
    [say`thickness`, opening.thickness],
    [say`angle`, opening.angle],
  ] as const;
  const missing = numbers.filter(([, value]) => !Number.isFinite(value));
  if (missing.length > 0)
    return missing.map(([field]) => ({ code: "number-missing", values: { what: name, field }, ...owner }));
  const problems: Problem[] = [];
  const width = openingWidth(opening);
  const widthValues = { opening: name, width: rounded(width, 2) };
  if (width < 0.01) problems.push({ code: "opening-without-width", values: widthValues, ...owner });
  else if (isWalkable(opening.kind) && width < LEAST_DOOR)
    problems.push({ code: "door-too-narrow", values: widthValues, ...owner });
  if (opening.head <= opening.sill) {
    problems.push({
      code: "opening-upside-down",
      values: { opening: name, sill: rounded(opening.sill, 2), head: rounded(opening.head, 2) },
      ...owner,
    });
  }
  if (isWalkable(opening.kind) && opening.sill > HIGHEST_THRESHOLD) {
    problems.push({
      code: "door-above-floor",
      values: { opening: name, sill: rounded(opening.sill, 2) },
      ...owner,
    });
  }
  if (opening.thickness < 0 || opening.thickness > THICKEST_WALL) {
    problems.push({
      code: "opening-thickness-unusual",
      values: { opening: openingInSentence(opening, look), thickness: rounded(opening.thickness, 2) },
      ...owner,
    });
  }
  if (opening.rooms[0] === opening.rooms[1]) {
    problems.push({
      code: "opening-joins-same-room",
      values: { opening: name, room: roomInSentence(look.roomById.get(opening.rooms[0])) },
      ...owner,
    });
  }
  if (opening.kind === "door" && !opening.rooms.includes(opening.opensInto)) {
    problems.push({ code: "door-swings-elsewhere", values: { opening: name }, ...owner });
  }
  return problems;
}

function placeFaults(opening: Opening, look: SiteLookUp): Problem[] {
  const first = look.roomById.get(opening.rooms[0]);
  const second = opening.rooms[1] === null ? undefined : look.roomById.get(opening.rooms[1]);
  if (
    !first ||
    !isUsableOutline(first.outline) ||
    ![...opening.from, ...opening.to, opening.thickness].every(Number.isFinite)
  )
    return [];
  const name = nameOfOpening(opening, look);
  const at = middle(opening.from, opening.to);
  const owner = { ...roomOf(opening, look), records: [opening.id], at };
  const problems: Problem[] = [];
  const off = distanceToWalls(first, at);
  if (off > FACE_FIT) {
    problems.push({
      code: "opening-off-wall",
      values: { opening: name, room: roomTitle(first), distance: rounded(off, 2) },
      ...owner,
    });
  } else if (alongIt(opening).some((place) => distanceToWalls(first, place) > FACE_FIT)) {
    problems.push({
      code: "opening-wider-than-wall",
      values: { opening: name, width: rounded(openingWidth(opening), 2) },
      ...owner,
    });
  }
  if (off <= FACE_FIT && second && second.id !== first.id && isUsableOutline(second.outline)) {
    const { far } = revealOf(opening, first);
    const missing = distanceToWalls(second, middle(...far));
    if (missing > FACE_FIT) {
      problems.push({
        code: "opening-misses-second-room",
        values: { opening: name, room: roomTitle(second), distance: rounded(missing, 2) },
        ...owner,
      });
    }
  }
  const lowest = [first, second]
    .filter((room) => room !== undefined)
    .sort((a, b) => a.ceilingHeight - b.ceilingHeight)[0] as Room;
  if (opening.head > lowest.ceilingHeight + 1e-6) {
    const values = {
      opening: name,
      head: rounded(opening.head, 2),
      room: roomTitle(lowest),
      ceiling: rounded(lowest.ceilingHeight, 2),
    };
    problems.push({ code: "opening-above-ceiling", values, ...owner });
  }
  return problems;
}

function overlapping(look: SiteLookUp): Problem[] {
  const problems: Problem[] = [];
  for (const room of look.site.rooms) {
    const openings = look.openingsOf(room.id);
    for (const [i, one] of openings.entries()) {
      for (const other of openings.slice(i + 1)) {
        // A pair that joins the same two rooms is met twice: it belongs to the room named first.
        if (one.rooms[0] !== room.id || !inSameWall(one, other)) continue;
        if (one.sill >= other.head || other.sill >= one.head) continue;
        problems.push({
          code: "openings-overlap",
          values: { opening: nameOfOpening(one, look), other: openingInSentence(other, look) },
          room: room.id,
          records: [one.id, other.id],
          at: middle(one.from, one.to),
        });
      }
    }
  }
  return problems;
}

/** Whether the two share more than a centimetre of one line. */
function inSameWall(one: Opening, other: Opening): boolean {
  const width = openingWidth(one);
  if (width === 0) return false;
  const [ux, uy] = [(one.to[0] - one.from[0]) / width, (one.to[1] - one.from[1]) / width];
  const along = (p: Point): number => (p[0] - one.from[0]) * ux + (p[1] - one.from[1]) * uy;
  const away = (p: Point): number => Math.abs((p[0] - one.from[0]) * uy - (p[1] - one.from[1]) * ux);
  if (away(other.from) > FACE_FIT || away(other.to) > FACE_FIT) return false;
  const [a, b] = [along(other.from), along(other.to)];
  return Math.min(width, Math.max(a, b)) - Math.max(0, Math.min(a, b)) > 0.01;
}

const alongIt = ({ from, to }: Opening): Point[] =>
  [0, 0.25, 0.75, 1].map((t) => [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])]);

const middle = (a: Point, b: Point): readonly [number, number] => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

const roomOf = (opening: Opening, look: SiteLookUp): { readonly room?: string } =>
  look.roomById.has(opening.rooms[0]) ? { room: opening.rooms[0] } : {};

const distanceToWalls = (room: Room, p: Point): Metres => distanceToRings(p, [room.outline, ...room.holes]);
