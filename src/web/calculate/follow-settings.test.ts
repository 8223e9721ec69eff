import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { demoJob, siteOf } from "#job";
import type { OpenJob } from "../contract.ts";
import { followSettings } from "./follow-settings.ts";
import type { Asked, Told } from "./line.ts";
import type { SetQuestion, SettingsKnown } from "./set-protocol.ts";

/** A worker that answers when the test says so. */
class SilentWorker {
  static made: SilentWorker[] = [];
  readonly asked: SetQuestion[] = [];
  onmessage: ((event: { data: Told<SettingsKnown> }) => void) | undefined;
  constructor() {
    SilentWorker.made.push(this);
  }
  postMessage({ question }: Asked<SetQuestion>): void {
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
  ({ id: "job", site, file, ...change }) as unknown as OpenJob;
const nothing: SettingsKnown = { devices: [], rooms: [], findings: [], packs: [] };

function following() {
  const heard: unknown[] = [];
  const follower = followSettings((what) => heard.push(what));
  follower.follow(job({}), true);
  const [worker] = SilentWorker.made as [SilentWorker];
  const answer = async (number: number): Promise<void> => {
    worker.onmessage?.({ data: { number, answer: nothing } });
    // What was answered is heard by the next turn.
    await new Promise((turn) => setTimeout(turn));
  };
  return { follower, worker, heard, answer };
}

test("what has no part in the settings is neither sent nor asks again; rules that are switched do", async () => {
  const { follower, worker, answer } = following();
  expect(worker.asked[0]!.site.obstacles).toEqual([]);
  await answer(1);
  follower.follow(job({ revision: 9, site: { ...site, obstacles: [] } }), true);
  expect(worker.asked).toHaveLength(1);
  follower.follow(job({ file: { ...file, details: { rulesOn: ["iecc-2021"] } } }), true);
  expect(worker.asked).toHaveLength(2);
});

test("while one state is looked at the newest waits, those between are left out, and a late answer is not heard", async () => {
  const { follower, worker, heard, answer } = following();
  for (const region of ["first", "second", "third"])
    follower.follow(job({ file: { ...file, details: { region } } }), true);
  expect(worker.asked).toHaveLength(1);
  await answer(1);
  expect(worker.asked.map((question) => question.file.details.region)).toEqual([
    file.details.region,
    "third",
  ]);
  await answer(1);
  expect(heard).toHaveLength(1);
  await answer(2);
  expect(heard).toHaveLength(2);
});
