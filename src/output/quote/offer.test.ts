import fc from "fast-check";
import { strFromU8, unzipSync } from "fflate";
import { expect, test } from "vitest";
import {
  emptyPriceList,
  english,
  labourTime,
  type PriceList,
  type QuoteItem,
  spareShares,
  variation,
  type Words,
} from "#engine";
import { crossedTexts } from "../drawing/crossings.fixture.ts";
import type { Sheet, TextMark } from "../drawing/mark.ts";
import { ferryWingTitle } from "../ferry-wing.fixture.ts";
import { materialLines, materialsXlsx, priceListCsv } from "../materials/materials-tables.ts";
import { needsOf } from "../materials/needs.ts";
import { wiredPlan, wiredSite } from "../wiring/wired-wing.fixture.ts";
import { xlsxOf } from "../xlsx/xlsx.ts";
import { quoteCsv, quoteItems, totalOf } from "./quote-items.ts";
import { quoteSheets, variationSheets } from "./quote-sheets.ts";

/** The storey with models that one can buy, and every cable of known length. */
const realSite = {
  ...wiredSite,
  models: wiredSite.models.map(({ demo: _, ...model }) => model),
};
const needs = needsOf(realSite, {
  ...wiredPlan,
  groups: wiredPlan.groups.slice(0, 2),
});

const priced: PriceList = {
  ...emptyPriceList,
  currency: "EUR",
  prices: new Map(needs.materials.map(({ item }, i) => [item, 10 + (i % 7)])),
  hour: 60,
  overhead: 0.1,
  tax: 0.2,
  validity: 30,
  extras: new Map([["blanking old switches", { price: 25 }]]),
};

const title = (sheet: Words) => ({ ...ferryWingTitle, sheet });
const numbered = (sheets: ReturnType<typeof quoteSheets>): readonly Sheet[] =>
  sheets.map((sheet, i) => sheet(i + 1, sheets.length));
const texts = (sheets: readonly Sheet[]): readonly string[] =>
  sheets.flatMap(({ marks }) =>
    marks.filter((mark): mark is TextMark => mark.kind === "text").map(({ text }) => text),
  );

