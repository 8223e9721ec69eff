import type { Metres, Outline, Piece, Point } from "#engine";
import { boxOf, inPiece, pieceArea, simplified, unionOf } from "../region.ts";
import { arrange } from "./arrangement.ts";
import { boxesOfLines, boxIndex, boxSearch } from "./box-index.ts";
import { type DoorLeaf, doorLeaves, type Surroundings } from "./door-arcs.ts";
import { type Faces, facesOf, inRing, ringArea } from "./faces.ts";
import { type FoundOpening, type FoundPlan, type FoundRoom, SURE } from "./found.ts";
import { hatching } from "./hatching.ts";
import { meaningOf } from "./layer-words.ts";
import type { PlanLines, PlanText } from "./plan-lines.ts";
import { type RoomGroup, roomGroups, STRIP } from "./room-groups.ts";
import { mayName, roomName } from "./room-names.ts";
import { type WallGap, wallGaps } from "./wall-ends.ts";

/** Nobody needs light in less. [m²] */
const LEAST_ROOM = 0.9;
/** A room is not larger than this. [m²] */
const MOST_ROOM = 20_000;
/** Islands with walls in them are shafts and cores from here on; smaller ones are columns, and floor all the same. [m²] */
const WALLED_ISLAND = 1.5;
/** Islands without walls are furniture up to here: a long table with its chairs. [m²] */
const PLAIN_ISLAND = 8;

/** Rooms and openings in lines of one choice of layers. */
export function roomsInLines(
  plan: PlanLines,
  options: { readonly names: readonly string[]; readonly tolerance: Metres },
): Omit<FoundPlan, "layers"> {
  const count = plan.layerOf.length;
  if (count === 0) return { rooms: [], openings: [], shift: plan.shift };
  const meaning = options.names.map(meaningOf);
  const leaves = doorLeaves(plan.swings, surroundings(plan.lines));
  const strokes = hatching(plan.lines, plan.layerOf);
  const solid = withoutLeaves(plan.lines, leaves, (line) => strokes[line] === 1);
  const kept = { lines: solid.lines, layerOf: Uint16Array.from(solid.kept, (i) => plan.layerOf[i]!) };
  const first = arrange({ lines: kept.lines, rank: () => 0, tolerance: options.tolerance });
  const gaps = likelyGaps(wallGaps(first), leaves);
  const shutLines = [...gaps.flatMap((gap) => gap.shut), ...leafLines(leaves, gaps)];
  const own = kept.layerOf.length;
  const all = new Float64Array(4 * (own + shutLines.length));
  all.set(kept.lines);
  shutLines.forEach(([a, b], i) => {
    all.set([a[0], a[1], b[0], b[1]], 4 * (own + i));
  });
  const graph = arrange({ lines: all, rank: (line) => (line < own ? 0 : 1), tolerance: options.tolerance });
  const closed = facesOf(graph);
  const shut = (edge: number): boolean => graph.lineOf[edge]! >= own;
  const gapLines = gaps.reduce((sum, gap) => sum + gap.shut.length, 0);
  const cubicle = (edge: number): boolean => graph.lineOf[edge]! >= own + gapLines;
  const named = (edge: number): boolean => {
    const line = graph.lineOf[edge]!;
    return line < own && meaning[kept.layerOf[line]!] === "wall";
  };
  const labels = plan.texts.filter(({ text }) => mayName(text));
  const groups = roomGroups(graph, closed, { shut, cubicle, named, labels: labels.map(({ at }) => at) });
  const near = boxSearch(plan.texts.map(({ at: [x, y] }) => [x, y, x, y]));
  const textsIn = (piece: Piece): readonly PlanText[] =>
    near(boxOf(piece.outline)).flatMap((index) => {
      const text = plan.texts[index]!;
      return inPiece(text.at, piece) ? [text] : [];
    });
  const candidates = groups
    .flatMap((group) => roomOfGroup(group, { closed, textsIn, shut }))
    .filter((room): room is Candidate => room !== undefined);
  const rooms = withoutLegends(withoutSurroundings(candidates).map(({ room }) => room));
  return { rooms, openings: openingsOf(gaps, leaves, rooms), shift: plan.shift };
}

