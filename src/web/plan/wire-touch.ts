import type { Point } from "#engine";
import type { Run } from "../calculate/wire-protocol.ts";
import type { Workbench } from "../shell/workbench.ts";
import { type HeldPin, type Stretch, viaOf } from "./held-pin.ts";
import { picked } from "./pick.ts";
import type { Input } from "./tools/state.ts";
import { type Pixel, toPixel, toPoint, type View } from "./view.ts";
import { laneOf, stretchesOn } from "./wires.ts";

/** How near to a line one presses it. [px] */
const reach = { mouse: 7, touch: 14 } as const;
/** How far a press may stray and still be one. [px] */
const still = 4;

/** What of the workbench a touch of the wiring looks at. */
export type WireBench = Pick<
  Workbench,
  "stage" | "tool" | "toolState" | "wiring" | "storey" | "view" | "job" | "circuit"
>;

type Ends = NonNullable<Run["ends"]>[number];

/** What lies under a pixel of the wiring: a point of the chosen route, a line, or nothing that is not covered by a thing. */
export type WireHit =
  | { readonly kind: "pin"; readonly pin: HeldPin }
  | { readonly kind: "line"; readonly circuit: string };

/**
 * What of the wiring one pressed. Things lie above lines; the points of a route that one looks at lie above both.
 *
 * @param bench - What is on show. @param pixel - Where. @param touch - A finger reaches further.
 */
export function wireHit(
  bench: WireBench,
  { pixel, touch }: { readonly pixel: Pixel; readonly touch: boolean },
): WireHit | undefined {
  const { wiring, storey, view, job, circuit: chosen } = bench;
  if (!wiring) return undefined;
  const near = touch ? reach.touch : reach.mouse;
  const own = job.readOnly ? undefined : job.kept.circuits.find(({ id }) => id === chosen);
  const board = job.kept.boards.find(({ id }) => id === own?.board);
  const stretchOf = ({ from, to }: Ends): Stretch =>
    from === board?.id && board.storey === storey ? "first" : { from, to };
  if (own)
    for (const stretch of stretchesOn({ wiring, storey, circuit: own.id }).map(stretchOf)) {
      const via = viaOf(own, stretch);
      const index = via.findIndex((at) => apart(toPixel(view, at), pixel) <= near + 2);
      if (index >= 0) return { kind: "pin", pin: { circuit: own.id, stretch, index, via } };
    }
  const things = picked(job.site, storey, { view, pixel, reach: near });
  if (things.some(({ kind }) => kind === "detectors" || kind === "luminaires" || kind === "switches"))
    return undefined;
  const hit = nearestLine(bench, { pixel, near });
  if (hit === undefined) return undefined;
  if (own && hit.ends && hit.run.circuit === own.id) {
    const at = toPoint(view, pixel);
    const stretch = stretchOf(hit.ends);
    const via = viaOf(own, stretch);
    const index = placeInRoute([hit.line[0] ?? at, ...via, hit.line.at(-1) ?? at], at);
    return {
      kind: "pin",
      pin: { circuit: own.id, stretch, index, via: via.toSpliced(index, 0, rounded(at)) },
    };
  }
  return hit.run.circuit === undefined ? undefined : { kind: "line", circuit: hit.run.circuit };
}

/** Lines that one presses: what feeds, and of the circuit that one looks at also what is switched, which it can be led by. */
function nearestLine(
  { wiring, storey, view, job, circuit }: WireBench,
  { pixel, near }: { readonly pixel: Pixel; readonly near: number },
): { readonly run: Run; readonly line: readonly Point[]; readonly ends: Ends | undefined } | undefined {
  let best:
    | {
        readonly run: Run;
        readonly line: readonly Point[];
        readonly ends: Ends | undefined;
        readonly away: number;
      }
    | undefined;
  for (const run of wiring?.runs ?? []) {
    const feeds = run.kind === "feeds";
    if (run.storey !== storey || !(feeds || (run.ends && run.circuit === circuit))) continue;
    const beside = feeds ? laneOf(job.kept.circuits, run.circuit).beside : 0;
    const at = { px: pixel.px - beside, py: pixel.py - beside };
    for (const [i, line] of run.lines.entries()) {
      const away = fromLine(line, at, view);
      if (away <= near && (best === undefined || away < best.away))
        best = { run, line, ends: run.ends?.[i], away };
    }
  }
  return best;
}

