import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Site } from "#engine";
import { demoJob, siteOf as siteOfJob } from "#job";
import type { RecordKind, RecordRef } from "../../contract.ts";
import { applied, recordKinds } from "../../jobs/apply.ts";
import { duplicateSteps, removeSteps } from "../change.ts";
import { roomArea } from "../shapes.ts";
import { clipText, pasteSteps, readClip } from "./clip.ts";
import { nextElevation, rowSteps, storeyCopySteps } from "./copied.ts";
import { alike, boxed, placedKinds } from "./selected.ts";
import { counting, pair, siteOf } from "./test-site.ts";

const demo = siteOfJob(demoJob()).site;
const refs = (kind: RecordKind, ...ids: string[]): readonly RecordRef[] => ids.map((id) => ({ kind, id }));

/** Whatever an id of the site points at is there. */
function lost(site: Site): string[] {
  const rooms = new Set(site.rooms.map(({ id }) => id));
  const models = new Set(site.models.map(({ id }) => id));
  return [
    ...placedKinds.flatMap((kind) => site[kind].filter((one) => !rooms.has(one.room)).map(({ id }) => id)),
    ...site.openings
      .filter((one) => one.rooms.some((id) => id !== null && !rooms.has(id)))
      .map(({ id }) => id),
    ...site.detectors
      .filter((one) => !models.has(one.model) || one.controls.some((id) => !rooms.has(id)))
      .map(({ id }) => id),
    ...site.rooms.filter((one) => !site.storeys.some(({ id }) => id === one.storey)).map(({ id }) => id),
  ];
}

const ids = (site: Site): string[] =>
  recordKinds.flatMap((kind) =>
    (site[kind] as readonly { readonly id: string }[]).map(({ id }) => `${kind} ${id}`),
  );

const twice = (list: readonly string[]): string[] => list.filter((one, i) => list.indexOf(one) < i);

const paste = (site: Site, clip: Site, at: readonly [number, number], storey = "ground") => {
  const made = pasteSteps(site, clip, { at, storey, newId: counting() });
  if ("refused" in made) throw new Error(made.refused);
  return { ...made, site: applied(site, made.steps) };
};

const read = (text: string): Site => {
  const found = readClip(text);
  if ("refused" in found) throw new Error(found.refused);
  return found.clip;
};

describe("copying", () => {
  test("a room brings its contents, and its doors lead to what lies behind the copy", () => {
    const copy = duplicateSteps(pair, refs("rooms", "west"), { by: [0, 10], newId: counting() });
    const now = applied(pair, copy.steps);
    expect(copy.made).toEqual(refs("rooms", "rooms-1"));
    expect(lost(now)).toEqual([]);
    for (const kind of placedKinds)
      expect(now[kind].filter(({ room }) => room === "rooms-1")).toHaveLength(
        pair[kind].filter(({ room }) => room === "west").length,
      );
    expect(now.openings.slice(2).map(({ rooms }) => rooms)).toEqual([
      ["rooms-1", null],
      ["rooms-1", null],
    ]);
    expect(now.detectors.at(-1)).toMatchObject({ tag: "B1.03", controls: ["rooms-1"], at: [1, 11] });
    expect(now.rooms.slice(0, 2)).toEqual(pair.rooms);
  });

  test("rooms side by side keep the doors between them", () => {
    const copy = duplicateSteps(pair, refs("rooms", "west", "east"), { by: [0, 10], newId: counting() });
    expect(applied(pair, copy.steps).openings[2]?.rooms).toEqual(["rooms-1", "rooms-2"]);
  });

  test("a door alone gives a second one in the same wall, beside the first", () => {
    const copy = duplicateSteps(pair, refs("openings", "out"), { by: [0.6, -0.6], newId: counting() });
    expect(applied(pair, copy.steps).openings[2]).toMatchObject({ from: [2.1, 0], to: [3.1, 0] });
  });

  test("in a row, each copy is a step further and has a tag of its own", () => {
    const row = rowSteps(pair, refs("detectors", "01"), { count: 3, by: [1.2, 0], newId: counting() });
    const now = applied(pair, row.steps);
    expect(now.detectors.slice(2).map(({ at, tag }) => [at, tag])).toEqual([
      [[2.2, 1], "B1.03"],
      [[3.4, 1], "B1.04"],
      [[4.6, 1], "B1.05"],
    ]);
    expect(row.made).toHaveLength(3);
  });

  test("a storey gives a second one with everything on it, above all others by its own height", () => {
    expect(nextElevation(demo)).toBeCloseTo(6.8, 9);
    const copy = storeyCopySteps(demo, "ground", { name: "Copy", elevation: 6.8, newId: counting() });
    const now = applied(demo, copy.steps);
    const on = (storey: string): Site["rooms"] => now.rooms.filter((one) => one.storey === storey);
    expect(on(copy.storey).map(roomArea)).toEqual(on("ground").map(roomArea));
    expect(on(copy.storey).map(({ name }) => name)).toEqual(on("ground").map(({ name }) => name));
    expect(lost(now)).toEqual([]);
    expect(twice(ids(now))).toEqual([]);
    const links = (storey: string): number[] => {
      const order = on(storey).map(({ id }) => id);
      return now.openings
        .filter((one) => order.includes(one.rooms[0]))
        .flatMap((one) => one.rooms.map((id) => (id === null ? -1 : order.indexOf(id))));
    };
    expect(links(copy.storey)).toEqual(links("ground"));
    expect(applied(now, removeSteps(now, refs("storeys", copy.storey))).rooms).toEqual(demo.rooms);
  });
});

