import { expect, test } from "vitest";
import { emptyPriceList, english, labourDefaults, quoteExtras } from "#engine";
import { quoteItems } from "../quote/quote-items.ts";
import { wiredPlan, wiredSite } from "../wiring/wired-wing.fixture.ts";
import { speakIn } from "../words/speak.ts";
import { itemWords } from "./item-words.ts";
import { labourName } from "./materials-tables.ts";
import { needsOf } from "./needs.ts";

const titles = new Set(wiredSite.models.map(({ title }) => title));
const items = [
  ...quoteItems(needsOf(wiredSite, wiredPlan), emptyPriceList).map(({ item }) => item),
  ...(Object.keys(labourDefaults) as (keyof typeof labourDefaults)[]).map(labourName),
  ...quoteExtras,
  "cable, 5 cores, section unknown",
  "fit detector, above 3 m or on stairs",
  "detector m1",
];

test("Items are shown in English by the names under which price lists keep them", () => {
  expect(items.length).toBeGreaterThan(15);
  for (const item of items) expect(english(itemWords(item))).toBe(item);
});

test("Every item that the program makes up has words of its own in German; titles of models stay", () => {
  const german = speakIn("de");
  for (const item of items)
    if (titles.has(item)) expect(german(itemWords(item))).toBe(item);
    else expect(german(itemWords(item)), item).not.toBe(item);
  expect(german(itemWords("cable 3 × 1.5 mm²"))).toBe("Leitung 3 × 1,5 mm²");
  expect(german(itemWords("fit detector, above 3 m or on stairs"))).toBe(
    "Melder montieren, über 3 m oder auf Treppen",
  );
});
