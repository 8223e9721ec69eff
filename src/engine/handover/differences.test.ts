import { describe, expect, test } from "vitest";
import { box, detectorLike, doorLike, roomLike, roundModel, siteLike } from "../../../test/engine/records.ts";
import { settingsOfSite } from "../review/index.ts";
import type { Site } from "../site/index.ts";
import { differencesOf } from "./differences.ts";
import { type HandedState, handedState } from "./handed-state.ts";
import { nextLetter, revisionRecords } from "./revisions.ts";

const site = siteLike({
  rooms: [
    roomLike({ id: "hall", name: "Hall", outline: box(0, 0, 5, 4) }),
    roomLike({ id: "store", name: "Store", outline: box(0, 4.2, 5, 3) }),
  ],
  openings: [doorLike({ id: "between", rooms: ["hall", "store"], from: [2, 4], to: [2.9, 4] })],
  models: [roundModel()],
  detectors: [
    detectorLike({ id: "d1", tag: "B1.01", room: "hall", at: [2.5, 2] }),
    detectorLike({ id: "d2", tag: "B1.02", room: "store", at: [2.5, 5.5] }),
  ],
});
const circuit = {
  id: "c",
  name: "L3",
  breaker: "B",
  rating: 10,
  rcd: "no",
  protectiveConductor: "yes",
  sharedNeutral: "no",
} as const;
const found = { boards: [], circuits: [circuit] };
const stateOf = (of: Site, delay?: number, installation: typeof found | object = found): HandedState =>
  handedState(of, {
    settings: settingsOfSite(
      of,
      delay === undefined ? {} : { chosen: new Map([["d1", { offDelay: delay }]]) },
    ),
    found: installation as typeof found,
  });
const before = stateOf(site);
const first = { ...site.detectors[0]!, at: [2.8, 2.4] as const };

