import { describe, expect, test } from "vitest";
import { box, detectorLike, roomLike, roundModel, siteLike } from "../../../test/engine/records.ts";
import { wiringOfSite } from "../wiring/index.ts";
import { type DeviceResult, resultOfDevice, sampleStates } from "./sampling-state.ts";
import type { SiteEntry } from "./site-entry.ts";
import { workOrder } from "./work-order.ts";
import { workState } from "./work-state.ts";

const alike = (count: number) =>
  siteLike({
    rooms: Array.from({ length: count }, (_, i) => roomLike({ id: `r${i}`, outline: box(6 * i, 0, 5, 4) })),
    models: [roundModel()],
    detectors: Array.from({ length: count }, (_, i) =>
      detectorLike({
        id: `d${i}`,
        tag: `B1.${String(i + 1).padStart(2, "0")}`,
        room: `r${i}`,
        at: [6 * i + 2.5, 2],
      }),
    ),
  });
const results =
  (given: Readonly<Record<string, DeviceResult>>) =>
  (device: string): DeviceResult =>
    given[device] ?? "open";

describe("Where a sample stands", () => {
  test("[SA-1] 48 alike by the IECC: five are asked for; two of five failed ask for all, one does not", () => {
    const of = (given: Readonly<Record<string, DeviceResult>>) =>
      sampleStates(alike(48), { rule: "iecc", resultOf: results(given) });
    expect(of({}).map(({ asked, escalated }) => [asked.length, escalated])).toEqual([[5, false]]);
    const five = { d0: "pass", d1: "pass", d2: "pass", d3: "pass", d4: "fail" } as const;
    expect(of(five)).toMatchObject([{ escalated: false, tested: 5, failed: 1 }]);
    expect(of({ ...five, d3: "fail" })).toMatchObject([{ escalated: true, failed: 2 }]);
    expect(of({ ...five, d3: "fail" })[0]!.asked).toHaveLength(48);
  });

  test("[SA-1] 23 alike by Title 24: one of each group of seven; a failure asks for its own group alone", () => {
    const [first, second, ...more] = sampleStates(alike(23), {
      rule: "title-24",
      resultOf: results({ d0: "fail", d7: "pass" }),
    });
    expect(first).toMatchObject({ escalated: true, asked: first!.devices });
    expect(second).toMatchObject({ escalated: false, asked: ["d7"] });
    expect(more.map(({ asked }) => asked.length)).toEqual([1, 1]);
  });

  test("up to seven devices in all, every one is asked for", () => {
    for (const rule of ["iecc", "title-24"] as const)
      expect(
        sampleStates(alike(7), { rule, resultOf: results({}) }).flatMap(({ asked }) => asked),
      ).toHaveLength(7);
  });

  test("a device has passed once its functional test and its delay are done, and failed with either", () => {
    const site = alike(1);
    const order = workOrder(site, wiringOfSite(site, { boards: [], circuits: [] }).model);
    const entry = (step: string, given: Partial<SiteEntry>): SiteEntry => ({
      id: step,
      time: "2026-11-26T10:00:00Z",
      about: { kind: "detector", id: "d0" },
      step,
      outcome: "passed",
      ...given,
    });
    const { parts } = order.steps.find(({ name }) => name === "functional")!;
    const functional = (parts.length > 0 ? parts : [""]).map((part) =>
      entry("functional", { id: `f ${part}`, ...(part === "" ? {} : { part }) }),
    );
    const of = (...entries: readonly SiteEntry[]) => resultOfDevice(workState(order, entries), "d0");
    expect(of()).toBe("open");
    expect(of(...functional)).toBe("open");
    expect(of(...functional, entry("delay", { outcome: "read", value: 600 }))).toBe("pass");
    expect(of(...functional, entry("delay", { outcome: "failed" }))).toBe("fail");
    expect(resultOfDevice(workState(order, []), "nobody")).toBe("open");
  });
});
