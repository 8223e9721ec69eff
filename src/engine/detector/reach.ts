import type { Metres, Radians } from "../quantity/index.ts";
import { wholeTurn } from "../quantity/index.ts";
import type { DetectorModel, ZoneKind, ZoneRow } from "./model.ts";

/** How far a detector reaches in one kind of zone, at one mounting height and sight height. */
export interface Reach {
  readonly shape: ReachShape;
  /** "limits": outside the mounting limits, counts as uncovered. "verify": above the top row, that row was used. "undeclared": the model has no such zone. */
  readonly standing: "declared" | "verify" | "limits" | "undeclared";
}

/** Round, or corners by angle from the notch (counter-clockwise, 0 ≤ angle < 2π, rising) with straight edges between them. */
export type ReachShape =
  | { readonly kind: "none" }
  | { readonly kind: "round"; readonly radius: Metres }
  | { readonly kind: "outline"; readonly corners: readonly (readonly [angle: Radians, radius: Metres])[] };

/**
 * Declared reach of a model, with nothing kept in hand.
 *
 * Between rows: R = R₁ + (R₂ − R₁)(h − h₁)/(h₂ − h₁), angle by angle; above the top row that row, "verify";
 * below the lowest row: R · (h − s)/(h_row − s). No across row: across = towards.
 *
 * @param model - The data sheet.
 * @param question.height - Height of the detector above the floor that is watched, h. [m]
 * @param question.sightHeight - Height at which a person is seen, s. [m]
 * @param question.mounted - Height above the floor beneath the detector, which the mounting limits speak of; h if absent. [m]
 * @returns Reach and its standing; shape "none" outside the mounting limits. `height` above the upper limit counts as outside too.
 * @source SIGHT-GEOMETRY
 * @example Rows 3 m at 2.5 m and 4 m at 3.5 m: at 3.0 m the reach is 3.5 m
 */
export function reachOf(
  model: DetectorModel,
  question: {
    readonly kind: ZoneKind;
    readonly height: Metres;
    readonly sightHeight: Metres;
    readonly mounted?: Metres;
  },
): Reach {
  const { kind, height, sightHeight } = question;
  const declared = model.zones[kind] ?? (kind === "across" ? model.zones.towards : undefined);
  if (!declared || declared.length === 0) return { shape: { kind: "none" }, standing: "undeclared" };
  const mounted = question.mounted ?? height;
  const { min, max } = model.mounting;
  if (mounted < min - SAME_HEIGHT || mounted > max + SAME_HEIGHT || height > max + SAME_HEIGHT) {
    return { shape: { kind: "none" }, standing: "limits" };
  }
  return declaredReachAt(declared, { height, sightHeight: kind === "sound" ? 0 : sightHeight });
}

/**
 * Reach of rows at a height, whatever the mounting limits say: what is drawn dashed outside them.
 *
 * @param rows - Rows of one zone kind, any order. @param at - Height of the detector and of sight. [m]
 * @returns Reach by the rules of `reachOf`.
 * @source SIGHT-GEOMETRY
 * @example One row 4 m at 3 m, seen at 1 m from 2 m: 4 · (2 − 1)/(3 − 1) = 2 m
 */
export function declaredReachAt(
  rows: readonly ZoneRow[],
  at: { readonly height: Metres; readonly sightHeight: Metres },
): Reach {
  const sorted = rows.toSorted((a, b) => a.height - b.height);
  const [lowest, top] = [sorted[0], sorted.at(-1)];
  if (!lowest || !top) return { shape: { kind: "none" }, standing: "undeclared" };
  if (at.height < lowest.height) {
    const factor = (at.height - at.sightHeight) / (lowest.height - at.sightHeight);
    return {
      shape: factor > 0 ? scaledReach(shapeOf(lowest), factor) : { kind: "none" },
      standing: "declared",
    };
  }
  if (at.height > top.height + SAME_HEIGHT) return { shape: shapeOf(top), standing: "verify" };
  const upper = sorted.findIndex((row) => row.height >= at.height - SAME_HEIGHT);
  const [low, high] = [sorted[Math.max(0, upper - 1)] as ZoneRow, sorted[upper] as ZoneRow];
  const share =
    high.height === low.height ? 1 : Math.min(1, (at.height - low.height) / (high.height - low.height));
  return { shape: between(shapeOf(low), { other: shapeOf(high), share }), standing: "declared" };
}

