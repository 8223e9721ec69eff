import { describe, expect, test } from "vitest";
import { areaOf, type Point, planningDefaults, type Room, type Site } from "#engine";
import type { RecordKind } from "../../contract.ts";
import { applied } from "../../jobs/apply.ts";
import { insideRing, insideRoom } from "../shapes.ts";
import { toPixel } from "../view.ts";
import { drawingTools } from "./drawing-tools.ts";
import type { AddKind } from "./kinds.ts";
import { addKinds, gestureOf } from "./kinds.ts";
import { type Bench, type Deed, type Input, rest, type ToolState, type Towards } from "./state.ts";
import { stepped } from "./step.ts";

const empty: Site = {
  name: "",
  defaults: planningDefaults,
  storeys: [{ id: "ground", name: "Ground", elevation: 0 }],
  rooms: [],
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  ceilingThings: [],
  luminaires: [],
  switches: [],
  models: [
    {
      id: "m",
      title: "",
      mounting: { min: 2, max: 3 },
      zones: {},
      declaration: "assumed",
      declaredBy: "",
      cost: 1,
    },
  ],
  detectors: [],
};

const hall: Room = {
  id: "hall",
  storey: "ground",
  number: "",
  name: "",
  use: "other",
  outline: [
    [0, 0],
    [10, 0],
    [10, 8],
    [0, 8],
  ],
  holes: [],
  floor: 0,
  ceilingHeight: 2.7,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
};

/** A plan without a screen. */
function scripted(what: AddKind, site: Site = empty) {
  const now = { site, state: rest as ToolState, tool: { kind: "add", what } as Bench["tool"], commits: 0 };
  let number = 0;
  const view = { scale: 50, x: 5, y: 4, width: 1200, height: 800 };
  const send = (input: Input): void => {
    const bench: Bench = {
      site: now.site,
      storey: "ground",
      view,
      selection: [],
      tool: now.tool,
      grips: [],
      readOnly: false,
      drawing: drawingTools,
      newId: (kind: RecordKind) => `${kind}-${++number}`,
    };
    const deed: Deed = stepped(now.state, input, bench);
    now.state = deed.state;
    if (deed.tool) now.tool = deed.tool;
    if (deed.commit) {
      now.commits += 1;
      now.site = applied(now.site, deed.commit.steps);
    }
  };
  const press = (at: Point): void => {
    const pixel = toPixel(view, at);
    send({ do: "down", pixel, shift: false, pan: false, touch: false });
    send({ do: "up", pixel });
  };
  return {
    now,
    send,
    press,
    hover: (at: Point) => send({ do: "hover", pixel: toPixel(view, at), free: false }),
    typed: (length: number, way?: Towards) => {
      if (way) send({ do: "towards", way });
      send({ do: "typed", lengths: [length] });
    },
    pull: (from: Point, to: Point) => {
      send({ do: "down", pixel: toPixel(view, from), shift: false, pan: false, touch: false });
      send({ do: "drag", pixel: toPixel(view, to), free: false });
      send({ do: "up", pixel: toPixel(view, to) });
    },
  };
}

const areaOfRoom = (site: Site): number => {
  const room = site.rooms[0] as Room;
  return areaOf([{ outline: room.outline, holes: [] }]);
};

describe("a room side by side", () => {
  test("typed lengths and ways make the room to the millimetre, in one step", () => {
    const plan = scripted("roomChain");
    plan.press([0, 0]);
    plan.typed(12);
    plan.typed(3.42, "up");
    plan.typed(5, "left");
    plan.typed(2.58, "up");
    plan.typed(7, "left");
    expect(plan.now.commits).toBe(0);
    plan.send({ do: "finish" });
    expect(plan.now.commits).toBe(1);
    expect(plan.now.site.rooms[0]?.outline).toEqual([
      [0, 0],
      [12, 0],
      [12, 3.42],
      [7, 3.42],
      [7, 6],
      [0, 6],
    ]);
    expect(areaOfRoom(plan.now.site)).toBeCloseTo(12 * 3.42 + 7 * 2.58, 6);
    expect(plan.now.tool).toEqual({ kind: "select" });
  });

  test("without a way each side turns left from the one before, and the hand says otherwise", () => {
    const plan = scripted("roomChain");
    plan.press([0, 0]);
    plan.typed(4);
    plan.typed(3);
    plan.hover([7, 3.02]);
    plan.typed(2);
    expect(plan.now.state).toMatchObject({
      points: [
        [0, 0],
        [4, 0],
        [4, 3],
        [6, 3],
      ],
    });
  });

  test("touches snap square to the corner before, and the first corner closes the room", () => {
    const plan = scripted("roomChain");
    plan.press([0, 0]);
    plan.press([5, 0.08]);
    plan.press([5.05, 4]);
    plan.press([0.06, 4.1]);
    plan.press([0.05, 0.05]);
    expect(plan.now.site.rooms[0]?.outline).toEqual([
      [0, 0],
      [5, 0],
      [5, 4],
      [0, 4],
    ]);
  });

  test("a corner is taken back; too few corners and crossing sides are refused and nothing is lost", () => {
    const plan = scripted("roomChain");
    plan.press([0, 0]);
    plan.press([5, 0]);
    plan.send({ do: "finish" });
    expect(plan.now.state).toMatchObject({ refused: "few" });
    plan.press([1, 4]);
    plan.press([4, 4]);
    plan.send({ do: "finish" });
    expect(plan.now.state).toMatchObject({ refused: "crossing" });
    plan.send({ do: "back" });
    plan.send({ do: "finish" });
    expect(plan.now.site.rooms).toHaveLength(1);
  });

  test("a room drawn clockwise runs counter-clockwise in the job", () => {
    const plan = scripted("roomChain");
    for (const at of [
      [0, 0],
      [0, 3],
      [4, 3],
      [4, 0],
    ] as Point[])
      plan.press(at);
    plan.send({ do: "finish" });
    const ring = plan.now.site.rooms[0]?.outline ?? [];
    expect(ring[1]).toEqual([4, 3]);
  });
});

