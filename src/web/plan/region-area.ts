import type { Region, SquareMetres } from "#engine";
import { ringArea } from "./shapes.ts";

/** Area of a region. [m²] */
export const regionArea = (region: Region): SquareMetres =>
  region.reduce(
    (sum, { outline, holes }) =>
      sum + Math.abs(ringArea(outline)) - holes.reduce((part, hole) => part + Math.abs(ringArea(hole)), 0),
    0,
  );
