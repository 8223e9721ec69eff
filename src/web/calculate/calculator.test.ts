import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { Region, Site } from "#engine";
import { demoJob, siteOf } from "#job";
import type { DeviceZones, EditStep, OpenJob } from "../contract.ts";
import { whenSettled } from "./calculated.ts";
import { startCalculator } from "./calculator.ts";
import type { ReviewAnswer, ReviewQuestion } from "./protocol.ts";

/** A worker that answers when the test says so. */
class SilentWorker {
  static last: SilentWorker | undefined;
  readonly asked: ReviewQuestion[] = [];
  onmessage: ((event: { data: ReviewAnswer }) => void) | undefined;
  constructor() {
    SilentWorker.last = this;
  }
  postMessage(question: ReviewQuestion): void {
    this.asked.push(question);
  }
  terminate(): void {}
}

beforeEach(() => {
  vi.stubGlobal("Worker", SilentWorker);
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const { site } = siteOf(demoJob());
const device = site.detectors[0]!;
const square = (side: number): Region => [
  {
    outline: [
      [0, 0],
      [side, 0],
      [side, side],
      [0, side],
    ],
    holes: [],
  },
];
const zonesOf = (side: number): DeviceZones => ({ seated: square(side) }) as DeviceZones;
const stepTo = (x: number): EditStep => ({
  do: "set",
  kind: "detectors",
  id: device.id,
  fields: { at: [x, 0] },
});

/** Of an open job the calculator looks at this alone. */
const openJob = (of: Site, revision: number): OpenJob =>
  ({ id: "job", site: of, revision }) as unknown as OpenJob;

/** A calculator that knows the zones of the device from its room, and has just begun to follow. */
function following() {
  const calculator = startCalculator();
  calculator.follow(openJob(site, 1));
  const worker = SilentWorker.last!;
  const tell = (data: ReviewAnswer): void => worker.onmessage?.({ data });
  const settle = (side: number): void =>
    tell({
      tell: "room",
      revision: 1,
      coverage: { room: device.room } as never,
      zones: [[device.id, zonesOf(side)]],
    });
  const turns = (): number[] => worker.asked.flatMap((one) => (one.ask === "live" ? [one.turn] : []));
  const live = (side: number): void =>
    tell({ tell: "live", turn: turns().at(-1)!, coverage: [], zones: [[device.id, zonesOf(side)]] });
  const shown = (): DeviceZones | undefined => calculator.current().zones.get(device.id);
  settle(1);
  return { calculator, worker, tell, settle, live, shown, turns };
}

test("what a drag would change stays on show when a room is settled meanwhile", () => {
  const { calculator, settle, live, shown } = following();
  calculator.live([stepTo(1)]);
  live(2);
  expect(shown()).toEqual(zonesOf(2));
  settle(1);
  expect(shown()).toEqual(zonesOf(2));
});

test("what is settled comes back when a drag is given up, and an answer that comes late is not shown", () => {
  const { calculator, live, shown } = following();
  calculator.live([stepTo(1)]);
  live(2);
  calculator.live([stepTo(2)]);
  calculator.live([]);
  expect(shown()).toEqual(zonesOf(1));
  live(3);
  expect(shown()).toEqual(zonesOf(1));
});

test("an answer is shown although the hand has gone on, and then the newest place is asked about", () => {
  const { calculator, worker, live, shown, turns } = following();
  calculator.live([stepTo(1)]);
  calculator.live([stepTo(2)]);
  calculator.live([stepTo(3)]);
  expect(turns()).toHaveLength(1);
  live(2);
  expect(shown()).toEqual(zonesOf(2));
  expect(turns()).toHaveLength(2);
  expect(worker.asked.at(-1)).toMatchObject({ ask: "live", steps: [stepTo(3)] });
});

test("zones of a drag stay on show after it until the changed job is calculated", () => {
  vi.useFakeTimers();
  const { calculator, tell, live, shown } = following();
  calculator.live([stepTo(1)]);
  live(2);
  const next = { ...site, detectors: site.detectors.map((one) => ({ ...one })) };
  calculator.follow(openJob(next, 2));
  calculator.live([]);
  expect(shown()).toEqual(zonesOf(2));
  expect(calculator.current().busy).toBe(true);
  tell({
    tell: "room",
    revision: 2,
    coverage: { room: device.room } as never,
    zones: [[device.id, zonesOf(4)]],
  });
  vi.runOnlyPendingTimers();
  vi.useRealTimers();
  expect(shown()).toEqual(zonesOf(4));
});

test("rooms that answer one after another are drawn together, and all of them when the last is known", () => {
  vi.useFakeTimers();
  const { calculator, tell } = following();
  let drawn = 0;
  calculator.subscribe(() => {
    drawn += 1;
  });
  for (const room of ["a", "b", "c"])
    tell({ tell: "room", revision: 1, coverage: { room } as never, zones: [] });
  expect(drawn).toBe(0);
  vi.runOnlyPendingTimers();
  expect(drawn).toBe(1);
  expect(["a", "b", "c"].every((room) => calculator.current().rooms.has(room))).toBe(true);
  tell({ tell: "room", revision: 1, coverage: { room: "d" } as never, zones: [] });
  tell({ tell: "done", revision: 1, findings: [], rooms: ["a", "d"] } as never);
  expect([drawn, [...calculator.current().rooms.keys()]]).toEqual([2, ["a", "d"]]);
  vi.runOnlyPendingTimers();
  vi.useRealTimers();
  expect(drawn).toBe(2);
});

test("zones of a layout on show outlast a device that is tried meanwhile", () => {
  const { calculator, live, shown } = following();
  calculator.live([stepTo(1)]);
  void calculator.tryDevice(site, device);
  live(2);
  expect(shown()).toEqual(zonesOf(2));
});

test("what is printed waits until nothing is being calculated any more", async () => {
  const { calculator, tell } = following();
  expect(calculator.current().busy).toBe(true);
  const settled = whenSettled(calculator);
  tell({ tell: "done", revision: 1, findings: [], rooms: [device.room] });
  expect((await settled).busy).toBe(false);
  expect(await whenSettled(calculator)).toBe(calculator.current());
});
