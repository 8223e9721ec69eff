import { english, type Said, say } from "#engine";
import type { LineArc, LineBlock, LineBox, LineText, Linework } from "../../linework/linework.ts";
import type { PlanLimits } from "../limits.ts";
import { type Clip, visiblePart } from "./clip.ts";
import type { Stroke } from "./flatten.ts";

/** What lines were drawn with. */
export interface Pen {
  /** Layer of the file, where it has layers. */
  readonly group: string | undefined;
  readonly kind: "line" | "fill" | "text";
  /** "#rrggbb", or a word for what is no plain colour. */
  readonly colour: string;
  /** [drawing units] */
  readonly width?: number;
  readonly shown: boolean;
}

/** A text with how far it runs, which the linework does not keep. [drawing units] */
export interface MeasuredText extends LineText {
  readonly width: number;
}

/** Gathers lines, pen by pen. */
export interface Collector {
  layerOf(pen: Pen): number;
  /** Puts a stroke in, as far as it shows. @returns Whether any of it did */
  stroke(stroke: Stroke, place: { readonly clip: Clip; readonly layer: number }): boolean;
  text(text: MeasuredText): void;
  /** Lists a part that is drawn several times and whose lines follow, up to the matching end; without lines it is not listed. */
  beginBlock(block: Pick<LineBlock, "name" | "at" | "turn" | "scale">): void;
  endBlock(): void;
  readonly lines: number;
  result(): CollectedLines;
}

export interface CollectedLines
  extends Pick<Linework, "lines" | "layerOf" | "arcOf" | "layers" | "arcs" | "blocks"> {
  readonly texts: readonly MeasuredText[];
  readonly box: LineBox;
}

/** More came out of the file than the limits allow. */
export class OverLimit extends Error {
  readonly what: Said;
  readonly limit: number;
  constructor(what: Said, limit: number) {
    super(`${english(what)} over ${limit}`);
    this.what = what;
    this.limit = limit;
  }
}

/** A line that is shorter than this against its coordinates is a point that a matrix has rounded. */
const noLength = 1e-12;

/** Pens that are told apart; shaded pictures drawn as thousands of colours are not worth more. */
const mostPens = 2000;

/**
 * A new, empty collector.
 *
 * @param options.slack - How far outside of a clip still counts as on its edge. [drawing units]
 */
