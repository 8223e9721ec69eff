import { describe, expect, test } from "vitest";
import { box, detectorLike, doorLike, roomLike, roundModel, siteLike } from "../../../test/engine/records.ts";
import { english, say } from "../check/index.ts";
import { type SiteEntry, stepId } from "../site-test/index.ts";
import { sources } from "../source/index.ts";
import { handoverOf } from "./collect.ts";

const site = siteLike({
  rooms: [
    roomLike({ id: "hall", outline: box(0, 0, 5, 4) }),
    roomLike({ id: "store", outline: box(0, 4.2, 5, 3) }),
  ],
  openings: [
    doorLike({ id: "in", rooms: ["hall", null], from: [0, 1], to: [0, 1.9] }),
    doorLike({ id: "between", rooms: ["hall", "store"], from: [2, 4], to: [2.9, 4] }),
  ],
  models: [roundModel()],
  detectors: [detectorLike({ id: "d", tag: "B1.01", room: "hall", at: [2.5, 2] })],
});
const nothing = {
  choices: {},
  found: { boards: [], circuits: [] },
  entries: [],
  readings: () => [],
  notes: [],
};
const handover = handoverOf(site, nothing);

describe("The record of what is handed over", () => {
  test("has every room with the detectors that switch it, its coverage and its own findings", () => {
    expect(handover.rooms.map(({ room, detectors }) => [room.id, detectors])).toEqual([
      ["hall", ["d"]],
      ["store", []],
    ]);
    expect(handover.rooms.map(({ area }) => area)).toEqual([expect.closeTo(20, 9), expect.closeTo(15, 9)]);
    for (const { room, coverage, findings } of handover.rooms) {
      expect(coverage.room).toBe(room.id);
      expect(findings).toEqual(handover.findings.filter((finding) => finding.room === room.id));
    }
    expect(handover.findings.map(({ code, room }) => `${code} ${room}`)).toContain("no-detector store");
  });

  test("says why there is no wiring, in a sentence", () => {
    expect(handover.wiring).toEqual({
      kind: "none",
      reason: say`no circuit is on record, and no luminaire with its circuit or power.`,
    });
  });

  test("names every source that a check, a setting or a test rests on, in the order of the register", () => {
    const named = handover.sources.map(({ id }) => id);
    for (const { source } of handover.checks) expect(named).toContain(source);
    for (const { settings } of handover.settings.devices)
      for (const setting of Object.values(settings))
        if (setting.kind === "derived") expect(named).toContain(setting.source);
    const register = Object.keys(sources);
    expect(named).toEqual(named.toSorted((a, b) => register.indexOf(a) - register.indexOf(b)));
    expect(new Set(named).size).toBe(named.length);
  });

  test("counts each assumption as often as it was made, once in the list", () => {
    const made = [
      ...handover.checks.flatMap(({ assumptions }) => assumptions),
      ...handover.settings.devices.flatMap(({ settings }) =>
        Object.values(settings).flatMap((one) =>
          one.kind === "derived" && one.assumption !== undefined ? [one.assumption] : [],
        ),
      ),
    ];
    expect(handover.assumptions.reduce((sum, { times }) => sum + times, 0)).toBe(made.length);
    expect(new Set(handover.assumptions.map(({ text }) => english(text)))).toEqual(
      new Set(made.map(english)),
    );
    expect(new Set(handover.assumptions.map(({ text }) => english(text))).size).toBe(
      handover.assumptions.length,
    );
  });

  test("is planned where nothing was entered, and carries the latest entry of a step where something was", () => {
    expect(handover.tests.length).toBeGreaterThan(10);
    expect(handover.tests.flatMap(({ entries }) => entries)).toEqual([]);
    const about = { kind: "detector", id: "d" } as const;
    const entry = (id: string, time: string, value: number): SiteEntry => ({
      id,
      time,
      about,
      step: "height",
      outcome: "read",
      value,
    });
    const { tests } = handoverOf(site, {
      ...nothing,
      entries: [entry("b", "2026-03-02T10:00:00Z", 2.72), entry("a", "2026-03-02T09:00:00Z", 2.9)],
    });
    const height = tests.find(({ state }) => state.step.id === stepId("height", about))!;
    expect(height.entries.map(({ value }) => value)).toEqual([2.72]);
  });
});
