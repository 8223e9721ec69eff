import { beforeEach, describe, expect, test } from "vitest";
import { sentenceOf } from "#engine";
import { addRoom, changeRecord, memoryStore, parseJob } from "#job";
import type { FileJob, MergedCopy } from "../contract.ts";
import type { JobShelf } from "../storage/index.ts";
import { shelfOf } from "../storage/shelf.ts";
import { shelfNotes } from "../storage/shelf-notes.ts";
import { sizeText } from "../texts/index.ts";
import { homeShelf, jobOfSite } from "./home-shelf.ts";
import { planPicture } from "./plan-picture.ts";
import { siteBySizes } from "./room-by-sizes.ts";

const office = siteBySizes(
  { shape: "rectangle", length: 8, width: 6, leg: 2, height: 2.5, use: "sitting" },
  { models: [], name: "Back office", storey: "Ground floor" },
);

/** The shelf of a device without a server, its jobs in memory. */
function device(prefix: string) {
  let [ids, time] = [0, 0];
  const store: JobShelf = shelfOf({
    store: memoryStore(),
    server: { jobs: async () => "none", remove: async () => {}, socketUrl: "" },
    newId: () => `${prefix}-${++ids}`,
    now: () => ++time,
  });
  const notes = shelfNotes({ factory: undefined, name: "" });
  return { store, shelf: homeShelf(store, { demoModels: [], notes }) };
}

let store: JobShelf;
let shelf: ReturnType<typeof homeShelf>;
beforeEach(() => {
  ({ store, shelf } = device("job"));
});

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
async function fileJob(at: ReturnType<typeof homeShelf>, bytes: Uint8Array): Promise<FileJob> {
  const read = await at.readFile(bytes);
  if ("problems" in read) throw new Error(read.problems.map(sentenceOf).join());
  return read;
}
async function merged(job: FileJob): Promise<MergedCopy> {
  const outcome = await job.merge();
  if ("problems" in outcome) throw new Error(outcome.problems.map(sentenceOf).join());
  return outcome;
}
const names = async (at = shelf): Promise<readonly string[]> => (await at.list()).map(({ name }) => name);

describe("jobs as wholes", () => {
  test("a typed room becomes a job file that reads back without a complaint", () => {
    const read = parseJob(JSON.stringify(jobOfSite(office)));
    expect(read.problems).toBeUndefined();
    expect(read.job?.openings[0]?.angle).toBeCloseTo(90, 9);
    expect(read.job?.defaults).toEqual({});
  });

  test("create, rename, duplicate: the copy has its own name and all of the rooms", async () => {
    const id = await shelf.create(office);
    await shelf.rename(id, "Office 1");
    const copy = await shelf.duplicate(id, "Office 2");
    expect(await names()).toEqual(["Office 2", "Office 1"]);
    const [one, two] = [(await store.look(id))!, (await store.look(copy))!];
    expect(two.rooms).toEqual(one.rooms);
    expect(two.id).not.toBe(one.id);
  });

  test("a deleted job can be brought back as it was", async () => {
    const id = await shelf.create(office);
    const text = await shelf.fileText(id);
    const { restore } = await shelf.remove(id);
    expect(await shelf.list()).toEqual([]);
    await restore();
    const [back] = await shelf.list();
    expect(await shelf.fileText(back!.id)).toBe(text);
  });

  test("a file that is no job keeps nothing and says why", async () => {
    const outcome = await shelf.readFile(bytesOf('{"format":"something else"}'));
    expect("problems" in outcome && outcome.problems.length).toBeGreaterThan(0);
    expect(await shelf.list()).toEqual([]);
  });

  test("a job that was put aside stays so until it is brought back, also after it was deleted and restored", async () => {
    const id = await shelf.create(office);
    const aside = async () => (await shelf.list()).map(({ archived }) => archived);
    await shelf.archive(id, "aside");
    expect(await aside()).toEqual([true]);
    await (await shelf.remove(id)).restore();
    expect(await aside()).toEqual([true]);
    await shelf.archive(id, "back");
    expect(await aside()).toEqual([false]);
  });

  test("the picture of a job is always that of its last change here", async () => {
    const id = await shelf.create(office);
    const entry = async () => (await shelf.list())[0]!;
    const before = await entry();
    const first = await shelf.picture(before);
    expect(first).toEqual(planPicture((await store.look(id))!));
    expect(await shelf.picture(await entry())).toBe(first);
    const stored = await store.open(id);
    stored.document.run(
      addRoom({
        name: "Annex",
        outline: [
          [10, 0],
          [14, 0],
          [14, 3],
        ],
      }),
    );
    await stored.settled();
    await stored.close();
    const second = await shelf.picture(await entry());
    expect(second).not.toEqual(first);
    expect(second).toEqual(planPicture((await store.look(id))!));
    expect(await shelf.picture({ ...before, here: undefined })).toBeUndefined();
  });
});

