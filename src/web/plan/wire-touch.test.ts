import { expect, test } from "vitest";
import { demoJob, installationOf, siteOf } from "#job";
import { wiringKnown } from "../calculate/wiring-known.ts";
import { fieldsWith, type HeldPin, viaOf } from "./held-pin.ts";
import type { Input } from "./tools/state.ts";
import { toPixel } from "./view.ts";
import { placeInRoute, type WireBench, wireHit, wireTouch } from "./wire-touch.ts";
import { laneOf } from "./wires.ts";

const file = demoJob();
const { site } = siteOf(file);
const wiring = wiringKnown({ site, found: installationOf(file), routes: true });
const view = { scale: 60, x: 15, y: 6, width: 2400, height: 900 };
const bench = (change: object = {}): WireBench =>
  ({
    job: { site, kept: file, readOnly: false },
    stage: "wire",
    tool: { kind: "select" },
    toolState: { on: "rest" },
    storey: "ground",
    circuit: undefined,
    view,
    wiring,
    ...change,
  }) as unknown as WireBench;

/** Middle of the longest stretch of the cable that leaves the board of a circuit, as it is drawn. */
function onFirstCable(circuit: string) {
  const at = file.boards[0]!.at!;
  const line = wiring.runs
    .filter((run) => run.circuit === circuit && run.kind === "feeds" && run.storey === "ground")
    .flatMap(({ lines }) => lines)
    .find(([first]) => Math.hypot(first![0] - at[0], first![1] - at[1]) < 0.5)!;
  const parts = line.slice(1).map((to, i) => [line[i]!, to] as const);
  const long = ([a, b]: (typeof parts)[number]) => Math.hypot(a[0] - b[0], a[1] - b[1]);
  const [a, b] = parts.toSorted((x, y) => long(y) - long(x))[0]!;
  const { beside } = laneOf(file.circuits, circuit);
  const { px, py } = toPixel(view, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
  return { px: px + beside, py: py + beside };
}

test("a line is what its circuit is found by; beside all lines there is nothing", () => {
  for (const { id } of file.circuits.slice(0, 4)) {
    const hit = wireHit(bench(), { pixel: onFirstCable(id), touch: false });
    expect(hit).toEqual({ kind: "line", circuit: id });
  }
  expect(wireHit(bench(), { pixel: { px: 5, py: 5 }, touch: true })).toBeUndefined();
  expect(
    wireHit(bench({ wiring: undefined }), { pixel: onFirstCable("lighting-1"), touch: false }),
  ).toBeUndefined();
});

test("a luminaire lies above the line that passes it", () => {
  const { at } = site.luminaires.find(({ room }) => room === "corridor")!;
  expect(wireHit(bench(), { pixel: toPixel(view, at), touch: false })).toBeUndefined();
});

function played(inputs: readonly Input[], change: object = {}) {
  const done: string[] = [];
  const kept: HeldPin[] = [];
  const touch = wireTouch({
    bench: () => bench(change),
    open: (circuit) => done.push(`open ${circuit}`),
    show: (pin) => done.push(pin ? "show" : "away"),
    keep: (pin) => kept.push(pin),
    pass: (input) => done.push(`pass ${input.do}`),
  });
  const taken = inputs.map((input) => touch(input));
  return { taken, done, kept };
}
const down = (pixel: { readonly px: number; readonly py: number }): Input => ({
  do: "down",
  pixel,
  shift: false,
  pan: false,
  touch: false,
});

test("pressing a line opens its circuit; dragging from it is left to the tools", () => {
  const pixel = onFirstCable("lighting-2");
  expect(played([down(pixel), { do: "up", pixel }])).toEqual({
    taken: [true, true],
    done: ["open lighting-2"],
    kept: [],
  });
  const far = { px: pixel.px + 60, py: pixel.py };
  expect(
    played([down(pixel), { do: "drag", pixel: far, free: false }, { do: "up", pixel: far }]),
  ).toMatchObject({
    taken: [true, true, false],
    done: ["pass down", "pass drag"],
  });
});

test("dragging the first cable of the circuit that one looks at makes it pass there, and moves a place that it passes", () => {
  const pixel = onFirstCable("lighting-2");
  const to = { px: pixel.px + 30, py: pixel.py + 12 };
  const drag: readonly Input[] = [
    down(pixel),
    { do: "drag", pixel: to, free: false },
    { do: "up", pixel: to },
  ];
  const { done, kept } = played(drag, { circuit: "lighting-2" });
  expect(done).toEqual(["show", "away"]);
  expect(kept.map(({ circuit, via }) => [circuit, via.length])).toEqual([["lighting-2", 1]]);
  const [first] = kept[0]!.via;
  const place = toPixel(view, first!);
  expect(Math.hypot(place.px - to.px, place.py - to.py)).toBeLessThan(1);
  const circuits = file.circuits.map((one) => (one.id === "lighting-2" ? { ...one, via: [first!] } : one));
  const again = { px: place.px + 20, py: place.py };
  const moved = played([down(place), { do: "drag", pixel: again, free: false }, { do: "up", pixel: again }], {
    circuit: "lighting-2",
    job: { site, kept: { ...file, circuits }, readOnly: false },
  });
  expect(moved.kept.map(({ index, via }) => [index, via.length])).toEqual([[0, 1]]);
  expect(moved.kept[0]!.via[0]![0]).toBeCloseTo(first![0] + 20 / 60, 1);
});

test("every stretch between two devices is dragged by itself, also behind the contact, and one that is led is led anew", () => {
  const runs = wiring.runs.filter((run) => run.circuit === "lighting-1" && run.storey === "ground");
  const board = file.boards[0]!.id;
  let dragged = 0;
  for (const run of runs)
    for (const [i, line] of run.lines.entries()) {
      const { from, to } = run.ends![i]!;
      // The middle of its longest part, unless a thing lies there or another line is nearer.
      const parts = line.slice(1).map((end, k) => [line[k]!, end] as const);
      const long = ([a, b]: (typeof parts)[number]) => Math.hypot(a[0] - b[0], a[1] - b[1]);
      const [a, b] = parts.toSorted((x, y) => long(y) - long(x))[0]!;
      const beside = run.kind === "feeds" ? laneOf(file.circuits, "lighting-1").beside : 0;
      const { px, py } = toPixel(view, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
      const pixel = { px: px + beside, py: py + beside };
      const hit = wireHit(bench({ circuit: "lighting-1" }), { pixel, touch: false });
      if (hit?.kind !== "pin") continue;
      const { stretch } = hit.pin;
      if (from === board) expect(stretch).toBe("first");
      else if (stretch !== "first" && stretch.from === from && stretch.to === to) {
        const away = { px: pixel.px, py: pixel.py + 20 };
        const { kept } = played(
          [down(pixel), { do: "drag", pixel: away, free: false }, { do: "up", pixel: away }],
          { circuit: "lighting-1" },
        );
        const circuits = file.circuits.map((one) =>
          one.id === "lighting-1" ? { ...one, ...fieldsWith(one, kept[0]!) } : one,
        );
        const own = circuits.find(({ id }) => id === "lighting-1")!;
        expect(own.pinned).toEqual([{ from, to, via: kept[0]!.via }]);
        expect(own.via).toBe(file.circuits.find(({ id }) => id === "lighting-1")!.via);
        const led = wiringKnown({ site, found: installationOf({ ...file, circuits }), routes: true });
        const [place] = kept[0]!.via;
        const now = led.runs
          .filter((one) => one.circuit === "lighting-1" && one.kind === run.kind && one.storey === "ground")
          .flatMap(({ lines, ends }) =>
            lines.filter((_, k) => ends![k]!.from === from && ends![k]!.to === to),
          );
        expect(now[0]).toContainEqual(place);
        // The other way round it is the same stretch: what was kept is replaced and not doubled.
        expect(viaOf(own, { from: to, to: from })).toEqual(kept[0]!.via.toReversed());
        expect(fieldsWith(own, { stretch: { from: to, to: from }, via: [] }).pinned).toHaveLength(1);
        dragged += 1;
      }
    }
  expect(dragged).toBeGreaterThanOrEqual(8);
});

test("in a job that may only be read, and in other stages, nothing is dragged", () => {
  const pixel = onFirstCable("lighting-2");
  const to = { px: pixel.px + 30, py: pixel.py };
  const drag: readonly Input[] = [
    down(pixel),
    { do: "drag", pixel: to, free: false },
    { do: "up", pixel: to },
  ];
  const reading = { circuit: "lighting-2", job: { site, kept: file, readOnly: true } };
  expect(played(drag, reading)).toMatchObject({ done: ["pass down", "pass drag"], kept: [] });
  expect(played(drag, { stage: "place" })).toEqual({ taken: [false, false, false], done: [], kept: [] });
});

test("a new place comes where it makes the way least longer", () => {
  const way = [
    [0, 0],
    [10, 0],
    [10, 10],
  ] as const;
  expect(placeInRoute(way, [5, 1])).toBe(0);
  expect(placeInRoute(way, [9, 5])).toBe(1);
});
