import fc from "fast-check";
import { expect, test } from "vitest";
import * as Y from "yjs";
import { createJobDocument, editKept, emptyJob, type JobDocument, loadFile } from "../index.ts";

/** What happens on site and in the office: an entry is made, one device hears of another, one is switched off and starts from what it kept. */
type Event =
  | { readonly do: "enter"; readonly on: number }
  | { readonly do: "tell"; readonly from: number; readonly to: number }
  | { readonly do: "restart"; readonly on: number }
  | { readonly do: "rename"; readonly on: number };

const devices = 3;
const device = fc.integer({ min: 0, max: devices - 1 });
const event: fc.Arbitrary<Event> = fc.oneof(
  { weight: 5, arbitrary: device.map((on) => ({ do: "enter", on }) as const) },
  {
    weight: 3,
    arbitrary: fc.tuple(device, device).map(([from, to]) => ({ do: "tell", from, to }) as const),
  },
  { weight: 1, arbitrary: device.map((on) => ({ do: "restart", on }) as const) },
  { weight: 1, arbitrary: device.map((on) => ({ do: "rename", on }) as const) },
);

const open = (update: Uint8Array, on: number, times: number): JobDocument => {
  const ydoc = new Y.Doc();
  Y.applyUpdate(ydoc, update);
  let count = 0;
  return createJobDocument(ydoc, { newId: () => `${on}-${times}-${++count}` });
};

test("What is recorded on several devices, in whatever order they meet or are switched off, is there on all of them once", () => {
  const start = createJobDocument(undefined, { newId: () => "new" });
  start.run(loadFile({ ...emptyJob("Annex"), storeys: [{ id: "ground", name: "", elevation: 0 }] }));
  const begun = Y.encodeStateAsUpdate(start.ydoc);
  fc.assert(
    fc.property(fc.array(event, { minLength: 5, maxLength: 30 }), (events) => {
      let times = 0;
      const open_ = (on: number, update: Uint8Array) => open(update, on, ++times);
      const documents = Array.from({ length: devices }, (_, on) => open_(on, begun));
      const entered: string[] = [];
      const tell = (from: number, to: number): void =>
        Y.applyUpdate(documents[to]!.ydoc, Y.encodeStateAsUpdate(documents[from]!.ydoc));
      for (const [at, one] of events.entries())
        switch (one.do) {
          case "enter": {
            const id = `e${at}-${one.on}`;
            const record = {
              id,
              time: `2026-11-26T10:00:${at}`,
              about: { kind: "room", id: "store" },
              step: "station",
              part: `s${at % 4}`,
              outcome: at % 2 === 0 ? "seen" : "not-seen",
            } as const;
            expect(
              documents[one.on]!.run(editKept("test.enter", [{ do: "put", kind: "testEntries", record }]))
                .done,
            ).toBe(true);
            entered.push(id);
            break;
          }
          case "tell":
            tell(one.from, one.to);
            break;
          case "restart":
            documents[one.on] = open_(one.on, Y.encodeStateAsUpdate(documents[one.on]!.ydoc));
            break;
          case "rename":
            documents[one.on]!.run({
              name: "rename",
              edits: () => ({ edits: [{ do: "name", name: `Annex ${at}` }] }),
            });
        }
      for (const from of documents.keys()) for (const to of documents.keys()) tell(from, to);
      for (const document of documents) {
        const ids = document.job().testEntries.map(({ id }) => id);
        expect([...ids].sort()).toEqual([...entered].sort());
        expect(document.job()).toEqual(documents[0]!.job());
      }
    }),
    { numRuns: 500, seed: 20261126 },
  );
});
