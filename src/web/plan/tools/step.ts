import type { Point } from "#engine";
import type { EditStep, RecordRef } from "../../contract.ts";
import { cornerSteps, moveSteps, turnSteps, wallSteps } from "../change.ts";
import { sizeOf } from "../edit/room-size.ts";
import { boxed } from "../edit/selected.ts";
import { sideNear } from "../edit/sides.ts";
import { stretchSteps } from "../edit/stretched-rectangle.ts";
import { picked, placeOf, recordOf, roomsOn, sameRef } from "../pick.ts";
import { remembering } from "../remembering.ts";
import { insideRoom, nearestOn } from "../shapes.ts";
import { type Guide, snapCorner, snapObstacle, snapPlace, snapReference } from "../snap.ts";
import { type Pixel, panned, toPixel, toPoint } from "../view.ts";
import {
  type Bench,
  type Chain,
  type ChosenSide,
  type Deed,
  type Drawing,
  type Grip,
  type Input,
  rest,
  type ToolState,
} from "./state.ts";

/** Pixels that a press may wander and still be a press. */
const wander = 4;
/** Pixels beside a wall that are still the wall. */
const onWall = 10;
const reachOf = (touch: boolean): number => (touch ? 24 : 12);

/**
 * One step of the plan's tools: what was going on, and what the person did, give what goes on now and what becomes of the job.
 * A drag changes nothing until it ends; until then it is in the state, and `previewOf` tells what it would do.
 */
export function stepped(state: ToolState, input: Input, bench: Bench): Deed {
  const { tool, drawing: draw } = bench;
  const drawn = drawing(state);
  switch (input.do) {
    case "cancel":
      // A second finger moves the plan under a chain that goes on.
      return { state: state.on === "chain" ? state : rest };
    case "down":
      return pressed(state, input, bench);
    case "hover":
      return drawn && draw ? draw.moved(drawn, input, bench) : { state };
    case "typed":
      return draw && tool.kind === "add" && !bench.readOnly
        ? draw.typed(tool, drawn, { lengths: input.lengths, bench })
        : { state };
    case "tried":
      return draw && tool.kind === "add" && !bench.readOnly
        ? draw.tried(tool, drawn, { lengths: input.lengths, bench })
        : { state };
    case "towards":
      return drawn && draw ? draw.towards(drawn, input.way) : { state };
    case "back":
      return drawn?.on === "chain" && draw ? draw.back(drawn) : { state: rest };
    case "finish":
      return drawn && draw && tool.kind === "add" ? draw.finished(tool, drawn, bench) : { state };
    case "drag":
      return dragged(state, input, bench);
    case "up":
      return released(state, input.pixel, bench);
    case "double":
      return doubled(state, input.pixel, bench);
  }
}

const drawing = (state: ToolState): Chain | Drawing | undefined =>
  state.on === "draw" || state.on === "chain" ? state : undefined;

function pressed(state: ToolState, input: Extract<Input, { do: "down" }>, bench: Bench): Deed {
  const { pixel } = input;
  if (input.pan) return drawing(state) ? { state } : { state: { on: "pan", last: pixel } };
  const point = toPoint(bench.view, pixel);
  if (bench.tool.kind === "measure") {
    const at = cornerNear(bench, pixel) ?? point;
    // After a press without a drag the first end stands, and this is the other one.
    const begun = state.on === "measure" && state.held === "set" && samePlace(state.from, state.to);
    return { state: { on: "measure", from: begun ? state.from : at, to: at, held: "held" } };
  }
  if (bench.tool.kind === "add" && !bench.readOnly)
    return bench.drawing?.pressed(bench.tool, drawing(state), pixel, bench) ?? { state };
  const reach = reachOf(input.touch);
  const grip = bench.readOnly ? undefined : gripAt(bench, pixel, reach);
  const hits = picked(bench.site, bench.storey, { view: bench.view, pixel, reach });
  return { state: { on: "press", from: pixel, hits, grip, add: input.shift ? "add" : "replace" } };
}

const samePlace = ([ax, ay]: Point, [bx, by]: Point): boolean => ax === bx && ay === by;

const gripAt = (bench: Bench, pixel: Pixel, reach: number): Grip | undefined =>
  bench.grips.find(({ at }) => {
    const { px, py } = toPixel(bench.view, at);
    return Math.hypot(px - pixel.px, py - pixel.py) < reach;
  });

