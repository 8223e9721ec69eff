import type { Outline, Point, Problem, Said, Words } from "#engine";
import { mostCorners } from "../schema/values.ts";
import { selfCrossing } from "./self-crossing.ts";

/** Corners nearer to each other than this are one corner: a drawing program's rounding, far below what is built. [m] */
const sameCorner = 5e-5;
/** Less area than a coin: nothing that could be a room or an obstacle. [m²] */
const leastArea = 1e-5;

interface Ring {
  /** The record, as `rooms[3] “Drying room”`. */
  readonly place: Words;
  /** The field, as `outline` or `holes[1]`. */
  readonly ring: string;
  /** What the outline is of, as `a room`. */
  readonly what: Said;
  readonly turns: "counter-clockwise" | "clockwise";
}

/**
 * An outline as calculations need it: no repeated corner, no spike, running the right way round.
 *
 * @param outline - Corners as they were written. [m]
 * @returns The mended outline and what was mended, or why it cannot be used. An outline that was fine comes back as the same value.
 */
export function mendedOutline(
  outline: Outline,
  ring: Ring,
): { readonly outline: Outline; readonly notes: readonly Problem[] } | { readonly problem: Problem } {
  const values = { place: ring.place, ring: ring.ring };
  if (outline.length > mostCorners.outline)
    return {
      problem: {
        code: "outline-too-many-corners",
        values: { ...values, corners: outline.length, most: mostCorners.outline },
      },
    };
  const single = withoutDoubles(outline);
  if (single.length < 3)
    return {
      problem: {
        code: "outline-too-few-corners",
        values: { ...values, corners: single.length, what: ring.what },
      },
    };
  if (onOneLine(single)) return { problem: { code: "outline-flat", values } };
  const crossing = selfCrossing(single);
  if (crossing)
    return {
      problem: {
        code: "outline-crosses-itself",
        values: { ...values, x: rounded(crossing[0]), y: rounded(crossing[1]) },
        at: crossing,
      },
    };
  const area = signedArea(single);
  if (Math.abs(area) < leastArea) return { problem: { code: "outline-flat", values } };
  const doubled = outline.length - single.length;
  const right = area > 0 === (ring.turns === "counter-clockwise");
  return {
    outline: doubled === 0 && right ? outline : right ? single : [...single].reverse(),
    notes: doubled === 0 ? [] : [{ code: "outline-corner-doubled", values: { ...values, count: doubled } }],
  };
}

/** The ring without repeated corners and spikes (there and back again), and taken once where it was traced twice. */
function withoutDoubles(outline: Outline): Outline {
  let corners = once(outline);
  for (;;) {
    const kept: Point[] = [];
    for (const corner of corners) {
      if (kept.length > 0 && near(corner, kept[kept.length - 1]!)) continue;
      if (kept.length > 1 && near(corner, kept[kept.length - 2]!)) kept.pop();
      else kept.push(corner);
    }
    while (kept.length > 1 && near(kept[0]!, kept[kept.length - 1]!)) kept.pop();
    if (kept.length > 2 && near(kept[1]!, kept[kept.length - 1]!)) kept.shift();
    if (kept.length === corners.length) return kept;
    corners = kept;
  }
}

function once(outline: Outline): Outline {
  const half = outline.length / 2;
  if (half < 3 || !Number.isInteger(half)) return outline;
  return outline.slice(0, half).every((corner, index) => near(corner, outline[index + half]!))
    ? outline.slice(0, half)
    : outline;
}

const near = (a: Point, b: Point): boolean =>
  Math.abs(a[0] - b[0]) < sameCorner && Math.abs(a[1] - b[1]) < sameCorner;

function signedArea(outline: Outline): number {
  const [x0, y0] = outline[0]!;
  let twice = 0;
  for (let i = 1; i + 1 < outline.length; i++) {
    const a = outline[i]!;
    const b = outline[i + 1]!;
    twice += (a[0] - x0) * (b[1] - y0) - (b[0] - x0) * (a[1] - y0);
  }
  return twice / 2;
}

/** Whether no triangle over the first two corners has an area worth the name. */
function onOneLine(outline: Outline): boolean {
  const [a, b] = [outline[0]!, outline[1]!];
  return outline.every(
    (c) => Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) < leastArea / 10,
  );
}

const rounded = (value: number): number => Math.round(value * 1000) / 1000;
