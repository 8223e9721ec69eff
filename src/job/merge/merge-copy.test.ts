import fc from "fast-check";
import { describe, expect, test } from "vitest";
import * as Y from "yjs";
import { sentenceOf } from "#engine";
import {
  addDetector,
  addModel,
  addRoom,
  type BegunJob,
  beginJob,
  changeRecord,
  createJobDocument,
  deleteRecords,
  editKept,
  emptyJob,
  identityOf,
  type JobDocument,
  type JobFile,
  jobText,
  mergeCopy,
  moveDetector,
  parseJob,
  readJobFile,
  recordKinds,
  separateJob,
  setName,
  writeJobArchive,
} from "../index.ts";

const square = (x: number): [number, number][] => [
  [x, 0],
  [x + 4, 0],
  [x + 4, 3],
  [x, 3],
];

const start = parseJob({
  ...emptyJob("Annex"),
  storeys: [{ id: "ground", elevation: 0 }],
  rooms: [
    { id: "a", storey: "ground", name: "Store", outline: square(0), ceilingHeight: 2.5 },
    { id: "b", storey: "ground", name: "Hall", outline: square(5), ceilingHeight: 2.5 },
  ],
  photos: [{ id: "p", type: "image/jpeg", width: 4, height: 3, data: "AQID" }],
}).job!;

const counted = (prefix: string): (() => string) => {
  let count = 0;
  return () => `${prefix}${++count}`;
};
const opened = ({ update }: BegunJob, prefix = "n"): JobDocument => {
  const ydoc = new Y.Doc();
  Y.applyUpdate(ydoc, update);
  return createJobDocument(ydoc, { newId: counted(prefix) });
};
const original = (): JobDocument => {
  const document = opened(beginJob({ job: start }, () => "annex"));
  document.run(addModel({ id: "m", title: "Round", zones: { towards: [{ height: 2.5, radius: 4 }] } }));
  document.run(addDetector({ id: "d", room: "a", model: "m", at: [2, 1.5] }));
  return document;
};
const packed = (document: JobDocument): Uint8Array =>
  writeJobArchive({ history: Y.encodeStateAsUpdate(document.ydoc), id: "annex" });
const readAgain = (file: Uint8Array | string): { job: JobFile; history?: Uint8Array } => {
  const read = readJobFile(typeof file === "string" ? new TextEncoder().encode(file) : file);
  if (!read.job) throw new Error(read.problems.map(sentenceOf).join());
  return read;
};
/** A copy on another device, by the packed file. */
const copyOf = (document: JobDocument, prefix: string): JobDocument =>
  opened(
    beginJob(readAgain(packed(document)), () => "unused"),
    prefix,
  );

const room = fc.constantFrom("a", "b");
const change = fc.oneof(
  fc.record({ do: fc.constant("add" as const), x: fc.integer({ min: -90, max: 90 }) }),
  fc.record({ do: fc.constant("rename" as const), room, name: fc.string({ maxLength: 6 }) }),
  fc.record({ do: fc.constant("height" as const), room, height: fc.integer({ min: 2, max: 9 }) }),
  fc.record({ do: fc.constant("move" as const), x: fc.integer({ min: 1, max: 3 }) }),
  fc.record({ do: fc.constant("delete" as const), room }),
  fc.record({
    do: fc.constant("photo" as const),
    id: fc.constantFrom("p", "q"),
    bytes: fc.uint8Array({ minLength: 1, maxLength: 9 }),
  }),
  fc.record({ do: fc.constant("undo" as const) }),
);
type Change = typeof change extends fc.Arbitrary<infer One> ? One : never;
function make(document: JobDocument, one: Change): void {
  switch (one.do) {
    case "add":
      document.run(addRoom({ name: `R${one.x}`, outline: square(one.x) }));
      return;
    case "rename":
      document.run(changeRecord("rooms", one.room, { name: one.name }));
      return;
    case "height":
      document.run(changeRecord("rooms", one.room, { ceilingHeight: one.height }));
      return;
    case "move":
      document.run(moveDetector("d", [one.x, 1]));
      return;
    case "delete":
      document.run(deleteRecords([{ kind: "rooms", id: one.room }]));
      return;
    case "photo": {
      const data = btoa(String.fromCharCode(...one.bytes));
      const record = { id: one.id, type: "image/jpeg" as const, width: 4, height: 3, data };
      document.run(editKept("photo", [{ do: "put", kind: "photos", record }]));
      return;
    }
    case "undo":
      document.undo();
  }
}
const ids = (job: JobFile): readonly string[] =>
  recordKinds.flatMap((kind) => job[kind].map(({ id }) => `${kind} ${id}`));

