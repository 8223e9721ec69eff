import fc from "fast-check";
import { describe, expect, test } from "vitest";
import * as Y from "yjs";
import { sentenceOf } from "#engine";
import {
  addDetector,
  addModel,
  addRecord,
  addRoom,
  type Command,
  changeRecord,
  createJobDocument,
  deleteRecords,
  duplicateRecord,
  emptyJob,
  type JobDocument,
  jobText,
  loadFile,
  moveCorner,
  moveDetector,
  parseJob,
  setDetails,
  setName,
  siteKinds,
} from "../index.ts";

const square: [number, number][] = [
  [0, 0],
  [4, 0],
  [4, 3],
  [0, 3],
];

/** Ids in order, so that a failing run reads the same twice. */
const countedIds = (prefix: string) => {
  let count = 0;
  return { newId: () => `${prefix}${++count}` };
};

const startDocument = (prefix = "n", ydoc = new Y.Doc()): JobDocument =>
  createJobDocument(ydoc, countedIds(prefix));

const filled = (): JobDocument => {
  const document = startDocument();
  document.run(addRoom({ id: "a", name: "Store", outline: square }));
  document.run(
    addRoom({ id: "b", name: "Hall", outline: square.map(([x, y]): [number, number] => [x + 4.1, y]) }),
  );
  document.run(
    addRecord("openings", { id: "door", rooms: ["a", "b"], from: [4, 1], to: [4, 2], opensInto: "b" }),
  );
  document.run(addModel({ id: "m", title: "Round", zones: { towards: [{ height: 2.5, radius: 4 }] } }));
  document.run(addDetector({ id: "d", room: "a", model: "m", at: [2, 1.5] }));
  document.run(
    addRecord("obstacles", {
      id: "rack",
      room: "a",
      kind: "rack",
      footprint: [
        [1, 1],
        [2, 1],
        [2, 2],
      ],
      top: 2,
    }),
  );
  return document;
};

/** Two documents exchange what each lacks. */
const meet = (one: JobDocument, other: JobDocument): void => {
  const ofOne = Y.encodeStateAsUpdate(one.ydoc, Y.encodeStateVector(other.ydoc));
  const ofOther = Y.encodeStateAsUpdate(other.ydoc, Y.encodeStateVector(one.ydoc));
  Y.applyUpdate(other.ydoc, ofOne);
  Y.applyUpdate(one.ydoc, ofOther);
};

const copyOf = (document: JobDocument, prefix: string): JobDocument => {
  const ydoc = new Y.Doc();
  Y.applyUpdate(ydoc, Y.encodeStateAsUpdate(document.ydoc));
  return startDocument(prefix, ydoc);
};

const place = fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 }));
const anyOf = (ids: readonly string[]) => fc.constantFrom(...ids);
const command: fc.Arbitrary<Command> = fc.oneof(
  place.map(([x, y]) =>
    addRoom({ name: `R${x}`, outline: square.map(([a, b]): [number, number] => [a + x, b + y]) }),
  ),
  fc
    .tuple(anyOf(["a", "b"]), fc.string({ maxLength: 5 }))
    .map(([id, name]) => changeRecord("rooms", id, { name })),
  fc
    .tuple(anyOf(["a", "b"]), fc.option(fc.integer({ min: 20, max: 40 }), { nil: undefined }))
    .map(([id, highestTemperature]) => changeRecord("rooms", id, { highestTemperature })),
  place.map((at) => moveDetector("d", at)),
  fc
    .option(fc.integer({ min: 1, max: 1800 }), { nil: undefined })
    .map((offDelay) =>
      changeRecord("detectors", "d", { settings: offDelay === undefined ? undefined : { offDelay } }),
    ),
  place.map((at) => addDetector({ room: "a", model: "m", at })),
  fc.tuple(anyOf(["a", "b"]), fc.nat(3), place).map(([room, corner, to]) => moveCorner({ room, corner, to })),
  anyOf(["a", "b"]).map((id) => deleteRecords([{ kind: "rooms", id }])),
  anyOf(["a", "b"]).map((id) => duplicateRecord({ kind: "rooms", id }, { by: [0, 10] })),
  fc.constant(deleteRecords([{ kind: "openings", id: "door" }])),
  fc.string({ maxLength: 8 }).map((name) => setName(name)),
  fc.string({ maxLength: 8 }).map((client) => setDetails({ client })),
  fc.constant(loadFile({ ...emptyJob("empty"), defaults: { margin: { seated: 0.3 } } })),
);