/** Lines near places, for telling leaves from thresholds. */
function surroundings(lines: Float64Array): Surroundings {
  const search = boxSearch(boxesOfLines(lines));
  const near = (p: Point, reach: Metres): readonly number[] =>
    search([p[0] - reach, p[1] - reach, p[0] + reach, p[1] + reach]);
  return {
    nearest: (at) => near(at, 0.5).reduce((best, i) => Math.min(best, distanceToLine(lines, i, at)), 0.5),
    along: (a, b, within) => {
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
      const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      let longest = 0;
      for (const i of near(middle, length / 2 + within)) {
        const spans: number[] = [];
        let far = 0;
        for (const k of [0, 2]) {
          const [dx, dy] = [lines[4 * i + k]! - a[0], lines[4 * i + k + 1]! - a[1]];
          spans.push(dx * ux + dy * uy);
          far = Math.max(far, Math.abs(dx * uy - dy * ux));
        }
        if (far > within) continue;
        longest = Math.max(longest, Math.min(length, Math.max(...spans)) - Math.max(0, Math.min(...spans)));
      }
      return longest;
    },
  };
}

const distanceToLine = (lines: Float64Array, i: number, [x, y]: Point): Metres => {
  const [a, b, c, d] = [lines[4 * i]!, lines[4 * i + 1]!, lines[4 * i + 2]!, lines[4 * i + 3]!];
  const [dx, dy] = [c - a, d - b];
  const size = dx * dx + dy * dy;
  const t = size === 0 ? 0 : Math.max(0, Math.min(1, ((x - a) * dx + (y - b) * dy) / size));
  return Math.hypot(x - a - t * dx, y - b - t * dy);
};

/** Lines that draw an open leaf, or a hatch, are taken out: they part nothing. */
function withoutLeaves(
  lines: Float64Array,
  leaves: readonly DoorLeaf[],
  hatched: (line: number) => boolean,
): { readonly lines: Float64Array; readonly kept: readonly number[] } {
  const count = lines.length / 4;
  const gone = new Uint8Array(count);
  if (leaves.length > 0 && count > 0) {
    const search = boxSearch(boxesOfLines(lines));
    for (const { hinge, open } of leaves) {
      const length = Math.hypot(open[0] - hinge[0], open[1] - hinge[1]);
      const [ux, uy] = [(open[0] - hinge[0]) / length, (open[1] - hinge[1]) / length];
      const box = [
        Math.min(hinge[0], open[0]) - 0.1,
        Math.min(hinge[1], open[1]) - 0.1,
        Math.max(hinge[0], open[0]) + 0.1,
        Math.max(hinge[1], open[1]) + 0.1,
      ] as const;
      for (const i of search(box)) {
        // All of the line lies in the strip that the leaf takes, a hand clear of the hinge's wall at most.
        const inside = [0, 2].every((k) => {
          const [dx, dy] = [lines[4 * i + k]! - hinge[0], lines[4 * i + k + 1]! - hinge[1]];
          const s = dx * ux + dy * uy;
          return s > -0.02 && s < length + 0.04 && Math.abs(dx * uy - dy * ux) < 0.08;
        });
        const reach = [0, 2].map(
          (k) => (lines[4 * i + k]! - hinge[0]) * ux + (lines[4 * i + k + 1]! - hinge[1]) * uy,
        );
        const [near, away] = [Math.min(...reach), Math.max(...reach)];
        // The leaf runs all along, its edges across; what is half as long is the side of a column beside it.
        const ofLeaf = away - near < 0.1 || away - near > 0.7 * length;
        if (inside && away > 0.15 && ofLeaf) gone[i] = 1;
      }
    }
  }
  const kept: number[] = [];
  for (let i = 0; i < count; i++) if (gone[i] === 0 && !hatched(i)) kept.push(i);
  const left = new Float64Array(4 * kept.length);
  kept.forEach((i, k) => {
    left.set(lines.subarray(4 * i, 4 * i + 4), 4 * k);
  });
  return { lines: left, kept };
}

/** Lines that shut the doors whose gap no wall ends gave away: from hinge to latch, and a little on, so that both meet the wall. */
function leafLines(
  leaves: readonly DoorLeaf[],
  gaps: readonly WallGap[],
): readonly (readonly [Point, Point])[] {
  const gapOf = gapFinder(gaps);
  return leaves.flatMap((leaf): (readonly [Point, Point])[] => {
    const { hinge, latch } = leaf;
    const known = gapOf(leaf) !== undefined;
    if (known) return [];
    const length = Math.hypot(latch[0] - hinge[0], latch[1] - hinge[1]);
    const [ux, uy] = [(latch[0] - hinge[0]) / length, (latch[1] - hinge[1]) / length];
    const more = 0.12;
    return [
      [
        [hinge[0] - more * ux, hinge[1] - more * uy],
        [latch[0] + more * ux, latch[1] + more * uy],
      ],
    ];
  });
}