describe("copies of jobs", () => {
  test("a packed copy that was changed elsewhere is merged: both sides' changes are here, and the merge can be taken back", async () => {
    const phone = device("phone");
    const id = await shelf.create(office);
    const sent = await fileJob(phone.shelf, await shelf.packed(id));
    expect([sent.copyOf, sent.notes]).toEqual([undefined, []]);
    const there = await sent.keep();
    expect(there).toBe(id);
    await phone.shelf.rename(there, "Office, measured");
    const stored = await store.open(id);
    const [room] = stored.document.job().rooms;
    stored.document.run(changeRecord("rooms", room!.id, { name: "Ticket office" }));
    await stored.settled();
    await stored.close();

    const back = await fileJob(shelf, await phone.shelf.packed(there));
    expect(back.copyOf).toEqual({ id, name: "Back office" });
    const first = await merged(back);
    expect(first.how).toBe("history");
    await first.close();
    const whole = (await store.look(id))!;
    expect([whole.name, whole.rooms[0]!.name]).toEqual(["Office, measured", "Ticket office"]);
    const again = await merged(await fileJob(shelf, await phone.shelf.packed(there)));
    expect(again.how).toBe("nothing-new");
    await again.close();
    expect(await names()).toEqual(["Office, measured"]);
  });

  test("a plain copy comes in as a difference, which undo takes back", async () => {
    const id = await shelf.create(office);
    const text = await shelf.fileText(id);
    const copy = await fileJob(shelf, bytesOf(text.replaceAll("Back office", "Front office")));
    const outcome = await merged(copy);
    expect(outcome.how).toBe("difference");
    expect(await names()).toEqual(["Front office"]);
    await outcome.undo();
    expect(await shelf.fileText(id)).toBe(text);
  });

  test("a merge by history is taken back too", async () => {
    const phone = device("phone");
    const id = await shelf.create(office);
    const text = await shelf.fileText(id);
    const there = await (await fileJob(phone.shelf, await shelf.packed(id))).keep();
    await phone.shelf.rename(there, "Other");
    const outcome = await merged(await fileJob(shelf, await phone.shelf.packed(there)));
    expect(await names()).toEqual(["Other"]);
    await outcome.undo();
    expect(await shelf.fileText(id)).toBe(text);
  });

  test("opened as a separate copy, it leaves the job that is here alone", async () => {
    const id = await shelf.create(office);
    const copy = await fileJob(shelf, await shelf.packed(id));
    const apart = await copy.keepApart();
    await shelf.rename(apart, "Apart");
    expect(await names()).toEqual(["Apart", "Back office"]);
    expect(await merged(await fileJob(shelf, await shelf.packed(id)))).toMatchObject({ how: "nothing-new" });
  });

  test("a plain file of a job that is not here is kept as its copy, and the file that comes back finds it", async () => {
    const phone = device("phone");
    const id = await shelf.create(office);
    const there = await (await fileJob(phone.shelf, bytesOf(await shelf.fileText(id)))).keep();
    expect(there).not.toBe(id);
    expect((await fileJob(phone.shelf, bytesOf(await shelf.fileText(id)))).copyOf?.id).toBe(there);
    expect((await fileJob(shelf, bytesOf(await phone.shelf.fileText(there)))).copyOf?.id).toBe(id);
  });
});

test("a size is told in few figures", () => {
  expect([0, 40_000, 3_240_000, 812_000_000, 2_140_000_000].map(sizeText)).toEqual([
    "0 kB",
    "40 kB",
    "3.2 MB",
    "812 MB",
    "2.1 GB",
  ]);
});