describe("laws of commands", () => {
  test("a command and then undo, with nobody else about, is the identity; redo brings it back", () => {
    fc.assert(
      fc.property(fc.array(command, { minLength: 1, maxLength: 8 }), (commands) => {
        const document = filled();
        const states = [jobText(document.job())];
        for (const one of commands) {
          document.run(one);
          const text = jobText(document.job());
          if (text !== states[states.length - 1]) states.push(text);
        }
        for (let i = states.length - 2; i >= 0; i--) {
          expect(document.undo()).toBe(true);
          expect(jobText(document.job())).toBe(states[i]);
        }
        for (let i = 1; i < states.length; i++) {
          expect(document.redo()).toBe(true);
          expect(jobText(document.job())).toBe(states[i]);
        }
        document.close();
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  test("merging does not depend on the order in which the changes arrive", () => {
    fc.assert(
      fc.property(
        fc.array(command, { maxLength: 6 }),
        fc.array(command, { maxLength: 6 }),
        (ofOne, ofOther) => {
          const origin = filled();
          const one = copyOf(origin, "one");
          const other = copyOf(origin, "other");
          for (const change of ofOne) one.run(change);
          for (const change of ofOther) other.run(change);
          const updates = [one, other].map((document) => Y.encodeStateAsUpdate(document.ydoc));
          const [forwards, backwards] = [updates, [...updates].reverse()].map((order) => {
            const ydoc = new Y.Doc();
            for (const update of order) Y.applyUpdate(ydoc, update);
            return createJobDocument(ydoc);
          });
          meet(one, other);
          expect(jobText(forwards!.job())).toBe(jobText(backwards!.job()));
          expect(jobText(one.job())).toBe(jobText(other.job()));
          expect(jobText(one.job())).toBe(jobText(forwards!.job()));
          one.snapshot();
        },
      ),
      { seed: 12, numRuns: 60 },
    );
  });

  test("what the document holds can be saved, and loads as the same", () => {
    fc.assert(
      fc.property(fc.array(command, { maxLength: 8 }), (commands) => {
        const document = filled();
        for (const one of commands) document.run(one);
        const read = parseJob(jobText(document.job()));
        expect(read.job).toEqual(document.job());
      }),
      { seed: 13, numRuns: 60 },
    );
  });

  test("the cache never differs from reading the document afresh", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(command, fc.boolean()), { maxLength: 8 }), (steps) => {
        const document = filled();
        for (const [one, back] of steps) {
          document.run(one);
          if (back) document.undo();
          expect(document.job()).toEqual(createJobDocument(document.ydoc).job());
        }
      }),
      { seed: 14, numRuns: 40 },
    );
  });
});

describe("two people offline", () => {
  test("who change different fields of one room, and different numbers of the planning, both keep theirs", () => {
    const one = filled();
    const other = copyOf(one, "other");
    one.run(changeRecord("rooms", "a", { name: "Luggage store" }));
    other.run(changeRecord("rooms", "a", { ceilingHeight: 3.2 }));
    one.run(loadFile({ ...one.job(), defaults: { margin: { seated: 0.3 } } }));
    other.run(loadFile({ ...other.job(), defaults: { margin: { across: 0.25 } } }));
    meet(one, other);
    for (const document of [one, other]) {
      expect(document.job().rooms[0]).toMatchObject({ name: "Luggage store", ceilingHeight: 3.2 });
      expect(document.job().defaults).toEqual({ margin: { seated: 0.3, across: 0.25 } });
    }
  });

  test("who each add a detector keep both, and the tag that both were given is a finding", () => {
    const one = filled();
    const other = copyOf(one, "other");
    one.run(addDetector({ room: "a", model: "m", at: [1, 1] }));
    other.run(addDetector({ room: "a", model: "m", at: [3, 2] }));
    meet(one, other);
    expect(one.job().detectors.map((detector) => detector.tag)).toEqual(["B1.01", "B1.02", "B1.02"]);
    expect(one.snapshot().problems.map(sentenceOf)).toEqual(["The tag B1.02 was given to 2 detectors."]);
  });

  test("of whom one deletes the room in which the other hangs a detector: it is a problem, not a crash", () => {
    const one = filled();
    const other = copyOf(one, "other");
    one.run(deleteRecords([{ kind: "rooms", id: "a" }]));
    other.run(addDetector({ room: "a", model: "m", at: [1, 1] }));
    meet(one, other);
    expect(one.snapshot().site.detectors).toEqual([]);
    expect(one.snapshot().problems.map(sentenceOf)).toEqual([
      "detectors “B1.02” refers to the room “a”, which is not in the job.",
    ]);
  });

  test("undo takes back one's own step only", () => {
    const one = filled();
    const other = copyOf(one, "other");
    one.run(moveDetector("d", [1, 1]));
    other.run(changeRecord("rooms", "b", { name: "Lobby" }));
    meet(one, other);
    one.undo();
    expect(one.job().detectors[0]!.at).toEqual([2, 1.5]);
    expect(one.job().rooms[1]!.name).toBe("Lobby");
  });
});

describe("the document", () => {
  test("keeps the identity of what did not change, in the file and in the snapshot", () => {
    const document = filled();
    const [job, site] = [document.job(), document.snapshot().site];
    document.run(moveDetector("d", [1, 1]));
    expect(document.job().rooms).toBe(job.rooms);
    expect(document.job().details).toBe(job.details);
    expect(document.job().detectors).not.toBe(job.detectors);
    for (const kind of siteKinds)
      if (kind !== "detectors") expect(document.snapshot().site[kind]).toBe(site[kind]);
    expect(document.snapshot()).toBe(document.snapshot());
  });

  test("tells its listeners of every change, and not of a refused one", () => {
    const document = filled();
    let told = 0;
    document.subscribe(() => told++);
    const before = document.revision();
    const outcome = document.run(moveCorner({ room: "a", corner: 2, to: [-1, 1] }));
    expect(outcome.problems.map(sentenceOf)).toEqual([
      expect.stringMatching(/^rooms “Store”: outline crosses itself near/),
    ]);
    expect([told, document.revision() - before, document.job().rooms[0]!.outline]).toEqual([0, 0, square]);
    document.run(setName("Annex"));
    expect([told, document.revision() - before]).toEqual([1, 1]);
  });

  test("joins the steps of a drag into one step of undo", () => {
    const document = filled();
    document.run(moveDetector("d", [1, 1]));
    document.run(moveDetector("d", [1, 1.2]), { step: "same" });
    document.run(moveDetector("d", [1, 1.4]), { step: "same" });
    document.undo();
    expect(document.job().detectors[0]!.at).toEqual([2, 1.5]);
  });

  test("of a newer version can be looked at only", () => {
    const document = startDocument();
    document.run(loadFile({ ...emptyJob("later"), version: 9 }));
    expect(document.readOnly()).toBe(true);
    expect(document.run(setName("x")).problems.map(sentenceOf)).toEqual([
      "This job was written by a newer Roomwake and is open for reading only.",
    ]);
    expect([document.undo(), document.job().name]).toEqual([false, "later"]);
    const full = filled();
    expect(full.run(loadFile({ ...emptyJob("later"), version: 9 })).problems[0]?.code).toBe("job-newer");
  });

  test("leaves out a record that another program broke, and names it", () => {
    const document = filled();
    document.ydoc.getMap<Y.Map<unknown>>("rooms").get("b")!.set("ceilingHeight", "high");
    document.ydoc.getMap("obstacles").set("odd", 7);
    const { site, problems } = document.snapshot();
    expect(site.rooms.map((room) => room.id)).toEqual(["a"]);
    expect(problems.map((problem) => problem.code)).toEqual(
      expect.arrayContaining(["job-record-broken", "job-reference-lost"]),
    );
    expect(problems.map(sentenceOf)[0]).toBe(
      "rooms “Hall” cannot be used: ceilingHeight must be a number, not “high”.",
    );
  });
});