/** What is wider than a door for one is no door unless leaves hang in it: two columns across a corridor face each other, too. [m] */
const SINGLE_DOOR: Metres = 1.35;

function likelyGaps(gaps: readonly WallGap[], leaves: readonly DoorLeaf[]): readonly WallGap[] {
  const near = boxSearch(leaves.map(({ hinge: [x, y] }) => [x, y, x, y]));
  const hung = ([x, y]: Point): boolean => near([x - 0.35, y - 0.35, x + 0.35, y + 0.35]).length > 0;
  // Beside a leaf a window of the door's height may fill the rest of a gap.
  const gapOf = gapFinder(gaps);
  const filled = new Set(leaves.map(gapOf));
  return gaps.filter((gap) => gap.width <= SINGLE_DOOR || filled.has(gap) || gap.shut.flat().some(hung));
}

const apart = (p: Point, q: Point): Metres => Math.hypot(p[0] - q[0], p[1] - q[1]);

/** The gap of a wall that a leaf hangs in. */
function gapFinder(gaps: readonly WallGap[]): (leaf: DoorLeaf) => WallGap | undefined {
  const reach = (gap: WallGap): Metres => gap.thickness / 2 + Math.max(0.25, gap.width / 2);
  const near = boxSearch(
    gaps.map((gap) => {
      const [x, y] = gap.middle;
      const r = reach(gap);
      return [x - r, y - r, x + r, y + r];
    }),
  );
  return ({ hinge, latch }) => {
    const [x, y] = [(hinge[0] + latch[0]) / 2, (hinge[1] + latch[1]) / 2];
    const [dx, dy] = [latch[0] - hinge[0], latch[1] - hinge[1]];
    const length = Math.hypot(dx, dy);
    // The leaf shuts the gap only if it lies along it: round a corner another gap may be as near.
    const index = near([x, y, x, y]).find((i) => {
      const { middle, shut, width } = gaps[i]!;
      const [a, b] = shut[0]!;
      const along = Math.abs((b[0] - a[0]) * dx + (b[1] - a[1]) * dy) / (apart(a, b) * length);
      return apart(middle, [x, y]) < reach(gaps[i]!) && along > 0.9 && length < width + 0.2;
    });
    return index === undefined ? undefined : gaps[index];
  };
}

interface Candidate {
  readonly room: FoundRoom;
  readonly piece: Piece;
  readonly walled: boolean;
}

function roomOfGroup(
  group: RoomGroup,
  of: {
    readonly closed: Faces;
    readonly textsIn: (piece: Piece) => readonly PlanText[];
    readonly shut: (edge: number) => boolean;
  },
): Candidate | undefined {
  const { closed, textsIn, shut } = of;
  const members = group.faces.map((face) => closed.faces[face]!);
  const rough = members.reduce((sum, face) => sum + face.area, 0);
  if (rough < LEAST_ROOM || rough > MOST_ROOM) return undefined;
  const [whole] = unionOf(members.map((face) => face.outline)).toSorted(
    (a, b) => pieceArea(b) - pieceArea(a),
  );
  if (!whole) return undefined;
  const piece: Piece = {
    outline: simplified(whole.outline, 0.004),
    holes: holesOf(whole, members, closed).map((hole) => simplified(hole, 0.004)),
  };
  const area = pieceArea(piece);
  if (area < LEAST_ROOM || widthOf(piece) < 0.35) return undefined;
  const { number, name } = roomName(textsIn(piece));
  const doors = members.some((face) => face.edges.some((h) => shut(h >> 1)));
  const doubts = [
    ...(doors ? [] : ["no door found"]),
    ...(group.enclosed < 0.5 ? ["bounded by single lines"] : []),
    ...(area < 1.5 ? ["very small"] : []),
    ...(name + number === "" ? ["no name in it"] : []),
  ];
  // Weights by judgement, no source: a closed face is a third of a room; a door, walls and a name make the rest.
  const confidence =
    0.35 + 0.25 * (doors ? 1 : 0) + 0.25 * group.enclosed + 0.15 * (name + number === "" ? 0 : 1);
  return {
    room: { outline: piece.outline, holes: piece.holes, area, number, name, confidence, doubts },
    piece,
    walled: group.enclosed >= 0.5,
  };
}

