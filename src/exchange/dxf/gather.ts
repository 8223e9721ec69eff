import { say } from "#engine";
import type { LineArc, LineBlock, LineBox, LineText, Linework } from "../linework/linework.ts";
import { isPlace } from "./item.ts";
import type { DxfLayer } from "./layer-table.ts";
import type { DxfLimits } from "./limits.ts";
import type { Stroke } from "./stroke.ts";
import { overLimit } from "./trouble.ts";

/** Gathers the lines of a drawing, layer by layer. */
export interface Gatherer {
  /** Index of a layer by its name as entities write it. */
  layer(name: string, hatch: boolean): number;
  /** Whether a layer is frozen: then nothing that is put in on it shows. */
  frozen(name: string): boolean;
  /** @returns Lines that were added */
  stroke(stroke: Stroke, layer: number): number;
  text(text: LineText): void;
  /** Lists a block whose content follows, up to the matching end; nested ones without lines and attributes are not listed. */
  beginBlock(block: Omit<LineBlock, "box" | "lines" | "within">): void;
  endBlock(): void;
  result(): Gathered;
}

export type Gathered = Pick<Linework, "lines" | "layerOf" | "arcOf" | "layers" | "arcs" | "texts" | "blocks">;

/** Layers that the linework can tell apart; what comes beyond shares the last. */
const mostLayers = 65_000;

/** A new, empty gatherer. */
export function gatherer(table: ReadonlyMap<string, DxfLayer>, limits: DxfLimits): Gatherer {
  let lines = new Float64Array(4 * 4096);
  let layerOf = new Uint16Array(4096);
  let arcOf = new Uint32Array(4096);
  let count = 0;
  const arcs: LineArc[] = [];
  const texts: LineText[] = [];
  const blocks: LineBlock[] = [];
  /** Indices of the blocks that have begun and not ended, outermost first. */
  const open: number[] = [];
  const layers: { name: string; lines: number; shown: boolean; colour?: string }[] = [];
  const plain = new Map<string, number>();
  const hatched = new Map<string, number>();
  const grow = (): void => {
    const [moreLines, moreLayers, moreArcs] = [
      new Float64Array(2 * lines.length),
      new Uint16Array(2 * layerOf.length),
      new Uint32Array(2 * arcOf.length),
    ];
    moreLines.set(lines);
    moreLayers.set(layerOf);
    moreArcs.set(arcOf);
    [lines, layerOf, arcOf] = [moreLines, moreLayers, moreArcs];
  };
  const boxOf = (from: number): LineBox => {
    let [x1, y1, x2, y2] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = 4 * from; i < 4 * count; i += 2) {
      x1 = Math.min(x1, lines[i]!);
      y1 = Math.min(y1, lines[i + 1]!);
      x2 = Math.max(x2, lines[i]!);
      y2 = Math.max(y2, lines[i + 1]!);
    }
    return [x1, y1, x2, y2];
  };
  const newLayer = (name: string, hatch: boolean): number => {
    const entry = table.get(name.toUpperCase());
    if (layers.length >= mostLayers) return layers.length - 1;
    layers.push({
      name: `${entry?.name ?? name}${hatch ? " (hatch)" : ""}`,
      lines: 0,
      shown: !(entry?.off || entry?.frozen),
      ...(entry?.colour ? { colour: entry.colour } : {}),
    });
    return layers.length - 1;
  };
  return {
    layer: (name, hatch) => {
      const known = hatch ? hatched : plain;
      const key = name.toUpperCase();
      const index = known.get(key) ?? newLayer(name, hatch);
      known.set(key, index);
      return index;
    },
    frozen: (name) => table.get(name.toUpperCase())?.frozen ?? false,
    stroke: (stroke, layer) => {
      const { points } = stroke;
      const before = count;
      const firstArc = arcs.length;
      // The centre of a nearly straight arc may lie beyond any plan; its lines do not.
      const sound = stroke.arcs.filter(({ x, y, radius }) => isPlace(x) && isPlace(y) && isPlace(radius));
      for (const arc of sound) arcs.push(lineArc(arc, points, layer));
      let arc = 0;
      for (let i = 0; i + 3 < points.length; i += 2) {
        const x1 = points[i]!;
        const y1 = points[i + 1]!;
        const x2 = points[i + 2]!;
        const y2 = points[i + 3]!;
        if (x1 === x2 && y1 === y2) continue;
        if (count >= limits.lines) throw overLimit(say`lines`, limits.lines);
        if (count === layerOf.length) grow();
        while (arc < sound.length && sound[arc]!.last <= i / 2) arc++;
        const inArc = arc < sound.length && sound[arc]!.first <= i / 2;
        lines[4 * count] = x1;
        lines[4 * count + 1] = y1;
        lines[4 * count + 2] = x2;
        lines[4 * count + 3] = y2;
        layerOf[count] = layer;
        arcOf[count] = inArc ? firstArc + arc + 1 : 0;
        count++;
      }
      layers[layer]!.lines += count - before;
      return count - before;
    },
    text: (text) => {
      if (texts.length >= limits.texts) throw overLimit(say`texts`, limits.texts);
      texts.push(text);
    },
    beginBlock: (block) => {
      const [x, y] = block.at;
      blocks.push({ ...block, box: [x, y, x, y], lines: [count, count], within: open.at(-1) ?? -1 });
      open.push(blocks.length - 1);
    },
    endBlock: () => {
      const index = open.pop()!;
      const block = blocks[index]!;
      const from = block.lines[0];
      if (count > from) blocks[index] = { ...block, box: boxOf(from), lines: [from, count] };
      // Copies without end of a nested block that shows and says nothing would fill the memory.
      else if (block.within >= 0 && index === blocks.length - 1 && Object.keys(block.attributes).length === 0)
        blocks.pop();
    },
    result: () => ({
      lines: lines.slice(0, 4 * count),
      layerOf: layerOf.slice(0, count),
      arcOf: arcOf.slice(0, count),
      layers,
      arcs,
      texts,
      blocks,
    }),
  };
}

const lineArc = (arc: Stroke["arcs"][number], points: ArrayLike<number>, layer: number): LineArc => {
  const start = arc.sweep > 0 ? arc.first : arc.last;
  const from = Math.atan2(points[2 * start + 1]! - arc.y, points[2 * start]! - arc.x);
  return { centre: [arc.x, arc.y], radius: arc.radius, from, to: from + Math.abs(arc.sweep), layer };
};
