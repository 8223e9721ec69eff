import { expect, test } from "vitest";
import {
  createJobDocument,
  deleteRecords,
  editKept,
  type JobNote,
  type JobPhoto,
  loadFile,
} from "../index.ts";
import { emptyJob } from "../schema/job-file.ts";

const photo = (id: string): JobPhoto => ({ id, type: "image/png", width: 1, height: 1, data: "AAAA" });
const note = (id: string, photos: readonly string[]): JobNote => ({
  id,
  storey: "ground",
  at: [1, 2],
  text: id,
  photos: [...photos],
});

function job() {
  const document = createJobDocument(undefined, { newId: () => "new" });
  document.run(loadFile({ ...emptyJob("Annex"), storeys: [{ id: "ground", name: "", elevation: 0 }] }));
  document.run(
    editKept("survey.note", [
      { do: "put", kind: "photos", record: photo("a") },
      { do: "put", kind: "photos", record: photo("b") },
      { do: "put", kind: "notes", record: note("first", ["a", "b"]) },
      { do: "put", kind: "notes", record: note("second", ["b"]) },
      { do: "visit", fields: { yearBuilt: 1968, asbestosRegister: "not-seen" } },
    ]),
  );
  return document;
}
const ids = (records: readonly { readonly id: string }[]): string[] => records.map(({ id }) => id);

test("A note goes with the photographs that no other note shows, in one step that undo takes back", () => {
  const document = job();
  document.run(editKept("survey.note.remove", [{ do: "remove", kind: "notes", id: "first" }]));
  expect(ids(document.job().notes)).toEqual(["second"]);
  expect(ids(document.job().photos)).toEqual(["b"]);
  document.undo();
  expect(ids(document.job().notes)).toEqual(["first", "second"]);
  expect(ids(document.job().photos)).toEqual(["a", "b"]);
});

test("A storey goes with its notes", () => {
  const document = job();
  document.run(deleteRecords([{ kind: "storeys", id: "ground" }]));
  expect(document.job().notes).toEqual([]);
  expect(document.job().photos).toEqual([]);
});

test("What was asked before the visit is kept field by field, and an unset field goes", () => {
  const document = job();
  document.run(
    editKept("survey.visit", [{ do: "visit", fields: { yearBuilt: undefined, complaint: "Dark" } }]),
  );
  expect(document.job().visit).toEqual({ asbestosRegister: "not-seen", complaint: "Dark" });
  document.undo();
  expect(document.job().visit).toEqual({ asbestosRegister: "not-seen", yearBuilt: 1968 });
});

test("What was recorded on site is added and never changed; undo takes back a slip", () => {
  const document = job();
  const entry = {
    id: "t1",
    time: "2026-11-26T17:40:00+01:00",
    about: { kind: "room", id: "store" },
    step: "station",
    part: "door-1",
    outcome: "not-seen",
  } as const;
  const add = editKept("test.enter", [{ do: "put", kind: "testEntries", record: entry }]);
  expect(document.run(add).done).toBe(true);
  for (const step of [
    { do: "put", kind: "testEntries", record: { ...entry, outcome: "seen" } },
    { do: "set", kind: "testEntries", id: "t1", fields: { outcome: "seen" } },
    { do: "remove", kind: "testEntries", id: "t1" },
  ] as const) {
    const { done, problems } = document.run(editKept("test.change", [step]));
    expect(done).toBe(false);
    expect(problems).toEqual([{ code: "job-entry-stands", values: { id: "t1" }, records: ["t1"] }]);
  }
  expect(document.job().testEntries).toEqual([entry]);
  document.undo();
  expect(document.job().testEntries).toEqual([]);
});

test("A revision is issued together with its letter in the title block, in one step that undo takes back; afterwards it stands", () => {
  const document = job();
  const record = { id: "r1", letter: "A", date: "2026-11-26", state: { "rooms/r": { title: "Hall" } } };
  document.run(
    editKept("hand-over.edit.revision", [
      { do: "put", kind: "revisions", record },
      { do: "details", fields: { revision: "A", date: "2026-11-26" } },
    ]),
  );
  expect(document.job().revisions).toMatchObject([record]);
  expect(document.job().details).toEqual({ revision: "A", date: "2026-11-26" });
  const again = document.run(
    editKept("hand-over.edit.revision", [
      { do: "put", kind: "revisions", record: { ...record, letter: "B" } },
    ]),
  );
  expect(again).toMatchObject({ done: false, problems: [{ code: "job-entry-stands" }] });
  document.undo();
  expect(document.job().revisions).toEqual([]);
  expect(document.job().details).toEqual({});
});
