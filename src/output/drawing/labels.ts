import type { Segment } from "./hatching.ts";
import { ink, paper } from "./ink.ts";
import { lengthOf } from "./lettering.ts";
import type { Box, LetteringSize, Mark, Millimetres, PaperPoint } from "./mark.ts";

/** Lettering that belongs to a thing on the plan and has to find its own free place. */
export interface Label {
  readonly lines: readonly LabelLine[];
  /** What it speaks of. */
  readonly of: PaperPoint;
  /** Places for its middle, best first. */
  readonly places: readonly PaperPoint[];
  /** Draws a leader when the label comes to lie farther away than this; never if absent. */
  readonly leaderFrom?: Millimetres;
  readonly box?: "none" | "framed";
  /** Where it may lie without being taken for a neighbour's: its own room, say. Anywhere if absent. */
  readonly home?: (at: PaperPoint) => boolean;
  /** Says less in less room; taken where this one would cover something everywhere. */
  readonly shorter?: Label;
  /** What becomes of it when every place is taken; it is drawn where it covers least by default. */
  readonly otherwise?: "left-out";
  /** Of leader and frame; lettering is always in ink, which alone has contrast enough. */
  readonly colour?: string;
}

export interface LabelLine {
  readonly text: string;
  readonly size: LetteringSize;
  readonly weight: "regular" | "semibold";
}

/** What labels must keep off: boxes of marks and labels (never) and lines (as far as there is a choice). */
export interface Ground {
  readonly window: Box;
  readonly taken: Box[];
  readonly lines: readonly Segment[];
  /** Things that a label had better not lie on, lest it be taken for theirs. */
  readonly shunned?: readonly Box[];
}

const lead = 1.45;
const rim: Millimetres = 0.7;

/**
 * Puts each label, in the order given, on the first of its places where it touches neither another label, a mark, nor a line;
 * failing that on the place with the fewest lines under it, which its clear ground then masks. A label that would
 * cover another one everywhere is put where it covers least.
 */
export function placedLabels(labels: readonly Label[], ground: Ground): readonly Mark[] {
  return labels.flatMap((wanted) => {
    let label = wanted;
    let best = bestPlace(label, ground);
    while (label.shorter !== undefined && (best === undefined || best.cost >= covers)) {
      label = label.shorter;
      best = bestPlace(label, ground) ?? best;
    }
    if (!best || (label.otherwise === "left-out" && best.cost >= covers)) return [];
    ground.taken.push(best.box);
    return drawn(label, best.at, best.box);
  });
}

/** From here on a place covers another label or a sign. */
const covers = 200 * 0.5;

interface Place {
  readonly at: PaperPoint;
  readonly box: Box;
  readonly cost: number;
}

function bestPlace(label: Label, ground: Ground): Place | undefined {
  const size = sizeOf(label.lines);
  let best: Place | undefined;
  for (const [rank, at] of label.places.entries()) {
    const box = boxAround(at, size);
    const cost = costOf(box, ground) + (isAtHome(label, box) ? 0 : astray) + rank * 0.001;
    if (!best || cost < best.cost) best = { at, box, cost };
    if (best.cost < 1) break;
  }
  return best;
}

/** A label in the neighbour's room misleads: worse than several lines under it, better than covering a sign. */
const astray = 40;

const isAtHome = ({ home }: Label, { left, right, top, bottom }: Box): boolean =>
  home === undefined ||
  (home([left, top]) && home([right, top]) && home([left, bottom]) && home([right, bottom]));

/** Width and height of lettering with its clear rim. */
export function sizeOf(lines: readonly LabelLine[]): readonly [Millimetres, Millimetres] {
  const width = Math.max(...lines.map((line) => lengthOf(line.text, line.size, line.weight)));
  const height = lines.reduce(
    (sum, line, i) => sum + (i === lines.length - 1 ? line.size * 1.25 : line.size * lead),
    0,
  );
  return [width + 2 * rim, height + 2 * rim];
}

