import type { Metres, Point, Region } from "#engine";
import { boxOf, inPiece, regionArea, simplified, unionOf } from "../region.ts";
import type { ElementMesh } from "./kernel.ts";

/** A body of space, cut at its floor. */
export interface FloorOutline {
  /** Floor pieces, largest first. */
  readonly region: Region;
  /** Height of the floor in the file's world. [m] */
  readonly floor: Metres;
  /** Height of the ceiling above the floor. [m] */
  readonly height: Metres;
  /** The ceiling is not one level plane; `height` is then the mean height. */
  readonly unevenCeiling: boolean;
}

/** Floor faces up to this much above the lowest belong to the floor: a step, not a window niche. [m] */
const stepHeight = 0.3;

/** A face counts as level when its normal is within about 25° of the vertical. */
const levelShare = 0.9;

/** Corners closer to a straight line than this are drawing noise. [m] */
const straightness = 0.0005;

/**
 * Outline of a space at its floor, with holes, and its height, from the triangles of its body.
 *
 * The way round of the triangles is not trusted: a level face near the lowest corner is floor, whichever side it shows.
 *
 * @returns undefined where there is no level floor face at all.
 */
export function floorOutline(mesh: ElementMesh): FloorOutline | undefined {
  const faces = mesh.parts.flatMap(facesOf);
  if (faces.length === 0) return undefined;
  const lowest = Math.min(...faces.map((face) => face.low));
  const highest = Math.max(...faces.map((face) => face.high));
  const reach = Math.min(stepHeight, (highest - lowest) / 2);
  const level = faces.filter((face) => face.level);
  const floorFaces = level.filter((face) => face.high <= lowest + reach);
  if (floorFaces.length === 0) return undefined;
  const region = unionOf(floorFaces.map((face) => face.ring))
    .map((piece) => ({
      outline: simplified(piece.outline, straightness),
      holes: piece.holes.map((hole) => simplified(hole, straightness)),
    }))
    .sort((a, b) => regionArea([b]) - regionArea([a]));
  if (region.length === 0) return undefined;
  const floor = mainLevel(floorFaces);
  const area = regionArea(region);
  const ceilings = level.filter((face) => face.low > lowest + reach);
  const top = ceilings.length > 0 ? mainLevel(ceilings) : highest;
  const flat = ceilings.filter((face) => Math.abs(face.high - top) < 0.01 && Math.abs(face.low - top) < 0.01);
  const flatArea = flat.reduce((sum, face) => sum + face.area, 0);
  if (flatArea > 0.9 * area) return { region, floor, height: top - floor, unevenCeiling: false };
  const height = (meanTop(faces, region) ?? highest) - floor;
  return { region, floor, height: height > 0 ? height : highest - floor, unevenCeiling: true };
}

/** Places along the longer side of a floor at which the ceiling above is measured. */
const soundings = 24;

/** Mean height of the uppermost face over a grid of places on the floor; the way round of the triangles does not matter. [m] */
const meanTop = (faces: readonly Face[], region: Region): Metres | undefined => {
  const box = boxOf(region[0]!.outline);
  const step = Math.max(box[2] - box[0], box[3] - box[1]) / soundings;
  const over = coverings(faces);
  let sum = 0;
  let count = 0;
  for (let x = box[0] + step / 2; x < box[2]; x += step) {
    for (let y = box[1] + step / 2; y < box[3]; y += step) {
      if (!region.some((piece) => inPiece([x, y], piece))) continue;
      const top = topAt(over, x, y);
      if (top === undefined) continue;
      sum += top;
      count++;
    }
  }
  return count > 0 ? sum / count : undefined;
};

/**
 * What lies over the floor, nine numbers a face: share of its second corner v = n0 + n1·x + n2·y, of its third likewise,
 * height z = n6 + n7·v + n8·w. One flat list, because this runs once a file, before any of it has been compiled.
 */
const coverings = (faces: readonly Face[]): Float64Array => {
  const standing = faces.filter((face) => face.area > 5e-11);
  const list = new Float64Array(9 * standing.length);
  standing.forEach(({ ring: [a, b, c], heights: [az, bz, cz] }, i) => {
    const whole = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    const [vx, vy] = [(c[1] - a[1]) / whole, -(c[0] - a[0]) / whole];
    const [wx, wy] = [-(b[1] - a[1]) / whole, (b[0] - a[0]) / whole];
    list.set([-vx * a[0] - vy * a[1], vx, vy, -wx * a[0] - wy * a[1], wx, wy, az, bz - az, cz - az], 9 * i);
  });
  return list;
};

/** Height of the uppermost face over a place; undefined where not both a floor and a ceiling lie over it. [m] */
const topAt = (n: Float64Array, x: Metres, y: Metres): Metres | undefined => {
  let over = 0;
  let top = -Infinity;
  for (let i = 0; i < n.length; i += 9) {
    const v = n[i]! + n[i + 1]! * x + n[i + 2]! * y;
    if (v < 0) continue;
    const w = n[i + 3]! + n[i + 4]! * x + n[i + 5]! * y;
    if (w < 0 || v + w > 1) continue;
    over++;
    const height = n[i + 6]! + n[i + 7]! * v + n[i + 8]! * w;
    if (height > top) top = height;
  }
  return over < 2 ? undefined : top;
};

interface Face {
  readonly ring: readonly [Point, Point, Point];
  /** Area of the projection. [m²] */
  readonly area: number;
  readonly low: Metres;
  readonly high: Metres;
  readonly heights: readonly [Metres, Metres, Metres];
  readonly level: boolean;
}

const facesOf = ({ corners, triangles }: ElementMesh["parts"][number]): Face[] => {
  const faces: Face[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const i = triangles[t]! * 3;
    const j = triangles[t + 1]! * 3;
    const k = triangles[t + 2]! * 3;
    const a: Point = [corners[i]!, corners[i + 1]!];
    const b: Point = [corners[j]!, corners[j + 1]!];
    const c: Point = [corners[k]!, corners[k + 1]!];
    const az = corners[i + 2]!;
    const bz = corners[j + 2]!;
    const cz = corners[k + 2]!;
    const nx = (b[1] - a[1]) * (cz - az) - (bz - az) * (c[1] - a[1]);
    const ny = (bz - az) * (c[0] - a[0]) - (b[0] - a[0]) * (cz - az);
    const nz = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    const size = Math.sqrt(nx * nx + ny * ny + nz * nz);
    if (!(size > 1e-10)) continue;
    faces.push({
      ring: [a, b, c],
      area: Math.abs(nz) / 2,
      low: Math.min(az, bz, cz),
      high: Math.max(az, bz, cz),
      heights: [az, bz, cz],
      level: Math.abs(nz) > levelShare * size,
    });
  }
  return faces;
};

/** Height at which most of the faces' area lies, to the millimetre. [m] */
const mainLevel = (faces: readonly Face[]): Metres => {
  const areas = new Map<number, number>();
  for (const face of faces) {
    const key = Math.round(face.low * 1000);
    areas.set(key, (areas.get(key) ?? 0) + face.area);
  }
  let best = 0;
  let most = -1;
  for (const [key, area] of areas) if (area > most) [best, most] = [key, area];
  return best / 1000;
};
