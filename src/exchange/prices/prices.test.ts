import fc from "fast-check";
import { expect, test } from "vitest";
import { readAcceptedQuote } from "./read-accepted-quote.ts";
import { readPriceList } from "./read-price-list.ts";

const head = "item,unit,price,standing\r\n";

test("A price list is read whatever the order of its columns and the separator", () => {
  const result = readPriceList(
    "Price;Unit;Item\nEUR;text;currency\n12,50;piece;connector\n1.2;metre;cable 3 × 1.5 mm²\n60;hour;working hour\n20;minute;fit detector\n8;%;overhead\n19;%;tax\n30;day;validity\n;piece;ceiling box",
    "prices.csv",
  );
  expect(result).toEqual({
    list: {
      currency: "EUR",
      prices: new Map([
        ["connector", 12.5],
        ["cable 3 × 1.5 mm²", 1.2],
      ]),
      hour: 60,
      minutes: { "fit-detector": 20 },
      overhead: 0.08,
      tax: 0.19,
      validity: 30,
      extras: new Map(),
    },
  });
});

test.each([
  ["item,price\nconnector,1", [["price-list-column-missing", { column: "unit", line: 1 }]]],
  [`${head}connector,piece,dear,`, [["price-list-value-wrong", { column: "price", line: 2, text: "dear" }]]],
  [`${head}connector,piece,-1,`, [["price-list-value-wrong", { column: "price", line: 2, text: "-1" }]]],
  [`${head}\r\nconnector,box,1,`, [["price-list-value-wrong", { column: "unit", line: 3, text: "box" }]]],
  [`${head}night work,sum,1,perhaps`, [["price-list-value-wrong", { column: "standing", line: 2 }]]],
  [`${head}lunch,sum,1,firm`, [["price-list-value-wrong", { column: "item", line: 2, text: "lunch" }]]],
  [`${head}a,piece,1,\nA,piece,2,`, [["price-list-item-twice", { line: 3, first: 2 }]]],
  [`${head}"a,piece,1,`, [["price-list-quote-open", { line: 2 }]]],
  [`${head}a,piece,1,50,`, [["price-list-row-width", { line: 2, found: 5, expected: 4 }]]],
] as const)("What is wrong with %j is said with its line and column", (text, expected) => {
  const result = readPriceList(text, "prices.csv");
  const problems = "problems" in result ? result.problems : [];
  expect(problems.length).toBe(expected.length);
  expected.forEach(([code, values], i) => {
    expect(problems[i]).toMatchObject({ code, values: { file: "prices.csv", ...values } });
  });
});

test("Blank lines before the header do not hide its separator", () => {
  expect(readPriceList("\n\nitem;unit;price\nconnector;piece;1,5", "prices.csv")).toMatchObject({
    list: { prices: new Map([["connector", 1.5]]) },
  });
});

test("An accepted quote with a figure that is none is refused with line and column", () => {
  const text = "kind,item,unit,quantity,price,amount,standing\nmaterial,connector,piece,ten,1,10,firm";
  expect(readAcceptedQuote(text, "quote.csv")).toMatchObject({
    problems: [{ code: "price-list-value-wrong", values: { line: 2, column: "quantity", text: "ten" } }],
  });
});

test("Whatever stands in a file, it is a list or a problem, never a crash", () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 60 }), (text) => {
      for (const read of [readPriceList, readAcceptedQuote])
        for (const content of [text, head + text, `kind,item,unit,quantity,price,amount,standing\n${text}`]) {
          const result = read(content, "x.csv");
          if ("problems" in result) expect(result.problems.length).toBeGreaterThan(0);
        }
    }),
    { seed: 4, numRuns: 200 },
  );
});
