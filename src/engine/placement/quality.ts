import type { Point } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import { alignmentOf, middleLines } from "./alignment.ts";
import { intoFrame, longestWall, outOfFrame } from "./candidates.ts";
import type { Column } from "./columns.ts";
import type { PlacementWorld } from "./contract.ts";
import { leastInHand, type Measure, measureOf, seesAll, worstDark } from "./measure.ts";
import type { RowsAtHand } from "./row-field.ts";
import { holesOf } from "./strict.ts";
import type { RoomTask } from "./task.ts";

/** A strict layout with the reach that it keeps in hand. */
export interface Refined {
  readonly columns: readonly Column[];
  readonly leastMargin: Metres;
}

/** What refining needs beside the room. */
export interface RefineQuestion {
  /** The layout, measured. */
  readonly measures: readonly Measure[];
  /** Places that must be seen; samples are enough, each layout kept is checked exactly. */
  readonly rows: RowsAtHand;
  /** Places that the search chose from. */
  readonly places: readonly Point[];
  /** "free": devices may also hang between the places; "places": only there. */
  readonly hang: "free" | "places";
  /** The device at another place; undefined where it may not hang. */
  readonly moved: (column: Column, at: Point) => Column | undefined;
  readonly alternatives: number;
  readonly world: PlacementWorld;
  readonly until: number;
}

/** Places tried anew, and exact checks, for one room: the same on every machine. */
const MOST_TRIED = 500;
const MOST_CHECKED = 250;
/** Places tried for one more device. */
const MOST_ADDED = 150;
/** A layout must be this much better in its own trait to be offered. */
const WORTH = { dark: 0.1, spill: 0.1, inHand: 0.05, line: 0.1 } as const;

interface Judged {
  readonly measures: readonly Measure[];
  readonly dark: Metres;
  readonly spill: number;
  readonly inHand: Metres;
  readonly line: number;
  /** Pairs that hang closer together than two bodies and a hand allow. */
  readonly crowded: number;
}

interface Aim {
  readonly trait: "all" | keyof typeof WORTH;
  readonly dark: number;
  readonly spill: number;
  readonly inHand: number;
  readonly line: number;
}

/** Weights: of a metre in the dark, of a square metre of spill, of a metre in hand, of all in line. @source COMMON-PRACTICE */
const BALANCED: Aim = { trait: "all", dark: 1, spill: 0.3, inHand: 2, line: 1.5 };
const AIMS: readonly Aim[] = [
  { trait: "line", dark: 0.1, spill: 0.03, inHand: 0.2, line: 20 },
  { trait: "spill", dark: 0.1, spill: 10, inHand: 0.2, line: 0.15 },
  { trait: "dark", dark: 20, spill: 0.03, inHand: 0.2, line: 0.15 },
  { trait: "inHand", dark: 0.1, spill: 0.03, inHand: 40, line: 0.15 },
];
/** More in hand than this is worth nothing beside the other traits. [m] */
const ENOUGH_IN_HAND: Metres = 0.5;
/** A metre of dark walk beyond the limit weighs more than anything that can be gained elsewhere. */
const BEYOND_LIMIT = 1000;
/** Two devices at one place cannot be mounted: that outweighs everything. */
const CROWDED = 1e5;
/** From middle to middle of two devices: their bodies, a box each, and a hand between. [m] @source COMMON-PRACTICE */
const ROOM_TO_MOUNT: Metres = 0.3;

/**
 * Moves the devices of a strict layout, one at a time, to where the layout gets better and stays strict; then again for each single trait.
 *
 * The dark walk's limit comes first; then the dark walk itself, spill, reach in hand and line, weighed. Alternatives take one of these as far as it goes.
 *
 * @param task - The room. @param question - The layout, where devices may hang, how many alternatives.
 * @returns The layout that weighs all, first; then those that are better in one trait and worse in another, no two at the same places.
 * Where the limit of the dark walk is not kept, the second is the layout with one more device that shortens it the most.
 * @source DERIVED-HERE
 * @example One device that sees all of a small room from many places: it moves to the middle, in sight of the door
 */