export function collector(options: { limits: PlanLimits; slack: number }): Collector {
  const { limits, slack } = options;
  const lines: number[] = [];
  const layerOf: number[] = [];
  const arcOf: number[] = [];
  const arcs: LineArc[] = [];
  const texts: MeasuredText[] = [];
  const blocks: LineBlock[] = [];
  /** Indices of the blocks that have begun and not ended, outermost first. */
  const open: number[] = [];
  const pens = new Map<string, number>();
  const layers: { name: string; lines: number; shown: boolean; colour?: string }[] = [];
  const add = (line: readonly [number, number, number, number], layer: number, arc: number): boolean => {
    const length = Math.hypot(line[2] - line[0], line[3] - line[1]);
    const size = Math.max(Math.abs(line[0]), Math.abs(line[1]));
    if (!line.every(Number.isFinite) || !(length > noLength * size)) return false;
    if (layerOf.length >= limits.lines) throw new OverLimit(say`lines`, limits.lines);
    lines.push(...line);
    layerOf.push(layer);
    arcOf.push(arc);
    layers[layer]!.lines++;
    return true;
  };
  return {
    get lines() {
      return layerOf.length;
    },
    layerOf: (pen) => {
      const many = pens.size >= mostPens;
      const name = nameOf(pen);
      const key = `${pen.shown}${name}`;
      const known = pens.get(key);
      if (known !== undefined) return known;
      if (many) return layers.length - 1;
      const colour = /^#[0-9a-f]{6}$/.test(pen.colour) ? { colour: pen.colour } : {};
      layers.push(
        pens.size === mostPens - 1
          ? { name: "further pens", lines: 0, shown: true }
          : { name, lines: 0, shown: pen.shown, ...colour },
      );
      pens.set(key, layers.length - 1);
      return layers.length - 1;
    },
    stroke: (stroke, { clip, layer }) => {
      const { points } = stroke;
      const parts = visibleParts(points, clip, slack);
      const arcAfter = new Map<number, number>();
      for (const arc of stroke.circular) {
        // An arc that is cut by a clip is not seen whole, so that it says nothing of a door.
        const whole = parts
          .slice(arc.first, arc.last)
          .every((part) => part && part[0] === 0 && part[1] === 1);
        if (!whole || !Number.isFinite(arc.x + arc.y + arc.radius)) continue;
        const angle = (corner: number): number =>
          Math.atan2(points[2 * corner + 1]! - arc.y, points[2 * corner]! - arc.x);
        const from = angle(arc.sweep > 0 ? arc.first : arc.last);
        const sweep = Math.abs(arc.sweep) > 2 * Math.PI - 0.02 ? 2 * Math.PI : Math.abs(arc.sweep);
        arcs.push({ centre: [arc.x, arc.y], radius: arc.radius, from, to: from + sweep, layer });
        for (let i = arc.first; i < arc.last; i++) arcAfter.set(i, arcs.length);
      }
      let any = false;
      for (const [i, part] of parts.entries()) {
        if (!part) continue;
        const [x1, y1, x2, y2] = [points[2 * i]!, points[2 * i + 1]!, points[2 * i + 2]!, points[2 * i + 3]!];
        const along = (t: number): [number, number] =>
          t === 0 ? [x1, y1] : t === 1 ? [x2, y2] : [x1 + (x2 - x1) * t, y1 + (y2 - y1) * t];
        any = add([...along(part[0]), ...along(part[1])], layer, arcAfter.get(i) ?? 0) || any;
      }
      return any;
    },
    text: (text) => {
      if (texts.length >= limits.texts) throw new OverLimit(say`texts`, limits.texts);
      if ([...text.at, text.height, text.turn].every(Number.isFinite) && text.height > 0) texts.push(text);
    },
    beginBlock: (block) => {
      const from = layerOf.length;
      const empty = { layer: 0, box: [0, 0, 0, 0], lines: [from, from], attributes: {} } as const;
      blocks.push({ ...block, ...empty, within: open.at(-1) ?? -1 });
      open.push(blocks.length - 1);
    },
    endBlock: () => {
      const index = open.pop()!;
      const block = blocks[index]!;
      const from = block.lines[0];
      // What lies within it would have brought lines: it is the last of the list.
      if (layerOf.length === from) blocks.pop();
      else
        blocks[index] = {
          ...block,
          layer: layerOf.at(-1)!,
          box: boxOf(lines, 4 * from),
          lines: [from, layerOf.length],
        };
    },
    result: () => ({
      lines: Float64Array.from(lines),
      layerOf: Uint16Array.from(layerOf),
      arcOf: Uint32Array.from(arcOf),
      layers,
      arcs,
      texts,
      blocks,
      box: boxOf(lines),
    }),
  };
}

const nameOf = (pen: Pen): string => {
  const width = pen.width === undefined ? "" : ` ${Number(pen.width.toFixed(2))}`;
  const name = pen.kind === "text" ? "text" : `${pen.kind} ${pen.colour}${width}`;
  return pen.group === undefined ? name : `${pen.group}: ${name}`;
};

const visibleParts = (
  points: readonly number[],
  clip: Clip,
  slack: number,
): (readonly [number, number] | undefined)[] => {
  const parts: (readonly [number, number] | undefined)[] = [];
  for (let i = 0; i + 3 < points.length; i += 2)
    parts.push(visiblePart(clip, [points[i]!, points[i + 1]!, points[i + 2]!, points[i + 3]!], slack));
  return parts;
};

const boxOf = (lines: readonly number[], from = 0): LineBox => {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = from; i < lines.length; i += 2) {
    x0 = Math.min(x0, lines[i]!);
    x1 = Math.max(x1, lines[i]!);
    y0 = Math.min(y0, lines[i + 1]!);
    y1 = Math.max(y1, lines[i + 1]!);
  }
  return x0 <= x1 ? [x0, y0, x1, y1] : [0, 0, 0, 0];
};
