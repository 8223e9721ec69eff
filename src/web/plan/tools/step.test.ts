import { describe, expect, test } from "vitest";
import { type Detector, type Opening, planningDefaults, type Room, type Site } from "#engine";
import type { RecordKind, RecordRef } from "../../contract.ts";
import { applied } from "../../jobs/apply.ts";
import { type Pixel, toPixel } from "../view.ts";
import { drawingTools } from "./drawing-tools.ts";
import { type Bench, type Deed, type Input, rest, type Tool, type ToolState } from "./state.ts";
import { gripsOf, previewOf, stepped } from "./step.ts";

const room = (id: string, left: number, right: number): Room => ({
  id,
  storey: "ground",
  number: "",
  name: id,
  use: "sitting",
  outline: [
    [left, 0],
    [right, 0],
    [right, 4],
    [left, 4],
  ],
  holes: [],
  floor: 0,
  ceilingHeight: 2.5,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
});

const device: Detector = {
  id: "d",
  tag: "B1.01",
  room: "west",
  controls: ["west"],
  group: "",
  model: "m",
  at: [1, 1],
  height: 2.5,
  turn: 0,
  masks: [],
  pinned: false,
};

const door: Opening = {
  id: "door",
  rooms: ["west", "east"],
  kind: "door",
  from: [5, 1],
  to: [5, 2],
  sill: 0,
  head: 2,
  thickness: 0.2,
  hinge: "from",
  opensInto: "west",
  angle: Math.PI / 2,
  state: "closed",
};

const site: Site = {
  name: "",
  defaults: planningDefaults,
  storeys: [{ id: "ground", name: "Ground", elevation: 0 }],
  rooms: [room("west", 0, 5), room("east", 5.2, 9)],
  floorPieces: [],
  openings: [door],
  obstacles: [
    {
      id: "rack",
      room: "west",
      kind: "rack",
      name: "",
      footprint: [
        [3, 3],
        [4, 3],
        [4, 3.5],
        [3, 3.5],
      ],
      base: 0,
      top: 2,
      seeThrough: false,
    },
  ],
  dwellPlaces: [],
  interference: [],
  switches: [],
  ceilingThings: [],
  luminaires: [],
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
  detectors: [device],
};

/** A plan without a screen: the tools are driven by plan metres. */
function scripted(start: Site = site, tool: Tool = { kind: "select" }) {
  let state: ToolState = rest;
  let number = 0;
  const view = { scale: 100, x: 4, y: 2, width: 1200, height: 800 };
  const now = { site: start, selection: [] as readonly RecordRef[], tool, commits: [] as string[] };
  const bench = (): Bench => {
    const own = {
      site: now.site,
      storey: "ground",
      view,
      selection: now.selection,
      tool: now.tool,
      readOnly: false,
      drawing: drawingTools,
      newId: (kind: RecordKind) => `${kind}-${++number}`,
    };
    return { ...own, grips: gripsOf(own) };
  };
  const take = (deed: Deed): void => {
    state = deed.state;
    if (deed.select) now.selection = deed.select;
    if (deed.tool) now.tool = deed.tool;
    if (deed.commit) {
      now.commits.push(deed.commit.name);
      now.site = applied(now.site, deed.commit.steps);
    }
  };
  const send = (input: Input): void => take(stepped(state, input, bench()));
  const pixel = (x: number, y: number): Pixel => toPixel(view, [x, y]);
  const down = (x: number, y: number, shift = false): void =>
    send({ do: "down", pixel: pixel(x, y), shift, pan: false, touch: false });
  const drag = (x: number, y: number): void => send({ do: "drag", pixel: pixel(x, y), free: true });
  const up = (x: number, y: number): void => send({ do: "up", pixel: pixel(x, y) });
  return {
    now,
    state: () => state,
    send,
    down,
    drag,
    up,
    press: (x: number, y: number, shift = false) => {
      down(x, y, shift);
      up(x, y);
    },
    pull: (from: readonly [number, number], to: readonly [number, number], shift = false) => {
      down(from[0], from[1], shift);
      drag((from[0] + to[0]) / 2, (from[1] + to[1]) / 2);
      drag(to[0], to[1]);
      up(to[0], to[1]);
    },
  };
}

const deviceOf = (of: Site): Detector => of.detectors[0] as Detector;

describe("selecting", () => {
  test("a press selects the uppermost thing, a second press what lies below it", () => {
    const plan = scripted();
    plan.press(1, 1);
    expect(plan.now.selection).toEqual([{ kind: "detectors", id: "d" }]);
    plan.press(1, 1);
    expect(plan.now.selection).toEqual([{ kind: "rooms", id: "west" }]);
  });

  test("shift adds and takes away; a box takes what stands in it", () => {
    const plan = scripted();
    plan.press(3.5, 3.2);
    plan.press(1, 1, true);
    expect(plan.now.selection.map(({ id }) => id)).toEqual(["rack", "d"]);
    plan.press(1, 1, true);
    expect(plan.now.selection.map(({ id }) => id)).toEqual(["rack"]);
    plan.pull([0.2, 0.2], [4.5, 3.9], true);
    expect(plan.now.selection.map(({ id }) => id)).toEqual(["d", "rack"]);
  });
});

