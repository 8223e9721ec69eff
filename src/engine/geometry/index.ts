export {
  difference,
  inset,
  intersection,
  oriented,
  outset,
  regionOf,
  simplified,
  union,
} from "./booleans.ts";
export { contains, outlineContains, type Place, placeInOutline, placeInRegion } from "./contains.ts";
export { selfCrossing } from "./crossing.ts";
export { convexHull } from "./hull.ts";
export {
  areaOf,
  type Bounds,
  boundsOf,
  centroidOf,
  distanceBetween,
  distanceToRings,
  distanceToSegment,
  nearestOnRings,
  nearestOnSegment,
  ringsOf,
  signedArea,
} from "./measure.ts";
export { poleOf } from "./pole.ts";
export type { Outline, Piece, Point, Region } from "./shapes.ts";
export { side } from "./side.ts";
export * from "./tolerances.ts";
export { prepareWays, type Way, type Ways, type WaysFrom, waysFrom, wayTo } from "./ways.ts";
