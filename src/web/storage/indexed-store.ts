import type { JobStore, KeptJob } from "#job";

/**
 * Jobs in this browser.
 *
 * @param options.factory - The platform's IndexedDB.
 * @param options.name - Name of the database.
 */
export async function indexedStore(options: {
  readonly factory: IDBFactory;
  readonly name: string;
}): Promise<JobStore> {
  const database = await opened(options.factory, options.name);
  // Strict: the promise waits until the data is on the disk, not merely handed to the operating system.
  const changing = (): IDBTransaction =>
    database.transaction(["jobs", "updates"], "readwrite", { durability: "strict" });
  const reading = (): IDBTransaction => database.transaction(["jobs", "updates"], "readonly");

  return {
    list: async () => {
      const jobs = await answer<KeptJob[]>(reading().objectStore("jobs").getAll());
      return jobs.sort((a, b) => b.changed - a.changed);
    },
    read: async (id) => {
      const rows = await answer<UpdateRow[]>(reading().objectStore("updates").index("job").getAll(id));
      const last = rows[rows.length - 1];
      return last && { updates: rows.map((row) => row.content), last: last.number };
    },
    append: async (id, { update, at }) => {
      const content = update.slice();
      const step = changing();
      const jobs = step.objectStore("jobs");
      step.objectStore("updates").add({ job: id, content });
      withAnswer<KeptJob | undefined>(jobs.get(id), (job) =>
        jobs.put({ id, name: job?.name ?? "", changed: at }),
      );
      await finished(step);
    },
    rename: async (id, name) => {
      const step = changing();
      const jobs = step.objectStore("jobs");
      withAnswer<KeptJob | undefined>(jobs.get(id), (job) => {
        if (job) jobs.put({ ...job, name });
      });
      await finished(step);
    },
    compact: async (id, { update, upTo }) => {
      const content = update.slice();
      const step = changing();
      const updates = step.objectStore("updates");
      withAnswer<IDBValidKey[]>(updates.index("job").getAllKeys(id), (numbers) => {
        if (!numbers.includes(upTo)) return;
        for (const number of numbers) if ((number as number) < upTo) updates.delete(number);
        updates.put({ number: upTo, job: id, content });
      });
      await finished(step);
    },
    remove: async (id) => {
      const step = changing();
      const updates = step.objectStore("updates");
      step.objectStore("jobs").delete(id);
      withAnswer<IDBValidKey[]>(updates.index("job").getAllKeys(id), (numbers) => {
        for (const number of numbers) updates.delete(number);
      });
      await finished(step);
    },
    close: async () => database.close(),
  };
}

interface UpdateRow {
  readonly number: number;
  readonly job: string;
  readonly content: Uint8Array;
}

function opened(factory: IDBFactory, name: string): Promise<IDBDatabase> {
  const request = factory.open(name, 1);
  request.onupgradeneeded = () => {
    request.result.createObjectStore("jobs", { keyPath: "id" });
    request.result
      .createObjectStore("updates", { keyPath: "number", autoIncrement: true })
      .createIndex("job", "job");
  };
  return answer(request);
}

const answer = <Result>(request: IDBRequest<Result>): Promise<Result> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

/** Goes on inside the same transaction: a promise in between would end it. */
const withAnswer = <Result>(request: IDBRequest<Result>, next: (result: Result) => void): void => {
  request.onsuccess = () => next(request.result);
};

const finished = (step: IDBTransaction): Promise<void> =>
  new Promise((resolve, reject) => {
    step.oncomplete = () => resolve();
    step.onerror = () => reject(step.error);
    step.onabort = () => reject(step.error ?? new Error("The browser stopped keeping the change"));
  });
