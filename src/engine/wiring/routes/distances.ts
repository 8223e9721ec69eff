import type { Point } from "../../geometry/index.ts";
import type { Metres } from "../../quantity/index.ts";

/** free: straight across, as above a suspended ceiling · orthogonal: along the walls' directions. */
export type RouteStyle = "free" | "orthogonal";

/** Length of cable between two places by style. @param from [m] @param to [m] @param style - Free or orthogonal. @returns [m] @source DERIVED-HERE @example (0,0) to (3,4): 5 m free, 7 m orthogonal */
export const routeLength = (from: Point, to: Point, style: RouteStyle): Metres => {
  const [x, y] = [Math.abs(from[0] - to[0]), Math.abs(from[1] - to[1])];
  return style === "free" ? Math.hypot(x, y) : x + y;
};

/** Lengths between all pairs of places. @param places - On the plan. [m] @param style - Free or orthogonal. @returns Symmetric matrix. [m] @example One place: [[0]] */
export const routeLengths = (places: readonly Point[], style: RouteStyle): readonly (readonly Metres[])[] =>
  places.map((from) => places.map((to) => routeLength(from, to, style)));
