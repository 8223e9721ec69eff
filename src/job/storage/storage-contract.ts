import { afterEach, beforeEach, describe, expect, test } from "vitest";
import * as Y from "yjs";
import type { JobStore } from "./job-store.ts";
import { keepDocument } from "./keep-document.ts";

/** Where a store under test keeps its jobs. `reopen` must find what was kept; memory has nothing to find. */
export interface StorePlace {
  readonly open: () => Promise<JobStore>;
  readonly lasting: "lasting" | "forgets";
  readonly clear: () => Promise<void>;
}

const bytes = (...values: readonly number[]): Uint8Array => Uint8Array.from(values);

/** The contract of every job store; each store's test runs it. */
export function storageContract(name: string, newPlace: () => StorePlace | Promise<StorePlace>): void {
  describe(`[STORE] ${name}`, () => {
    let place: StorePlace;
    let store: JobStore;
    beforeEach(async () => {
      place = await newPlace();
      store = await place.open();
    });
    afterEach(async () => {
      await store.close();
      await place.clear();
    });

    test("1. a new store lists nothing, and reads nothing of a job that is not there", async () => {
      expect(await store.list()).toEqual([]);
      expect(await store.read("a")).toBeUndefined();
    });

    test("2. the first update makes the job; updates come back byte for byte in their order", async () => {
      const all = [bytes(0), bytes(1, 2, 255), bytes()];
      for (const update of all) await store.append("a", { update, at: 5 });
      expect((await store.read("a"))?.updates).toEqual(all);
      expect(await store.list()).toEqual([{ id: "a", name: "", changed: 5 }]);
    });

    test("3. jobs are kept apart, whatever their ids look like", async () => {
      const ids = ["a", "A", "a b", "ä/../ü", "'; drop table jobs; --", "__proto__"];
      for (const [index, id] of ids.entries()) await store.append(id, { update: bytes(index), at: index });
      for (const [index, id] of ids.entries())
        expect((await store.read(id))?.updates).toEqual([bytes(index)]);
      expect((await store.list()).map((job) => job.id)).toEqual([...ids].reverse());
    });

    test("4. updates appended at once are all kept, in the order of the calls", async () => {
      await Promise.all(Array.from({ length: 40 }, (_, i) => store.append("a", { update: bytes(i), at: i })));
      expect((await store.read("a"))?.updates.map((update) => update[0])).toEqual(
        Array.from({ length: 40 }, (_, i) => i),
      );
    });

    test("5. the list tells the name and the last change, the latest first", async () => {
      await store.append("a", { update: bytes(1), at: 10 });
      await store.append("b", { update: bytes(1), at: 20 });
      await store.rename("a", "Annex");
      await store.append("a", { update: bytes(2), at: 30 });
      expect(await store.list()).toEqual([
        { id: "a", name: "Annex", changed: 30 },
        { id: "b", name: "", changed: 20 },
      ]);
      await store.rename("nobody", "x");
      expect((await store.list()).length).toBe(2);
    });

    test("6. compacting replaces what was read, and leaves what came in meanwhile", async () => {
      for (const value of [1, 2, 3]) await store.append("a", { update: bytes(value), at: value });
      const read = (await store.read("a"))!;
      await store.append("a", { update: bytes(4), at: 4 });
      await store.append("b", { update: bytes(9), at: 5 });
      await store.compact("a", { update: bytes(123), upTo: read.last });
      expect((await store.read("a"))?.updates).toEqual([bytes(123), bytes(4)]);
      expect((await store.read("b"))?.updates).toEqual([bytes(9)]);
      await store.append("a", { update: bytes(5), at: 6 });
      expect((await store.read("a"))?.updates).toEqual([bytes(123), bytes(4), bytes(5)]);
    });

    test("7. a removed job is gone, and only it", async () => {
      await store.append("a", { update: bytes(1), at: 1 });
      await store.append("b", { update: bytes(2), at: 2 });
      await store.remove("a");
      await store.remove("nobody");
      expect(await store.read("a")).toBeUndefined();
      expect((await store.list()).map((job) => job.id)).toEqual(["b"]);
    });

    test("8. what was given may be changed afterwards without changing what is kept", async () => {
      const update = bytes(1, 2, 3);
      await store.append("a", { update, at: 1 });
      update.fill(0);
      const first = (await store.read("a"))!.updates[0]!;
      first.fill(9);
      expect((await store.read("a"))?.updates).toEqual([bytes(1, 2, 3)]);
    });

    test("9. an update of two megabytes is kept", async () => {
      const update = Uint8Array.from({ length: 2_000_000 }, (_, i) => i % 251);
      await store.append("a", { update, at: 1 });
      const read = (await store.read("a"))!.updates[0]!;
      expect([read.length, read[1_999_999]]).toEqual([2_000_000, 1_999_999 % 251]);
    });

    test("10. what was acknowledged is there after the store is opened again", async (context) => {
      if (place.lasting === "forgets")
        context.skip("memory forgets at the end of the program, by its nature");
      await store.append("a", { update: bytes(1), at: 1 });
      await store.rename("a", "Annex");
      await store.close();
      store = await place.open();
      expect(await store.list()).toEqual([{ id: "a", name: "Annex", changed: 1 }]);
      expect((await store.read("a"))?.updates).toEqual([bytes(1)]);
    });

    test("11. a document kept in the store comes back the same, also after it was compacted", async () => {
      const options = { store, id: "a", now: () => 7 };
      const ydoc = new Y.Doc();
      const keeping = await keepDocument(ydoc, options);
      for (let i = 0; i < 250; i++) ydoc.getMap("head").set("name", `Name ${i}`);
      await keeping.stop();
      expect((await store.read("a"))?.updates.length).toBe(250);
      for (const expected of [1, 1]) {
        const again = new Y.Doc();
        const reading = await keepDocument(again, options);
        await reading.stop();
        expect(again.getMap("head").get("name")).toBe("Name 249");
        expect((await store.read("a"))?.updates.length).toBe(expected);
      }
      expect(await store.list()).toEqual([{ id: "a", name: "Name 249", changed: 7 }]);
    });
  });
}
