import { expect, test } from "vitest";
import type { Room } from "#engine";
import { entity, insert, line } from "../../../test/exchange/written-dxf.ts";
import { read } from "../dxf/read-drawn.fixture.ts";
import { drawingBlocks } from "./drawing-blocks.ts";
import { luminairesInRooms } from "./luminaires-in-rooms.ts";

const rectangle = (width: number, height: number) => [
  ...line(0, 0, width, 0),
  ...line(width, 0, width, height),
  ...line(width, height, 0, height),
  ...line(0, height, 0, 0),
];
const lamp = { name: "Lamp", entities: rectangle(300, 1200) };
const storey = { name: "Storey", entities: rectangle(40_000, 20_000) };
const tagged = [
  ...entity("INSERT", "0", [66, 1], [2, "Lamp"], [10, 4000], [20, 1000]),
  ...entity("ATTRIB", "0", [2, "TYPE"], [1, "Linear 36"], [10, 0], [20, 0], [40, 100]),
  ...entity("SEQEND", "0"),
];
const { linework } = read({
  blocks: [lamp, storey, { name: "*D7", entities: rectangle(100, 100) }, { name: "Spot", entities: [] }],
  entities: [
    ...insert("Storey", 0, 0),
    ...insert("*D7", 0, 0),
    ...insert("Lamp", 1000, 1000),
    ...tagged,
    ...insert("Lamp", 21_000, 1000),
  ],
});
const of = { metres: 0.001, shift: [1, 0] as const };

const room = (id: string, left: number, right: number): Room => ({
  id,
  storey: "ground",
  number: "",
  name: id,
  use: "other",
  outline: [
    [left, 0],
    [right, 0],
    [right, 4],
    [left, 4],
  ],
  holes: [],
  floor: 0,
  ceilingHeight: 2.8,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
});

test("Blocks that could hang on a ceiling are kept: no whole storeys, no dimensions", () => {
  expect(drawingBlocks(linework, of).map(({ name, places }) => [name, places.length])).toEqual([["Lamp", 3]]);
});

test("The picture of a block lies about its middle, the longer side along x", () => {
  const [block] = drawingBlocks(linework, of);
  const xs = block!.lines.filter((_, i) => i % 2 === 0);
  const ys = block!.lines.filter((_, i) => i % 2 === 1);
  expect([Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]).toEqual([
    -0.6, 0.6, -0.15, 0.15,
  ]);
});

test("Only the part of the drawing that is asked for is looked at", () => {
  const [block] = drawingBlocks(linework, { ...of, box: [0, 0, 10_000, 10_000] });
  expect(block!.places).toHaveLength(2);
});

test("Each luminaire comes into the room it lies in, under its ceiling; what lies in none is counted", () => {
  const blocks = drawingBlocks(linework, of);
  const rooms = [room("west", 0, 2), room("east", 2, 6)];
  const { luminaires, outside } = luminairesInRooms(
    { id: "plan", blocks },
    [{ name: "LAMP", power: 36 }],
    rooms,
  );
  expect(outside).toBe(1);
  // Drawn at (1, 1), its middle is at (1.15, 1.6); the drawing was moved by 1 m.
  expect(luminaires).toMatchObject([
    { room: "west", at: [0.15, 1.6], height: 2.8, length: 1.2, width: 0.3, power: 36 },
    { room: "east", at: [3.15, 1.6], type: "Linear 36", power: 36 },
  ]);
  expect(luminaires[0]!.turn).toBeCloseTo(Math.PI / 2, 9);
});

test("A drawing that was moved and turned takes its luminaires along, and they are the same ones", () => {
  const blocks = drawingBlocks(linework, of);
  const said = [{ name: "Lamp" }];
  const before = luminairesInRooms({ id: "plan", blocks }, said, [room("all", 0, 6)]).luminaires;
  const turned = { id: "plan", blocks, origin: [10, 0] as const, turn: Math.PI / 2 };
  const after = luminairesInRooms(turned, said, [room("all", 0, 20)]).luminaires;
  expect(after.map(({ id }) => id)).toEqual(before.map(({ id }) => id));
  expect(after[0]!.at).toEqual([10 - 1.6, 0.15]);
});
