import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { rememberedPrices, rememberPrices } from "./remembered-prices.ts";

let kept: Map<string, string>;
beforeEach(() => {
  kept = new Map();
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => kept.set(key, text),
  });
});
afterEach(() => {
  vi.unstubAllGlobals();
});

test("the list that was taken last is there for the next job, and whatever else stands in its place is none", () => {
  expect(rememberedPrices()).toBeUndefined();
  rememberPrices({ file: "firm.csv", text: "item,unit,price\n" });
  expect(rememberedPrices()).toEqual({ file: "firm.csv", text: "item,unit,price\n" });
  const [key] = [...kept.keys()];
  for (const spoilt of ["{", "null", "7", '{"file":"firm.csv"}', '{"file":1,"text":"x"}']) {
    kept.set(key!, spoilt);
    expect(rememberedPrices()).toBeUndefined();
  }
});

test("without storage nothing is remembered and nothing breaks", () => {
  vi.stubGlobal("localStorage", {
    getItem: () => {
      throw new Error("refused");
    },
    setItem: () => {
      throw new Error("full");
    },
  });
  rememberPrices({ file: "firm.csv", text: "" });
  expect(rememberedPrices()).toBeUndefined();
});
