import { readdirSync, readFileSync } from "node:fs";
import type { Piece, Point } from "#engine";
import { type Linework, readPlan } from "#exchange";
import { pieceArea, regionArea, ringArea, sharedOf } from "../../src/exchange/region.ts";
import { findRooms } from "../../src/exchange/rooms-from-lines/find-rooms.ts";
import { realFiles } from "../real-files.ts";

/** What was counted by eye in one plan (rooms-by-eye/README.md). */
export interface ByEye {
  readonly file: string;
  readonly plan: boolean;
  readonly unit: string;
  readonly rooms: readonly { readonly outline: readonly Point[]; readonly sure: boolean }[];
}

const eyes = new URL("rooms-by-eye/", import.meta.url);
export const plans = readdirSync(eyes)
  .filter((name) => name.endsWith(".json"))
  .map((name) => JSON.parse(readFileSync(new URL(name, eyes), "utf8")) as ByEye);

/** Metres in one unit, where the count names it; printed sheets state no scale: what a person measures on a known door or room. */
const metresOf: Readonly<Record<string, number>> = { mm: 0.001, cm: 0.01, m: 1, in: 0.0254 };
export const measuredScales: Readonly<Record<string, number>> = {
  "university-floorB.pdf": 0.096,
  "university-floor1.pdf": 0.1016,
  "university-floor1.svg": 0.08128,
  "pavilion-plan.pdf": 1 / 75,
};

export const folders = { dxf: realFiles("dxf"), plan: realFiles("plan") };

/** The lines of a real plan, and metres in one of its units. */
export async function drawnPlan({ file, unit }: Pick<ByEye, "file" | "unit">): Promise<{
  readonly linework: Linework;
  readonly metres: number;
}> {
  const folder = file.endsWith(".dxf") ? folders.dxf : folders.plan;
  const bytes = new Uint8Array(readFileSync(`${folder}/${file}`));
  const read = await readPlan({ bytes, fileName: file, limits: {} }, () => {});
  if ("problems" in read) throw new Error(JSON.stringify(read.problems));
  return {
    linework: read.linework,
    metres: measuredScales[file] ?? metresOf[unit] ?? read.linework.unit.metres,
  };
}

/** Rooms that the finder sees in a plan, at their places in the drawing in metres. */
export async function roomsSeen(plan: Pick<ByEye, "file" | "unit">): Promise<{
  readonly found: readonly Piece[];
  readonly metres: number;
}> {
  const { linework, metres } = await drawnPlan(plan);
  const { rooms, shift } = findRooms(linework, { metres });
  return { found: rooms.map(({ outline, holes }) => piece([outline, ...holes], 1, shift)), metres };
}

/** Intersection over union. */
export const overlapOf = (a: Piece, b: Piece): number => {
  const shared = regionArea(sharedOf([a], [b]));
  return shared / (pieceArea(a) + pieceArea(b) - shared);
};

/** Centre of gravity of a ring. */
export function middleOf(ring: readonly Point[]): Point {
  let [x, y] = [0, 0];
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const part = a[0] * b[1] - b[0] * a[1];
    x += (a[0] + b[0]) * part;
    y += (a[1] + b[1]) * part;
  });
  const size = 6 * ringArea(ring);
  return [x / size, y / size];
}

/** Rings in metres, the first counter-clockwise, at their place in the drawing. */
export function piece(rings: readonly (readonly Point[])[], metres: number, shift: Point): Piece {
  const [outline, ...holes] = rings.map((ring) =>
    ring.map(([x, y]): Point => [x * metres + shift[0], y * metres + shift[1]]),
  );
  return { outline: ringArea(outline!) < 0 ? [...outline!].reverse() : outline!, holes };
}
