import { type PriceList, type QuoteItem, sources, type VariationLine, type Words } from "#engine";
import { csvOf } from "../csv/csv.ts";
import { ink, muted } from "../drawing/ink.ts";
import { broken } from "../drawing/lettering.ts";
import type { Mark, Millimetres } from "../drawing/mark.ts";
import { type SheetTitle, titleBlockSize } from "../drawing/title-block.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import type { Column } from "../setting-out/table.ts";
import { line, words } from "../wiring/symbols.ts";
import { tableSheets, uprightFrame, uprightFrameMarks, uprightSize } from "../wiring/table-sheets.ts";
import { totalOf } from "./quote-items.ts";

export interface QuoteInput {
  readonly items: readonly QuoteItem[];
  readonly list: PriceList;
  readonly title: (sheet: Words) => Omit<SheetTitle, "page" | "pages">;
  /** Items that nobody can order. */
  readonly invented: ReadonlySet<string>;
}

const always = [
  "work on the installation before the boards, and faults of the existing one that come to light",
  "work in materials that contain asbestos",
  "painting, unless it is named above",
] as const;

const column = (head: string, width: number, align: Column["align"] = "start"): Column => ({
  head,
  width,
  align,
});

/** Money with two decimals; what has no price says so. */
const money = (amount: number | undefined): string =>
  amount === undefined ? "not priced" : amount.toFixed(2);

/** A quote: a page of sums to sign, then its lines. */
export function quoteSheets(input: QuoteInput): readonly UnnumberedSheet[] {
  const { items, list, title } = input;
  const currency = list.currency ?? "";
  const lines = tableSheets({
    name: "quote-lines",
    heading: "Quote, lines",
    title: title("Quote"),
    table: {
      columns: [
        column("", 22),
        column("Item", 70),
        column("Quantity", 22, "end"),
        column("Unit", 14),
        column(`Price ${currency}`.trim(), 26, "end"),
        column(`Amount ${currency}`.trim(), 26, "end"),
      ],
      rows: items.map(({ kind, item, quantity, unit, price, amount, standing }) => [
        standing === "firm" ? kind : standing,
        item,
        String(quantity),
        unit,
        standing === "excluded" ? "" : money(price),
        standing === "excluded" ? "" : money(amount),
      ]),
    },
    notes: [
      `Quantities with spare and waste: pieces a twentieth, metres a tenth. Minutes that the firm has not entered are estimates${sources["LABOUR-MINUTES"].verify ? ": verify" : ""}. Existing cables that can stay are not taken off.`,
    ],
  });
  return [(page, pages) => signPage(input, page, pages), ...lines];
}

function signPage(input: QuoteInput, page: number, pages: number): ReturnType<UnnumberedSheet> {
  const { items, list, title, invented } = input;
  const total = totalOf(items, list);
  const currency = list.currency ? ` ${list.currency}` : "";
  // A sum in which something is missing is no sum.
  const whole = (amount: number): string =>
    total.unpriced.length > 0 ? "not complete" : `${amount.toFixed(2)}${currency}`;
  const left = uprightFrame.left + 6;
  const right = uprightFrame.right - 6;
  const marks: Mark[] = [];
  let y: Millimetres = uprightFrame.top + 10;
  const say = (text: string, weight: "regular" | "semibold" = "regular"): void => {
    for (const part of broken(text, right - left, 2.5)) {
      marks.push(words([left, y], part, { weight }));
      y += 4.2;
    }
  };
  const sum = (text: string, amount: string, weight: "regular" | "semibold" = "regular"): void => {
    marks.push(words([left, y], text, { weight }), words([right, y], amount, { weight, anchor: "end" }));
    y += 5.4;
  };
  marks.push(words([left, y], "Quote", { size: 5, weight: "semibold" }));
  y += 8;
  say(
    `For ${title("").client || "……………………"}: lighting presence detectors, ${title("").site || title("").job}. Lines on the following pages.`,
  );
  y += 3;
  for (const kind of ["material", "labour", "extra"] as const) {
    const own = items.filter((item) => item.kind === kind && item.standing === "firm");
    const known = own.reduce((all, { amount }) => all + (amount ?? 0), 0);
    const open = own.filter(({ amount }) => amount === undefined).length;
    sum(
      { material: "Materials", labour: "Work", extra: "Other firm lines" }[kind],
      open === 0
        ? `${known.toFixed(2)}${currency}`
        : known === 0
          ? `${open} not priced`
          : `${known.toFixed(2)}${currency}, ${open} not priced`,
    );
  }
  sum(rate("Overhead", list.overhead), whole(total.overhead));
  marks.push(line([left, y - 3.6], [right, y - 3.6], { width: 0.25, colour: ink }));
  y += 1;
  sum("Net", whole(total.net), "semibold");
  sum(rate("Tax", list.tax), whole(total.tax));
  sum("Total", whole(total.gross), "semibold");
  y += 4;
  say("Provisional, charged by what it turns out to be; not in the total", "semibold");
  for (const { item, amount } of items.filter(({ standing }) => standing === "provisional"))
    sum(item, amount === undefined ? "not priced" : `${amount.toFixed(2)}${currency}`);
  y += 3;
  say("Not included", "semibold");
  say(
    `${[...items.filter(({ standing }) => standing === "excluded").map(({ item }) => item), ...always].join("; ")}.`,
  );
  y += 3;
  say(
    list.validity === undefined
      ? "Valid until ……………………"
      : `Valid for ${list.validity} days from the date below.`,
  );
  y += 5;
  if (total.unpriced.length > 0) {
    say("Not ready to be signed", "semibold");
    say(`${total.unpriced.length} firm lines have no price: ${shortened(total.unpriced)}.`);
    if (invented.size > 0)
      say(`Invented models cannot be ordered: ${shortened([...invented])}. Choose real ones.`);
  } else marks.push(...signatures(left, right, uprightFrame.bottom - titleBlockSize[1] - 12));
  return {
    name: "quote",
    title: `${title("").job}: Quote`,
    width: uprightSize[0],
    height: uprightSize[1],
    marks: [...marks, ...uprightFrameMarks({ ...title("Quote"), page, pages }, undefined)],
  };
}

