import { expect, test } from "vitest";
import { areaOf, contains, distanceToRings, type Point, ringsOf } from "../geometry/index.ts";
import { type Luminaire, lookUp, type Room, type Site } from "../site/index.ts";
import { candidatesOf, longestWall } from "./candidates.ts";
import { ceilingOf } from "./ceiling.ts";
import { obstacleOf, rectangle, roomOf, siteOf } from "./rooms.fixture.ts";

const ceiling = (room: Room, more: Partial<Site> = {}, walls: "clear" | "least" = "clear") =>
  ceilingOf(lookUp(siteOf(room, more)), { room, walls });
const room = roomOf(rectangle(0, 0, 6, 5));

test("Of an empty room 4 × 3 m devices may hang on 3 × 2 m, nearer to walls on 3.6 × 2.6 m", () => {
  const small = roomOf(rectangle(0, 0, 4, 3));
  expect(areaOf(ceiling(small).allowed)).toBeCloseTo(6, 2);
  expect(areaOf(ceiling(small, {}, "least").allowed)).toBeCloseTo(3.6 * 2.6, 2);
  expect(ceiling(small).refusal([0.4, 1.5])).toBe("wall");
  expect(ceiling(small, {}, "least").refusal([0.4, 1.5])).toBeUndefined();
  expect(ceiling(small).refusal([5, 1])).toBe("outside");
});

test("A corridor 0.8 m wide keeps a strip of 0.4 m in its middle, and none under 0.2 m from a wall", () => {
  const corridor = roomOf(rectangle(0, 0, 10, 0.8));
  expect(ceiling(corridor).refusal([5, 0.4])).toBeUndefined();
  expect(ceiling(corridor).refusal([5, 0.15])).toBe("wall");
});

const lamp: Luminaire = {
  id: "lamp",
  room: "room",
  name: "Lamp",
  at: [3, 2.5],
  height: 3,
  mounting: "flush",
  hot: false,
  length: 0.6,
  width: 0.6,
  turn: 0,
};

test.each([
  ["flush luminaire", "luminaire", 0.5, false],
  ["hot lamp", "luminaire", 1.0, true],
] as const)("A %s keeps devices off by its clearance", (_, why, clear, hot) => {
  const luminaire = { ...lamp, hot };
  const over = ceiling(room, { luminaires: [luminaire] });
  expect(over.refusal([3.3 + clear - 0.01, 2.5])).toBe(why);
  expect(over.refusal([3.3 + clear + 0.01, 2.5])).toBeUndefined();
});

test.each([
  ["air-outlet", 1.5],
  ["heater", 2],
  ["door-curtain", 2],
] as const)("An interference of the kind %s keeps devices %d m off", (kind, clear) => {
  const source = { id: "source", room: "room", kind, at: [1, 1] as const, height: 2.5 };
  const over = ceiling(room, { interference: [source] });
  expect(over.refusal([1 + clear - 0.01, 1])).toBe("heat-or-air");
  expect(over.refusal([1 + clear + 0.01, 1])).toBeUndefined();
});

test("Smoke heads and sprinklers keep 0.5 m, other things on the ceiling the breadth of a hand and a device", () => {
  const at = [3, 2.5] as const;
  const smoke = ceiling(room, { ceilingThings: [{ id: "a", room: "room", kind: "smoke-head", at }] });
  const speaker = ceiling(room, { ceilingThings: [{ id: "b", room: "room", kind: "speaker", at }] });
  expect(smoke.refusal([3.49, 2.5])).toBe("smoke-head");
  expect(smoke.refusal([3.51, 2.5])).toBeUndefined();
  expect(speaker.refusal([3.19, 2.5])).toBe("ceiling-thing");
  expect(speaker.refusal([3.21, 2.5])).toBeUndefined();
});

test("A rack up to the ceiling takes its place there; one of 2 m does not", () => {
  const tall = ceiling(room, { obstacles: [obstacleOf("rack", rectangle(2, 2, 2, 1), { top: 2.95 })] });
  const low = ceiling(room, { obstacles: [obstacleOf("rack", rectangle(2, 2, 2, 1), { top: 2 })] });
  expect(tall.refusal([3, 2.5])).toBe("obstacle");
  expect(low.refusal([3, 2.5])).toBeUndefined();
});

test("The allowed region holds every place that passes the test, and none that fails by more than two millimetres", () => {
  const over = ceiling(
    { ...room, noDevices: [rectangle(1, 1, 1, 1)] },
    {
      interference: [{ id: "source", room: "room", kind: "air-outlet", at: [5, 4], height: 2.5 }],
      ceilingThings: [{ id: "a", room: "room", kind: "smoke-head", at: [3, 2] }],
      luminaires: [{ ...lamp, hot: true, at: [2, 4], turn: 0.4 }],
    },
  );
  const edges = ringsOf(over.allowed);
  let places = 0;
  for (let x = 0.037; x < 6; x += 0.0711)
    for (let y = 0.029; y < 5; y += 0.0717) {
      const held = contains(over.allowed, [x, y]);
      if (over.refusal([x, y]) === undefined) {
        expect(held, `${x} ${y}`).toBe(true);
        places++;
      } else if (held) expect(distanceToRings([x, y], edges), `${x} ${y}`).toBeLessThan(2e-3);
    }
  expect(places).toBeGreaterThan(1000);
  expect(over.refusal([1.5, 1.5])).toBe("no-devices");
});

test("With a ceiling grid the candidates are the centres of its tiles, turned and shifted with it", () => {
  const turn = 0.3;
  const grid = { tile: [0.6, 1.2] as const, origin: [0.1, 0.2] as const, turn };
  const { points, from } = candidatesOf(ceiling({ ...room, ceilingGrid: grid }), { spacing: 0.5 });
  expect(from).toBe("ceiling-grid");
  expect(points.length).toBeGreaterThan(20);
  for (const [x, y] of points) {
    const [dx, dy] = [x - 0.1, y - 0.2];
    const u = (Math.cos(turn) * dx + Math.sin(turn) * dy) / 0.6 - 0.5;
    const v = (-Math.sin(turn) * dx + Math.cos(turn) * dy) / 1.2 - 0.5;
    expect(Math.abs(u - Math.round(u))).toBeLessThan(1e-9);
    expect(Math.abs(v - Math.round(v))).toBeLessThan(1e-9);
  }
});

test("The free grid is anchored to the longest wall and has the two middle lines", () => {
  const { points, from } = candidatesOf(ceiling(roomOf(rectangle(10, 20, 4, 3))), { spacing: 1 });
  expect(from).toBe("free-grid");
  const xs = [...new Set(points.map(([x]) => Math.round(x * 1e6) / 1e6))].sort((a, b) => a - b);
  const ys = [...new Set(points.map(([, y]) => Math.round(y * 1e6) / 1e6))].sort((a, b) => a - b);
  expect(xs).toEqual([11, 12, 13]);
  expect(ys).toEqual([21, 21.5, 22]);
  expect(longestWall(roomOf(rectangle(10, 20, 3, 4))).turn).toBeCloseTo(Math.PI / 2);
});

test("Given places replace both grids; refused ones are counted by reason", () => {
  const given: Point[] = [
    [3, 2.5],
    [0.1, 0.1],
    [9, 9],
  ];
  const { points, from, refused } = candidatesOf(ceiling(room), { spacing: 0.5, points: given });
  expect(from).toBe("given");
  expect(points).toEqual([[3, 2.5]]);
  expect([...refused]).toEqual([
    ["wall", 1],
    ["outside", 1],
  ]);
});
