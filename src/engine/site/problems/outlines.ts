import { type Problem, say, type Words } from "../../check/index.ts";
import { type Outline, type Point, selfCrossing, signedArea } from "../../geometry/index.ts";
import { roomInSentence, roomTitle, type SiteLookUp } from "../look-up.ts";
import { rounded, thingInSentence } from "../names.ts";

/** Corners nearer than this are one corner: half the grain of the booleans would merge them anyway. [m] */
const SAME_CORNER = 1e-5;
/** Beyond 10 000 km from the origin coordinates no longer hold a millimetre. [m] */
const FARTHEST = 1e7;
/** An outline with less area than this encloses nothing that a plan shows. [m²] */
const LEAST_AREA = 1e-4;

/**
 * What is wrong with the outlines of a site, record by record.
 *
 * @param look - The site's records at hand.
 * @returns Problems of rooms, holes, barred ceiling areas, floor pieces and obstacles.
 * @example A room drawn as a figure of eight gives "outline-self-crossing" with the place of the crossing
 */
export function outlineProblems(look: SiteLookUp): readonly Problem[] {
  const { site, roomById } = look;
  return [
    ...site.rooms.flatMap((room) => {
      const owner = { room: room.id, records: [room.id] };
      return [
        ...faultsOf(room.outline, { what: say`The outline of room ${roomTitle(room)}`, ...owner }),
        ...room.holes.flatMap((hole) =>
          faultsOf(hole, { what: say`A hole of room ${roomTitle(room)}`, ...owner }),
        ),
        ...room.noDevices.flatMap((area) =>
          faultsOf(area, { what: say`A barred ceiling area of room ${roomTitle(room)}`, ...owner }),
        ),
      ];
    }),
    ...site.floorPieces.flatMap((piece) =>
      faultsOf(piece.footprint, {
        what:
          piece.kind === "flight"
            ? say`A flight of room ${roomInSentence(roomById.get(piece.room))}`
            : say`A landing of room ${roomInSentence(roomById.get(piece.room))}`,
        room: piece.room,
        records: [piece.id],
      }),
    ),
    ...site.obstacles.flatMap((obstacle) =>
      faultsOf(obstacle.footprint, {
        what: say`The footprint of ${thingInSentence(obstacle)}`,
        room: obstacle.room,
        records: [obstacle.id],
      }),
    ),
  ];
}

/**
 * Whether an outline can be calculated with: no fault of severity "must".
 *
 * @param outline - Any ring. [m]
 * @returns True where it has three corners, finite, not crossing, and encloses area.
 * @example A figure of eight is not usable
 */
export function isUsableOutline(outline: Outline): boolean {
  return faultsOf(outline, { what: "", records: [] }).every(
    (fault) => fault.code === "outline-doubled-corner",
  );
}

interface Owner {
  readonly what: Words;
  readonly room?: string;
  readonly records: readonly string[];
}

function faultsOf(outline: Outline, { what, ...owner }: Owner): Problem[] {
  const broken = outline.findIndex(([x, y]) => !(Math.abs(x) < FARTHEST && Math.abs(y) < FARTHEST));
  if (broken >= 0) return [{ code: "outline-not-a-number", values: { what, corner: broken + 1 }, ...owner }];
  const problems: Problem[] = [];
  const corners = outline.filter((corner, i) => {
    const before = outline[(i + outline.length - 1) % outline.length] as Point;
    const doubled =
      outline.length > 1 && Math.hypot(corner[0] - before[0], corner[1] - before[1]) < SAME_CORNER;
    if (doubled)
      problems.push({
        code: "outline-doubled-corner",
        values: { what, corner: i + 1 },
        at: [corner[0], corner[1]],
        ...owner,
      });
    return !doubled;
  });
  if (corners.length < 3) {
    return [
      {
        code: "outline-corners-missing",
        values: { what, count: Math.max(corners.length, Math.min(1, outline.length)) },
        ...owner,
      },
    ];
  }
  const crossing = selfCrossing(corners);
  if (crossing) {
    const [x, y] = crossing;
    problems.push({
      code: "outline-self-crossing",
      values: { what, x: rounded(x, 2), y: rounded(y, 2) },
      at: [x, y],
      ...owner,
    });
  } else if (Math.abs(signedArea(corners)) < LEAST_AREA) {
    problems.push({ code: "outline-without-area", values: { what }, ...owner });
  }
  return problems;
}