function dragged(state: ToolState, input: Extract<Input, { do: "drag" }>, bench: Bench): Deed {
  const { pixel } = input;
  const point = toPoint(bench.view, pixel);
  switch (state.on) {
    case "rest":
      return { state };
    case "press":
      return Math.hypot(pixel.px - state.from.px, pixel.py - state.from.py) < wander
        ? { state }
        : begun(state, input, bench);
    case "pan":
      return {
        state: { on: "pan", last: pixel },
        view: panned(bench.view, pixel.px - state.last.px, pixel.py - state.last.py),
      };
    case "move":
      return {
        state: { ...state, ...movedBy(bench, state.refs, { from: state.from, to: point, free: input.free }) },
      };
    case "turn": {
      const middle = placeOf(bench.site, state.ref);
      const now =
        recordOf(bench.site, "detectors", state.ref.id)?.turn ??
        recordOf(bench.site, "luminaires", state.ref.id)?.turn;
      if (!middle || now === undefined) return { state };
      const step = input.free ? Math.PI / 180 : Math.PI / 36;
      const aimed = Math.round(Math.atan2(point[1] - middle[1], point[0] - middle[0]) / step) * step;
      return { state: { ...state, by: aimed - now } };
    }
    case "reshape":
      return { state: reshaped(state.grip, point, { bench, free: input.free }) };
    case "draw":
    case "chain":
      return bench.drawing?.moved(state, input, bench) ?? { state };
    case "box":
    case "measure":
      return state.on === "measure" && state.held === "set" ? { state } : { state: { ...state, to: point } };
  }
}

/** What a press becomes when it starts to move. */
function begun(
  state: Extract<ToolState, { on: "press" }>,
  input: Extract<Input, { do: "drag" }>,
  bench: Bench,
): Deed {
  const from = toPoint(bench.view, state.from);
  if (state.add === "add") return { state: { on: "box", from, to: toPoint(bench.view, input.pixel) } };
  if (state.grip) {
    const { grip } = state;
    return {
      state:
        grip.kind === "turn"
          ? { on: "turn", ref: grip.ref, by: 0 }
          : reshaped(grip, toPoint(bench.view, input.pixel), { bench, free: input.free }),
    };
  }
  const refs = bench.readOnly ? undefined : movable(state.hits, bench);
  if (!refs)
    return {
      state: { on: "pan", last: input.pixel },
      view: panned(bench.view, input.pixel.px - state.from.px, input.pixel.py - state.from.py),
    };
  const moved = movedBy(bench, refs, { from, to: toPoint(bench.view, input.pixel), free: input.free });
  const select = refs.some((ref) => bench.selection.some((one) => sameRef(one, ref))) ? {} : { select: refs };
  return { state: { on: "move", refs, from, ...moved }, ...select };
}

/** A device moves at once; the building itself only after it was selected, so that nobody shifts a wall while panning. */
function movable(hits: readonly RecordRef[], bench: Bench): readonly RecordRef[] | undefined {
  const first = hits[0];
  if (!first) return undefined;
  const chosen = hits.find((hit) => bench.selection.some((one) => sameRef(one, hit)));
  if (chosen)
    return chosen.kind === "rooms" && bench.selection.length === 1 && first.kind !== "rooms"
      ? undefined
      : bench.selection;
  return first.kind === "detectors" ? [first] : undefined;
}

function movedBy(
  bench: Bench,
  refs: readonly RecordRef[],
  drag: { readonly from: Point; readonly to: Point; readonly free: boolean },
): { readonly by: Point; readonly guides: readonly Guide[] } {
  const raw: Point = [drag.to[0] - drag.from[0], drag.to[1] - drag.from[1]];
  const first = refs[0];
  if (drag.free || !first) return { by: raw, guides: [] };
  if (first.kind === "obstacles" && refs.length === 1)
    return snapObstacle(bench.site, { view: bench.view, ref: first, by: raw });
  const start = snapReference(bench.site, refs);
  if (
    !start ||
    !["detectors", "luminaires", "ceilingThings", "dwellPlaces", "interference"].includes(first.kind)
  )
    return { by: [Math.round(raw[0] * 100) / 100, Math.round(raw[1] * 100) / 100], guides: [] };
  const snapped = snapPlace(bench.site, bench.storey, {
    view: bench.view,
    ref: first,
    at: [start[0] + raw[0], start[1] + raw[1]],
  });
  return { by: [snapped.at[0] - start[0], snapped.at[1] - start[1]], guides: snapped.guides };
}

