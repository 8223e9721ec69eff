import { expect, test } from "vitest";
import { english } from "../check/index.ts";
import { handedName, handedWords } from "./handed-words.ts";

test("what stands in a state as a word of a list, or as figures in a row, can be said; a name cannot", () => {
  const said = (fact: string, value: string): string | undefined => {
    const words = handedWords(fact, value);
    return words && english(words);
  };
  expect(said("kind", "air-outlet")).toBe("air outlet");
  expect(said("reach", "seated 3 m at 2.5 m, towards 4 m at 2.5 m")).toBe(
    "seated 3 m at 2.5 m, towards 4 m at 2.5 m",
  );
  expect(said("set.output", "two-level, 30 %")).toBe("two-level, 30 %");
  expect(said("into", "outside")).toBe("outside");
  expect(said("room", "outside")).toBeUndefined();
  expect(said("name", "Pallet rack")).toBeUndefined();
});

test("a record without a name of its own is called by words that other languages have too", () => {
  const nameOf = (record: Parameters<typeof handedName>[0]["record"]) => handedName({ record });
  const out = nameOf({ between: "Hall – outside" });
  expect([typeof out, english(out)]).toEqual(["object", "Hall – outside"]);
  const rack = nameOf({ name: "A rack" });
  expect([typeof rack, english(rack)]).toEqual(["object", "A rack"]);
  expect(nameOf({ between: "Hall – Store" })).toBe("Hall – Store");
  expect(nameOf({ tag: "B1.01", name: "A rack" })).toBe("B1.01");
  expect(nameOf({ kind: "seat" })).toBe("");
});
