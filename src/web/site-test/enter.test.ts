import { expect, test } from "vitest";
import type { JobTestEntry } from "#job";
import { ambientIn } from "./enter.ts";

const entry = (id: string, time: string, given: Partial<JobTestEntry>): JobTestEntry => ({
  id,
  time,
  about: { kind: "room", id: "hall" },
  step: "ambient",
  outcome: "read",
  unit: "°C",
  ...given,
});

test("the air of a room is what was entered last there; a withdrawn figure does not count", () => {
  const entries = [
    entry("a", "2026-11-26T08:00:00Z", { value: 21 }),
    entry("b", "2026-11-26T10:00:00Z", { value: 31 }),
    entry("c", "2026-11-26T11:00:00Z", { value: 12, about: { kind: "room", id: "store" } }),
  ];
  expect(ambientIn(entries, "hall")).toBe(31);
  expect(ambientIn(entries, "lift")).toBeUndefined();
  const withdrawn = entry("d", "2026-11-26T12:00:00Z", { outcome: "withdrawn", of: "b" });
  expect(ambientIn([...entries, withdrawn], "hall")).toBe(21);
});
