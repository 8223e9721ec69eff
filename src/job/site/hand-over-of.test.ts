import { expect, test } from "vitest";
import { emptyJob } from "../schema/job-file.ts";
import { handOverOf } from "./hand-over-of.ts";

test.each([
  ["2026-11-26", "2026-11-26T00:00:00.000Z"],
  // Read as a date, these would be midnight by the clock of the machine that prints.
  ["26 Nov 2026", "2000-01-01T00:00:00.000Z"],
  ["11/26/2026", "2000-01-01T00:00:00.000Z"],
  ["2026-13-45", "2000-01-01T00:00:00.000Z"],
  [undefined, "2000-01-01T00:00:00.000Z"],
])("a job dated %s is stamped %s, in every zone", (date, stamp) => {
  const job = { ...emptyJob("Annex"), details: date === undefined ? {} : { date } };
  expect(handOverOf(job).printed.created.toISOString()).toBe(stamp);
});
