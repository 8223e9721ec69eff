import { expect, test } from "vitest";
import { entity, insert, line } from "../../../test/exchange/written-dxf.ts";
import { read } from "../dxf/read-drawn.fixture.ts";
import { blockKinds, luminairesOfBlock } from "./block-luminaires.ts";

/** A luminaire of 1200 × 300 drawn upright, with its base in a corner. */
const lamp = {
  name: "Lamp",
  entities: [
    ...line(0, 0, 300, 0),
    ...line(300, 0, 300, 1200),
    ...line(300, 1200, 0, 1200),
    ...line(0, 1200, 0, 0),
  ],
};
const bay = {
  name: "Bay",
  entities: [
    ...entity("INSERT", "Lights", [2, "Lamp"], [10, 0], [20, 0]),
    ...entity("INSERT", "Lights", [2, "LAMP"], [10, 1000], [20, 0]),
    ...line(0, 0, 5000, 0),
  ],
};
const { linework } = read({
  blocks: [lamp, bay],
  entities: [...insert("Bay", 10_000, 0, [50, 90]), ...insert("lamp", 0, 20_000, [41, 0.5], [42, 0.5])],
});
const metres = 0.001;

test("A block is listed wherever it is put in, after the block that it lies in", () => {
  expect(linework.blocks.map(({ name, within }) => [name, within])).toEqual([
    ["Bay", -1],
    ["Lamp", 0],
    ["Lamp", 0],
    ["Lamp", -1],
  ]);
  const [whole, first, second] = linework.blocks.map(({ lines }) => lines);
  expect(whole).toEqual([0, 9]);
  expect([first, second]).toEqual([
    [0, 4],
    [4, 8],
  ]);
  expect(blockKinds(linework, { metres }).map(({ name, count, length }) => [name, count, length])).toEqual([
    ["Lamp", 3, expect.closeTo(1.2, 9)],
    ["Bay", 1, expect.closeTo(5, 9)],
  ]);
});

test("Said once that it is a luminaire, each has its middle, its longer side and its turn", () => {
  const [one, two, half] = luminairesOfBlock(linework, "LAMP", { metres, shift: [1, 2] });
  // A quarter turn: (150, 600) in the block → (−600, 150); the long side, upright before, lies now.
  expect(one!.at).toEqual([expect.closeTo(10 - 0.6 - 1, 9), expect.closeTo(0.15 - 2, 9)]);
  expect(two!.at).toEqual([expect.closeTo(10 - 0.6 - 1, 9), expect.closeTo(1.15 - 2, 9)]);
  expect([one!.turn, one!.length, one!.width]).toEqual([
    expect.closeTo(0, 9),
    expect.closeTo(1.2, 9),
    expect.closeTo(0.3, 9),
  ]);
  expect([half!.turn, half!.length, half!.width]).toEqual([
    expect.closeTo(Math.PI / 2, 9),
    expect.closeTo(0.6, 9),
    expect.closeTo(0.15, 9),
  ]);
});

test("Those on other layers are passed over where layers are named", () => {
  expect(luminairesOfBlock(linework, "Lamp", { metres, layers: ["Lights"] })).toHaveLength(2);
  expect(luminairesOfBlock(linework, "Lamp", { metres, layers: ["Walls"] })).toEqual([]);
  expect(luminairesOfBlock(linework, "Chair", { metres })).toEqual([]);
});