/** Islands that are more than a column or a table; their outlines, clockwise as holes are. */
function holesOf(whole: Piece, members: Faces["faces"], closed: Faces): readonly Outline[] {
  const counts = (ring: Outline, edges: readonly number[]): boolean => {
    const size = Math.abs(ringArea(ring));
    if (size > PLAIN_ISLAND) return true;
    const walled = edges.some((h) => {
      const face = closed.faces[closed.faceOf[h ^ 1]!];
      return face !== undefined && face.width < STRIP && face.area > 0.15;
    });
    return walled && size > WALLED_ISLAND;
  };
  const islands = members.flatMap((face) =>
    face.islands.flatMap(({ outline, edges }) => (counts(outline, edges) ? [outline] : [])),
  );
  return [
    ...whole.holes.filter((hole) => Math.abs(ringArea(hole)) > PLAIN_ISLAND),
    // An island at a hole of the union is that hole.
    ...islands.filter((ring) => !whole.holes.some((hole) => ring.some((p) => inRing(p, hole)))),
  ];
}

const widthOf = ({ outline }: Piece): Metres => {
  let around = 0;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    around += Math.hypot(b[0] - a[0], b[1] - a[1]);
  });
  return (2 * Math.abs(ringArea(outline))) / around;
};

/** What surrounds other rooms without walls of its own round it is the paper, the frame, the ground round the house. */
function withoutSurroundings(candidates: readonly Candidate[]): readonly Candidate[] {
  const near = boxSearch(candidates.map(({ piece }) => boxOf(piece.outline)));
  return candidates.filter((one) => {
    const within = one.piece.holes.flatMap((hole) =>
      near(boxOf(hole)).flatMap((index) => {
        const other = candidates[index]!;
        return other !== one && inRing(other.piece.outline[0]!, hole) ? [other] : [];
      }),
    );
    if (within.length === 0) return true;
    const inner = within.reduce((sum, other) => sum + other.room.area, 0);
    return one.walled && inner < 4 * one.room.area;
  });
}

/** Where most rooms have doors and names, a bare rectangle is a legend's sample or a piece of the frame. */
function withoutLegends(rooms: readonly FoundRoom[]): readonly FoundRoom[] {
  const sure = rooms.filter(({ confidence }) => confidence >= SURE).length;
  return sure * 2 < rooms.length ? rooms : rooms.filter(({ confidence }) => confidence >= BARE);
}

/** Below this a face is a rectangle with neither door nor name. */
const BARE = 0.4;

function openingsOf(
  gaps: readonly WallGap[],
  leaves: readonly DoorLeaf[],
  rooms: readonly FoundRoom[],
): readonly FoundOpening[] {
  const pieces = rooms.map(({ outline, holes }): Piece => ({ outline, holes }));
  const near = boxIndex(pieces.map(({ outline }) => outline));
  const roomAt = (p: Point): number => near(p).find((index) => inPiece(p, pieces[index]!)) ?? -1;
  const beside = (a: Point, b: Point, thickness: Metres): readonly [number, number] => {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const n: Point = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
    const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const off = thickness / 2 + 0.15;
    return [
      roomAt([middle[0] + off * n[0], middle[1] + off * n[1]]),
      roomAt([middle[0] - off * n[0], middle[1] - off * n[1]]),
    ];
  };
  const used = new Set<DoorLeaf>();
  const gapOf = gapFinder(gaps);
  const leafOf = new Map(
    leaves.flatMap((leaf): [WallGap, DoorLeaf][] => {
      const gap = gapOf(leaf);
      return gap ? [[gap, leaf]] : [];
    }),
  );
  const fromGaps = gaps.flatMap((gap): FoundOpening[] => {
    const [one, other = one] = gap.shut;
    const from: Point = [(one![0][0] + other![0][0]) / 2, (one![0][1] + other![0][1]) / 2];
    const to: Point = [(one![1][0] + other![1][0]) / 2, (one![1][1] + other![1][1]) / 2];
    const leaf = leafOf.get(gap);
    if (leaf) used.add(leaf);
    const sides = beside(from, to, gap.thickness);
    if (sides[0] < 0 && sides[1] < 0) return [];
    return [
      {
        kind: leaf ? "door" : "passage",
        from,
        to,
        thickness: gap.thickness,
        rooms: sides,
        ...(leaf ? { leaf } : {}),
      },
    ];
  });
  const fromLeaves = leaves.flatMap((leaf): FoundOpening[] => {
    if (used.has(leaf)) return [];
    const sides = beside(leaf.hinge, leaf.latch, 0.2);
    if (sides[0] < 0 && sides[1] < 0) return [];
    return [{ kind: "door", from: leaf.hinge, to: leaf.latch, thickness: 0, rooms: sides, leaf }];
  });
  return [...fromGaps, ...fromLeaves];
}
