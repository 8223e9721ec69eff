import { expect, test } from "vitest";
import { box, detectorLike, luminaireLike, roomLike, siteLike } from "../../../../test/engine/records.ts";
import { type RulePack, shippedPacks } from "../../rules/index.ts";
import { settingsOfSite } from "../index.ts";

const stair = roomLike({ id: "stair", name: "Stair", use: "stair", outline: box(0, 0, 4, 3) });
const at = (id: string, x: number, more: object = {}) =>
  detectorLike({ id, tag: id, room: "stair", at: [x, 1.5], ...more });
const settled = (detectors: readonly ReturnType<typeof at>[], room = stair, choices = {}) =>
  settingsOfSite(siteLike({ rooms: [room], detectors }), choices).devices.map(({ context, settings }) => [
    context.seenByTwo,
    settings.output.value,
  ]);

test("one device over a stair leaves points to one alone; two that see all of it do not", () => {
  const dim = { background: 0.1 };
  expect(settled([at("b1", 2)])).toEqual([[false, dim]]);
  expect(settled([at("b1", 1.8), at("b2", 2.2)])).toEqual([
    [true, "switch"],
    [true, "switch"],
  ]);
});

test("one of two that only signals to the other, or is made its slave, is no second sight: one contact that fails leaves all in the dark", () => {
  const pair = [at("b1", 1.8), at("b2", 2.2)];
  const two = (detectors: typeof pair, choices = {}) =>
    settled(detectors, stair, choices).map(([seen]) => seen);
  expect(two([at("b1", 1.8), at("b2", 2.2, { output: "signals" })])).toEqual([false, false]);
  expect(two(pair, { chosen: new Map([["b1", { groupRole: "master" }]]) })).toEqual([false, false]);
  expect(two([...pair, at("b3", 2, { output: "signals" })])).toEqual([true, true, true]);
});

test("two devices that share a long stair between them are one sight each", () => {
  const long = roomLike({ id: "stair", name: "Stair", use: "stair", outline: box(0, 0, 14, 3) });
  expect(settled([at("b1", 3.5), at("b2", 10.5)], long).map(([two]) => two)).toEqual([false, false]);
});

test("where nobody is left in the dark two sights are not looked for", () => {
  const office = roomLike({ id: "stair", name: "Office", use: "sitting", outline: box(0, 0, 4, 3) });
  expect(settled([at("b1", 2)], office)).toEqual([[undefined, "switch"]]);
});

test("a background level is what stays on of the power, and dimming leaves a level that nobody entered", () => {
  const pack: RulePack = {
    ...shippedPacks[0]!,
    rules: [
      {
        code: "vacant",
        clause: "1",
        title: "A vacant stair falls to half of the power at most",
        when: {},
        limit: { measure: "vacant-share", most: 0.5 },
        certainty: "own",
      },
    ],
  };
  const left = (output: "switch" | "dimming-broadcast" | { readonly background: number }) => {
    const { rooms } = settingsOfSite(
      siteLike({
        rooms: [stair],
        detectors: [at("b1", 2)],
        luminaires: [1, 3].map((x) =>
          luminaireLike({ id: `e${x}`, room: "stair", at: [x, 1], circuit: "L", power: 20 }),
        ),
      }),
      {
        packs: [pack],
        chosen: new Map([["b1", { output }]]),
        installation: {
          boards: [],
          circuits: [
            {
              id: "L",
              name: "L",
              breaker: "B",
              rcd: "unknown",
              protectiveConductor: "unknown",
              sharedNeutral: "unknown",
            },
          ],
        },
      },
    );
    const { verdict, actual } = rooms[0]!.results[0]!.check;
    return [verdict, actual];
  };
  expect(left("switch")).toEqual(["pass", 0]);
  expect(left({ background: 0.15 })).toEqual(["pass", 0.15]);
  expect(left({ background: 0.6 })).toEqual(["fail", 0.6]);
  expect(left("dimming-broadcast")).toEqual(["not-proven", undefined]);
});