export const boxAround = (at: PaperPoint, [width, height]: readonly [Millimetres, Millimetres]): Box => ({
  left: at[0] - width / 2,
  right: at[0] + width / 2,
  top: at[1] - height / 2,
  bottom: at[1] + height / 2,
});

/** Places round a thing: beside it first, then above and below, then farther out. */
export function placesAround(
  of: PaperPoint,
  lines: readonly LabelLine[],
  gaps: readonly Millimetres[],
): readonly PaperPoint[] {
  const [width, height] = sizeOf(lines);
  return gaps.flatMap((gap) => {
    const x = gap + width / 2;
    const y = gap + height / 2;
    return [
      [x, 0],
      [-x, 0],
      [0, -y],
      [0, y],
      [x, -y],
      [x, y],
      [-x, -y],
      [-x, y],
    ].map(([dx, dy]): PaperPoint => [of[0] + dx!, of[1] + dy!]);
  });
}

function costOf(box: Box, ground: Ground): number {
  let cost = 0;
  if (!inside(box, ground.window)) cost += 10_000;
  for (const other of ground.taken) cost += 200 * overlap(box, other);
  for (const line of ground.lines) if (crosses(line, box)) cost += 5;
  for (const other of ground.shunned ?? []) if (overlap(box, other) > 0) cost += 4;
  return cost;
}

function drawn(label: Label, at: PaperPoint, box: Box): readonly Mark[] {
  const colour = label.colour ?? ink;
  const marks: Mark[] = [];
  const foot: PaperPoint = [
    Math.min(Math.max(label.of[0], box.left), box.right),
    Math.min(Math.max(label.of[1], box.top), box.bottom),
  ];
  const away = Math.hypot(foot[0] - label.of[0], foot[1] - label.of[1]);
  if (label.leaderFrom !== undefined && away > label.leaderFrom) {
    marks.push({ kind: "line", from: label.of, to: foot, pen: { width: 0.25, colour } });
    marks.push({ kind: "circle", at: label.of, radius: 0.45, fill: colour });
  }
  const ring: readonly PaperPoint[] = [
    [box.left, box.top],
    [box.right, box.top],
    [box.right, box.bottom],
    [box.left, box.bottom],
  ];
  if (label.box === "framed")
    marks.push({
      kind: "area",
      rings: [ring],
      fills: [{ kind: "solid", colour: paper }],
      pen: { width: 0.25, colour },
    });
  else marks.push({ kind: "area", rings: [ring], fills: [{ kind: "solid", colour: paper, opacity: 0.82 }] });
  let y = box.top + rim;
  for (const line of label.lines) {
    marks.push({
      kind: "text",
      at: [at[0], y + line.size],
      text: line.text,
      size: line.size,
      anchor: "middle",
      weight: line.weight,
      colour: ink,
      halo: 0.5,
    });
    y += line.size * lead;
  }
  return marks;
}

export const inside = (box: Box, window: Box): boolean =>
  box.left >= window.left &&
  box.right <= window.right &&
  box.top >= window.top &&
  box.bottom <= window.bottom;

const overlap = (a: Box, b: Box): number => {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return width > 0 && height > 0 ? 0.5 + width * height : 0;
};

/** Whether a segment touches a box: the box's corners lie on both sides of it, and the two extents meet. */
export function crosses([a, b]: Segment, box: Box): boolean {
  if (Math.max(a[0], b[0]) < box.left || Math.min(a[0], b[0]) > box.right) return false;
  if (Math.max(a[1], b[1]) < box.top || Math.min(a[1], b[1]) > box.bottom) return false;
  const side = (x: number, y: number): number => (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
  const sides = [
    side(box.left, box.top),
    side(box.right, box.top),
    side(box.right, box.bottom),
    side(box.left, box.bottom),
  ];
  return !(sides.every((s) => s > 0) || sides.every((s) => s < 0));
}