describe("removing", () => {
  test("a room leaves its neighbour's door as a way outside, on the neighbour's face", () => {
    const now = applied(pair, removeSteps(pair, refs("rooms", "west")));
    expect(now.openings).toHaveLength(1);
    expect(now.openings[0]).toMatchObject({
      rooms: ["east", null],
      from: [5.2, 1],
      to: [5.2, 2],
      opensInto: null,
    });
    expect(placedKinds.flatMap((kind) => now[kind].map(({ id }) => id))).toEqual(["02"]);
  });
});

describe("the clipboard", () => {
  test("carries a whole storey into a job that has nothing, with the models that its detectors need", () => {
    const empty = siteOf({ models: [] });
    const clip = read(clipText(demo, refs("storeys", "ground")));
    const now = paste(empty, clip, [0, 0]).site;
    const ground = demo.rooms.filter(({ storey }) => storey === "ground");
    expect(now.rooms.map((one) => roomArea(one))).toEqual(
      ground.map((one) => expect.closeTo(roomArea(one), 5)),
    );
    expect(lost(now)).toEqual([]);
    const used = new Set(demo.detectors.map(({ model }) => model));
    expect(now.models.map(({ title }) => title).sort()).toEqual(
      demo.models
        .filter(({ id }) => used.has(id))
        .map(({ title }) => title)
        .sort(),
    );
  });

  test("brings no model twice, gives all records new ids and asks for new tags", () => {
    const clip = read(clipText(demo, refs("rooms", "corridor")));
    const now = paste(demo, clip, [100, 100]);
    expect(now.site.models).toEqual(demo.models);
    expect(twice(ids(now.site))).toEqual([]);
    expect(lost(now.site)).toEqual([]);
    expect(now.site.detectors.slice(demo.detectors.length).map(({ tag }) => tag)).toEqual(["", ""]);
  });

  test("a model of the same name that says something else comes along as one of its own", () => {
    const clip = read(clipText(demo, refs("rooms", "corridor")));
    const changed = { ...demo, models: demo.models.map((model) => ({ ...model, cost: model.cost + 1 })) };
    const now = paste(changed, clip, [100, 100]).site;
    expect(now.models).toHaveLength(demo.models.length + 1);
    expect(now.detectors.at(-1)?.model).toBe(now.models.at(-1)?.id);
  });

  test("sets things down with their middle at the place, in the room that lies there", () => {
    const clip = read(clipText(pair, refs("obstacles", "rack")));
    const now = paste(pair, clip, [7, 2]).site;
    expect(now.obstacles[1]).toMatchObject({ room: "east" });
    expect(now.obstacles[1]?.footprint[0]).toEqual([6.5, 1.75]);
    const nowhere = siteOf({});
    expect(pasteSteps(nowhere, clip, { at: [0, 0], storey: "ground", newId: counting() })).toEqual({
      refused: "no-room",
    });
  });

  test("copy and paste keep everything of every record but ids, place and tags", () => {
    const clip = read(clipText(pair, refs("rooms", "west", "east")));
    const now = paste(pair, clip, [4.5, 2]).site;
    for (const kind of [...placedKinds, "rooms", "openings"] as const) {
      const bare = (record: object): object => ({
        ...record,
        id: "",
        room: "",
        rooms: "",
        controls: "",
        tag: "",
        opensInto: "",
      });
      const half = now[kind].length / 2;
      const copies = now[kind].slice(half).map(bare);
      // Angles go through degrees to a millionth.
      expect(JSON.parse(JSON.stringify(copies, tidy))).toEqual(
        JSON.parse(JSON.stringify(now[kind].slice(0, half).map(bare), tidy)),
      );
    }
  });

  test("text that is not ours, newer, or damaged is refused, whatever it is", () => {
    const text = clipText(pair, refs("rooms", "west"));
    expect(readClip("hello")).toEqual({ refused: "foreign" });
    expect(readClip("[1]")).toEqual({ refused: "foreign" });
    expect(readClip("null")).toEqual({ refused: "foreign" });
    expect(readClip(text.replace('"roomwake-selection":1', '"roomwake-selection":2'))).toEqual({
      refused: "newer",
    });
    expect(readClip(text.replace('"ceilingHeight":2.5', '"ceilingHeight":"high"'))).toEqual({
      refused: "damaged",
    });
    expect(readClip(text.replace('"obstacles":[', '"obstacles":{"a":[').slice(0, -1))).toEqual({
      refused: "foreign",
    });
    expect(clipText(pair, [])).toBe("");
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(20), fc.string({ maxLength: 6 }), (at, cut, put) => {
        const found = readClip(text.slice(0, at) + put + text.slice(at + cut));
        if ("refused" in found) return;
        // What is let through can be set down without a reference that leads nowhere.
        const made = pasteSteps(pair, found.clip, { at: [20, 0], storey: "ground", newId: counting() });
        if ("steps" in made) {
          const now = applied(pair, made.steps);
          expect(twice(ids(now))).toEqual([]);
          expect(lost(now)).toEqual([]);
        }
      }),
      { seed: 39, numRuns: 300 },
    );
  });
});

const tidy = (_: string, value: unknown): unknown =>
  typeof value === "number" ? Math.round(value * 1e5) / 1e5 : value;

describe("choosing several", () => {
  test("a box takes things by their middle, and a room with all its walls instead of its contents", () => {
    expect(boxed(pair, "ground", { from: [4.5, -1], to: [10, 5] }).map(({ id }) => id)).toEqual([
      "switch",
      "east",
    ]);
    expect(boxed(pair, "first", { from: [-9, -9], to: [20, 20] })).toEqual([]);
  });

  test("alike are things of one kind on the storey", () => {
    const other = { ...pair.obstacles[0]!, id: "screen", kind: "partition" as const };
    const site = { ...pair, obstacles: [...pair.obstacles, other, { ...pair.obstacles[0]!, id: "rack-2" }] };
    expect(alike(site, "ground", { kind: "obstacles", id: "rack" }).map(({ id }) => id)).toEqual([
      "rack",
      "rack-2",
    ]);
    expect(alike(site, "ground", { kind: "openings", id: "out" }).map(({ id }) => id)).toEqual([
      "between",
      "out",
    ]);
  });
});
