import { type Metres, type Point, selfCrossing } from "#engine";
import { snapDrawn } from "../draw-snap.ts";
import { distance } from "../shapes.ts";
import type { Snapped } from "../snap.ts";
import { type Pixel, toPixel, toPoint } from "../view.ts";
import { type Added, added, type Refusal } from "./add.ts";
import { gestureOf } from "./kinds.ts";
import { newRoom } from "./presets/rooms.ts";
import {
  type Bench,
  type Chain,
  type Deed,
  type Drawing,
  type Input,
  rest,
  type Tool,
  type Towards,
} from "./state.ts";

type AddTool = Extract<Tool, { kind: "add" }>;

/** Pixels that a press may wander and still be a press. */
const wander = 6;
/** A side that somebody only turned towards, until its length is typed. [m] */
const shown = 1;

const ways: Readonly<Record<Towards, Point>> = { right: [1, 0], up: [0, 1], left: [-1, 0], down: [0, -1] };

/** Drawing begins, or a second press ends what a first one began. */
export function drawPressed(
  tool: AddTool,
  state: Chain | Drawing | undefined,
  pixel: Pixel,
  bench: Bench,
): Deed {
  if (gestureOf(tool.what) === "chain") {
    const chain: Chain =
      state?.on === "chain" ? movedOn(state) : { on: "chain", points: [], to: [0, 0], guides: [] };
    return { state: { ...chain, ...snappedTo(bench, pixel, chain.points) } };
  }
  if (state?.on === "draw" && state.held === "set" && !state.begun)
    return {
      state: { ...state, ...snappedTo(bench, pixel, [state.from]), held: "held", pressed: undefined },
    };
  const { to, guides } =
    gestureOf(tool.what) === "touch"
      ? { to: toPoint(bench.view, pixel), guides: [] }
      : snappedTo(bench, pixel, []);
  return { state: { on: "draw", what: tool.what, from: to, to, guides, held: "held", pressed: pixel } };
}

/** The hand moves, pressing or not. */
export function drawMoved(
  state: Chain | Drawing,
  input: Extract<Input, { do: "drag" | "hover" }>,
  bench: Bench,
): Deed {
  const { pixel, free } = input;
  if (state.on === "chain")
    return { state: { ...movedOn(state), ...snappedTo(bench, pixel, state.points, free) } };
  if (input.do === "hover" && (state.held !== "set" || state.begun)) return { state };
  if (gestureOf(state.what) === "touch") return { state: { ...state, to: toPoint(bench.view, pixel) } };
  return { state: { ...turnedFree(state), ...snappedTo(bench, pixel, [state.from], free) } };
}

/** The hand lets go: a thing is set down, a corner added, or the second end awaited. */
export function drawReleased(tool: AddTool, state: Chain | Drawing, pixel: Pixel, bench: Bench): Deed {
  if (state.on === "chain") {
    const first = state.points[0];
    if (first && state.points.length >= 3 && near(bench, first, pixel)) return closed(tool, state, bench);
    const last = state.points.at(-1);
    if (last && near(bench, last, pixel)) return { state };
    return { state: { ...state, points: [...state.points, state.to] } };
  }
  const { pressed } = state;
  const stayed = pressed !== undefined && Math.hypot(pixel.px - pressed.px, pixel.py - pressed.py) < wander;
  if (stayed && gestureOf(state.what) !== "touch") return { state: { ...state, held: "set" } };
  return setDown(tool, added(state.what, bench, state));
}

/** Figures that were typed: the next side of a chain, the length of a line, the two sides of a rectangle. */
export function drawTyped(
  tool: AddTool,
  state: Chain | Drawing | undefined,
  how: { readonly lengths: Lengths; readonly bench: Bench },
): Deed {
  const { lengths, bench } = how;
  switch (gestureOf(tool.what)) {
    case "touch":
      return { state: state ?? rest };
    case "chain": {
      const chain = state?.on === "chain" ? state : undefined;
      const points = chain && chain.points.length > 0 ? chain.points : [middleOf(bench)];
      const last = points.at(-1) as Point;
      const way = wayOf(points, chain);
      const to = centimetre([last[0] + way[0] * lengths[0], last[1] + way[1] * lengths[0]]);
      return { state: { on: "chain", points: [...points, to], to, guides: [] } };
    }
    case "line":
    case "box":
      return setDown(tool, added(tool.what, bench, spanOf(tool, state, how)));
  }
}

/** What is drawn shows how it would be with the length that stands in the field, and as before once none does. */
export function drawTried(
  tool: AddTool,
  state: Chain | Drawing | undefined,
  { lengths, bench }: { readonly lengths: Lengths | undefined; readonly bench: Bench },
): Deed {
  const gesture = gestureOf(tool.what);
  if (state?.on === "chain") {
    const last = state.points.at(-1);
    if (!last || !lengths) return { state };
    const way = wayOf(state.points, state);
    return {
      state: { ...state, to: [last[0] + way[0] * lengths[0], last[1] + way[1] * lengths[0]], guides: [] },
    };
  }
  if (gesture !== "line" && gesture !== "box") return { state: state ?? rest };
  if (!lengths) return { state: !state || state.begun ? rest : state };
  const span = spanOf(tool, state, { lengths, bench });
  return {
    state: {
      ...(state ?? { on: "draw", what: tool.what, pressed: undefined, held: "set", begun: "typed" }),
      ...span,
      guides: [],
    },
  };
}

