import { expect, test } from "vitest";
import type { JobTestEntry } from "../schema/job-file.ts";
import { stationReadings } from "./station-readings.ts";

const entry = (id: string, time: string, more: Partial<JobTestEntry> = {}): JobTestEntry => ({
  id,
  time,
  about: { kind: "room", id: "store" },
  step: "station",
  part: "enter:door",
  outcome: "seen",
  basis: "b1",
  ...more,
});

test("Readings of a room are its stations in the order of time, without what was withdrawn", () => {
  const entries = [
    entry("late", "2026-11-26T16:40:00.000Z", { value: 1.4, unit: "m", zone: "+01:00" }),
    entry("early", "2026-11-26T16:30:00.000Z", { outcome: "not-seen" }),
    entry("wrong", "2026-11-26T16:35:00.000Z"),
    entry("w", "2026-11-26T16:36:00.000Z", { outcome: "withdrawn", of: "wrong" }),
    entry("other", "2026-11-26T16:37:00.000Z", { about: { kind: "room", id: "hall" } }),
    entry("step", "2026-11-26T16:38:00.000Z", { step: "inspection", outcome: "done" }),
  ];
  expect(stationReadings(entries, "store")).toEqual([
    { id: "early", station: "enter:door", basis: "b1", seen: false, recorded: "2026-11-26T16:30:00.000Z" },
    {
      id: "late",
      station: "enter:door",
      basis: "b1",
      seen: true,
      distance: 1.4,
      recorded: "2026-11-26T16:40:00.000Z",
    },
  ]);
});