test("Every detector is bought, with spare, and waste of cable is added once", () => {
  const lines = materialLines(needs, priced);
  const detectors = lines.filter(({ item }) => item.startsWith("Round"));
  expect(detectors.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(realSite.detectors.length);
  const laid = wiredPlan.groups.slice(0, 2).flatMap(({ cables }) => cables.map(({ length }) => length ?? 0));
  const cable = lines.filter(({ unit }) => unit === "metre");
  const needed = cable.reduce((sum, { quantity }) => sum + quantity, 0);
  // Lengths to lay have a tenth for waste already; the list starts from the length without it.
  expect(needed * 1.1).toBeCloseTo(
    laid.reduce((sum, length) => sum + length, 0),
    9,
  );
  for (const { quantity, bought, unit } of lines)
    expect(bought).toBe(Math.ceil(quantity * (1 + spareShares[unit]) - 1e-9));
});

test("Hours in the quote are those of the engine's estimate", () => {
  const hours = quoteItems(needs, priced)
    .filter(({ kind }) => kind === "labour")
    .reduce((sum, { quantity }) => sum + quantity, 0);
  // Each line is rounded to a hundredth of an hour.
  expect(Math.abs(hours - labourTime(needs.work) / 3600)).toBeLessThan(0.005 * needs.work.length + 1e-9);
});

test("The total is the sum of the firm lines with overhead and tax; provisional ones stay outside", () => {
  const items = quoteItems(needs, {
    ...priced,
    extras: new Map([...priced.extras, ["waste disposal", { price: 99 }]]),
  });
  const firm = items
    .filter(({ standing }) => standing === "firm")
    .reduce((sum, { amount }) => sum + (amount ?? Number.NaN), 0);
  const total = totalOf(items, priced);
  expect(total.unpriced).toEqual([]);
  expect(total.firm).toBeCloseTo(firm, 6);
  expect(total.net).toBeCloseTo(firm * 1.1, 1);
  expect(total.gross).toBeCloseTo(firm * 1.1 * 1.2, 1);
  expect(total.provisional).toBe(99);
});

test("A quote whose lines are all priced can be signed; one with a gap, or an invented model, cannot", () => {
  const signed = numbered(
    quoteSheets({ items: quoteItems(needs, priced), list: priced, title, invented: new Set() }),
  );
  expect(texts(signed)).toContain("Accepted: place, date, signature");
  expect(texts(signed)).toContain("Valid for 30 days from the date below.");
  const list = { ...priced, prices: new Map([...priced.prices].slice(1)) };
  const open = numbered(quoteSheets({ items: quoteItems(needs, list), list, title, invented: new Set() }));
  expect(texts(open)).toContain("Not ready to be signed");
  expect(texts(open)).not.toContain("Accepted: place, date, signature");
  expect(texts(open).filter((text) => text === "not complete").length).toBe(4);
  const demo = needsOf(wiredSite, { ...wiredPlan, groups: wiredPlan.groups.slice(0, 2) });
  const invented = numbered(
    quoteSheets({ items: quoteItems(demo, priced), list: priced, title, invented: demo.invented }),
  );
  expect(texts(invented)).toContain("Not ready to be signed");
  expect(texts(invented).join(" ")).toContain(
    "Invented models cannot be ordered: Round, 8 m across at 2.5 m",
  );
});

test("A cable whose length nobody knows keeps the quote from being signed", () => {
  const whole = needsOf(realSite, wiredPlan);
  expect(whole.unmeasured).toBe(1);
  expect(totalOf(quoteItems(whole, priced), priced).unpriced).toContain(
    "cables without a length, to be measured: 1",
  );
});

test("Night work is excluded until it is priced; blanking follows the switches that go", () => {
  const standing = (list: PriceList, name: string): string | undefined =>
    quoteItems(needs, list).find(({ item }) => item === name)?.standing;
  expect(standing(priced, "night work")).toBe("excluded");
  expect(standing({ ...priced, extras: new Map([["night work", { price: 400 }]]) }, "night work")).toBe(
    "firm",
  );
  expect(
    standing(
      { ...priced, extras: new Map([["night work", { price: 400, standing: "provisional" }]]) },
      "night work",
    ),
  ).toBe("provisional");
  const blanking = quoteItems(needs, priced).find(({ item }) => item === "blanking old switches");
  expect(blanking).toMatchObject({ standing: "firm", quantity: 1, amount: 25 });
});

test("A variation against itself is empty; one detector more is one line at the accepted price", () => {
  const accepted = quoteItems(needs, priced);
  expect(variation(accepted, accepted)).toEqual([]);
  const dearer = { ...priced, prices: new Map([...priced.prices].map(([item, price]) => [item, price * 2])) };
  const more = {
    ...needs,
    materials: [...needs.materials, { item: "connector", unit: "piece", quantity: 20 } as const],
  };
  const lines = variation(accepted, quoteItems(more, dearer));
  const price = priced.prices.get("connector")!;
  expect(lines.map(({ item }) => item)).toEqual(["connector"]);
  expect(lines[0]!.price).toBe(price);
  expect(lines[0]!.amount).toBeCloseTo((lines[0]!.now - lines[0]!.accepted) * price, 9);
  expect(lines[0]!.now - lines[0]!.accepted).toBeGreaterThanOrEqual(20);
});

test("Variations add up: from one quote to a second and on to a third is from the first to the third", () => {
  const names = ["a", "b", "c", "d"];
  const quote = fc.uniqueArray(
    fc.record({ item: fc.constantFrom(...names), quantity: fc.integer({ min: 1, max: 50 }) }),
    {
      selector: ({ item }) => item,
    },
  );
  // One price for an item throughout: then sums must agree.
  const itemsOf = (rows: readonly { item: string; quantity: number }[]): readonly QuoteItem[] =>
    rows.map(({ item, quantity }) => {
      const price = 1 + names.indexOf(item) * 3;
      return {
        kind: "material",
        item,
        unit: "piece",
        quantity,
        price,
        amount: price * quantity,
        standing: "firm",
      };
    });
  const sum = (from: readonly QuoteItem[], to: readonly QuoteItem[]): number =>
    variation(from, to).reduce((all, { amount }) => all + (amount ?? Number.NaN), 0);
  fc.assert(
    fc.property(quote, quote, quote, (a, b, c) => {
      const [one, two, three] = [itemsOf(a), itemsOf(b), itemsOf(c)];
      expect(sum(one, two) + sum(two, three)).toBeCloseTo(sum(one, three), 6);
    }),
    { seed: 11, numRuns: 200 },
  );
});

test("No line runs through a text of quote or variation", () => {
  const items = quoteItems(needs, priced);
  const lines = variation([], items);
  for (const sheet of [
    ...numbered(quoteSheets({ items, list: priced, title, invented: new Set() })),
    ...numbered(variationSheets({ lines, list: priced, title })),
  ])
    expect(crossedTexts(sheet.marks)).toEqual([]);
});

test("A workbook holds figures as figures, guards what looks like a formula, and has the same bytes each time", async () => {
  const sheet = {
    name: "Test",
    head: [{ title: "Item", width: 10 }],
    rows: [["=1+1", 2.5, undefined], ["@x"], ["plain"]],
  };
  const [first, second] = [await xlsxOf([sheet], english), await xlsxOf([sheet], english)];
  expect(Buffer.compare(first, second)).toBe(0);
  const parts = unzipSync(first);
  const strings = strFromU8(parts["xl/sharedStrings.xml"]!);
  expect(strings).toContain("=1+1");
  expect(strings.replaceAll("&apos;", "'").replaceAll("&#39;", "'")).toContain(">'=1+1<");
  expect(strings).not.toMatch(/>[=+@-]/);
  expect(strFromU8(parts["xl/worksheets/sheet1.xml"]!)).toContain("<v>2.5</v>");
  expect((await materialsXlsx(needs, priced, english)).length).toBeGreaterThan(1000);
});

test("The price list to fill in names every item and every figure of the firm; the quote names every line", () => {
  const lines = priceListCsv(needs, emptyPriceList);
  for (const { item } of needs.materials) expect(lines).toContain(item);
  expect(lines).toContain("fit detector,minute,25,,estimate");
  expect(lines).toContain("working hour,hour,,,");
  expect(quoteCsv(quoteItems(needs, priced)).split("\r\n").length).toBe(quoteItems(needs, priced).length + 2);
});
