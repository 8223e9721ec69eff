import { describe, expect, test } from "vitest";
import { box, pencil } from "./drawn-plan.fixture.ts";
import { findRooms } from "./find-rooms.ts";

/** A room of 6 × 4 m with walls of two faces, and a partition of 0.1 m through it that stops short of the upper wall. */
function parted(short: number, layer: string) {
  const p = pencil();
  p.ring(box(-0.2, -0.2, 6.4, 4.4), "Walls");
  const inner = [
    [0, 0],
    [2.9, 0],
    [2.9, 4 - short],
    [3, 4 - short],
    [3, 0],
    [6, 0],
    [6, 4],
    [0, 4],
  ] as const;
  inner.forEach((a, i) => {
    p.line(a, inner[(i + 1) % inner.length]!, i > 0 && i < 4 ? layer : "Walls");
  });
  return p.linework();
}
const areas = (...of: Parameters<typeof parted>) =>
  findRooms(parted(...of))
    .rooms.map(({ area }) => Math.round(area * 10) / 10)
    .sort((a, b) => a - b);

describe("A wall that stops short of what stands across it", () => {
  test("by a few centimetres parts the rooms all the same", () => {
    expect(areas(0.025, "Walls")).toEqual([11.6, 12]);
    expect(areas(0.045, "Walls")).toEqual([11.6, 12]);
  });

  test("by more than a hand is open: one room", () => {
    expect(areas(0.2, "Walls")).toHaveLength(1);
  });

  test("is none where the layer does not say that it is a wall", () => {
    expect(areas(0.025, "Fittings")).toHaveLength(1);
  });
});

test("The line of a leaf that stands open along a wall is no second door", () => {
  const p = pencil();
  p.ring(box(-0.2, -0.2, 6.4, 8.4), "Walls");
  p.ring(box(0, 4.1, 6, 3.9), "Walls");
  const lower = [
    [2.9, 0],
    [0, 0],
    [0, 4],
    [6, 4],
    [6, 0],
    [3, 0],
    [3, 2.9],
    [2.9, 2.9],
    [2.9, 0],
  ] as const;
  for (let i = 0; i + 1 < lower.length; i++) p.line(lower[i]!, lower[i + 1]!, "Walls");
  // Open along the wall to the room above, its two lines a little beside the hinge, the arc a little more than a quarter.
  const hinge = [2.95, 3.888] as const;
  const linework = p.linework();
  const [from, to] = [-Math.PI / 2, 0.08];
  const at = (k: number) => {
    const angle = from + ((to - from) * k) / 8;
    return [hinge[0] + Math.cos(angle), hinge[1] + Math.sin(angle)];
  };
  const arc = Array.from({ length: 8 }, (_, k) => [...at(k), ...at(k + 1)]).flat();
  const drawn = {
    ...linework,
    lines: Float64Array.from([...linework.lines, 2.95, 3.92, 3.95, 3.92, 2.95, 3.97, 3.95, 3.97, ...arc]),
    layerOf: Uint16Array.from([...linework.layerOf, ...Array(10).fill(linework.layers.length)]),
    arcOf: Uint32Array.from([...linework.arcOf, 0, 0, ...Array(8).fill(1)]),
    layers: [...linework.layers, { name: "Doors", lines: 10, shown: true }],
    arcs: [{ centre: hinge, radius: 1, from, to, layer: linework.layers.length }],
  };
  const { rooms, openings } = findRooms(drawn);
  expect(rooms).toHaveLength(3);
  expect(openings.map(({ kind, rooms: [a, b] }) => [kind, a >= 0 && b >= 0])).toEqual([["door", true]]);
});
