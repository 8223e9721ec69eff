import type { Metres, Point } from "#engine";
import type { LineBox, Linework } from "../linework/linework.ts";
import { ajarDoors } from "./ajar-doors.ts";
import { inBox } from "./box-index.ts";
import { chainArcs } from "./chain-arcs.ts";
import { type DoorLeaf, leafWidths, type SwingArc, swingArc, widestNamedLeaf } from "./door-arcs.ts";
import { mayNameRooms, meaningOf } from "./layer-words.ts";

/** Drawings within this distance of the origin keep their coordinates. [m] */
const farthest = 1000;

/** Lines of a plan in metres near the origin, without the quarter circles of doors. */
export interface PlanLines {
  /** x1 y1 x2 y2 of each. [m] */
  readonly lines: Float64Array;
  /** Index into the layers of the drawing. */
  readonly layerOf: Uint16Array;
  readonly swings: readonly SwingArc[];
  /** Doors that stand ajar before walls that are drawn through; they close nothing. */
  readonly ajar: readonly DoorLeaf[];
  readonly texts: readonly PlanText[];
  /** Plan point + shift = drawing point in metres. */
  readonly shift: Point;
}

export interface PlanText {
  readonly text: string;
  /** About the middle of the lettering. [m] */
  readonly at: Point;
  readonly height: Metres;
  readonly layer: number;
}

/**
 * Takes the chosen layers of one part of a drawing, in metres.
 *
 * @param linework - The drawing. @param choice.metres - Metres in one drawing unit. @param choice.layers - Indices of the layers to look at.
 * @param choice.box - Part of the drawing, in its own units; all of it if absent.
 * @param choice.candidates - Numbers of the lines that may lie in the box, ascending; those that only cross it count as well.
 */
export function planLines(
  linework: Linework,
  choice: {
    readonly metres: Metres;
    readonly layers: ReadonlySet<number>;
    readonly box?: LineBox;
    readonly candidates?: readonly number[];
  },
): PlanLines {
  const { metres, layers } = choice;
  const box = choice.box ?? boxOfLines(linework.lines);
  // A drawing keeps its coordinates, unless they are so far out that figures would be long and lose their digits.
  const far = box.some((edge) => Math.abs(edge * metres) > farthest);
  const shift: Point = far ? [Math.floor(box[0] * metres), Math.floor(box[1] * metres)] : [0, 0];
  const inside = (x: number, y: number): boolean => inBox(box, x, y);
  const near = ([x, y]: Point, reach: number): boolean =>
    x > box[0] - reach && x < box[2] + reach && y > box[1] - reach && y < box[3] + reach;
  const lines: number[] = [];
  const layerOf: number[] = [];
  const widestOf = (layer: number): Metres =>
    meaningOf(linework.layers[layer]?.name ?? "") === "door" ? widestNamedLeaf : leafWidths[1];
  const swingOf = linework.arcs.map((arc) =>
    near(arc.centre, arc.radius) ? swingArc(arc, { metres, widest: widestOf(arc.layer) }) : undefined,
  );
  const ajar = ajarDoors(linework, { metres, near });
  const doorArcs = swingOf.filter((arc) => arc !== undefined);
  const { candidates } = choice;
  const count = candidates?.length ?? linework.layerOf.length;
  for (let k = 0; k < count; k++) {
    const i = candidates?.[k] ?? k;
    if (!layers.has(linework.layerOf[i]!) || ajar.lines.has(i)) continue;
    const arc = linework.arcOf[i]!;
    if (arc > 0 && swingOf[arc - 1] !== undefined) continue;
    const [x1, y1, x2, y2] = [0, 1, 2, 3].map((k) => linework.lines[4 * i + k]!) as [
      number,
      number,
      number,
      number,
    ];
    if (candidates === undefined && !inside(x1, y1) && !inside(x2, y2)) continue;
    lines.push(
      x1 * metres - shift[0],
      y1 * metres - shift[1],
      x2 * metres - shift[0],
      y2 * metres - shift[1],
    );
    layerOf.push(linework.layerOf[i]!);
  }
  const all = Float64Array.from(lines);
  const chains = chainArcs(all);
  const ofChains = new Set(chains.flatMap((chain) => chain.lines));
  const kept = layerOf.flatMap((_, i) => (ofChains.has(i) ? [] : [i]));
  const left = new Float64Array(4 * kept.length);
  kept.forEach((i, k) => {
    left.set(all.subarray(4 * i, 4 * i + 4), 4 * k);
  });
  const moved = ([x, y]: Point): Point => [x - shift[0], y - shift[1]];
  return {
    lines: left,
    layerOf: Uint16Array.from(kept, (i) => layerOf[i]!),
    swings: [
      ...doorArcs.map(
        (arc): SwingArc => ({
          centre: moved(arc.centre),
          radius: arc.radius,
          ends: [moved(arc.ends[0]), moved(arc.ends[1])],
        }),
      ),
      ...chains,
    ],
    ajar: ajar.doors.map(({ hinge, latch, open }) => ({
      hinge: moved(hinge),
      latch: moved(latch),
      open: moved(open),
    })),
    texts: linework.texts.flatMap(({ text, at, height, turn, layer }): PlanText[] => {
      if (!inside(at[0], at[1]) || text.trim() === "") return [];
      if (!mayNameRooms(linework.layers[layer]?.name ?? "")) return [];
      // Letters are about 0.6 of their height wide.
      const half = 0.3 * height * text.trim().length;
      const [x, y] = [
        at[0] + half * Math.cos(turn) - (height / 2) * Math.sin(turn),
        at[1] + half * Math.sin(turn) + (height / 2) * Math.cos(turn),
      ];
      return [{ text: text.trim(), at: moved([x * metres, y * metres]), height: height * metres, layer }];
    }),
    shift,
  };
}

/** Extent of lines. */
export function boxOfLines(lines: Float64Array): LineBox {
  let [x1, y1, x2, y2] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < lines.length; i += 2) {
    const x = lines[i]!;
    const y = lines[i + 1]!;
    if (x < x1) x1 = x;
    if (x > x2) x2 = x;
    if (y < y1) y1 = y;
    if (y > y2) y2 = y;
  }
  return lines.length === 0 ? [0, 0, 0, 0] : [x1, y1, x2, y2];
}