function reshaped(
  grip: Exclude<Grip, { kind: "turn" }>,
  to: Point,
  how: { readonly bench: Bench; readonly free: boolean },
): ToolState {
  const { bench, free } = how;
  if (grip.kind === "corner") {
    const snapped = free
      ? { at: to, guides: [] }
      : snapCorner(bench.site, bench.storey, { view: bench.view, ref: grip.ref, index: grip.index, at: to });
    const steps =
      (free ? undefined : stretchSteps(bench.site, grip.ref, { index: grip.index, to: snapped.at })) ??
      cornerSteps(bench.site, grip.ref, { index: grip.index, move: snapped.at });
    return { on: "reshape", grip, steps, guides: snapped.guides, at: snapped.at };
  }
  const record = recordOf(bench.site, grip.ref.kind as "rooms" | "obstacles", grip.ref.id);
  const ring = record ? ("outline" in record ? record.outline : record.footprint) : [];
  const a = ring[grip.index];
  const b = ring[(grip.index + 1) % ring.length];
  if (!a || !b) return rest;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const away = ((to[0] - a[0]) * (b[1] - a[1]) - (to[1] - a[1]) * (b[0] - a[0])) / length;
  const step = free ? 0.001 : 0.01;
  const by = Math.round(away / step) * step;
  return {
    on: "reshape",
    grip,
    steps: wallSteps(bench.site, grip.ref, { index: grip.index, by }),
    guides: [],
    at: to,
  };
}

function released(state: ToolState, pixel: Pixel, bench: Bench): Deed {
  switch (state.on) {
    case "rest":
    case "pan":
      return { state: rest };
    case "press": {
      const side = sideAt(state, pixel, bench);
      return side ? { state: rest, side } : { state: rest, select: chosen(state, bench) };
    }
    case "move":
    case "turn":
    case "reshape": {
      const steps = previewOf(state, bench.site);
      const name =
        state.on === "move" ? "plan.edit.move" : state.on === "turn" ? "plan.edit.turn" : "plan.edit.reshape";
      return steps.length > 0 && !isNothing(state)
        ? { state: rest, commit: { name, steps } }
        : { state: rest };
    }
    case "box":
      return { state: rest, select: boxed(bench.site, bench.storey, state) };
    case "draw":
    case "chain":
      return bench.tool.kind === "add" && bench.drawing
        ? bench.drawing.released(bench.tool, state, pixel, bench)
        : { state: rest };
    case "measure":
      return { state: { ...state, to: cornerNear(bench, pixel) ?? state.to, held: "set" } };
  }
}

const isNothing = (state: ToolState): boolean =>
  (state.on === "move" && state.by[0] === 0 && state.by[1] === 0) || (state.on === "turn" && state.by === 0);

/** What a drag would do if it ended now. */
export const previewOf = remembering((state: ToolState, site: Bench["site"]): readonly EditStep[] => {
  if (state.on === "move") return moveSteps(site, state.refs, state.by);
  if (state.on === "turn") return turnSteps(site, [state.ref], state.by);
  return state.on === "reshape" ? state.steps : nothingDone;
});

const nothingDone: readonly EditStep[] = [];

/** A press on a wall of the selected room chooses that side, where its length is not that of the room. */
function sideAt(
  { grip, hits, add }: Extract<ToolState, { on: "press" }>,
  pixel: Pixel,
  bench: Bench,
): ChosenSide | undefined {
  const [ref, more] = bench.selection;
  const room = ref?.kind === "rooms" && !more ? recordOf(bench.site, "rooms", ref.id) : undefined;
  if (!room || add === "add" || bench.readOnly || sizeOf(room)) return undefined;
  if (grip?.kind === "side") return { room: room.id, index: grip.index };
  if (grip || (hits[0] && hits[0].kind !== "rooms")) return undefined;
  const { index, away } = sideNear(room, toPoint(bench.view, pixel));
  return away * bench.view.scale < onWall ? { room: room.id, index } : undefined;
}

