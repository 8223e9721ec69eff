import { IDBFactory } from "fake-indexeddb";
import { expect, test } from "vitest";
import { sentenceOf } from "#engine";
import { demoJob, initialUpdate, jobText, memoryStore, setName } from "#job";
import { JobNotHere } from "./contract.ts";
import { indexedStore } from "./indexed-store.ts";
import { enterByToken, serverLink } from "./server-link.ts";
import { openStored } from "./stored-job.ts";
import type { Channel, TabMessage } from "./tabs.ts";

const demoStore = async () => {
  const store = memoryStore();
  await store.append("saltmarsh", { update: initialUpdate(demoJob()), at: 1 });
  return store;
};

test("a job that was changed, closed and opened again is as it was left", async () => {
  const factory = new IDBFactory();
  const store = await indexedStore({ factory, name: "roomwake" });
  await store.append("a", { update: initialUpdate(demoJob()), at: 1 });
  const open = await openStored("a", { store, now: () => 2 });
  expect(jobText(open.document.job())).toBe(jobText(demoJob()));
  open.document.run(setName("Annex"));
  await open.settled();
  await open.close();
  const again = await openStored("a", {
    store: await indexedStore({ factory, name: "roomwake" }),
    now: () => 3,
  });
  expect(again.document.job().name).toBe("Annex");
  expect(await store.list()).toEqual([{ id: "a", name: "Annex", changed: 2 }]);
  await again.close();
  await store.close();
});

test("two devices that both begin with the demo have not edited it twice", async () => {
  expect(initialUpdate(demoJob())).toEqual(initialUpdate(demoJob()));
  const store = await demoStore();
  await store.append("saltmarsh", { update: initialUpdate(demoJob()), at: 2 });
  const open = await openStored("saltmarsh", { store, now: () => 3 });
  expect(jobText(open.document.job())).toBe(jobText(demoJob()));
  await open.close();
});

test("a change that cannot be kept is told at once, in words", async () => {
  const store = await demoStore();
  const full = { ...store, append: async () => Promise.reject(new Error("the disk is full")) };
  const open = await openStored("saltmarsh", { store: full, now: () => 1 });
  let told = 0;
  open.onSync(() => told++);
  open.document.run(setName("Annex"));
  await expect(open.settled()).rejects.toThrow("the disk is full");
  expect([told > 0, sentenceOf(open.trouble()!)]).toEqual([
    true,
    "A change could not be kept on this device: the disk is full.",
  ]);
  await expect(open.close()).rejects.toThrow("the disk is full");
});

test("a job in two tabs is the same in both, without a server", async () => {
  const ends = new Set<(message: TabMessage) => void>();
  const channel = (): Channel => {
    let mine: ((message: TabMessage) => void) | undefined;
    return {
      post: (message) => {
        for (const end of ends) if (end !== mine) end(message);
      },
      listen: (listener) => {
        mine = listener;
        ends.add(listener);
      },
      close: () => {
        if (mine) ends.delete(mine);
      },
    };
  };
  const store = await demoStore();
  const one = await openStored("saltmarsh", { store, channel, now: () => 1 });
  one.document.run(setName("Before the other tab"));
  const other = await openStored("saltmarsh", { store: await demoStore(), channel, now: () => 1 });
  expect(other.document.job().name).toBe("Before the other tab");
  other.document.run(setName("After"));
  expect(one.document.job().name).toBe("After");
  await one.close();
  await other.close();
  expect(ends.size).toBe(0);
});

test("a job that is not here is said to be so", async () => {
  await expect(openStored("nowhere", { store: memoryStore(), now: () => 1 })).rejects.toBeInstanceOf(
    JobNotHere,
  );
});

test("a server is told from a static host, and from no network", async () => {
  let seen = false;
  const link = (answer: () => Promise<Response>) =>
    serverLink({
      origin: "http://127.0.0.1:4680",
      fetch: answer,
      known: {
        get: () => seen,
        set: () => {
          seen = true;
        },
      },
    });
  const offline = link(() => Promise.reject(new TypeError("Failed to fetch")));
  expect(await offline.jobs()).toBe("none");
  expect(
    await link(async () => new Response("<html>", { headers: { "content-type": "text/html" } })).jobs(),
  ).toBe("none");
  expect(await link(async () => Response.json([{ id: "a", name: "A", changed: 1 }])).jobs()).toEqual([
    { id: "a", name: "A", changed: 1 },
  ]);
  expect(await link(async () => Response.json({ problems: [] }, { status: 401 })).jobs()).toBe("away");
  expect(await offline.jobs()).toBe("away");
});

test("the token of the printed address is exchanged for the cookie and leaves the address", async () => {
  const asked: unknown[] = [];
  const ask = async (input: unknown, init?: RequestInit) => {
    asked.push([String(input), init?.method, init?.body]);
    return new Response(null, { status: 204 });
  };
  expect(await enterByToken("http://127.0.0.1:4680/?token=abc&a=1#/job/x", ask)).toBe("/?a=1#/job/x");
  expect(asked).toEqual([["http://127.0.0.1:4680/api/session", "POST", '{"token":"abc"}']]);
  expect(await enterByToken("http://127.0.0.1:4680/#/job/x", ask)).toBeUndefined();
  expect(asked.length).toBe(1);
});