type Lengths = readonly [Metres] | readonly [Metres, Metres];

/** Both ends of a line or box of typed lengths: from where it was begun, or from the middle of what one sees. */
function spanOf(
  tool: AddTool,
  state: Chain | Drawing | undefined,
  { lengths, bench }: { readonly lengths: Lengths; readonly bench: Bench },
): { readonly from: Point; readonly to: Point } {
  const drawing = state?.on === "draw" ? state : undefined;
  const from = drawing?.from ?? middleOf(bench);
  if (gestureOf(tool.what) === "line") {
    const way = state ? wayOf([from], state) : ways.right;
    return { from, to: [from[0] + way[0] * lengths[0], from[1] + way[1] * lengths[0]] };
  }
  const [wide, high] = [lengths[0], lengths[1] ?? lengths[0]];
  const [right, up] = drawing ? [drawing.to[0] < from[0] ? -1 : 1, drawing.to[1] < from[1] ? -1 : 1] : [1, 1];
  return { from, to: [from[0] + right * wide, from[1] + up * high] };
}

const middleOf = ({ view }: Bench): Point => [Math.round(view.x * 10) / 10, Math.round(view.y * 10) / 10];

/** The way that the next typed length goes. */
export function drawTowards(state: Chain | Drawing, way: Towards): Deed {
  const from = state.on === "chain" ? state.points.at(-1) : state.from;
  if (!from) return { state };
  const to: Point = [from[0] + ways[way][0] * shown, from[1] + ways[way][1] * shown];
  return { state: { ...state, towards: way, to, guides: [] } };
}

/** Takes back the last corner. */
export function drawBack(state: Chain): Deed {
  const points = state.points.slice(0, -1);
  return { state: points.length === 0 ? rest : { ...movedOn(state), points, guides: [] } };
}

/** Closes a chain, or sets down what waits for its second end at the usual size. */
export function drawFinished(tool: AddTool, state: Chain | Drawing, bench: Bench): Deed {
  return state.on === "chain" ? closed(tool, state, bench) : setDown(tool, added(state.what, bench, state));
}

function closed(tool: AddTool, chain: Chain, bench: Bench): Deed {
  const ring = chain.points;
  if (ring.length < 3) return { state: { ...chain, refused: "few" } };
  if (selfCrossing(ring)) return { state: { ...chain, refused: "crossing" } };
  return setDown(tool, newRoom(bench, ring));
}

function setDown(tool: AddTool, made: Added | Refusal): Deed {
  if ("refused" in made) return { state: { on: "rest", refused: made.refused } };
  return {
    state: rest,
    commit: { name: made.name, steps: made.steps },
    select: [made.made],
    ...(tool.after === "again" ? {} : { tool: { kind: "select" } as const }),
  };
}

/** The typed way, else that of the hand, square; else a quarter to the left of the side before, and to the right at first. */
function wayOf(points: readonly Point[], state: Chain | Drawing | undefined): Point {
  if (state?.towards) return ways[state.towards];
  const last = points.at(-1) as Point;
  const before = points.at(-2);
  if (state && distance(state.to, last) > 0.02) {
    const [dx, dy] = [state.to[0] - last[0], state.to[1] - last[1]];
    return Math.abs(dx) >= Math.abs(dy) ? [Math.sign(dx), 0] : [0, Math.sign(dy)];
  }
  if (!before) return ways.right;
  const length = distance(before, last) || 1;
  return [-(last[1] - before[1]) / length, (last[0] - before[0]) / length];
}

/** The state of a hand that moves on: it says itself where to, and what was refused is over. */
const movedOn = ({ refused: _, towards: __, ...chain }: Chain): Chain => chain;
const turnedFree = ({ towards: _, ...drawing }: Drawing): Drawing => drawing;

function snappedTo(
  bench: Bench,
  pixel: Pixel,
  own: readonly Point[],
  free = false,
): { readonly to: Point; readonly guides: Snapped["guides"] } {
  const point = toPoint(bench.view, pixel);
  if (free) return { to: point, guides: [] };
  const of = bench.tool.kind === "add" && roomKinds.has(bench.tool.what) ? "room" : "thing";
  const { at, guides } = snapDrawn(bench, point, { own, of });
  return { to: at, guides };
}

const roomKinds: ReadonlySet<string> = new Set(["room", "lRoom", "roomChain"]);

const near = (bench: Bench, point: Point, pixel: Pixel): boolean => {
  const { px, py } = toPixel(bench.view, point);
  return Math.hypot(px - pixel.px, py - pixel.py) < 12;
};

const centimetre = ([x, y]: Point): Point => [Math.round(x * 1000) / 1000, Math.round(y * 1000) / 1000];
