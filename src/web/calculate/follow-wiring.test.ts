import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { demoJob, siteOf } from "#job";
import type { OpenJob } from "../contract.ts";
import { followWiring } from "./follow-wiring.ts";
import type { WireAnswer, WireQuestion, WiringKnown } from "./wire-protocol.ts";

/** A worker that answers when the test says so. */
class SilentWorker {
  static made: SilentWorker[] = [];
  readonly asked: WireQuestion[] = [];
  onmessage: ((event: { data: WireAnswer }) => void) | undefined;
  constructor() {
    SilentWorker.made.push(this);
  }
  postMessage(question: WireQuestion): void {
    this.asked.push(question);
  }
  terminate(): void {}
}
beforeEach(() => {
  SilentWorker.made = [];
  vi.stubGlobal("Worker", SilentWorker);
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const file = demoJob();
const { site } = siteOf(file);
const job = (change: Partial<OpenJob>): OpenJob =>
  ({ id: "job", site, kept: file, ...change }) as unknown as OpenJob;
const nothing: WiringKnown = { review: undefined, findings: [], circuits: new Map(), runs: [], groups: [] };

function following() {
  const heard: unknown[] = [];
  const follower = followWiring((what) => heard.push(what));
  follower.follow(job({}));
  const [worker] = SilentWorker.made as [SilentWorker];
  const answer = (number: number): void =>
    worker.onmessage?.({ data: { tell: "wired", number, known: nothing } });
  return { follower, worker, heard, answer };
}

test("a state whose wiring is the same is not asked again, whatever else changed", () => {
  const { follower, worker, answer } = following();
  answer(1);
  follower.follow(job({ revision: 9, site: { ...site, obstacles: [] } }));
  expect(worker.asked).toHaveLength(1);
  follower.follow(job({ kept: { ...file, circuits: [] } }));
  expect(worker.asked).toHaveLength(2);
});

test("while one state is calculated the newest waits, and those between are left out", () => {
  const { follower, worker, heard, answer } = following();
  for (const name of ["first", "second", "third"])
    follower.follow(
      job({ kept: { ...file, boards: [{ id: name, name, system: "unknown", readings: "assumed" }] } }),
    );
  expect(worker.asked).toHaveLength(1);
  answer(1);
  expect(worker.asked.map(({ found }) => found.boards.at(-1)?.id)).toEqual([file.boards.at(-1)?.id, "third"]);
  answer(2);
  expect(heard).toEqual([{ known: nothing }, { known: nothing }]);
});

test("an answer to an older question is not heard, and none after the end", () => {
  const { follower, heard, answer } = following();
  answer(7);
  follower.stop();
  answer(1);
  expect(heard).toEqual([]);
});
