import { expect, test } from "vitest";
import { english, sentenceOf } from "../check/index.ts";
import { evaluateRules, openFacts, ruleSpaces, shippedPacks, spaceByName, spacesOf } from "./index.ts";

const packs = shippedPacks.filter(({ code }) => code === "iecc-2021" || code === "epbd-2024");
const rooms = (count: number, facts: object = {}) =>
  Array.from({ length: count }, (_, i) => ({
    room: `r${i}`,
    title: `Room ${i}`,
    results: evaluateRules(packs, {
      room: `r${i}`,
      title: `Room ${i}`,
      area: 12,
      day: "2028-01-01",
      measures: { "off-delay": 600, "automatic-control": 1, "manual-off": 1, "vacant-share": 0 },
      ...facts,
    }),
  }));

test("one fact that many rooms miss is one note that names five of them and counts the others", () => {
  const told = openFacts(rooms(30)).map(({ code, values, records }) => [
    code,
    english(values.missing!),
    english(values.rooms!),
    records?.length,
  ]);
  const named = "Room 0, Room 1, Room 2, Room 3, Room 4 and 25 more rooms";
  expect(told).toEqual([
    ["rule-facts-missing", "Kind of space", named, 30],
    ["rule-facts-missing", "Share of the power that comes on by itself", named, 30],
    ["rule-facts-missing", "Output of heating and air conditioning", named, 30],
  ]);
});

test("a fact of one room stands at that room, and its sentence says how many rules hang on it", () => {
  const [first] = openFacts(rooms(1));
  expect(first?.room).toBe("r0");
  expect(sentenceOf(first!)).toMatch(
    /^Kind of space is not on record for Room 0\. Rules that cannot be judged there: \d+\.$/,
  );
  expect(first!.values.count).toBe(first!.evidence!.length);
});

test("what is known is no longer missing, and broken rules are no open facts", () => {
  const facts = { spaces: ["corridor"], plant: 50_000 };
  expect(openFacts(rooms(3, facts))).toEqual([]);
  expect(
    openFacts(
      rooms(3, { ...facts, measures: { "off-delay": 3600, "vacant-share": 1, "automatic-control": 0 } }),
    ),
  ).toEqual([]);
});

test("a chosen kind of space comes before what the use leaves open", () => {
  expect(spacesOf({ use: "passing" })).toEqual(["corridor", "lobby"]);
  expect(spacesOf({ use: "passing", space: "lobby" })).toEqual(["lobby"]);
  expect(spacesOf({ use: "other" })).toBeUndefined();
  for (const space of ruleSpaces) expect(spacesOf({ use: "sitting", space })).toEqual([space]);
});

test.each([
  ["Meeting room 2", "sitting", "meeting"],
  ["Conference", "sitting", "meeting"],
  ["Entrance", "passing", "lobby"],
  ["Corridor", "passing", "corridor"],
  ["Crew rest room", "sitting", "break-room"],
  ["Luggage store", "moving", "storage"],
  // The use leaves no meeting open, and the stair is known by its use.
  ["Meeting point", "passing", undefined],
  ["Stair", "stair", undefined],
  ["Office", "sitting", undefined],
  ["Printing", "other", "copy"],
  ["Besprechungsraum I", "sitting", "meeting"],
  ["Flur EG West", "passing", "corridor"],
  ["Seminarraum", "sitting", "classroom"],
] as const)("the name %s, used for %s, speaks of %s", (name, use, space) => {
  expect(spaceByName({ name, use })).toBe(space);
});

test("a figure that is no number is missing like one that nobody entered", () => {
  const [fact] = openFacts(
    rooms(1, {
      spaces: ["corridor"],
      plant: 50_000,
      measures: { "off-delay": Number.NaN, "vacant-share": 0 },
    }),
  );
  expect(english(fact!.values.missing!)).toBe("Off delay");
});
