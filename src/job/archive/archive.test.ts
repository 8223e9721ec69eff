import fc from "fast-check";
import { strToU8, unzipSync, type Zippable, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import * as Y from "yjs";
import { type Problem, sentenceOf } from "#engine";
import {
  addRoom,
  createJobDocument,
  deleteRecords,
  demoJob,
  editKept,
  emptyJob,
  initialUpdate,
  type JobDocument,
  type JobFile,
  jobFileName,
  jobText,
  parseJob,
  type ReadJob,
  readJobFile,
  setName,
  writeJobArchive,
} from "../index.ts";

/** A picture's bytes are not looked at: any base64 text stands for one. */
const picture = (...bytes: readonly number[]): string => btoa(String.fromCharCode(...bytes));
const photo = (id: string, data: string, type: "image/jpeg" | "image/png" = "image/jpeg") => ({
  id,
  type,
  width: 40,
  height: 30,
  data,
});
const withPhotos: JobFile = parseJob({
  ...emptyJob("Annex"),
  id: "annex-1",
  "x-later": { kept: true },
  photos: [
    photo("p1", picture(1, 2, 3)),
    photo("p2", picture(9, 9), "image/png"),
    photo("p3", picture(1, 2, 3)),
  ],
  notes: [{ id: "n1", at: [1, 2], text: "Door sticks", photos: ["p1"], "x-mood": "calm" }],
}).job!;

const documentOf = (update: Uint8Array): JobDocument => {
  const ydoc = new Y.Doc();
  Y.applyUpdate(ydoc, update);
  return createJobDocument(ydoc, { newId: () => crypto.randomUUID() });
};
const packed = (job: JobFile): Uint8Array => writeJobArchive({ history: initialUpdate(job), id: "given" });
/** The same zip with its files changed by hand. */
const repacked = (
  bytes: Uint8Array,
  change: (files: Record<string, Uint8Array>) => Zippable | undefined,
): Uint8Array => {
  const files = unzipSync(bytes);
  return zipSync(change(files) ?? files);
};
const codes = (problems: readonly Problem[]): readonly string[] => problems.map(({ code }) => code);
const notesOf = (read: ReadJob): readonly string[] => (read.job ? codes(read.notes) : []);

const text = fc.string({ maxLength: 8 });
const bytes = fc.uint8Array({ minLength: 1, maxLength: 40 });
const anyPhoto = fc
  .record({
    id: fc.constantFrom("a", "b", "c", "d"),
    // What is no base64, or looks like the name of a file, is kept as it is.
    data: fc.oneof(
      bytes.map((one) => picture(...one)),
      text,
      fc.constantFrom("", "photos/", "photos/0.gif"),
    ),
    type: fc.constantFrom("image/jpeg" as const, "image/png" as const),
    extra: text,
  })
  .map(({ id, data, type, extra }) => ({ ...photo(id, data, type), "x-extra": extra }));
const step = fc.oneof(
  fc.record({ do: fc.constant("photo" as const), photo: anyPhoto }),
  fc.record({ do: fc.constant("name" as const), name: text }),
  fc.record({ do: fc.constant("room" as const), x: fc.integer({ min: -50, max: 50 }) }),
  fc.record({ do: fc.constant("remove" as const), id: fc.constantFrom("a", "b", "c", "d") }),
  fc.record({ do: fc.constant("undo" as const) }),
  fc.record({ do: fc.constant("redo" as const) }),
);
type Step = typeof step extends fc.Arbitrary<infer One> ? One : never;
const take = (document: JobDocument, one: Step): void => {
  switch (one.do) {
    case "photo":
      document.run(editKept("photo", [{ do: "put", kind: "photos", record: one.photo }]));
      return;
    case "name":
      document.run(setName(one.name));
      return;
    case "room":
      document.run(
        addRoom({
          name: `R${one.x}`,
          outline: [
            [one.x, 0],
            [one.x + 3, 0],
            [one.x + 3, 3],
            [one.x, 3],
          ],
        }),
      );
      return;
    case "remove":
      document.run(deleteRecords([{ kind: "photos", id: one.id }]));
      return;
    case "undo":
      document.undo();
      return;
    case "redo":
      document.redo();
  }
};

describe("a packed job", () => {
  test("1. holds the readable job without its pictures, each picture once, and the history without its pictures", () => {
    const files = unzipSync(packed(withPhotos));
    const names = Object.keys(files);
    expect(names.slice(0, 2)).toEqual(["Annex.job.json", "history.bin"]);
    expect(names.slice(2).map((name) => name.replace(/[0-9a-f]{16}/, "#"))).toEqual([
      "photos/#.jpg",
      "photos/#.png",
    ]);
    expect(names.slice(2).map((name) => [...files[name]!])).toEqual(
      expect.arrayContaining([
        [1, 2, 3],
        [9, 9],
      ]),
    );
    for (const name of ["Annex.job.json", "history.bin"]) {
      const content = new TextDecoder("latin1").decode(files[name]!);
      expect(content).not.toContain(picture(1, 2, 3));
      expect(content).toContain("photos/");
    }
  });

  test("2. written, then read, it is the same: records, unknown fields, pictures, history, whatever was undone", () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        const document = documentOf(initialUpdate(withPhotos));
        for (const one of steps) take(document, one);
        const history = Y.encodeStateAsUpdate(document.ydoc);
        const read = readJobFile(writeJobArchive({ history, id: "annex-1" }));
        expect(read.problems).toBeUndefined();
        expect(read.job).toEqual(document.job());
        expect(notesOf(read)).toEqual([]);
        // The history is the document's own: neither side has anything that the other lacks.
        const again = documentOf(read.job ? read.history! : new Uint8Array());
        expect(Y.encodeStateVector(again.ydoc)).toEqual(Y.encodeStateVector(document.ydoc));
        expect(again.job()).toEqual(document.job());
        Y.applyUpdate(document.ydoc, Y.encodeStateAsUpdate(again.ydoc));
        expect(document.job()).toEqual(again.job());
      }),
      { seed: 31, numRuns: 120 },
    );
  });

  test("3. the same document packed twice gives the same bytes, in this time zone and in others", () => {
    const zone = process.env.TZ;
    const once = packed(demoJob());
    process.env.TZ = "Pacific/Kiritimati";
    const elsewhere = packed(demoJob());
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
    expect(elsewhere).toEqual(once);
    const read = readJobFile(once);
    expect(writeJobArchive({ history: read.job ? read.history! : new Uint8Array(), id: "other" })).toEqual(
      once,
    );
  });

  test("4. what packs better than the limit allows is written so that it can be read", () => {
    const same = "a".repeat(20_000);
    const notes = Array.from({ length: 40 }, (_, index) => ({ id: `n${index}`, at: [0, 0], text: same }));
    const job = parseJob({ ...emptyJob("Long"), id: "long", notes }).job!;
    expect(readJobFile(packed(job)).job).toEqual(job);
  });

  test("5. more than the limits, stated or hidden, is refused before it is unpacked whole", () => {
    const bomb = zipSync({ "a.job.json": [new Uint8Array(4_000_000), { level: 9 }] });
    expect(bomb.length).toBeLessThan(10_000);
    const sentences = (file: Uint8Array, limits?: { bytes: number; ratio: number }) =>
      (readJobFile(file, limits).problems ?? []).map(sentenceOf);
    expect(sentences(bomb)).toEqual(["Unpacked, this job would be larger than 100 times its packed size."]);
    expect(sentences(packed(demoJob()), { bytes: 2_000_000 / 100, ratio: 100 })).toEqual([
      "Unpacked, this job would be larger than 0 MB.",
    ]);
    // The directory says that little is inside: what comes out is counted all the same.
    const lying = bomb.slice();
    const view = new DataView(lying.buffer);
    for (let at = 0; at + 4 < lying.length; at++)
      if (view.getUint32(at, true) === 4_000_000) view.setUint32(at, 1000, true);
    expect(sentences(lying)).toEqual(["Unpacked, this job would be larger than 100 times its packed size."]);
  });

  test("6. nothing is taken by its path; what is no part of a job is left aside with a note", () => {
    const odd = repacked(packed(withPhotos), (files) => ({
      ...files,
      "../evil.job.json": strToU8("{}"),
      "photos/../../evil.jpg": strToU8("x"),
      "/etc/history.bin": strToU8("x"),
      "C:\\evil": strToU8("x"),
      "read me.txt": strToU8("x"),
    }));
    const read = readJobFile(odd);
    expect(read.job).toEqual(withPhotos);
    expect(read.job && read.notes.map(sentenceOf)).toEqual([
      "5 more in the zip file, not part of a job, left aside: ../evil.job.json, photos/../../evil.jpg, /etc/history.bin, C:\\evil, read me.txt.",
    ]);
    const inFolder = repacked(packed(withPhotos), (files) =>
      Object.fromEntries([
        ...Object.entries(files).map(([name, content]) => [`Annex/${name}`, content] as const),
        ["__MACOSX/Annex/._Annex.job.json", strToU8("x")],
      ]),
    );
    expect(readJobFile(inFolder).job).toEqual(withPhotos);
  });

  test("7. empty, damaged, locked, without a job, with several: each is said", () => {
    const whole = packed(withPhotos);
    const locked = whole.slice();
    const view = new DataView(locked.buffer);
    for (let at = 0; at + 4 < locked.length; at++)
      if (view.getUint32(at, true) === 0x02014b50) view.setUint16(at + 8, 1, true);
    const flipped = whole.slice();
    flipped[45] = flipped[45]! ^ 0xff;
    const twoOfOneName = repacked(whole, (files) => ({
      ...files,
      "a.txt": strToU8("1"),
      "b.txt": strToU8("2"),
    }));
    for (let at = 0; at + 5 < twoOfOneName.length; at++)
      if (String.fromCharCode(...twoOfOneName.subarray(at, at + 5)) === "b.txt") twoOfOneName[at] = 97;
    const cases: readonly (readonly [Uint8Array, string])[] = [
      [new Uint8Array(), "job-file-empty"],
      [whole.subarray(0, whole.length / 2), "job-archive-damaged"],
      [whole.subarray(0, whole.length - 1), "job-archive-damaged"],
      [flipped, "job-archive-damaged"],
      [twoOfOneName, "job-archive-damaged"],
      [locked, "job-archive-locked"],
      [zipSync({ "model.ifc": strToU8("x") }), "job-archive-no-job"],
      [zipSync({ "a.job.json": strToU8("{}"), "b.job.json": strToU8("{}") }), "job-archive-several-jobs"],
      [zipSync({ "a.job.json": strToU8("{}") }), "job-other-format"],
      [strToU8("hello"), "job-not-json"],
    ];
    expect(cases.map(([file]) => codes(readJobFile(file).problems ?? []))).toEqual(
      cases.map(([, code]) => [code]),
    );
  });

  test("8. what a hand changed in the readable file comes on top of the history, the same however often it is read", () => {
    const renamed = repacked(packed(withPhotos), (files) => {
      const json = new TextDecoder().decode(files["Annex.job.json"]);
      return { ...files, "Annex.job.json": strToU8(json.replace("Door sticks", "Door mended")) };
    });
    const [one, two] = [readJobFile(renamed), readJobFile(renamed)];
    if (!one.job || !two.job) throw new Error("It could not be read");
    expect(one.job.notes[0]!.text).toBe("Door mended");
    expect(one.history).toEqual(two.history);
    const document = documentOf(initialUpdate(withPhotos));
    Y.applyUpdate(document.ydoc, one.history!);
    expect(document.job()).toEqual(one.job);
  });

  test("9. a history that cannot be used costs the history, not the job", () => {
    const other = initialUpdate({ ...withPhotos, id: "other" });
    const document = documentOf(initialUpdate(withPhotos));
    const before = Y.encodeStateVector(document.ydoc);
    document.run(setName("later"));
    const torn = Y.encodeStateAsUpdate(document.ydoc, before);
    for (const [history, reason] of [
      [other, /belongs to another job/],
      [torn, /a part of it is missing/],
      [new Uint8Array(), /./],
      [Uint8Array.of(0, 0), /it is empty/],
      [Uint8Array.of(255, 255, 255, 255, 7), /./],
    ] as const) {
      const read = readJobFile(
        repacked(packed(withPhotos), (files) => ({ ...files, "history.bin": history })),
      );
      expect(read.job).toEqual(withPhotos);
      expect(notesOf(read)).toEqual(["job-archive-history-unusable"]);
      expect(read.job && sentenceOf(read.notes[0]!)).toMatch(reason);
      expect(read.job && read.history).toBeUndefined();
    }
  });

  test("10. a picture that is missing costs the picture, not the job", () => {
    const read = readJobFile(
      repacked(packed(withPhotos), (files) =>
        Object.fromEntries(Object.entries(files).filter(([name]) => !name.endsWith(".png"))),
      ),
    );
    expect(notesOf(read)).toEqual(["job-archive-photo-missing"]);
    expect(read.job?.photos.map(({ data }) => data)).toEqual([picture(1, 2, 3), "", picture(1, 2, 3)]);
    // Its history does not say that somebody took the picture away: a copy that has it keeps it.
    const document = documentOf(initialUpdate(withPhotos));
    Y.applyUpdate(document.ydoc, read.job ? read.history! : new Uint8Array());
    expect(document.job()).toEqual(withPhotos);
  });

  test("a readable file alone is read as before", () => {
    expect(readJobFile(strToU8(jobText(withPhotos))).job).toEqual(withPhotos);
  });

  test("its name is one that every file system takes", () => {
    expect(jobFileName('Hall 3/4: "old"', "zip")).toBe("Hall 3 4 old.job.zip");
    expect([jobFileName("..", "json"), jobFileName("  ", "json")]).toEqual(["job.job.json", "job.job.json"]);
    expect(jobFileName("ü".repeat(300), "zip").length).toBeLessThan(70);
  });
});
