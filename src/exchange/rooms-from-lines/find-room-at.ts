import Flatbush from "flatbush";
import type { Metres, Point } from "#engine";
import type { LineBox, Linework } from "../linework/linework.ts";
import { boxOf, inPiece } from "../region.ts";
import type { FoundOpening, FoundRoom } from "./found.ts";
import { layerChoices } from "./layer-choices.ts";
import { namedByLayers } from "./layer-names.ts";
import { planLines } from "./plan-lines.ts";
import { roomsInLines } from "./rooms-in-lines.ts";

/** Where the lines of a drawing lie: built once, for any number of clicks. */
export interface LineIndex {
  /** Numbers of the lines that touch a box in drawing units, ascending. */
  readonly within: (box: LineBox) => readonly number[];
}

export interface FindRoomAtOptions {
  /** Metres in one drawing unit; the drawing's own proposal if absent. */
  readonly metres?: Metres;
  /** Plan point + shift = drawing point in metres; none if absent. [m] */
  readonly shift?: Point;
  /** Names of the layers to look at; the finder tries several choices if absent. */
  readonly layers?: readonly string[];
  /** Ends closer than this belong together. [m] */
  readonly tolerance?: Metres;
  /** Made by `lineIndex` of the same drawing; made anew at each call if absent. */
  readonly index?: LineIndex;
}

/** One room with its openings, in plan metres. */
export interface RoomAt {
  readonly room: FoundRoom;
  /** Its openings; `rooms` tells on which side it lies: 0 there, −1 on the other. */
  readonly openings: readonly FoundOpening[];
  /** Layers that were taken for walls and the like. */
  readonly layers: readonly string[];
}

/** Ends that a draughtsman missed by this much were meant to meet. [m] @source COMMON-PRACTICE */
const TOLERANCE: Metres = 0.015;
/** Half the side of the part of the plan that is looked at, and again wherever the room goes on beyond it. [m] */
const REACHES: readonly Metres[] = [8, 20, 80];
/** Walls and door leaves beyond the room are needed to tell what bounds it. [m] */
const MARGIN: Metres = 1.5;
/** An earlier choice of layers holds more lines: a later one must be surer by this. */
const SURER = 0.05;
/** No other choice of layers is worth the wait from here on. */
const SUREST = 0.97;
/** Choices of layers that differ by this share of their lines are one. */
const LITTLE = 0.03;
/** More lines than this at once would keep a person waiting. */
const MOST_LINES = 40_000;

/** Sorts the lines of a drawing into boxes. */
export function lineIndex({ lines, layerOf }: Pick<Linework, "lines" | "layerOf">): LineIndex {
  if (layerOf.length === 0) return { within: () => [] };
  const index = new Flatbush(layerOf.length);
  for (let i = 0; i < layerOf.length; i++) {
    const [a, b, c, d] = [lines[4 * i]!, lines[4 * i + 1]!, lines[4 * i + 2]!, lines[4 * i + 3]!];
    index.add(Math.min(a, c), Math.min(b, d), Math.max(a, c), Math.max(b, d));
  }
  index.finish();
  return { within: ([x1, y1, x2, y2]) => index.search(x1, y1, x2, y2).sort((i, j) => i - j) };
}

/**
 * The room that a point lies in: click inside a room, and that one is found, whatever the rest of the plan looks like.
 *
 * Only the lines around the point are looked at, in steps, until the room ends well within them.
 *
 * @param linework - The drawing. @param point - In the room, plan metres. [m] @param options - Unit, shift, layers, index.
 * @returns The surest room round the point; undefined where no closed one is found.
 * @source DERIVED-HERE
 * @example In the middle of a drawn square of 4 m: that square, 16 m²
 */
