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

test("papers are told whom to call, and what was exchanged and handed over before", () => {
  const swap = {
    id: "x",
    time: "2027-01-12T09:00:00Z",
    detector: "d",
    tag: "B1.01",
    from: "",
    to: "",
    reason: "",
  };
  const revision = { id: "r", letter: "A", date: "2026-11-26", reason: "", prints: {}, state: {} };
  const { input, printed } = handOverOf({
    ...emptyJob("Annex"),
    details: { call: "Caretaker, 0100 200" },
    swaps: [swap],
    revisions: [revision],
  });
  expect(printed.call).toBe("Caretaker, 0100 200");
  expect(input.swaps).toEqual([swap]);
  expect(input.revisions).toEqual([revision]);
  expect(handOverOf(emptyJob("Annex")).printed.call).toBe("");
});