/** A second press on the same place goes to what lies below. */
function chosen(state: Extract<ToolState, { on: "press" }>, bench: Bench): readonly RecordRef[] {
  const { hits } = state;
  const first = hits[0];
  if (!first) return state.add === "add" ? bench.selection : [];
  if (state.add === "add") {
    const without = bench.selection.filter((ref) => !sameRef(ref, first));
    return without.length < bench.selection.length ? without : [...bench.selection, first];
  }
  const only = bench.selection.length === 1 ? hits.findIndex((hit) => sameRef(hit, bench.selection[0])) : -1;
  return [hits[(only + 1) % hits.length] ?? first];
}

/** Twice on a wall of the selected room: a new corner there. */
function doubled(state: ToolState, pixel: Pixel, bench: Bench): Deed {
  if (state.on === "chain" && bench.tool.kind === "add" && bench.drawing)
    return bench.drawing.finished(bench.tool, state, bench);
  const ref = bench.selection.find(({ kind }) => kind === "rooms" || kind === "obstacles");
  if (!ref || bench.readOnly || bench.tool.kind !== "select") return { state: rest };
  const record = recordOf(bench.site, ref.kind as "rooms" | "obstacles", ref.id);
  const ring = record ? ("outline" in record ? record.outline : record.footprint) : [];
  const point = toPoint(bench.view, pixel);
  for (const [index, a] of ring.entries()) {
    const on = nearestOn(a, ring[(index + 1) % ring.length] as Point, point);
    if (Math.hypot(on[0] - point[0], on[1] - point[1]) * bench.view.scale < 10)
      return {
        state: rest,
        commit: { name: "plan.edit.corner", steps: cornerSteps(bench.site, ref, { index, insert: on }) },
        select: [ref],
      };
  }
  return { state: rest };
}

/** A corner of a room within a few pixels: measures start and end there. */
function cornerNear(bench: Bench, pixel: Pixel): Point | undefined {
  for (const room of roomsOn(bench.site, bench.storey).values())
    for (const point of room.outline) {
      const { px, py } = toPixel(bench.view, point);
      if (Math.hypot(px - pixel.px, py - pixel.py) < 10) return point;
    }
  for (const device of bench.site.detectors) {
    const { px, py } = toPixel(bench.view, device.at);
    if (
      Math.hypot(px - pixel.px, py - pixel.py) < 10 &&
      [...roomsOn(bench.site, bench.storey).values()].some((room) => insideRoom(room, device.at))
    )
      return device.at;
  }
  return undefined;
}

/** The grips of what is selected: turn a device, move a corner or a side. */
export const gripsOf = ({ site, selection, tool, readOnly, view }: Omit<Bench, "grips">): readonly Grip[] =>
  gripsFor(site, selection, tool, readOnly, view.scale);

const gripsFor = remembering(
  (
    site: Bench["site"],
    selection: Bench["selection"],
    tool: Bench["tool"],
    readOnly: boolean,
    scale: number,
  ): readonly Grip[] => {
    const ref = selection.length === 1 ? selection[0] : undefined;
    if (!ref || tool.kind !== "select" || readOnly) return [];
    if (ref.kind === "detectors" || ref.kind === "luminaires") {
      const record = recordOf(site, ref.kind, ref.id);
      if (!record) return [];
      const away = 36 / scale;
      return [
        {
          kind: "turn",
          ref,
          at: [record.at[0] + Math.cos(record.turn) * away, record.at[1] + Math.sin(record.turn) * away],
        },
      ];
    }
    if (ref.kind !== "rooms" && ref.kind !== "obstacles") return [];
    const record = recordOf(site, ref.kind, ref.id);
    const ring = record ? ("outline" in record ? record.outline : record.footprint) : [];
    const corners = ring.map((at, index): Grip => ({ kind: "corner", ref, index, at }));
    const sides = ring.flatMap((a, index): Grip[] => {
      const b = ring[(index + 1) % ring.length] as Point;
      return Math.hypot(b[0] - a[0], b[1] - a[1]) * scale < 44
        ? []
        : [{ kind: "side", ref, index, at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] }];
    });
    return [...corners, ...sides];
  },
);
