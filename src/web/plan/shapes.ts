import type { Metres, Opening, Outline, Point, Region, Room } from "#engine";

/** Adds a closed ring to a path in plan metres. */
export function addRing(path: Path2D, ring: Outline): void {
  ring.forEach(([x, y], index) => {
    if (index === 0) path.moveTo(x, y);
    else path.lineTo(x, y);
  });
  path.closePath();
}

export function addRegion(path: Path2D, region: Region): void {
  for (const piece of region) {
    addRing(path, piece.outline);
    for (const hole of piece.holes) addRing(path, hole);
  }
}

/** Whether a point lies inside a ring (even–odd). */
export function insideRing(ring: Outline, [x, y]: Point): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [ax, ay] = ring[i] as Point;
    const [bx, by] = ring[j] as Point;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}

export const insideRoom = (room: Room, at: Point): boolean =>
  insideRing(room.outline, at) && !room.holes.some((hole) => insideRing(hole, at));

/** Area of a ring, positive when it runs counter-clockwise. [m²] */
export function ringArea(ring: Outline): number {
  let sum = 0;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [ax, ay] = ring[j] as Point;
    const [bx, by] = ring[i] as Point;
    sum += ax * by - bx * ay;
  }
  return sum / 2;
}

export const roomArea = (room: Room): number =>
  Math.abs(ringArea(room.outline)) - room.holes.reduce((sum, hole) => sum + Math.abs(ringArea(hole)), 0);

export const distance = (a: Point, b: Point): Metres => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** The point of a segment nearest to another point. */
export function nearestOn(a: Point, b: Point, point: Point): Point {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length2 = dx * dx + dy * dy;
  const share = length2 === 0 ? 0 : ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / length2;
  const t = Math.min(1, Math.max(0, share));
  return [a[0] + t * dx, a[1] + t * dy];
}

/** Distance from a point to the rim of a ring. [m] */
export function rimDistance(ring: Outline, point: Point): Metres {
  let least = Infinity;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++)
    least = Math.min(least, distance(point, nearestOn(ring[j] as Point, ring[i] as Point, point)));
  return least;
}

/** Where an opening's parts lie: reveal, and the leaf of a door with its swing. */
export interface OpeningShape {
  readonly reveal: Outline;
  /** Unit vector from the first room's face through the wall. */
  readonly through: Point;
  readonly leaf?: {
    readonly hinge: Point;
    readonly closed: Point;
    readonly open: Point;
    readonly leftHanded: boolean;
  };
}

export function openingShape(opening: Opening, first: Room | undefined): OpeningShape {
  const { from, to, thickness } = opening;
  const width = distance(from, to) || 1;
  const along: Point = [(to[0] - from[0]) / width, (to[1] - from[1]) / width];
  let through: Point = [along[1], -along[0]];
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const probe = Math.min(0.05, width / 4);
  if (first && insideRoom(first, [middle[0] + through[0] * probe, middle[1] + through[1] * probe]))
    through = [-through[0], -through[1]];
  const back = (point: Point): Point => [
    point[0] + through[0] * thickness,
    point[1] + through[1] * thickness,
  ];
  const reveal: Outline = [from, to, back(to), back(from)];
  if (opening.kind !== "door") return { reveal, through };
  const inward = opening.opensInto === opening.rooms[0];
  const [hingeAt, otherAt] = opening.hinge === "from" ? [from, to] : [to, from];
  const hinge = inward ? hingeAt : back(hingeAt);
  const closed = inward ? otherAt : back(otherAt);
  // The leaf turns from its closed position towards the room it opens into.
  const side: Point = inward ? [-through[0], -through[1]] : through;
  const [cx, cy] = [closed[0] - hinge[0], closed[1] - hinge[1]];
  const leftHanded = cx * side[1] - cy * side[0] > 0;
  const angle = leftHanded ? opening.angle : -opening.angle;
  const open: Point = [
    hinge[0] + cx * Math.cos(angle) - cy * Math.sin(angle),
    hinge[1] + cx * Math.sin(angle) + cy * Math.cos(angle),
  ];
  return { reveal, through, leaf: { hinge, closed, open, leftHanded } };
}

export const middleOf = (ring: Outline): Point => {
  const sum = ring.reduce<[number, number]>((total, [x, y]) => [total[0] + x, total[1] + y], [0, 0]);
  return [sum[0] / ring.length, sum[1] / ring.length];
};

/** Corner points of a rectangle turned about its middle. */
export function turnedRectangle(
  middle: Point,
  size: { length: Metres; width: Metres; turn: number },
): Outline {
  const [c, s] = [Math.cos(size.turn), Math.sin(size.turn)];
  const [a, b] = [size.length / 2, size.width / 2];
  return [
    [-a, -b],
    [a, -b],
    [a, b],
    [-a, b],
  ].map(([x, y]) => [middle[0] + x! * c - y! * s, middle[1] + x! * s + y! * c] as const);
}
