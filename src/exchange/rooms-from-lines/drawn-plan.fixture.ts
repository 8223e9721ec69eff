import type { Point } from "#engine";
import type { LineArc, LineText, Linework } from "../linework/linework.ts";

/** Plans that the tests draw, in metres, as a draughtsman would: walls with two faces, gaps with leaves and arcs, furniture, names. */
export interface Pencil {
  readonly line: (a: Point, b: Point, layer?: string) => void;
  readonly ring: (points: readonly Point[], layer?: string) => void;
  readonly text: (text: string, at: Point, height?: number) => void;
  /** A leaf with its quarter circle: hinge, latch when shut, and which way it opens. */
  readonly door: (hinge: Point, latch: Point, side: 1 | -1) => void;
  readonly linework: (options?: {
    scale?: number;
    turn?: number;
    shift?: Point;
    arcs?: "arcs" | "chords";
  }) => Linework;
}

export function pencil(): Pencil {
  const lines: { a: Point; b: Point; layer: string; arc: number }[] = [];
  const arcs: (LineArc & { name: string })[] = [];
  const texts: LineText[] = [];
  const line = (a: Point, b: Point, layer = "0"): void => {
    lines.push({ a, b, layer, arc: 0 });
  };
  return {
    line,
    ring: (points, layer) => {
      points.forEach((a, i) => {
        line(a, points[(i + 1) % points.length]!, layer);
      });
    },
    text: (text, at, height = 0.2) => {
      texts.push({
        text,
        at: [at[0] - 0.3 * height * text.length, at[1] - height / 2],
        height,
        turn: 0,
        layer: 0,
      });
    },
    door: (hinge, latch, side) => {
      const [dx, dy] = [latch[0] - hinge[0], latch[1] - hinge[1]];
      const open: Point = [hinge[0] - side * dy, hinge[1] + side * dx];
      line(hinge, open, "doors");
      const start = Math.atan2(dy, dx);
      const [from, to] = side === 1 ? [start, start + Math.PI / 2] : [start - Math.PI / 2, start];
      arcs.push({ centre: hinge, radius: Math.hypot(dx, dy), from, to, layer: 0, name: "doors" });
    },
    linework: ({ scale = 1, turn = 0, shift = [0, 0], arcs: how = "arcs" } = {}) => {
      const at = ([x, y]: Point): Point => [
        scale * (Math.cos(turn) * x - Math.sin(turn) * y) + shift[0],
        scale * (Math.sin(turn) * x + Math.cos(turn) * y) + shift[1],
      ];
      const drawn = [...lines];
      arcs.forEach((arc, index) => {
        const steps = 8;
        for (let i = 0; i < steps; i++) {
          const p = (k: number): Point => {
            const angle = arc.from + ((arc.to - arc.from) * k) / steps;
            return [
              arc.centre[0] + arc.radius * Math.cos(angle),
              arc.centre[1] + arc.radius * Math.sin(angle),
            ];
          };
          drawn.push({ a: p(i), b: p(i + 1), layer: arc.name, arc: how === "arcs" ? index + 1 : 0 });
        }
      });
      const names = [...new Set(drawn.map(({ layer }) => layer))];
      return {
        file: "drawn",
        format: "dxf",
        lines: Float64Array.from(drawn.flatMap(({ a, b }) => [...at(a), ...at(b)])),
        layerOf: Uint16Array.from(drawn, ({ layer }) => names.indexOf(layer)),
        arcOf: Uint32Array.from(drawn, ({ arc }) => arc),
        layers: names.map((name) => ({
          name,
          lines: drawn.filter(({ layer }) => layer === name).length,
          shown: true,
        })),
        arcs:
          how === "chords"
            ? []
            : arcs.map(({ centre, radius, from, to }) => ({
                centre: at(centre),
                radius: radius * scale,
                from: from + turn,
                to: to + turn,
                layer: names.indexOf("doors"),
              })),
        texts: texts.map((one) => ({ ...one, at: at(one.at), height: one.height * scale, turn })),
        blocks: [],
        unit: { metres: 1 / scale, name: "m", from: "guessed", reason: "drawn by a test" },
        parts: [],
      };
    },
  };
}

/**
 * Two rooms of 5 × 4 m and 3 × 4 m with a corridor of 8.2 × 1.5 m below them; inner walls 0.2 m, outer walls 0.3 m; a door from the corridor
 * into each, one of them close to the wall between; an outer door at the corridor's end; a desk, a wardrobe on the wall, names.
 */
export function twoRoomsAndCorridor(layers: { readonly wall: string; readonly furniture: string }): Pencil {
  const p = pencil();
  const { wall, furniture } = layers;
  const chain = (...points: readonly Point[]): void => {
    for (let i = 0; i + 1 < points.length; i++) p.line(points[i]!, points[i + 1]!, wall);
  };
  // The outer face, broken by the outer door.
  chain([8.5, 0.3], [8.5, -0.3], [-0.3, -0.3], [-0.3, 6], [8.5, 6], [8.5, 1.2]);
  chain([8.5, 0.3], [8.2, 0.3]);
  chain([8.5, 1.2], [8.2, 1.2]);
  // The corridor, broken by the three doors.
  chain([8.2, 0.3], [8.2, 0], [0, 0], [0, 1.5], [1, 1.5], [1, 1.7]);
  chain([1.9, 1.7], [1.9, 1.5], [5.3, 1.5], [5.3, 1.7]);
  chain([6.2, 1.7], [6.2, 1.5], [8.2, 1.5], [8.2, 1.2]);
  // The office and the store.
  chain([1, 1.7], [0, 1.7], [0, 5.7], [5, 5.7], [5, 1.7], [1.9, 1.7]);
  chain([5.3, 1.7], [5.2, 1.7], [5.2, 5.7], [8.2, 5.7], [8.2, 1.7], [6.2, 1.7]);
  p.door([1, 1.7], [1.9, 1.7], 1);
  p.door([6.2, 1.7], [5.3, 1.7], -1);
  p.door([8.2, 0.3], [8.2, 1.2], 1);
  p.ring(box(2, 3, 1.6, 0.8), furniture);
  p.ring(box(0, 5.1, 1.8, 0.6), furniture);
  p.text("Office", [2.5, 2.4]);
  p.text("1.02", [2.5, 2.1], 0.15);
  p.text("Store", [6.7, 3.5]);
  p.text("Corridor", [4, 0.75]);
  p.text("12.3 m²", [6.7, 3.2], 0.15);
  return p;
}

/** Corners of a rectangle. */
export const box = (x: number, y: number, width: number, depth: number): readonly Point[] => [
  [x, y],
  [x + width, y],
  [x + width, y + depth],
  [x, y + depth],
];
