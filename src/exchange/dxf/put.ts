import { say } from "#engine";
import { identity, type Matrix, placed, product } from "../plan/page/matrix.ts";
import type { Block } from "./blocks.ts";
import type { Gatherer } from "./gather.ts";
import { allPlaces, type InsertItem, type Item, isPlace } from "./item.ts";
import type { DxfLimits } from "./limits.ts";
import { placedStroke } from "./stroke.ts";
import { because, type Tally } from "./tally.ts";
import { DxfTrouble, overLimit } from "./trouble.ts";

/** What was met on the way that a person should know. */
export interface PuttingNotes {
  /** Names of blocks that put themselves in again. */
  readonly loops: ReadonlySet<string>;
  readonly missing: ReadonlySet<string>;
  readonly elsewhere: ReadonlySet<string>;
}

/** Puts items into the drawing, blocks among them. */
export interface Putter extends PuttingNotes {
  put(item: Item): void;
}

/** Where a block's content goes. */
interface Level {
  readonly matrix: Matrix;
  /** Layer that content of layer "0" takes; at the drawing's own level that is "0" itself. */
  readonly layer: string;
  /** Content of a block that is put in on a frozen layer shows with that layer only, whatever its own is. */
  readonly only: string | undefined;
  /** Names of the blocks that are open, outermost first. */
  readonly inside: readonly string[];
}

const ground: Level = { matrix: identity, layer: "0", only: undefined, inside: [] };

/** Points that never become a line (of length 0, say) must not be copied without end either. */
const mostPointsPerLine = 4;

/** Puts items into a gatherer, with blocks looked up by name in capitals. */
export function putter(
  blocks: ReadonlyMap<string, Block>,
  into: { readonly gatherer: Gatherer; readonly tally: Tally; readonly limits: DxfLimits },
): Putter {
  const { gatherer, tally, limits } = into;
  const loops = new Set<string>();
  const missing = new Set<string>();
  const elsewhere = new Set<string>();
  const used = new Set<Block>();
  let copies = 0;
  let points = 0;

  const put = (item: Item, level: Level): void => {
    points += item.kind === "stroke" ? item.stroke.points.length / 2 : 1;
    if (points > mostPointsPerLine * limits.lines)
      throw overLimit(say`points`, mostPointsPerLine * limits.lines);
    const layerName = level.only ?? (item.layer === "0" ? level.layer : item.layer);
    switch (item.kind) {
      case "stroke": {
        const stroke = placedStroke(item.stroke, level.matrix);
        if (!allPlaces(stroke.points)) tally.leftOut(say`lines of blocks`, because.noPlace);
        else if (gatherer.stroke(stroke, gatherer.layer(layerName, item.hatch)) === 0)
          tally.leftOut(say`lines`, because.noLength);
        return;
      }
      case "text": {
        const { matrix } = level;
        const [x, y] = placed(matrix, item.x, item.y);
        const along = turned(matrix, item.along);
        const up = turned(matrix, item.up);
        const length = Math.hypot(...along);
        const height = (item.height * Math.abs(along[0] * up[1] - along[1] * up[0])) / length;
        if (!isPlace(x) || !isPlace(y) || !(height > 0) || !isPlace(height)) {
          tally.leftOut(say`texts`, because.noPlace);
          return;
        }
        const turn = Math.atan2(along[1], along[0]);
        gatherer.text({ text: item.text, at: [x, y], height, turn, layer: gatherer.layer(layerName, false) });
        return;
      }
      case "insert":
        putBlock(item, { ...level, layer: layerName });
    }
  };

  const putBlock = (item: InsertItem, level: Level): void => {
    const key = item.block.toUpperCase();
    const block = blocks.get(key);
    if (!block) {
      missing.add(item.block);
      tally.leftOut("INSERT", say`its block is not in the file`);
      return;
    }
    if (block.elsewhere && block.items.length === 0) {
      elsewhere.add(block.name);
      tally.leftOut("INSERT", say`its content is in another file`);
      return;
    }
    if (level.inside.includes(key)) {
      loops.add(block.name);
      tally.leftOut("INSERT", say`its block contains itself`);
      return;
    }
    if (level.inside.length >= limits.blockDepth)
      throw new DxfTrouble({
        code: "dxf-blocks-too-deep",
        values: { limit: limits.blockDepth, block: block.name },
      });
    if (!used.has(block)) {
      used.add(block);
      tally.add(block.tally);
    }
    const inside = [...level.inside, key];
    const only = level.only ?? (gatherer.frozen(level.layer) ? level.layer : undefined);
    for (let row = 0; row < item.rows; row++) {
      for (let column = 0; column < item.columns; column++) {
        copies++;
        if (copies > limits.copies) throw overLimit(say`inserted blocks`, limits.copies);
        const matrix = product(level.matrix, copyMatrix(item, { row, column }));
        const inner = { matrix: product(matrix, shifted(block.base)), layer: level.layer, only, inside };
        const listed = listBlock(item, { name: block.name, matrix, layer: level.layer });
        for (const each of block.items) put(each, inner);
        if (listed) gatherer.endBlock();
      }
    }
  };

  /** Lists a block that begins; false where it lies at no place. */
  const listBlock = (
    item: InsertItem,
    placing: { readonly name: string; readonly matrix: Matrix; readonly layer: string },
  ): boolean => {
    const [a, b, c, d, x, y] = placing.matrix;
    if (!isPlace(x) || !isPlace(y)) return false;
    const across = Math.hypot(a, b);
    const mirrored = a * d - b * c < 0;
    gatherer.beginBlock({
      name: placing.name,
      at: [x, y],
      turn: Math.atan2(b, a),
      scale: [across, (mirrored ? -1 : 1) * Math.hypot(c, d)],
      layer: gatherer.layer(placing.layer, false),
      attributes: item.attributes,
    });
    return true;
  };

  return { loops, missing, elsewhere, put: (item) => put(item, ground) };
}

const turned = (m: Matrix, [u, v]: readonly [number, number]): readonly [number, number] => [
  m[0] * u + m[2] * v,
  m[1] * u + m[3] * v,
];

const copyMatrix = (item: InsertItem, copy: { row: number; column: number }): Matrix => {
  const [sx, sy] = item.scale;
  const [dx, dy] = [copy.column * item.spacing[0], copy.row * item.spacing[1]];
  return product(item.placing, [sx, 0, 0, sy, dx, dy]);
};

const shifted = ([x, y]: readonly [number, number]): Matrix => [1, 0, 0, 1, -x, -y];