const rate = (text: string, share: number | undefined): string =>
  share === undefined ? `${text}, not entered` : `${text} ${Math.round(share * 10_000) / 100} %`;

const shortened = (names: readonly string[]): string =>
  names.length > 4 ? `${names.slice(0, 4).join(", ")} and ${names.length - 4} more` : names.join(", ");

/** Two lines to sign on. */
const signatures = (left: Millimetres, right: Millimetres, y: Millimetres): readonly Mark[] => {
  const middle = (left + right) / 2;
  return [
    line([left, y], [middle - 6, y], { width: 0.25, colour: ink }),
    words([left, y + 4], "Offered: place, date, signature", { colour: muted }),
    line([middle + 6, y], [right, y], { width: 0.25, colour: ink }),
    words([middle + 6, y + 4], "Accepted: place, date, signature", { colour: muted }),
  ];
};

/** What changed against the accepted quote, priced. */
export function variationSheets(input: {
  readonly lines: readonly VariationLine[];
  readonly list: PriceList;
  readonly title: (sheet: Words) => Omit<SheetTitle, "page" | "pages">;
}): readonly UnnumberedSheet[] {
  const { lines, list, title } = input;
  const open = lines.filter(({ amount }) => amount === undefined).length;
  const net = lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  const overhead = Math.round(net * (list.overhead ?? 0) * 100) / 100;
  const tax = Math.round((net + overhead) * (list.tax ?? 0) * 100) / 100;
  const last = (text: string, amount: number): readonly string[] => [
    "sum",
    text,
    "",
    "",
    "",
    "",
    amount.toFixed(2),
  ];
  return tableSheets({
    name: "variation",
    heading: "Variation to the accepted quote",
    title: title("Variation"),
    table: {
      columns: [
        column("", 20),
        column("Item", 62),
        column("Unit", 14),
        column("Accepted", 20, "end"),
        column("Now", 18, "end"),
        column("Price", 22, "end"),
        column("Difference", 24, "end"),
      ],
      rows:
        lines.length === 0
          ? [["", "nothing has changed", "", "", "", "", "0.00"]]
          : [
              ...lines.map(({ kind, item, unit, accepted, now, price, amount }) => [
                kind,
                item,
                unit,
                String(accepted),
                String(now),
                money(price),
                money(amount),
              ]),
              last(rate("Overhead", list.overhead), overhead),
              last(rate("Tax", list.tax), tax),
              last("Total", Math.round((net + overhead + tax) * 100) / 100),
            ],
    },
    notes: [
      `At the accepted prices where there are any, otherwise at those of now. ${open > 0 ? `${open} lines have no price and are in no sum.` : ""}`.trim(),
      "Accepted: place, date, signature ……………………………………………………………………",
    ],
  });
}

export const variationCsv = (lines: readonly VariationLine[]): string =>
  csvOf([
    ["kind", "item", "unit", "accepted", "now", "price", "difference"],
    ...lines.map(({ kind, item, unit, accepted, now, price, amount }) => [
      kind,
      item,
      unit,
      accepted,
      now,
      price ?? "",
      amount ?? "",
    ]),
  ]);