describe("lines and rectangles", () => {
  test("a press that goes nowhere waits for the second one", () => {
    const plan = scripted("room");
    plan.press([1, 1]);
    expect(plan.now.commits).toBe(0);
    plan.hover([4, 3]);
    plan.press([5, 4]);
    expect(areaOfRoom(plan.now.site)).toBeCloseTo(12, 6);
  });

  test("two typed lengths make the rectangle from the touched corner", () => {
    const plan = scripted("room");
    plan.press([1, 1]);
    plan.send({ do: "typed", lengths: [6, 4] });
    expect(plan.now.site.rooms[0]?.outline).toEqual([
      [1, 1],
      [7, 1],
      [7, 5],
      [1, 5],
    ]);
  });

  test("a typed length makes the row, in the way of the hand", () => {
    const plan = scripted("rackRow", { ...empty, rooms: [hall] });
    plan.press([2, 2]);
    plan.hover([2, 6]);
    plan.typed(3);
    const rack = plan.now.site.obstacles[0];
    expect(rack?.kind).toBe("rack");
    const ys = rack?.footprint.map(([, y]) => y) ?? [];
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(3, 6);
  });

  test("an L leaves out a quarter of its rectangle", () => {
    const plan = scripted("lRoom");
    plan.pull([0, 0], [8, 6]);
    expect(areaOfRoom(plan.now.site)).toBeCloseTo(36, 6);
  });
});

describe("everything that can be drawn", () => {
  const kinds = (Object.keys(addKinds) as AddKind[]).filter(
    (kind) => gestureOf(kind) !== "chain" && kind !== "drawnRoom",
  );

  test.each(kinds)("%s: one gesture, one step, all of it inside the room and below the ceiling", (kind) => {
    const plan = scripted(kind, { ...empty, rooms: [hall] });
    if (gestureOf(kind) === "touch")
      plan.press(kind === "switch" || gestureOf(kind) !== "touch" ? [3, 0.1] : nearWall(kind));
    else plan.pull([1, 0.05], gestureOf(kind) === "box" ? [7, 6] : [8, 0.05]);
    expect(plan.now.commits).toBe(1);
    const { site } = plan.now;
    for (const { footprint, base, top } of site.obstacles) {
      expect(base).toBeLessThan(top);
      expect(top).toBeLessThanOrEqual(hall.ceilingHeight);
      for (const [x, y] of footprint) {
        expect(x).toBeGreaterThanOrEqual(-1e-9);
        expect(y).toBeGreaterThanOrEqual(-1e-9);
        expect(x).toBeLessThanOrEqual(10 + 1e-9);
        expect(y).toBeLessThanOrEqual(8 + 1e-9);
      }
      expect(areaOf([{ outline: footprint, holes: [] }])).toBeGreaterThan(0);
    }
    for (const list of [
      site.dwellPlaces,
      site.luminaires,
      site.switches,
      site.interference,
      site.ceilingThings,
    ])
      for (const { at } of list as readonly { readonly at: Point }[]) expect(insideRoom(hall, at)).toBe(true);
  });

  const nearWall = (kind: AddKind): Point =>
    ["door", "passage", "window", "glazing"].includes(kind) ? [3, 0.1] : [3, 3];

  test("nobody sits in a desk or a table", () => {
    for (const kind of ["deskGroup", "meetingTable"] as const) {
      const { now, pull } = scripted(kind, { ...empty, rooms: [hall] });
      pull([1, 1], [9, 7]);
      expect(now.site.dwellPlaces.length).toBeGreaterThan(3);
      for (const { at } of now.site.dwellPlaces)
        expect(now.site.obstacles.some(({ footprint }) => insideRing(footprint, at))).toBe(false);
    }
  });

  test("each cubicle has its place, between its panels", () => {
    const plan = scripted("cubicles", { ...empty, rooms: [hall] });
    plan.pull([1, 7.95], [5.75, 7.95]);
    const [row] = plan.now.site.obstacles;
    expect(plan.now.site.dwellPlaces).toHaveLength(5);
    // The row stands at the upper wall and opens into the room.
    expect(Math.max(...(row?.footprint.map(([, y]) => y) ?? []))).toBeCloseTo(8, 6);
    for (const { at } of plan.now.site.dwellPlaces) expect(insideRing(row?.footprint ?? [], at)).toBe(false);
  });

  test("furniture outside rooms is not set down", () => {
    const plan = scripted("rackRow");
    plan.pull([1, 1], [4, 1]);
    expect(plan.now.commits).toBe(0);
  });
});

