import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";

/** Work of the page's main thread in one act of a person. [ms] */
export interface FrameTimes {
  readonly frames: number;
  readonly half: number;
  readonly most: number;
  readonly longest: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args: { readonly name?: string };
}

/** Frames with less work than this waited for the hand. [ms] */
const idle = 0.8;

/** Traces an act in Chromium, and sums for each frame what its main thread worked: time of the thread, not of the clock. */
export async function framesDuring(
  { browser, page, file }: { readonly browser: Browser; readonly page: Page; readonly file: string },
  act: () => Promise<void>,
): Promise<FrameTimes> {
  await browser.startTracing(page, {
    path: file,
    categories: ["toplevel", "devtools.timeline", "disabled-by-default-devtools.timeline"],
  });
  await act();
  await page.waitForTimeout(500);
  await browser.stopTracing();
  const { traceEvents } = JSON.parse(readFileSync(file, "utf8")) as { traceEvents: readonly TraceEvent[] };
  const own = busiestMain(traceEvents);
  const worked = (event: TraceEvent): number => (event.tdur ?? event.dur ?? 0) / 1000;
  const tasks = own.filter(({ name }) => name === "RunTask");
  // Callbacks of one frame lie close together.
  const starts = firedIn(own)
    .map(({ ts }) => ts)
    .sort((a, b) => a - b)
    .filter((ts, i, all) => i === 0 || ts - (all[i - 1] as number) > 2000);
  const sums = starts.map(() => 0);
  for (const task of tasks) {
    const after = starts.findIndex((start) => start > task.ts + (task.dur ?? 0));
    const frame = (after < 0 ? starts.length : after) - 1;
    if (frame >= 0) sums[frame] = (sums[frame] as number) + worked(task);
  }
  const busy = sums.filter((sum) => sum > idle).sort((a, b) => a - b);
  if (busy.length < 20) throw new Error(`Only ${busy.length} frames were traced.`);
  const at = (share: number): number => busy[Math.floor(busy.length * share)] as number;
  return {
    frames: busy.length,
    half: at(0.5),
    most: at(0.95),
    longest: Math.max(...tasks.map(worked)),
  };
}

const firedIn = (events: readonly TraceEvent[]): readonly TraceEvent[] =>
  events.filter(({ name }) => name === "FireAnimationFrame");

/** Complete events of the main thread that painted most frames: that of the page. */
function busiestMain(events: readonly TraceEvent[]): readonly TraceEvent[] {
  const mains = events.filter(({ name, args }) => name === "thread_name" && args.name === "CrRendererMain");
  const each = mains.map(({ pid, tid }) =>
    events.filter((event) => event.pid === pid && event.tid === tid && event.ph === "X"),
  );
  return each.sort((a, b) => firedIn(b).length - firedIn(a).length)[0] ?? [];
}
