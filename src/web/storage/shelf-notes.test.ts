import { IDBFactory } from "fake-indexeddb";
import { expect, test } from "vitest";
import { shelfNotes } from "./shelf-notes.ts";

const drawn = { width: 120, height: 80, rooms: "M0 0Z", doors: "", devices: [], count: 1 };

test.each([
  ["in the browser", new IDBFactory()],
  ["in memory, where the browser denies storage", undefined],
])("notes on jobs %s: fields are noted one by one, and forgotten with the job", async (_, factory) => {
  const notes = shelfNotes({ factory, name: "notes" });
  await Promise.all([
    notes.note("a", { archived: true }),
    notes.note("a", { picture: { of: 5, drawn } }),
    notes.note("b", { archived: true }),
  ]);
  expect(Object.fromEntries(await notes.all())).toEqual({
    a: { id: "a", archived: true, picture: { of: 5, drawn } },
    b: { id: "b", archived: true },
  });
  await notes.note("a", { archived: false });
  await notes.forget("b");
  expect(Object.fromEntries(await notes.all())).toEqual({
    a: { id: "a", archived: false, picture: { of: 5, drawn } },
  });
});

test("notes are there after the page is opened again", async () => {
  const factory = new IDBFactory();
  await shelfNotes({ factory, name: "notes" }).note("a", { archived: true });
  const again = await shelfNotes({ factory, name: "notes" }).all();
  expect(again.get("a")?.archived).toBe(true);
});