/** From a pixel to the nearest place of a line. [px] */
function fromLine(line: readonly Point[], at: Pixel, view: View): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < line.length; i += 1) {
    const [a, b] = [toPixel(view, line[i - 1] as Point), toPixel(view, line[i] as Point)];
    const [dx, dy] = [b.px - a.px, b.py - a.py];
    const squared = dx * dx + dy * dy;
    const share =
      squared === 0 ? 0 : Math.min(1, Math.max(0, ((at.px - a.px) * dx + (at.py - a.py) * dy) / squared));
    least = Math.min(least, Math.hypot(at.px - a.px - share * dx, at.py - a.py - share * dy));
  }
  return least;
}

/** Where in the list of places a new one makes the way least longer. @param way - Start, places, end. @param at - The new one. @returns Index in the list of places. @example Half way between start and the first place: 0 */
export function placeInRoute(way: readonly Point[], at: Point): number {
  const far = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
  const longer = way
    .slice(1)
    .map((to, i) => far(way[i] as Point, at) + far(at, to) - far(way[i] as Point, to));
  return longer.indexOf(Math.min(...longer));
}

const apart = (a: Pixel, b: Pixel): number => Math.hypot(a.px - b.px, a.py - b.py);

/** A centimetre. */
const rounded = ([x, y]: Point): Point => [Math.round(x * 100) / 100, Math.round(y * 100) / 100];

/** What a touch of the wiring does to the screen and the job. */
export interface WirePorts {
  readonly bench: () => WireBench;
  readonly open: (circuit: string) => void;
  /** The point follows the hand; undefined: it is let go. */
  readonly show: (pin: HeldPin | undefined) => void;
  readonly keep: (pin: HeldPin) => void;
  /** What was held back goes on to the tools, since it was no touch of the wiring after all. */
  readonly pass: (input: Input) => void;
}

/** Takes what is pressed of the wiring: a line opens its circuit, a point of the chosen route is dragged. @returns True where the input was taken. */
export function wireTouch(ports: WirePorts): (input: Input) => boolean {
  let held:
    | {
        readonly down: Extract<Input, { do: "down" }>;
        readonly hit: WireHit;
        readonly moved: HeldPin | undefined;
      }
    | undefined;
  return (input) => {
    const bench = ports.bench();
    if (bench.stage !== "wire" || bench.tool.kind !== "select") {
      held = undefined;
      return false;
    }
    if (input.do === "down") {
      if (input.pan || input.shift || bench.toolState.on !== "rest") return false;
      const hit = wireHit(bench, input);
      held = hit && { down: input, hit, moved: undefined };
      return held !== undefined;
    }
    if (!held) return false;
    const { down, hit } = held;
    switch (input.do) {
      case "drag": {
        if (!held.moved && apart(down.pixel, input.pixel) <= still) return true;
        if (hit.kind === "line") {
          held = undefined;
          ports.pass(down);
          ports.pass(input);
          return true;
        }
        const { pin } = hit;
        const moved = { ...pin, via: pin.via.with(pin.index, rounded(toPoint(bench.view, input.pixel))) };
        held = { ...held, moved };
        ports.show(moved);
        return true;
      }
      case "up": {
        const { moved } = held;
        held = undefined;
        if (moved) {
          ports.keep(moved);
          ports.show(undefined);
        } else ports.open(hit.kind === "line" ? hit.circuit : hit.pin.circuit);
        return true;
      }
      case "cancel":
        held = undefined;
        ports.show(undefined);
        return true;
      default:
        return false;
    }
  };
}
