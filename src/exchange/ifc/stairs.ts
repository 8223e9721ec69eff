import { type FloorPiece, type Metres, type Outline, type Point, say } from "#engine";
import type { Identities } from "../identities.ts";
import { inPiece } from "../region.ts";
import { tidy } from "../tidy.ts";
import type { ElementMesh } from "./kernel.ts";
import type { LeftOutList } from "./left-out.ts";
import { type IfcModel, textOf } from "./model.ts";
import { planBox } from "./plan-box.ts";
import type { ReadRoom } from "./rooms.ts";

export interface StairContext {
  readonly model: IfcModel;
  readonly rooms: readonly ReadRoom[];
  readonly identities: Identities;
  readonly leftOut: LeftOutList;
}

/** Instance names of flights, ramps, and of stairs that come as one body. */
export const flightsOf = (model: IfcModel): readonly number[] =>
  model.ids("IFCSTAIRFLIGHT", "IFCRAMPFLIGHT", "IFCSTAIR", "IFCRAMP");

/** Straight flights as floor pieces of the room that their foot stands in. Winding stairs are left out with the reason. */
export function readFlights(
  ids: readonly number[],
  meshes: ReadonlyMap<number, ElementMesh>,
  context: StairContext,
): readonly FloorPiece[] {
  return ids.flatMap((id) => {
    const mesh = meshes.get(id);
    if (!mesh || mesh.parts.length === 0) return [];
    const rise = evenRise(mesh);
    if (!rise) {
      context.leftOut.add(
        say`stair`,
        say`it does not rise evenly in one direction; draw its flights and landings by hand`,
      );
      return [];
    }
    const room = context.rooms.find(
      (each) =>
        inPiece(rise.foot, each.piece) &&
        rise.low > each.level - 0.3 &&
        rise.low < each.level + each.room.ceilingHeight,
    );
    if (!room) {
      context.leftOut.add(say`stair`, say`its foot stands in no room`);
      return [];
    }
    const piece: FloorPiece = {
      id: context.identities.take(
        textOf(context.model.values(id)[0]),
        `flight-${id}`,
        say`Stair ${textOf(context.model.values(id)[2])}`,
      ),
      room: room.room.id,
      kind: "flight",
      footprint: rise.footprint,
      from: rise.from,
      to: rise.to,
      low: tidy(Math.max(0, rise.low - room.level)),
      high: tidy(rise.high - room.level),
    };
    return [piece];
  });
}

interface Rise {
  readonly footprint: Outline;
  readonly from: Point;
  readonly to: Point;
  /** A step into the flight from its lower edge. */
  readonly foot: Point;
  readonly low: Metres;
  readonly high: Metres;
}

/** Steps stay within this of an even slope: one riser and a railing's foot. [m] */
const unevenness = 0.35;

/** The plane through the treads of a straight flight; undefined where they do not follow one. */
const evenRise = (mesh: ElementMesh): Rise | undefined => {
  const box = planBox(mesh);
  if (!box || box.high - box.low < 0.15) return undefined;
  const { centre, along } = box;
  const treads = treadsOf(mesh);
  if (treads.length < 2) return undefined;
  const across: Point = [-along[1], along[0]];
  const fits = [along, across].map((u) => ({
    u,
    ...line(treads.map((t) => [(t[0] - centre[0]) * u[0] + (t[1] - centre[1]) * u[1], t[2]])),
  }));
  const best = fits.sort((p, q) => p.worst - q.worst)[0]!;
  if (best.worst > unevenness || Math.abs(best.slope) < 0.05 || Math.abs(best.slope) > 1.5) return undefined;
  const up = best.slope > 0 ? 1 : -1;
  const u: Point = [best.u[0] * up, best.u[1] * up];
  const half = (best.u === along ? box.length : box.width) / 2;
  const side = (best.u === along ? box.width : box.length) / 2;
  const n: Point = [-u[1], u[0]];
  const at = (s: number, t: number): Point => [
    tidy(centre[0] + s * u[0] + t * n[0]),
    tidy(centre[1] + s * u[1] + t * n[1]),
  ];
  const heights = treads.map((t) => t[2]);
  return {
    footprint: [at(-half, -side), at(half, -side), at(half, side), at(-half, side)],
    from: at(-half, 0),
    to: at(half, 0),
    foot: at(-half + Math.min(0.2, half), 0),
    low: box.low,
    high: Math.max(...heights),
  };
};

/** Middles of the level, upward parts: treads, one for each triangle of at least a hand's size. */
const treadsOf = (mesh: ElementMesh): [number, number, number][] => {
  const treads: [number, number, number][] = [];
  for (const { corners: p, triangles } of mesh.parts) {
    for (let t = 0; t < triangles.length; t += 3) {
      const [i, j, k] = [triangles[t]! * 3, triangles[t + 1]! * 3, triangles[t + 2]! * 3];
      const area =
        ((p[j]! - p[i]!) * (p[k + 1]! - p[i + 1]!) - (p[j + 1]! - p[i + 1]!) * (p[k]! - p[i]!)) / 2;
      const [low, high] = [
        Math.min(p[i + 2]!, p[j + 2]!, p[k + 2]!),
        Math.max(p[i + 2]!, p[j + 2]!, p[k + 2]!),
      ];
      if (Math.abs(area) < 0.02 || high - low > 0.005) continue;
      treads.push([(p[i]! + p[j]! + p[k]!) / 3, (p[i + 1]! + p[j + 1]! + p[k + 1]!) / 3, high]);
    }
  }
  return treads;
};

/** Least-squares line through points and the largest distance from it. */
const line = (points: readonly (readonly number[])[]): { slope: number; worst: number } => {
  const n = points.length;
  const ms = points.reduce((sum, [s]) => sum + s!, 0) / n;
  const mz = points.reduce((sum, [, z]) => sum + z!, 0) / n;
  let [ss, sz] = [0, 0];
  for (const [s, z] of points) {
    ss += (s! - ms) ** 2;
    sz += (s! - ms) * (z! - mz);
  }
  const slope = ss > 1e-9 ? sz / ss : 0;
  const worst = Math.max(...points.map(([s, z]) => Math.abs(z! - mz - slope * (s! - ms))));
  return { slope, worst };
};