describe("Differences between two states that were handed over", () => {
  test("a state and itself: none, kept as text in between or not", () => {
    expect(differencesOf(before, before)).toEqual([]);
    expect(differencesOf(before, JSON.parse(JSON.stringify(before)) as HandedState)).toEqual([]);
  });

  test("a detector that moved: by how far, from where to where, and nothing else", () => {
    const after = stateOf({ ...site, detectors: [first, site.detectors[1]!] });
    expect(differencesOf(before, after)).toEqual([
      {
        kind: "detectors",
        id: "d1",
        what: "changed",
        moved: expect.closeTo(0.5, 9),
        changes: [{ fact: "at", before: [2.5, 2], after: [2.8, 2.4] }],
        record: after["detectors/d1"],
      },
    ]);
  });

  test.each([
    ["the floor of a room", "floor", { rooms: [{ ...site.rooms[0]!, floor: 0.3 }, site.rooms[1]!] }],
    ["a room said to be wet", "wet", { rooms: [{ ...site.rooms[0]!, wet: true }, site.rooms[1]!] }],
    ["daylight in a room", "daylight", { rooms: [{ ...site.rooms[0]!, daylight: true }, site.rooms[1]!] }],
    [
      "a door that stands open now",
      "state",
      { openings: [{ ...site.openings[0]!, state: "open" as const }] },
    ],
    ["the side of its hinge", "hinge", { openings: [{ ...site.openings[0]!, hinge: "to" as const }] }],
    ["a window's sill", "sill", { openings: [{ ...site.openings[0]!, sill: 0.9 }] }],
    ["the wall about a door", "thickness", { openings: [{ ...site.openings[0]!, thickness: 0.31 }] }],
    [
      "how a detector is fixed",
      "fixing",
      { detectors: [{ ...site.detectors[0]!, fixing: "surface" as const }, site.detectors[1]!] },
    ],
    [
      "a mask by half a degree",
      "masks",
      {
        detectors: [
          { ...site.detectors[0]!, masks: [{ from: 0, to: 0.0087, inner: 0, outer: 1 }] },
          site.detectors[1]!,
        ],
      },
    ],
  ] as const)("%s is told", (_, fact, change: Partial<Site>) => {
    const found = differencesOf(before, stateOf({ ...site, ...change }));
    expect(
      found.flatMap((one) => (one.what === "changed" ? one.changes : []).map((it) => it.fact)),
    ).toContain(fact);
  });

  test("a delay set otherwise: old and new value, in seconds", () => {
    const [one, ...more] = differencesOf(stateOf(site, 600), stateOf(site, 900));
    expect(more).toEqual([]);
    expect(one).toMatchObject({
      id: "d1",
      changes: [{ fact: "set.offDelay", before: 600, after: 900 }],
    });
  });

  test("what was added one way round was removed the other way round, and places are swapped", () => {
    const after = stateOf({
      ...site,
      rooms: [{ ...site.rooms[0]!, ceilingHeight: 3 }, site.rooms[1]!],
      detectors: [first],
    });
    const [there, back] = [differencesOf(before, after), differencesOf(after, before)];
    expect(there.map(({ kind, id, what }) => [kind, id, what])).toEqual([
      ["rooms", "hall", "changed"],
      ["detectors", "d1", "changed"],
      ["detectors", "d2", "removed"],
    ]);
    expect(back.map(({ what }) => what)).toEqual(["changed", "changed", "added"]);
    for (const [i, difference] of there.entries()) {
      const other = back[i]!;
      if (difference.what !== "changed" || other.what !== "changed") continue;
      expect(other.changes).toEqual(
        difference.changes.map(({ fact, ...change }) => ({
          fact,
          before: change.after,
          after: change.before,
        })),
      );
      expect(other.moved).toEqual(difference.moved);
    }
  });

  test("a room redrawn with the same area is told; one moved as a whole keeps its shape", () => {
    const redrawn = stateOf({
      ...site,
      rooms: [{ ...site.rooms[0]!, outline: box(0, 0, 4, 5) }, site.rooms[1]!],
    });
    const facts = (state: HandedState): readonly string[] =>
      differencesOf(before, state).flatMap((one) =>
        one.what === "changed" && one.kind === "rooms" ? one.changes.map(({ fact }) => fact) : [],
      );
    expect(facts(redrawn)).toContain("shape");
    expect(facts(redrawn)).not.toContain("area");
    const moved = stateOf({
      ...site,
      rooms: [{ ...site.rooms[0]!, outline: box(1, 0, 5, 4) }, site.rooms[1]!],
    });
    expect(facts(moved)).toEqual(["at"]);
  });

  test("breaker and circuit are told with what stood there before", () => {
    const after = stateOf(site, undefined, { boards: [], circuits: [{ ...circuit, rating: 16 }] });
    expect(differencesOf(before, after)).toMatchObject([
      { kind: "circuits", changes: [{ fact: "breaker", before: "B 10 A", after: "B 16 A" }] },
    ]);
  });

  test("a state of a newer program, with kinds and facts that nobody knows here, breaks nothing", () => {
    const strange: HandedState = { ...before, "lifts/l1": { name: "Lift" }, nonsense: {} };
    expect(differencesOf(before, strange)).toEqual([]);
  });
});

describe("Revisions", () => {
  const revision = { id: "r", date: "2026-11-26", reason: "" };

  test("each tells what it changed against the one before; what was not kept is not known, never nothing", () => {
    const after = stateOf({ ...site, detectors: [first, site.detectors[1]!] });
    const { revisions, since } = revisionRecords(
      [
        { ...revision, letter: "A", state: before },
        { ...revision, letter: "B", state: after },
        { ...revision, letter: "C" },
      ],
      after,
    );
    expect(revisions.map(({ differences }) => differences?.length)).toEqual([undefined, 1, undefined]);
    expect(since).toBeUndefined();
    expect(revisionRecords([{ ...revision, letter: "A", state: after }], after).since).toEqual([]);
    expect(revisionRecords([], after).since).toBeUndefined();
  });

  test("letters go on after the highest that was given", () => {
    expect(nextLetter([])).toBe("A");
    expect(nextLetter(["A", "C", "b", "draft 2"])).toBe("D");
    expect(nextLetter(["Z"])).toBe("AA");
    expect(nextLetter(["AZ"])).toBe("BA");
  });
});