/** A reach grown or shrunk by a factor. @example Round 4 m × 0.85: 3.4 m */
export function scaledReach(shape: ReachShape, factor: number): ReachShape {
  if (factor <= 0) return { kind: "none" };
  switch (shape.kind) {
    case "none":
      return shape;
    case "round":
      return { kind: "round", radius: shape.radius * factor };
    case "outline":
      return {
        kind: "outline",
        corners: shape.corners.map(([angle, radius]) => [angle, radius * factor] as const),
      };
  }
}

/**
 * Reach in one direction.
 *
 * Between two corners of an outline the edge is straight: R(φ) = r₁ r₂ sin(φ₂ − φ₁) / (r₁ sin(φ − φ₁) + r₂ sin(φ₂ − φ)).
 *
 * @param shape - A reach. @param angle - Direction from the notch. [rad]
 * @returns Reach in that direction. [m]
 * @source DERIVED-HERE
 * @example Corners of 4 m at 0° and 90°: at 45° the chord lies at 2.828 m
 */
export function reachTowards(shape: ReachShape, angle: Radians): Metres {
  if (shape.kind === "none") return 0;
  if (shape.kind === "round") return shape.radius;
  const { corners } = shape;
  const at = wholeTurn(angle);
  const next = corners.findIndex(([corner]) => corner > at);
  const [a2, r2] = corners[next === -1 ? 0 : next] as readonly [Radians, Metres];
  const [a1, r1] = corners[(next === -1 ? corners.length : next || corners.length) - 1] as readonly [
    Radians,
    Metres,
  ];
  const span = corners.length === 1 ? 2 * Math.PI : wholeTurn(a2 - a1);
  const into = wholeTurn(at - a1);
  // A gap of half a turn or more has no straight edge outside the device: the edge passes through the device itself.
  if (span >= Math.PI - 1e-9) return into < 1e-9 ? r1 : 0;
  const below = r1 * Math.sin(into) + r2 * Math.sin(span - into);
  return below <= 0 ? 0 : (r1 * r2 * Math.sin(span)) / below;
}

/** Longest reach in any direction. [m] @example Round 4 m: 4 m */
export function longestReach(shape: ReachShape): Metres {
  if (shape.kind === "none") return 0;
  return shape.kind === "round" ? shape.radius : Math.max(...shape.corners.map(([, radius]) => radius));
}

/** Heights closer than this are one height: a tenth of a millimetre, below what anyone sets out. [m] */
const SAME_HEIGHT: Metres = 1e-4;

function shapeOf(row: ZoneRow): ReachShape {
  if ("radius" in row) return row.radius > 0 ? { kind: "round", radius: row.radius } : { kind: "none" };
  const corners = row.outline.map(([angle, radius]) => [wholeTurn(angle), Math.max(0, radius)] as const);
  return { kind: "outline", corners: corners.toSorted((a, b) => a[0] - b[0]) };
}

/** Two reaches mixed angle by angle, on the union of their corners' angles; share 0 gives the first. */
function between(shape: ReachShape, mix: { readonly other: ReachShape; readonly share: number }): ReachShape {
  const { other, share } = mix;
  if (share <= 0) return shape;
  if (share >= 1) return other;
  if (shape.kind !== "outline" && other.kind !== "outline") {
    const radius = (1 - share) * longestReach(shape) + share * longestReach(other);
    return radius > 0 ? { kind: "round", radius } : { kind: "none" };
  }
  const angles = new Set<Radians>();
  for (const one of [shape, other]) {
    if (one.kind === "outline") for (const [angle] of one.corners) angles.add(angle);
    // A circle beside an outline takes part every two degrees, so that its chords stay within a few millimetres.
    else if (one.kind === "round") for (let i = 0; i < 180; i++) angles.add((i * Math.PI) / 90);
  }
  const corners = [...angles]
    .toSorted((a, b) => a - b)
    .map(
      (angle) =>
        [angle, (1 - share) * reachTowards(shape, angle) + share * reachTowards(other, angle)] as const,
    );
  return { kind: "outline", corners };
}