/** What happens on three devices: somebody changes something, or a packed copy goes from one to another. */
const event = fc.oneof(
  { weight: 3, arbitrary: fc.record({ on: fc.nat(2), change }) },
  { weight: 2, arbitrary: fc.record({ from: fc.nat(2), to: fc.nat(2) }) },
);

describe("copies that meet", () => {
  test("1. a copy with its history is merged change by change: what either side did is there afterwards", () => {
    const here = original();
    const there = copyOf(here, "there");
    here.run(changeRecord("rooms", "a", { name: "Luggage store" }));
    there.run(changeRecord("rooms", "a", { ceilingHeight: 3.2 }));
    there.run(addRoom({ id: "c", name: "Stair", outline: square(10) }));
    const merged = mergeCopy(here, readAgain(packed(there)));
    expect(merged).toEqual({
      how: "history",
      count: { added: 1, changed: 1, removed: 0, head: false },
      notes: [],
    });
    expect(here.job().rooms.map(({ name, ceilingHeight }) => [name, ceilingHeight])).toEqual([
      ["Luggage store", 3.2],
      ["Hall", 2.5],
      ["Stair", 2.7],
    ]);
  });

  test("2. and 3. neither order nor number of the copies matters, and nothing is doubled, however they cross", () => {
    fc.assert(
      fc.property(fc.array(event, { maxLength: 14 }), (events) => {
        const origin = original();
        const devices = ["x", "y", "z"].map((prefix) => copyOf(origin, prefix));
        for (const one of events)
          if ("on" in one) make(devices[one.on]!, one.change);
          else mergeCopy(devices[one.to]!, readAgain(packed(devices[one.from]!)));
        const files = devices.map(packed);
        const texts = [
          [0, 1, 2],
          [2, 1, 0],
          [1, 0, 0, 2, 1, 2],
        ].map((order) => {
          const document = copyOf(origin, "w");
          for (const index of order) mergeCopy(document, readAgain(files[index]!));
          const list = ids(document.job());
          expect(new Set(list).size).toBe(list.length);
          // The photograph that all of them began with is still one.
          expect(document.job().photos.filter(({ id }) => id === "p").length).toBe(1);
          return jobText(document.job());
        });
        expect(texts[1]).toBe(texts[0]);
        expect(texts[2]).toBe(texts[0]);
        for (const device of devices) {
          for (const file of files) mergeCopy(device, readAgain(file));
          expect(jobText(device.job())).toBe(texts[0]);
          expect(mergeCopy(device, readAgain(files[0]!)).how).toBe("nothing-new");
        }
      }),
      { seed: 41, numRuns: 60 },
    );
    // 60 runs, each with some thirty packed jobs.
  }, 240_000);

  test("4. a copy without history comes in as a difference: one step that can be undone", () => {
    const here = original();
    const before = jobText(here.job());
    const edited = before.replace('"Store"', '"Luggage store"').replace('"Hall"', '"Lobby"');
    const merged = mergeCopy(here, readAgain(edited));
    expect([merged.how, merged.how && merged.count.changed]).toEqual(["difference", 2]);
    expect(jobText(here.job())).toBe(edited);
    here.undo();
    expect(jobText(here.job())).toBe(before);
    here.redo();
    expect(jobText(here.job())).toBe(edited);
  });

  test("4. so does one whose history began apart, and it is said", () => {
    const here = original();
    const apart = opened(beginJob({ job: here.job() }, () => "unused"));
    apart.run(setName("Annex, edited elsewhere"));
    const before = jobText(here.job());
    const merged = mergeCopy(here, readAgain(packed(apart)));
    expect([merged.how, merged.how && merged.notes.map(sentenceOf)]).toEqual([
      "difference",
      ["The copy and the job that is here were begun apart: the copy came in as a difference."],
    ]);
    expect(here.job().name).toBe("Annex, edited elsewhere");
    here.undo();
    expect(jobText(here.job())).toBe(before);
  });

  test("5. a merge keeps the identity of the job that is here", () => {
    const here = original();
    mergeCopy(here, { job: { ...here.job(), id: "other", name: "x" } });
    expect([here.job().id, here.job().name]).toEqual(["annex", "x"]);
  });

  test("6. a copy that cannot be merged leaves the job as it was", () => {
    const here = original();
    const before = jobText(here.job());
    const merged = mergeCopy(here, { job: { ...here.job(), version: 99, name: "later" } });
    expect(merged.problems?.map(({ code }) => code)).toEqual(["job-newer"]);
    expect(jobText(here.job())).toBe(before);
  });

  test("7. opened as a separate copy it is a job of its own, and nothing of it reaches the other", () => {
    const here = original();
    const apart = opened(beginJob({ job: separateJob(here.job()) }, () => "copy-7"));
    apart.run(setName("Copy"));
    expect(apart.job().id).toBe("copy-7");
    expect({ ...apart.job(), id: "annex", name: "Annex" }).toEqual(here.job());
    expect(here.job().name).toBe("Annex");
  });

  test("8. a job without an identity gets one when it is first kept, once and for all", () => {
    const newId = counted("job-");
    const [one, two] = [beginJob({ job: start }, newId), beginJob({ job: start }, newId)];
    expect([one.id, two.id]).toEqual(["job-1", "job-2"]);
    expect([opened(one).job().id, opened(two).job().id]).toEqual(["job-1", "job-2"]);
    // A document that was kept before there were identities gets it when it is packed, the same each time.
    const old = createJobDocument(new Y.Doc());
    old.run(setName("Old"));
    const history = Y.encodeStateAsUpdate(old.ydoc);
    expect(readAgain(writeJobArchive({ history, id: "kept-as" })).job.id).toBe("kept-as");
    expect(writeJobArchive({ history, id: "kept-as" })).toEqual(writeJobArchive({ history, id: "kept-as" }));
  });

  test("9. a copy without history is kept apart from the original's history, and is still known as its copy", () => {
    const here = original();
    const plain = beginJob({ job: here.job() }, () => "unused");
    expect(plain.id).not.toBe("annex");
    expect(plain.id).toMatch(/^[\w-]{1,80}$/);
    expect(identityOf(plain.id)).toBe("annex");
    expect(beginJob({ job: here.job() }, () => "unused")).toEqual(plain);
    // Its history, sent on, is kept where it is kept here: the two sync as one.
    expect(beginJob(readAgain(packed(opened(plain))), () => "unused").id).toBe(plain.id);
    expect(beginJob(readAgain(packed(here)), () => "unused").id).toBe("annex");
  });
});

test("where a job's history begins does not depend on the order of the fields at the top of its file", () => {
  const job = parseJob({ ...start, id: "annex", "x-one": 1, "x-two": 2 }).job!;
  const turned = Object.fromEntries(Object.entries(job).reverse()) as unknown as JobFile;
  expect(beginJob({ job: turned }, () => "unused")).toEqual(beginJob({ job }, () => "unused"));
});

test("an identity is letters, figures and single hyphens; another one is refused with its place", () => {
  const of = (id: unknown) => parseJob({ ...emptyJob("x"), id });
  expect(of("a-b_1").job?.id).toBe("a-b_1");
  for (const id of ["a--b", "", "../x", "a b", "x".repeat(61), 7])
    expect(of(id).problems?.map(({ code }) => code)).toEqual(["job-field-wrong"]);
});
