import type { DarkWalk, Point, RoomCoverage } from "#engine";
import { ink } from "./ink.ts";
import type { Mark, PaperPoint } from "./mark.ts";
import { onPaper, type Projection } from "./projection.ts";

/** The way that is walked in the dark, with a tick across it where the light comes on. */
export function darkWalkMarks(walk: DarkWalk, projection: Projection): readonly Mark[] {
  const dark = darkPart(walk);
  if (dark.length < 2) return [];
  const points = dark.map((point) => onPaper(point, projection));
  const pen = { width: 0.5, colour: ink } as const;
  const end = points[points.length - 1]!;
  const before = points[points.length - 2]!;
  const length = Math.hypot(end[0] - before[0], end[1] - before[1]) || 1;
  const across: PaperPoint = [(end[1] - before[1]) / length, (before[0] - end[0]) / length];
  const tick = (by: number): PaperPoint => [end[0] + across[0] * by, end[1] + across[1] * by];
  return [
    { kind: "circle", at: points[0]!, radius: 0.5, fill: ink },
    { kind: "polyline", points, pen },
    ...(walk.lit ? [{ kind: "line", from: tick(-1.5), to: tick(1.5), pen } as const] : []),
  ];
}

/** Walks worth drawing: in a room that no detector watches all of them are dark, and the sheet says so once. */
export const drawnWalks = (coverage: RoomCoverage): readonly DarkWalk[] =>
  coverage.darkWalks.some((walk) => walk.lit) ? coverage.darkWalks : [];

/** From the door along the path for as many metres as are walked in the dark. */
export function darkPart(walk: DarkWalk): readonly Point[] {
  const part: Point[] = [];
  let left = walk.metres;
  for (const [i, point] of walk.path.entries()) {
    const before = walk.path[i - 1];
    if (!before) {
      part.push(point);
      continue;
    }
    const length = Math.hypot(point[0] - before[0], point[1] - before[1]);
    if (length >= left) {
      const share = length === 0 ? 0 : left / length;
      part.push([before[0] + share * (point[0] - before[0]), before[1] + share * (point[1] - before[1])]);
      return part;
    }
    part.push(point);
    left -= length;
  }
  return part;
}