test("what finds no wall or no room is not set down, and the tool says why and stays in the hand", () => {
  const door = scripted("door", { ...empty, rooms: [hall] });
  door.press([5, 4]);
  expect(door.now).toMatchObject({ commits: 0, state: { refused: "wall" }, tool: { kind: "add" } });
  door.press([5, 0.1]);
  expect(door.now).toMatchObject({ commits: 1, tool: { kind: "select" } });
  const rack = scripted("rackRow", { ...empty, rooms: [hall] });
  rack.pull([12, 1], [14, 1]);
  expect(rack.now).toMatchObject({ commits: 0, state: { refused: "room" }, tool: { kind: "add" } });
});

test("a detector in a job without models is refused for want of a model, not for want of a room", () => {
  const plan = scripted("detector", { ...empty, models: [], rooms: [hall] });
  plan.press([2, 2]);
  expect(plan.now).toMatchObject({ commits: 0, state: { refused: "models" }, tool: { kind: "add" } });
});

test("a side that is being typed shows at its length, and only Enter sets it down", () => {
  const plan = scripted("roomChain");
  plan.press([1, 1]);
  plan.send({ do: "tried", lengths: [12] });
  expect(plan.now.state).toMatchObject({ on: "chain", points: [[1, 1]], to: [13, 1] });
  plan.send({ do: "tried", lengths: [3] });
  plan.send({ do: "towards", way: "up" });
  plan.send({ do: "tried", lengths: [3] });
  expect(plan.now.state).toMatchObject({ points: [[1, 1]], to: [1, 4] });
  plan.typed(3);
  expect(plan.now.state).toMatchObject({
    points: [
      [1, 1],
      [1, 4],
    ],
  });
});

test("a tool that stays in the hand sets down one thing after the other", () => {
  const plan = scripted("column", { ...empty, rooms: [hall] });
  plan.now.tool = { kind: "add", what: "column", after: "again" };
  plan.press([2, 2]);
  plan.press([4, 2]);
  expect(plan.now.site.obstacles).toHaveLength(2);
  expect(plan.now.tool).toMatchObject({ kind: "add" });
});

describe("a wall", () => {
  const floor = ({ rooms }: Site): number =>
    rooms.reduce((sum, { outline }) => sum + areaOf([{ outline, holes: [] }]), 0);

  test("from side to side parts the room, and takes its own thickness of floor", () => {
    const plan = scripted("wall", { ...empty, rooms: [hall] });
    plan.pull([4, 0.05], [4, 7.9]);
    expect(plan.now.site.rooms).toHaveLength(2);
    expect(floor(plan.now.site)).toBeCloseTo(80 - 8 * 0.1, 3);
  });

  test("that ends in the open is a partition up to the ceiling", () => {
    const plan = scripted("wall", { ...empty, rooms: [hall] });
    plan.pull([4, 0.05], [4, 5]);
    expect(plan.now.site.rooms).toHaveLength(1);
    expect(plan.now.site.obstacles[0]).toMatchObject({ kind: "partition", top: 2.7 });
  });

  test("that is drawn out through a wall ends at that wall, whichever end is outside", () => {
    for (const [from, to] of [
      [
        [4, 5],
        [4, 9.5],
      ],
      [
        [4, 9.5],
        [4, 5],
      ],
    ] as const) {
      const plan = scripted("wall", { ...empty, rooms: [hall] });
      plan.pull(from, to);
      const { footprint } = plan.now.site.obstacles[0]!;
      const heights = footprint.map(([, y]) => y);
      expect(Math.max(...heights)).toBeCloseTo(8, 3);
      expect(Math.min(...heights)).toBeCloseTo(5, 3);
    }
  });
});
