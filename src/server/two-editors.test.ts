import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { IDBFactory } from "fake-indexeddb";
import { afterAll, beforeAll, expect, test } from "vitest";
import { WebSocket } from "ws";
import {
  addRecord,
  addRoom,
  changeRecord,
  deleteRecords,
  jobText,
  memoryStore,
  moveDetector,
  setName,
} from "#job";
import { JobNotHere, type JobShelf, type StoredJob } from "../web/storage/index.ts";
import { indexedStore } from "../web/storage/indexed-store.ts";
import { serverLink } from "../web/storage/server-link.ts";
import { shelfOf } from "../web/storage/shelf.ts";
import { type RunningServer, startServer } from "./index.ts";

const folder = mkdtempSync(join(tmpdir(), "roomwake-two-"));
let running: RunningServer;
let port = 0;

const start = async (): Promise<void> => {
  running = await startServer({ port, dataFolder: folder, webFolder: folder });
  port = Number(new URL(running.address).port);
};
beforeAll(start);
afterAll(async () => {
  await running.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** The shelf of a browser on another device: own storage, the cookie of the server's present start. */
async function device(factory = new IDBFactory()): Promise<JobShelf> {
  class PageSocket extends WebSocket {
    constructor(url: string) {
      super(url, {
        headers: { origin: `http://127.0.0.1:${port}`, cookie: `roomwake-${port}=${running.token}` },
      });
      this.on("error", () => {});
    }
  }
  let count = 0;
  const known = { seen: false };
  return shelfOf({
    store: await indexedStore({ factory, name: "roomwake" }),
    server: serverLink({
      origin: `http://127.0.0.1:${port}`,
      fetch: (input, init) =>
        fetch(input, { ...init, headers: { authorization: `Bearer ${running.token}` } }),
      known: {
        get: () => known.seen,
        set: () => {
          known.seen = true;
        },
      },
      socket: PageSocket,
    }),
    newId: () => `job-${++count}`,
    now: Date.now,
  });
}

async function until(condition: () => boolean): Promise<void> {
  const end = Date.now() + 30_000;
  while (!condition()) {
    if (Date.now() > end) throw new Error("Waited in vain");
    await new Promise((done) => setTimeout(done, 5));
  }
}

const bothSynced = (jobs: readonly StoredJob[]): Promise<void> =>
  until(
    () =>
      jobs.every((job) => job.sync() === "synced") &&
      new Set(jobs.map((job) => jobText(job.document.job()))).size === 1,
  );

test("two editors of one job, offline and back, both keep what they did; a third device sees all of it", async () => {
  const phoneDisk = new IDBFactory();
  const [laptop, phone] = [
    await (await device()).open("saltmarsh"),
    await (await device(phoneDisk)).open("saltmarsh"),
  ];
  await bothSynced([laptop, phone]);

  laptop.document.run(setName("Staff Wing, as built"));
  await until(() => phone.document.job().name === "Staff Wing, as built");

  await running.stop();
  await until(() => laptop.sync() === "away" && phone.sync() === "away");
  laptop.document.run(changeRecord("rooms", "drying", { highestTemperature: 34 }));
  laptop.document.run(moveDetector("corridor-west", [11.42, 6.9]));
  laptop.document.run(deleteRecords([{ kind: "obstacles", id: "entrance-bench" }]));
  phone.document.run(changeRecord("rooms", "drying", { name: "Drying room, crew" }));
  phone.document.run(moveDetector("corridor-east", [24.02, 6.9]));
  const added = phone.document.run(
    addRecord("obstacles", {
      room: "entrance",
      name: "Vending machine",
      footprint: [
        [4, 8.5],
        [5, 8.5],
        [5, 9.2],
      ],
      top: 1.9,
    }),
  ).made[0]!;
  // The phone is closed in the basement and opened again there: its disk alone must know.
  await phone.settled();
  await phone.close();
  const phoneAgain = await (await device(phoneDisk)).open("saltmarsh").catch((error: unknown) => error);
  // A device that never saw the server while it is away takes it for a static host, and works all the same.
  expect(phoneAgain).not.toBeInstanceOf(Error);
  await (phoneAgain as StoredJob).close();

  await start();
  const phoneBack = await (await device(phoneDisk)).open("saltmarsh");
  await bothSynced([laptop, phoneBack]);
  const desk = await (await device()).open("saltmarsh");
  await bothSynced([laptop, phoneBack, desk]);
  const job = desk.document.job();
  expect(job.name).toBe("Staff Wing, as built");
  expect(job.rooms.find((room) => room.id === "drying")).toMatchObject({
    highestTemperature: 34,
    name: "Drying room, crew",
  });
  expect(job.detectors.map((detector) => detector.at)).toEqual([
    [11.42, 6.9],
    [24.02, 6.9],
    [17.02, 10.62],
  ]);
  expect(job.obstacles.some((obstacle) => obstacle.id === "entrance-bench")).toBe(false);
  expect(job.obstacles.find((obstacle) => obstacle.id === added)?.name).toBe("Vending machine");
  expect(desk.document.snapshot().problems).toEqual([]);
  for (const open of [laptop, phoneBack, desk]) await open.close();
});

test("a job made on a device reaches the server when it is opened, and another device finds it there", async () => {
  const [one, other] = [await device(), await device()];
  const id = await one.create({ ...(await demoFile()), name: "Annex" });
  expect((await one.list()).find((job) => job.id === id)).toMatchObject({ name: "Annex", kept: "device" });
  const mine = await one.open(id);
  await until(() => mine.sync() === "synced");
  mine.document.run(
    addRoom({
      name: "Boat shed",
      storey: "ground",
      outline: [
        [0, 20],
        [5, 20],
        [5, 24],
      ],
    }),
  );
  await until(() => mine.sync() === "synced");
  expect((await other.list()).find((job) => job.id === id)).toMatchObject({ name: "Annex", kept: "server" });
  const theirs = await other.open(id);
  expect(theirs.document.job().rooms.some((room) => room.name === "Boat shed")).toBe(true);
  await theirs.settled();
  expect((await other.list()).find((job) => job.id === id)?.kept).toBe("both");
  await theirs.close();
  await mine.close();
  await one.remove(id);
  expect((await one.list()).some((job) => job.id === id)).toBe(false);
});

test("a job that is nowhere is said to be so", async () => {
  await expect((await device()).open("nowhere")).rejects.toBeInstanceOf(JobNotHere);
});

test("on a static host everything stays on the device, and no socket is tried", async () => {
  let sockets = 0;
  const shelf = shelfOf({
    store: memoryStore(),
    server: {
      ...serverLink({
        origin: "http://static.example",
        fetch: async () =>
          new Response("<!doctype html>", { status: 404, headers: { "content-type": "text/html" } }),
        known: { get: () => false, set: () => {} },
      }),
      get socketUrl() {
        sockets++;
        return "ws://static.example";
      },
    },
    newId: () => "x",
    now: () => 1,
  });
  const id = await shelf.demo();
  expect(await shelf.demo()).toBe(id);
  const open = await shelf.open(id);
  expect([open.sync(), open.document.job().name, sockets]).toEqual([
    "none",
    "Saltmarsh Ferry Terminal, Staff Wing",
    0,
  ]);
  expect(await shelf.list()).toEqual([
    { id: "saltmarsh", name: "Saltmarsh Ferry Terminal, Staff Wing", changed: 1, here: 1, kept: "device" },
  ]);
  await open.close();
});

async function demoFile() {
  return (await import("#job")).demoJob();
}
