import { describe, expect, test } from "vitest";
import type { Point } from "#engine";
import type { Linework } from "../linework/linework.ts";
import { box, pencil } from "./drawn-plan.fixture.ts";
import { findRooms } from "./find-rooms.ts";

/** Two rooms of 5 × 4 m with a wall between them that is drawn through, and a door of 0.8 m that stands ajar before it. */
function rooms(of: { readonly turned: number; readonly wall?: number; readonly cut?: boolean }): Linework {
  const p = pencil();
  const wall = of.wall ?? 0;
  p.ring(box(0, 0, 5, 4));
  p.ring(box(5 + wall, 0, 5, 4));
  const hinge: Point = [5, 1];
  const open: Point = [5 - 0.8 * Math.sin(of.turned), 1 + 0.8 * Math.cos(of.turned)];
  p.line(hinge, open);
  const plain = p.linework();
  const start = Math.PI / 2;
  const at = (k: number): Point => {
    const angle = start + (of.turned * k) / 4;
    return [hinge[0] + 0.8 * Math.cos(angle), hinge[1] + 0.8 * Math.sin(angle)];
  };
  const arc = [0, 1, 2, 3].flatMap((k) => [...at(k), ...at(k + 1)]);
  return {
    ...plain,
    lines: Float64Array.from([...plain.lines, ...arc]),
    layerOf: Uint16Array.from([...plain.layerOf, 0, 0, 0, 0]),
    arcOf: Uint32Array.from([...plain.arcOf, 1, 1, 1, 1]),
    arcs: [{ centre: hinge, radius: 0.8, from: start, to: start + of.turned, layer: 0 }],
  };
}

describe("A leaf drawn ajar before a wall that is drawn through", () => {
  for (const [what, wall] of [
    ["a single line", 0],
    ["two faces", 0.2],
  ] as const)
    test(`of ${what} is a door between the rooms, which stay two and keep their floor`, () => {
      const found = findRooms(rooms({ turned: 0.35, wall }));
      expect(found.rooms.map(({ area }) => Math.round(area * 100) / 100)).toEqual([20, 20]);
      expect(found.openings).toHaveLength(1);
      const [door] = found.openings;
      expect(door).toMatchObject({ kind: "door", rooms: expect.arrayContaining([0, 1]) });
      expect(Math.hypot(door!.to[0] - door!.from[0], door!.to[1] - door!.from[1])).toBeCloseTo(0.8, 3);
      expect(door!.leaf!.hinge).toEqual([5, 1]);
      expect(door!.leaf!.latch[0]).toBeCloseTo(5, 3);
      expect(door!.leaf!.latch[1]).toBeCloseTo(1.8, 3);
    });

  test("both leaves of a double door are doors of their own", () => {
    const one = rooms({ turned: 0.3 });
    const mirrored = (x: number, y: number): readonly [number, number] => [x, 3.6 - y];
    const half = one.lines.length - 20;
    const leafAndArc = [...one.lines.subarray(half)];
    const other = leafAndArc.flatMap((value, i) => (i % 2 === 0 ? mirrored(value, leafAndArc[i + 1]!) : []));
    const both: Linework = {
      ...one,
      lines: Float64Array.from([...one.lines, ...other]),
      layerOf: Uint16Array.from([...one.layerOf, 0, 0, 0, 0, 0]),
      arcOf: Uint32Array.from([...one.arcOf, 0, 2, 2, 2, 2]),
      arcs: [
        ...one.arcs,
        { centre: [5, 2.6], radius: 0.8, from: (3 * Math.PI) / 2 - 0.3, to: (3 * Math.PI) / 2, layer: 0 },
      ],
    };
    const found = findRooms(both);
    expect(found.openings.map(({ leaf }) => leaf?.hinge[1]).sort()).toEqual([1, 2.6]);
  });

  test("a bent line from a wall that ends there is no door", () => {
    const p = pencil();
    p.ring(box(0, 0, 5, 4));
    p.ring(box(5, 0, 5, 4));
    p.line([5, 1], [4.75, 1.76]);
    expect(findRooms(p.linework()).openings).toEqual([]);
  });
});
