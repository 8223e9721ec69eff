import { expect, test } from "vitest";
import { say } from "#engine";
import { inEnglish } from "./words.ts";

test("what is said stands in English in an answer as JSON, at any depth", () => {
  const check = { what: say`Walk in the dark from ${say`the door`}`, assumptions: [say`${2.5} m`, "22 °C"] };
  expect(JSON.stringify({ checks: [check] }, inEnglish)).toBe(
    '{"checks":[{"what":"Walk in the dark from the door","assumptions":["2.5 m","22 °C"]}]}',
  );
});
