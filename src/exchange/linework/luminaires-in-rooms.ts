import { type Luminaire, type Metres, outlineContains, type Point, type Radians, type Room } from "#engine";
import type { DrawingBlock } from "../survey.ts";
import { tidy } from "../tidy.ts";

/** What a person said once of a block. */
export interface LuminaireBlock {
  /** Name of the block, capitals or not. */
  readonly name: string;
  /** What the label calls it; the block's own attribute if absent. */
  readonly type?: string;
  /** Power drawn from the mains. [W] */
  readonly power?: number;
}

/** A drawing with its blocks, where it lies in the plan. */
export interface DrawingWithBlocks {
  readonly id: string;
  readonly blocks: readonly DrawingBlock[];
  /** Where the drawing's own origin lies in the plan; (0, 0) if absent. [m] */
  readonly origin?: Point;
  readonly turn?: Radians;
}

/** Side of a luminaire whose block has no lines. [m] @source COMMON-PRACTICE */
const usualSide: Metres = 0.6;

/**
 * Luminaires that the blocks of a drawing stand for, each in the room that it lies in.
 *
 * A luminaire's id comes from the drawing and from its place on it: taken again, it is the same luminaire, and two blocks on
 * top of each other are one.
 *
 * @param drawing - Its blocks and where it lies. @param said - Which blocks are luminaires. @param rooms - Of its storey.
 * @returns The luminaires under the ceilings of their rooms, and how many lie in no room.
 * @example A block in the middle of one room, said to be a luminaire of 36 W: one luminaire, `outside` 0
 */
export function luminairesInRooms(
  drawing: DrawingWithBlocks,
  said: readonly LuminaireBlock[],
  rooms: readonly Room[],
): { readonly luminaires: readonly Luminaire[]; readonly outside: number } {
  const luminaires = new Map<string, Luminaire>();
  const outside = new Set<string>();
  const { origin = [0, 0], turn = 0 } = drawing;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  for (const { name, type, power } of said) {
    const block = drawing.blocks.find((one) => one.name.toUpperCase() === name.toUpperCase());
    for (const place of block?.places ?? []) {
      const [x, y] = place.at;
      const at: Point = [tidy(origin[0] + x * c - y * s), tidy(origin[1] + x * s + y * c)];
      const id = `luminaire-${drawing.id}-${Math.round(100 * x)}-${Math.round(100 * y)}`;
      const room = rooms.find((one) => liesIn(one, at));
      if (!room) {
        outside.add(id);
        continue;
      }
      const kind = type ?? place.type;
      luminaires.set(id, {
        id,
        room: room.id,
        name: "",
        at,
        height: room.ceilingHeight,
        mounting: room.ceilingGrid ? "flush" : "surface",
        hot: false,
        length: place.length || usualSide,
        width: place.width || place.length || usualSide,
        turn: place.turn + turn,
        ...(kind === undefined ? {} : { type: kind }),
        ...(power === undefined ? {} : { power }),
        ...(place.circuit === undefined ? {} : { circuit: place.circuit }),
      });
    }
  }
  return { luminaires: [...luminaires.values()], outside: outside.size };
}

const liesIn = ({ outline, holes }: Room, at: Point): boolean =>
  outlineContains(outline, at) && !holes.some((hole) => outlineContains(hole, at));
