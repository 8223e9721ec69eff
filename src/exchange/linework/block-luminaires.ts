import type { Metres, Point, Radians } from "#engine";
import type { LineBlock, Linework } from "./linework.ts";

/** Blocks of one name, for a person to say once what they stand for. */
export interface BlockKind {
  readonly name: string;
  readonly count: number;
  /** Longer and shorter side of the first one that has lines. [m] */
  readonly length: Metres;
  readonly width: Metres;
  /** Names of the layers that they are put on. */
  readonly layers: readonly string[];
}

/** Where a block stands for a luminaire. */
export interface BlockLuminaire {
  /** Middle of its outline. [m] */
  readonly at: Point;
  /** Direction of its longer side, 0 ≤ turn < π. [rad] */
  readonly turn: Radians;
  /** Longer and shorter side; 0 where the block has no lines, and a person must say. [m] */
  readonly length: Metres;
  readonly width: Metres;
  readonly layer: string;
  /** What the block's attributes say: a type, a circuit. */
  readonly attributes: Readonly<Record<string, string>>;
}

/** How plan metres follow from drawing units: drawing point · metres − shift. */
export interface DrawingPlace {
  /** Metres in one drawing unit; the drawing's own proposal if absent. */
  readonly metres?: Metres;
  /** Plan point + shift = drawing point in metres; none if absent. [m] */
  readonly shift?: Point;
  /** Names of layers; those on others are passed over. All of them if absent. */
  readonly layers?: readonly string[];
}

/**
 * Names of all blocks of a drawing, nested ones too, with how often each is put in; the most frequent first.
 *
 * @param linework - The drawing. @param place.metres - Metres in one drawing unit.
 */
export function blockKinds(linework: Linework, place: DrawingPlace = {}): readonly BlockKind[] {
  const kinds = new Map<string, LineBlock[]>();
  for (const block of linework.blocks) {
    const key = block.name.toUpperCase();
    const list = kinds.get(key);
    if (list) list.push(block);
    else kinds.set(key, [block]);
  }
  return [...kinds.values()]
    .map((list): BlockKind => {
      const first = list.find(({ lines: [from, to] }) => to > from) ?? list[0]!;
      const { length, width } = luminaireOf(first, linework, place);
      const layers = [...new Set(list.map(({ layer }) => linework.layers[layer]!.name))];
      return { name: list[0]!.name, count: list.length, length, width, layers };
    })
    .sort((a, b) => b.count - a.count || a.name.localeCompare(b.name));
}

/**
 * Place, turn and size of every luminaire that a block stands for.
 *
 * The size is that of the block's lines along its own axes, as put in: scaled, and the longer side is the length.
 *
 * @param linework - The drawing. @param blockName - Name of the block, capitals or not. @param place - Unit, shift, layers.
 * @returns One a block put in, nested ones too, in the order of the drawing.
 * @example A block of 1.2 m × 0.3 m put in at (3, 2) with its base in the middle, turned 90°: at (3, 2), turn π/2, 1.2 m, 0.3 m
 */
export function luminairesOfBlock(
  linework: Linework,
  blockName: string,
  place: DrawingPlace = {},
): readonly BlockLuminaire[] {
  const key = blockName.toUpperCase();
  return linework.blocks.flatMap((block): BlockLuminaire[] => {
    if (block.name.toUpperCase() !== key) return [];
    const luminaire = luminaireOf(block, linework, place);
    return place.layers === undefined || place.layers.includes(luminaire.layer) ? [luminaire] : [];
  });
}

/** What one block would be as a luminaire: the middle of its lines, its longer side and its turn. */
export function luminaireOf(block: LineBlock, linework: Linework, place: DrawingPlace): BlockLuminaire {
  const metres = place.metres ?? linework.unit.metres;
  const [dx, dy] = place.shift ?? [0, 0];
  const [ux, uy] = [Math.cos(block.turn), Math.sin(block.turn)];
  let [s1, s2, t1, t2] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 4 * block.lines[0]; i < 4 * block.lines[1]; i += 2) {
    const [x, y] = [linework.lines[i]! - block.at[0], linework.lines[i + 1]! - block.at[1]];
    const [s, t] = [x * ux + y * uy, y * ux - x * uy];
    s1 = Math.min(s1, s);
    s2 = Math.max(s2, s);
    t1 = Math.min(t1, t);
    t2 = Math.max(t2, t);
  }
  if (s1 > s2) [s1, s2, t1, t2] = [0, 0, 0, 0];
  const [along, across] = [(s2 - s1) * metres, (t2 - t1) * metres];
  const [s, t] = [(s1 + s2) / 2, (t1 + t2) / 2];
  return {
    at: [(block.at[0] + s * ux - t * uy) * metres - dx, (block.at[1] + s * uy + t * ux) * metres - dy],
    turn: halfTurn(across > along ? block.turn + Math.PI / 2 : block.turn),
    length: Math.max(along, across),
    width: Math.min(along, across),
    layer: linework.layers[block.layer]!.name,
    attributes: block.attributes,
  };
}

/** Either end of a luminaire may come first. Rounding must not turn 0 into π. */
const halfTurn = (turn: Radians): Radians => {
  const within = ((turn % Math.PI) + Math.PI) % Math.PI;
  return Math.PI - within < 1e-9 ? 0 : within;
};
