import { expect, test } from "vitest";
import type { JobTestEntry } from "../schema/job-file.ts";
import { entriesThatCount, stationReadings } from "./station-readings.ts";

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

test("Readings of a room are its stations, in the order of time whatever zone a clock stood in, without what was withdrawn", () => {
  const entries = [
    entry("late", "2026-11-26T17:40:00+01:00", { value: 1.4, unit: "m" }),
    entry("early", "2026-11-26T16:30:00Z", { outcome: "not-seen" }),
    entry("wrong", "2026-11-26T16:35:00Z"),
    entry("w", "2026-11-26T16:36:00Z", { outcome: "withdrawn", of: "wrong" }),
    entry("other", "2026-11-26T16:37:00Z", { about: { kind: "room", id: "hall" } }),
    entry("step", "2026-11-26T16:38:00Z", { step: "inspected", outcome: "done" }),
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
  expect(entriesThatCount(entries).map(({ id }) => id)).toEqual(["early", "other", "step", "late"]);
});