export function findRoomAt(
  linework: Linework,
  point: Point,
  options: FindRoomAtOptions = {},
): RoomAt | undefined {
  const metres = options.metres ?? linework.unit.metres;
  const [sx, sy] = options.shift ?? [0, 0];
  const index = options.index ?? lineIndex(linework);
  const [x, y] = [(point[0] + sx) / metres, (point[1] + sy) / metres];
  const shown = linework.layers.flatMap((layer, number) => (layer.shown && layer.lines > 0 ? [number] : []));
  const chosen = layerChoices(linework, options.layers);
  // What is called furniture may be what bounds the room after all.
  const choices = options.layers === undefined ? [...chosen, shown] : chosen;
  for (const reach of REACHES) {
    const half = reach / metres;
    const box: LineBox = [x - half, y - half, x + half, y + half];
    const candidates = index.within(box);
    if (candidates.length > MOST_LINES) return undefined;
    const tried: number[][] = [];
    let best: RoomAt | undefined;
    for (const choice of choices) {
      const layers = new Set(choice);
      const here = candidates.filter((line) => layers.has(linework.layerOf[line]!));
      if (here.length === 0 || tried.some((one) => alike(one, here))) continue;
      tried.push(here);
      const found = roomAmong(linework, here, { metres, layers, box, point, options });
      if (found && (!best || found.room.confidence > best.room.confidence + SURER)) best = found;
      if (best && best.room.confidence > SUREST) break;
    }
    if (best) return best;
  }
  return undefined;
}

/** Whether two ascending lists of lines differ by next to nothing: choices of layers that differ elsewhere in the drawing only. */
function alike(one: readonly number[], other: readonly number[]): boolean {
  const known = new Set(one);
  const shared = other.reduce((sum, line) => sum + (known.has(line) ? 1 : 0), 0);
  return one.length + other.length - 2 * shared < LITTLE * one.length;
}

function roomAmong(
  linework: Linework,
  candidates: readonly number[],
  at: {
    readonly metres: Metres;
    readonly layers: ReadonlySet<number>;
    readonly box: LineBox;
    readonly point: Point;
    readonly options: FindRoomAtOptions;
  },
): RoomAt | undefined {
  const { metres, layers, box, point, options } = at;
  const plan = planLines(linework, { metres, layers, box, candidates });
  const names = linework.layers.map(({ name }) => name);
  const found = roomsInLines(plan, { names, tolerance: options.tolerance ?? TOLERANCE });
  const [sx, sy] = options.shift ?? [0, 0];
  const [dx, dy] = [plan.shift[0] - sx, plan.shift[1] - sy];
  const here: Point = [point[0] - dx, point[1] - dy];
  const number = found.rooms.findIndex(({ outline, holes }) => inPiece(here, { outline, holes }));
  const nameless = found.rooms[number];
  if (!nameless) return undefined;
  const [room = nameless] = namedByLayers([nameless], { linework, metres, shift: plan.shift });
  const [x1, y1, x2, y2] = boxOf(room.outline);
  const edge = box.map((value, k) => value * metres - plan.shift[(k & 1) as 0 | 1]);
  if (x1 < edge[0]! + MARGIN || y1 < edge[1]! + MARGIN || x2 > edge[2]! - MARGIN || y2 > edge[3]! - MARGIN)
    return undefined;
  const moved = ([u, v]: Point): Point => [u + dx, v + dy];
  const own = (other: number): number => (other === number ? 0 : -1);
  return {
    room: { ...room, outline: room.outline.map(moved), holes: room.holes.map((hole) => hole.map(moved)) },
    openings: found.openings
      .filter(({ rooms }) => rooms.includes(number))
      .map((opening) => ({
        ...opening,
        from: moved(opening.from),
        to: moved(opening.to),
        rooms: [own(opening.rooms[0]), own(opening.rooms[1])],
        ...(opening.leaf
          ? {
              leaf: {
                hinge: moved(opening.leaf.hinge),
                latch: moved(opening.leaf.latch),
                open: moved(opening.leaf.open),
              },
            }
          : {}),
      })),
    layers: [...layers].map((layer) => names[layer]!),
  };
}