describe("dragging", () => {
  test("a detector moves at once; nothing changes in the job until it is let go", () => {
    const plan = scripted();
    plan.down(1, 1);
    plan.drag(1.5, 1.2);
    plan.drag(2.25, 1.5);
    expect(deviceOf(plan.now.site).at).toEqual([1, 1]);
    expect(previewOf(plan.state(), plan.now.site)).toHaveLength(1);
    plan.up(2.25, 1.5);
    expect(deviceOf(plan.now.site).at[0]).toBeCloseTo(2.25, 3);
    expect(deviceOf(plan.now.site).at[1]).toBeCloseTo(1.5, 3);
    expect(plan.now.commits).toEqual(["plan.edit.move"]);
  });

  test("a detector that is dragged into another room hangs there", () => {
    const plan = scripted();
    plan.pull([1, 1], [7, 2]);
    expect(deviceOf(plan.now.site).room).toBe("east");
  });

  test("furniture that is not selected stays: dragging it moves the plan", () => {
    const plan = scripted();
    plan.pull([3.5, 3.2], [2, 2]);
    expect(plan.now.commits).toEqual([]);
    plan.press(3.5, 3.2);
    plan.pull([3.5, 3.2], [2.5, 2.2]);
    expect(plan.now.site.obstacles[0]?.footprint[0]?.[0]).toBeCloseTo(2, 3);
  });

  test("an opening moves along its wall only", () => {
    const plan = scripted();
    plan.press(5.1, 1.5);
    plan.pull([5.1, 1.5], [6, 2.5]);
    expect(plan.now.site.openings[0]?.from).toEqual([5, 2]);
    expect(plan.now.site.openings[0]?.to).toEqual([5, 3]);
  });

  test("a cancelled drag leaves everything as it was", () => {
    const plan = scripted();
    plan.down(1, 1);
    plan.drag(3, 3);
    plan.send({ do: "cancel" });
    plan.up(3, 3);
    expect(deviceOf(plan.now.site).at).toEqual([1, 1]);
    expect(plan.now.commits).toEqual([]);
  });
});

describe("reshaping", () => {
  test("the handle turns a detector", () => {
    const plan = scripted();
    plan.press(1, 1);
    plan.pull([1.36, 1], [1, 2]);
    expect(deviceOf(plan.now.site).turn).toBeCloseTo(Math.PI / 2, 9);
  });

  test("a corner of the selected room moves; twice on a wall makes a new corner", () => {
    const plan = scripted();
    plan.press(2, 2);
    plan.pull([0, 0], [-1, -0.5]);
    expect(plan.now.site.rooms[0]?.outline[0]).toEqual([-1, -0.5]);
    plan.send({ do: "double", pixel: toPixel({ scale: 100, x: 4, y: 2, width: 1200, height: 800 }, [2, 4]) });
    expect(plan.now.site.rooms[0]?.outline).toHaveLength(5);
  });

  test("a wall that moves takes its door along", () => {
    const plan = scripted();
    plan.press(2, 2);
    plan.pull([5, 2], [4.5, 2]);
    // The door lies under the middle of this wall, but the grip of the selected room comes first.
    expect(plan.now.site.rooms[0]?.outline[1]).toEqual([4.5, 0]);
    expect(plan.now.site.openings[0]?.from[0]).toBeCloseTo(4.5, 9);
  });
});

describe("adding", () => {
  test("a door goes into the nearest wall and finds the room behind it", () => {
    const plan = scripted(site, { kind: "add", what: "door" });
    plan.press(4.9, 3.2);
    const made = plan.now.site.openings[1];
    expect(made?.rooms).toEqual(["west", "east"]);
    expect(made?.thickness).toBeCloseTo(0.2, 2);
    expect(made?.from[0]).toBe(5);
    expect(plan.now.tool).toEqual({ kind: "select" });
  });

  test("a door far from every wall is not made", () => {
    const plan = scripted(site, { kind: "add", what: "door" });
    plan.press(2.5, 2);
    expect(plan.now.commits).toEqual([]);
  });

  test("a dragged room is a counter-clockwise rectangle on this storey", () => {
    const plan = scripted(site, { kind: "add", what: "room" });
    plan.pull([1, 8], [4, 6]);
    expect(plan.now.site.rooms[2]?.outline).toEqual([
      [1, 6],
      [4, 6],
      [4, 8],
      [1, 8],
    ]);
  });

  test("a new detector gets the next tag", () => {
    const plan = scripted(site, { kind: "add", what: "detector" });
    plan.press(3, 2);
    expect(plan.now.site.detectors[1]).toMatchObject({ tag: "B1.02", room: "west", height: 2.5 });
  });
});

describe("measuring", () => {
  test("from a corner dragged to another corner, or pressed at both: the same length", () => {
    const dragged = scripted(site, { kind: "measure" });
    dragged.pull([0.03, 0.02], [4.98, 0.03]);
    const pressedTwice = scripted(site, { kind: "measure" });
    pressedTwice.press(0.03, 0.02);
    expect(pressedTwice.state()).toMatchObject({ from: [0, 0], to: [0, 0] });
    pressedTwice.press(4.98, 0.03);
    const measured = { on: "measure", from: [0, 0], to: [5, 0], held: "set" };
    expect(dragged.state()).toEqual(measured);
    expect(pressedTwice.state()).toEqual(measured);
    pressedTwice.press(2.5, 2);
    expect(pressedTwice.state()).toMatchObject({ from: [2.5, 2], to: [2.5, 2] });
  });
});
