import { expect, test } from "vitest";
import { clockOf, localTime } from "./local-time.ts";

test("A moment is written by the clock on the wall and is the same moment when it is read", () => {
  for (const at of [0, Date.UTC(2026, 10, 26, 16, 40), Date.UTC(2026, 5, 1, 23, 59, 59)]) {
    const written = localTime(new Date(at));
    expect(written).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d$/);
    expect(Date.parse(written)).toBe(at);
    const here = new Date(at);
    expect(clockOf(written)).toBe(
      `${String(here.getHours()).padStart(2, "0")}:${String(here.getMinutes()).padStart(2, "0")}`,
    );
  }
  expect(clockOf("noon")).toBe("");
});
