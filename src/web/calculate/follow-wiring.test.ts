import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { demoJob, siteOf } from "#job";
import type { OpenJob } from "../contract.ts";
import { followWiring } from "./follow-wiring.ts";
import type { Asked, Told } from "./line.ts";
import type { WireQuestion, WiringKnown } from "./wire-protocol.ts";

/** A worker that answers when the test says so. */
class SilentWorker {
  static made: SilentWorker[] = [];
  readonly asked: WireQuestion[] = [];
  onmessage: ((event: { data: Told<WiringKnown> }) => void) | undefined;
  constructor() {
    SilentWorker.made.push(this);
  }
  postMessage({ question }: Asked<WireQuestion>): void {
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
  follower.follow(job({}), true);
  const [worker] = SilentWorker.made as [SilentWorker];
  const answer = async (number: number): Promise<void> => {
    worker.onmessage?.({ data: { number, answer: nothing } });
    // What was answered is heard by the next turn.
    await new Promise((turn) => setTimeout(turn));
  };
  return { follower, worker, heard, answer };
}

test("a state whose wiring is the same is not asked again, whatever else changed", async () => {
  const { follower, worker, answer } = following();
  await answer(1);
  follower.follow(job({ revision: 9, site: { ...site, obstacles: [] } }), true);
  expect(worker.asked).toHaveLength(1);
  follower.follow(job({ kept: { ...file, circuits: [] } }), true);
  expect(worker.asked).toHaveLength(2);
});

test("while one state is calculated the newest waits, and those between are left out", async () => {
  const { follower, worker, heard, answer } = following();
  for (const name of ["first", "second", "third"])
    follower.follow(
      job({ kept: { ...file, boards: [{ id: name, name, system: "unknown", readings: "assumed" }] } }),
      true,
    );
  expect(worker.asked).toHaveLength(1);
  await answer(1);
  expect(worker.asked.map(({ found }) => found.boards.at(-1)?.id)).toEqual([file.boards.at(-1)?.id, "third"]);
  await answer(2);
  expect(heard).toEqual([{ known: nothing }, { known: nothing }]);
});

test("an answer to an older question is not heard, and none after the end", async () => {
  const { follower, heard, answer } = following();
  await answer(7);
  follower.stop();
  await answer(1);
  expect(heard).toEqual([]);
});

test("outside its stage ways of cables are not asked for; in it they are, and stay known when one leaves", async () => {
  const { follower, worker, answer } = following();
  await answer(1);
  const changed = job({ kept: { ...file, circuits: [] } });
  for (const whole of [false, true, false]) {
    follower.follow(changed, whole);
    await answer(worker.asked.length);
  }
  expect(worker.asked.map(({ routes }) => routes)).toEqual([true, false, true]);
});