export async function refined(task: RoomTask, question: RefineQuestion): Promise<readonly Refined[]> {
  const { rows, world } = question;
  const count = rows.rows.length;
  const { prepared } = task;
  const limit = prepared.demand.asked.catch ? prepared.look.site.defaults.darkWalkLimit : Infinity;
  const known = new Map<string, Measure | undefined>();
  let tried = 0;
  let checked = 0;
  const start = judged(question.measures);
  let best = await climbed(start, BALANCED);
  const found: Judged[] = [best];
  if (question.alternatives > 0 && best.dark > limit + 1e-6) {
    const more = await withOneMore(best);
    if (more !== undefined) found.push(more);
  }
  for (const aim of AIMS) {
    if (found.length > question.alternatives || over()) break;
    tried = 0;
    checked = 0;
    // From both: a climb ends at the first hill, and the two starts lie on different ones.
    const tops = [await climbed(best, aim), await climbed(start, aim)];
    const other = penalty(tops[1]!, aim) < penalty(tops[0]!, aim) - 1e-6 ? tops[1]! : tops[0]!;
    if (!isOffer(other, aim)) continue;
    if (isWorse(other, best)) found.push(other);
    else {
      // Better, and worse in nothing: no alternative, but the best.
      best = other;
      found[0] = other;
    }
  }
  const offered = found.filter(
    (one) => one === best || one.measures.length > best.measures.length || isWorse(best, one),
  );
  return offered.map(({ measures, inHand }) => ({
    columns: measures.map((measure) => measure.column),
    leastMargin: inHand,
  }));

  function over(): boolean {
    return world.cancelled() || world.now() >= question.until;
  }

  /** The limit of the dark walk is not kept: the place for one more device that shortens the walk the most. */
  async function withOneMore({ measures, dark }: Judged): Promise<Judged | undefined> {
    const kind = measures.find(({ column }) => column.fixed === undefined)?.column;
    if (kind === undefined) return undefined;
    const stride = Math.ceil(question.places.length / MOST_ADDED);
    let shortest = dark - WORTH.dark;
    let more: Measure | undefined;
    for (let index = 0; index < question.places.length && !over(); index += stride) {
      const column = question.moved(kind, question.places[index]!);
      if (column === undefined) continue;
      const measure = measureOf(task, { column, at: rows });
      const left = worstDark(task, [...measures, measure]);
      if (left < shortest - 1e-9) {
        shortest = left;
        more = measure;
      }
      if (index % 8 === 0) await world.breathe();
    }
    return more === undefined ? undefined : judged([...measures, more]);
  }

  function isOffer(layout: Judged, { trait }: Aim): boolean {
    if (trait === "all") return false;
    const sign = trait === "dark" || trait === "spill" ? -1 : 1;
    if (sign * (layout[trait] - best[trait]) < WORTH[trait]) return false;
    return found.every((one) => one.measures.some((measure, at) => measure !== layout.measures[at]));
  }

  function judged(measures: readonly Measure[]): Judged {
    const own = measures.filter(
      ({ column }) => column.fixed === undefined || column.fixed.room === prepared.room.id,
    );
    const places = own.map(({ column }) => column.device.at);
    return {
      measures,
      dark: worstDark(task, measures),
      spill: measures.reduce((sum, measure) => sum + measure.spill(), 0),
      inHand: leastInHand(measures, count),
      line: alignmentOf(prepared.room, places),
      crowded: crowdedPairs(places),
    };
  }

  function penalty({ dark, spill, inHand, line, crowded }: Judged, aim: Aim): number {
    return (
      CROWDED * crowded +
      BEYOND_LIMIT * Math.max(0, dark - limit) +
      aim.dark * dark +
      aim.spill * spill -
      aim.inHand * Math.min(aim.trait === "inHand" ? Infinity : ENOUGH_IN_HAND, inHand) -
      aim.line * line
    );
  }

  async function climbed(from: Judged, aim: Aim): Promise<Judged> {
    let now = from;
    for (let sweep = 0, gained = true; gained && sweep < 6; sweep++) {
      gained = false;
      for (let index = 0; index < now.measures.length; index++) {
        if (now.measures[index]!.column.fixed !== undefined) continue;
        const better = await bestMove(now, { index, aim });
        if (over()) return better ?? now;
        if (better === undefined) continue;
        now = better;
        gained = true;
      }
    }
    return now;
  }

  async function bestMove(
    now: Judged,
    { index, aim }: { readonly index: number; readonly aim: Aim },
  ): Promise<Judged | undefined> {
    const own = penalty(now, aim);
    const moves: { readonly layout: Judged; readonly value: number }[] = [];
    for (const at of placesFor(now, index)) {
      if (over()) break;
      const measure = measureAt(now.measures[index]!.column, at);
      if (measure === undefined) continue;
      const measures = now.measures.with(index, measure);
      if (!seesAll(measures, count)) continue;
      const layout = judged(measures);
      const value = penalty(layout, aim);
      if (value < own - 1e-6) moves.push({ layout, value });
    }
    await world.breathe();
    moves.sort((a, b) => a.value - b.value);
    for (const { layout } of moves) {
      if (checked >= MOST_CHECKED || over()) return undefined;
      checked++;
      const holes = holesOf(
        task.parts,
        layout.measures.map((measure) => measure.watch),
      );
      if (holes.length === 0) return layout;
    }
    return undefined;
  }

  function measureAt(column: Column, at: Point): Measure | undefined {
    const { model, turn } = column.device;
    const key = `${model.id} ${turn} ${at[0].toFixed(6)} ${at[1].toFixed(6)}`;
    if (known.has(key)) return known.get(key);
    if (tried >= MOST_TRIED) return undefined;
    tried++;
    const moved = question.moved(column, at);
    const measure = moved === undefined ? undefined : measureOf(task, { column: moved, at: rows });
    known.set(key, measure);
    return measure;
  }

  function placesFor(now: Judged, index: number): Point[] {
    const at = now.measures[index]!.column.device.at;
    const near = question.places
      .toSorted((p, q) => apart(p, at) - apart(q, at))
      .slice(0, PLACES_NEAR)
      .filter((place) => apart(place, at) > 1e-6);
    if (question.hang === "places") return near;
    const frame = longestWall(prepared.room);
    const [x, y] = intoFrame(at, frame);
    const middle = middleLines(prepared.room);
    const lines = [
      middle,
      ...now.measures.flatMap(({ column }, other) =>
        other === index ? [] : [intoFrame(column.device.at, frame)],
      ),
    ];
    const snapped = lines.flatMap(([lx, ly]): Point[] => [
      [lx, y],
      [x, ly],
    ]);
    const steps = STEPS.flatMap((step): Point[] => [
      [x + step, y],
      [x - step, y],
      [x, y + step],
      [x, y - step],
    ]);
    return [...[middle, ...snapped, ...steps].map((place) => outOfFrame(place, frame)), ...near];
  }
}

/** Places of the search nearest to a device that it may move to, and short steps beside them. [m] */
const PLACES_NEAR = 16;
const STEPS: readonly Metres[] = [0.4, 0.1];

/** Whether a layout is worse than another in any trait. */
const isWorse = (a: Judged, b: Judged): boolean =>
  a.dark > b.dark + 1e-9 || a.spill > b.spill + 1e-9 || a.inHand < b.inHand - 1e-9 || a.line < b.line - 1e-9;

const apart = (p: Point, q: Point): Metres => Math.hypot(p[0] - q[0], p[1] - q[1]);

/** Pairs of places that are too close for two devices. @param places - Of the devices of a room. [m] @returns Their number. @example Twice the same place: 1 */
export const crowdedPairs = (places: readonly Point[]): number =>
  places.reduce(
    (sum, place, index) =>
      sum + places.slice(0, index).filter((other) => apart(place, other) < ROOM_TO_MOUNT - 1e-6).length,
    0,
  );
