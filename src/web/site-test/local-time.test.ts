import { expect, test } from "vitest";
import { clockOf, momentOf } from "./local-time.ts";

test("A moment sorts by the world's time and is told by the clock that hung on the wall", () => {
  for (const at of [0, Date.UTC(2026, 10, 26, 16, 40), Date.UTC(2026, 5, 1, 23, 59, 59)]) {
    const date = new Date(at);
    const moment = momentOf(date);
    expect(Date.parse(moment.time)).toBe(at);
    const two = (figure: number): string => String(figure).padStart(2, "0");
    expect(clockOf(moment)).toBe(`${two(date.getHours())}:${two(date.getMinutes())}`);
  }
  expect(clockOf({ time: "2026-11-26T16:40:00.000Z", zone: "+01:00" })).toBe("17:40");
  expect(clockOf({ time: "2026-11-26T02:10:00.000Z", zone: "-03:30" })).toBe("22:40");
  expect(clockOf({ time: "noon" })).toBe("");
});
