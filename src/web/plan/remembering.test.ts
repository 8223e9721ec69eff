import { expect, test } from "vitest";
import { remembering } from "./remembering.ts";

test("the same inputs give the same value, and any other input a new one", () => {
  const pair = remembering((a: number, b: string) => ({ a, b }));
  const first = pair(1, "x");
  expect(pair(1, "x")).toBe(first);
  expect(pair(2, "x")).toEqual({ a: 2, b: "x" });
  expect(pair(2, "y")).toEqual({ a: 2, b: "y" });
  expect(pair(1, "x")).not.toBe(first);
});

test("of a value that is nothing the last inputs are known as well", () => {
  let made = 0;
  const none = remembering((_: string): undefined => {
    made += 1;
    return undefined;
  });
  none("a");
  none("a");
  expect(made).toBe(1);
});
