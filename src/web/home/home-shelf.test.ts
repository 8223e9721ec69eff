import { beforeEach, describe, expect, test } from "vitest";
import { createJobDocument, type JobFile, loadFile, parseJob } from "#job";
import type { JobShelf } from "../storage/index.ts";
import { homeShelf, jobOfSite } from "./home-shelf.ts";
import { siteBySizes } from "./room-by-sizes.ts";

/** Jobs in memory behind the port of the stores. */
function memoryStore(): JobShelf & { readonly jobs: Map<string, ReturnType<typeof createJobDocument>> } {
  const jobs = new Map<string, ReturnType<typeof createJobDocument>>();
  return {
    jobs,
    list: async () =>
      [...jobs].map(([id, document]) => ({
        id,
        name: document.job().name,
        changed: 1,
        kept: "device" as const,
      })),
    create: async (job: JobFile) => {
      const document = createJobDocument();
      document.run(loadFile(job));
      const id = `job-${jobs.size + 1}`;
      jobs.set(id, document);
      return id;
    },
    open: async (id) => ({
      id,
      document: jobs.get(id)!,
      sync: () => "none" as const,
      trouble: () => undefined,
      onSync: () => () => undefined,
      settled: async () => undefined,
      close: async () => undefined,
    }),
    demo: async () => "demo",
    remove: async (id) => void jobs.delete(id),
  };
}

const office = siteBySizes(
  { shape: "rectangle", length: 8, width: 6, leg: 2, height: 2.5, use: "sitting" },
  { models: [], name: "Back office", storey: "Ground floor" },
);

let store: ReturnType<typeof memoryStore>;
let shelf: ReturnType<typeof homeShelf>;
beforeEach(() => {
  store = memoryStore();
  shelf = homeShelf(store, { demoModels: [] });
});

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
    expect((await shelf.list()).map(({ name }) => name)).toEqual(["Office 1", "Office 2"]);
    expect(store.jobs.get(copy)!.job().rooms).toEqual(store.jobs.get(id)!.job().rooms);
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

  test("a saved file comes in again as the same job", async () => {
    const text = await shelf.fileText(await shelf.create(office));
    const again = await shelf.createFromFile(text);
    expect("id" in again && (await shelf.fileText(again.id))).toBe(text);
  });

  test("a file that is no job keeps nothing and says why", async () => {
    const outcome = await shelf.createFromFile('{"format":"something else"}');
    expect("problems" in outcome && outcome.problems.length).toBeGreaterThan(0);
    expect(await shelf.list()).toEqual([]);
  });
});
