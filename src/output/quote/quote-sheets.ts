import {
  figured,
  joined,
  type PriceList,
  type QuoteItem,
  type Said,
  say,
  sources,
  type VariationLine,
  type Words,
} from "#engine";
import { csvOf } from "../csv/csv.ts";
import { ink, muted } from "../drawing/ink.ts";
import { broken } from "../drawing/lettering.ts";
import type { Mark, Millimetres } from "../drawing/mark.ts";
import { type SheetTitle, titleBlockSize } from "../drawing/title-block.ts";
import { itemWords, unitWords } from "../materials/item-words.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import type { Column } from "../setting-out/table.ts";
import { line, words } from "../wiring/symbols.ts";
import { tableSheets, uprightFrame, uprightFrameMarks, uprightSize } from "../wiring/table-sheets.ts";
import type { Speak } from "../words/speak.ts";
import { totalOf } from "./quote-items.ts";

export interface QuoteInput {
  readonly items: readonly QuoteItem[];
  readonly list: PriceList;
  readonly title: (sheet: Words) => Omit<SheetTitle, "page" | "pages">;
  /** Items that nobody can order. */
  readonly invented: ReadonlySet<string>;
}

const always = [
  say`work on the installation before the boards, and faults of the existing one that come to light`,
  say`work in materials that contain asbestos`,
  say`painting, unless it is named above`,
] as const;

const column = (head: Words, width: number, align: Column["align"] = "start"): Column => ({
  head,
  width,
  align,
});

/** Money with two decimals; what has no price says so. */
const money = (amount: number | undefined): Said =>
  amount === undefined ? say`not priced` : figured(amount.toFixed(2));

const kindWords: Readonly<Record<QuoteItem["kind"], Said>> = {
  material: say`material`,
  labour: say`labour`,
  extra: say`extra`,
};

const standingWords: Readonly<Record<QuoteItem["standing"], Said>> = {
  firm: say`firm`,
  provisional: say`provisional`,
  excluded: say`excluded`,
};

/** A quote: a page of sums to sign, then its lines. */
export function quoteSheets(input: QuoteInput): readonly UnnumberedSheet[] {
  const { items, list, title } = input;
  const currency = list.currency ?? "";
  const lines = tableSheets({
    name: "quote-lines",
    heading: say`Quote, lines`,
    title: title(say`Quote`),
    table: {
      columns: [
        column("", 22),
        column(say`Item`, 70),
        column(say`Quantity`, 22, "end"),
        column(say`Unit`, 14),
        column(priceHead(currency), 26, "end"),
        column(amountHead(currency), 26, "end"),
      ],
      rows: items.map(({ kind, item, quantity, unit, price, amount, standing }) => [
        standing === "firm" ? kindWords[kind] : standingWords[standing],
        itemWords(item),
        figured(String(quantity)),
        unitWords[unit],
        standing === "excluded" ? "" : money(price),
        standing === "excluded" ? "" : money(amount),
      ]),
    },
    notes: [
      sources["LABOUR-MINUTES"].verify
        ? say`Quantities with spare and waste: pieces a twentieth, metres a tenth. Minutes that the firm has not entered are estimates: verify. Existing cables that can stay are not taken off.`
        : say`Quantities with spare and waste: pieces a twentieth, metres a tenth. Minutes that the firm has not entered are estimates. Existing cables that can stay are not taken off.`,
    ],
  });
  return [(page, pages) => signPage(input, page, pages), ...lines];
}

const priceHead = (currency: string): Said => (currency === "" ? say`Price` : say`Price ${currency}`);
const amountHead = (currency: string): Said => (currency === "" ? say`Amount` : say`Amount ${currency}`);

function signPage(input: QuoteInput, page: number, pages: number): ReturnType<UnnumberedSheet> {
  const { items, list, title, invented } = input;
  const { speak } = title("");
  const total = totalOf(items, list);
  const inCurrency = (amount: number): Said =>
    figured([amount.toFixed(2), list.currency].filter(Boolean).join(" "));
  // A sum in which something is missing is no sum.
  const whole = (amount: number): Said =>
    total.unpriced.length > 0 ? say`not complete` : inCurrency(amount);
  const left = uprightFrame.left + 6;
  const right = uprightFrame.right - 6;
  const marks: Mark[] = [];
  let y: Millimetres = uprightFrame.top + 10;
  const paragraph = (text: Words, weight: "regular" | "semibold" = "regular"): void => {
    for (const part of broken(speak(text), right - left, 2.5)) {
      marks.push(words([left, y], part, { weight }));
      y += 4.2;
    }
  };
  const sum = (text: Words, amount: Words, weight: "regular" | "semibold" = "regular"): void => {
    marks.push(
      words([left, y], speak(text), { weight }),
      words([right, y], speak(amount), { weight, anchor: "end" }),
    );
    y += 5.4;
  };
  marks.push(words([left, y], speak(say`Quote`), { size: 5, weight: "semibold" }));
  y += 8;
  paragraph(
    say`For ${title("").client || "……………………"}: lighting presence detectors, ${title("").site || title("").job}. Lines on the following pages.`,
  );
  y += 3;
  for (const kind of ["material", "labour", "extra"] as const) {
    const own = items.filter((item) => item.kind === kind && item.standing === "firm");
    const known = own.reduce((all, { amount }) => all + (amount ?? 0), 0);
    const open = own.filter(({ amount }) => amount === undefined).length;
    sum(
      { material: say`Materials`, labour: say`Work`, extra: say`Other firm lines` }[kind],
      open === 0
        ? inCurrency(known)
        : known === 0
          ? say`${open} not priced`
          : say`${inCurrency(known)}, ${open} not priced`,
    );
  }
  sum(overheadWords(list.overhead), whole(total.overhead));
  marks.push(line([left, y - 3.6], [right, y - 3.6], { width: 0.25, colour: ink }));
  y += 1;
  sum(say`Net`, whole(total.net), "semibold");
  sum(taxWords(list.tax), whole(total.tax));
  sum(say`Total`, whole(total.gross), "semibold");
  y += 4;
  paragraph(say`Provisional, charged by what it turns out to be; not in the total`, "semibold");
  for (const { item, amount } of items.filter(({ standing }) => standing === "provisional"))
    sum(itemWords(item), amount === undefined ? say`not priced` : inCurrency(amount));
  y += 3;
  paragraph(say`Not included`, "semibold");
  paragraph(
    joined(
      [
        joined(
          [
            ...items.filter(({ standing }) => standing === "excluded").map(({ item }) => itemWords(item)),
            ...always,
          ],
          "; ",
        ),
        ".",
      ],
      "",
    ),
  );
  y += 3;
  paragraph(
    list.validity === undefined
      ? say`Valid until ……………………`
      : say`Valid for ${list.validity} days from the date below.`,
  );
  y += 5;
  if (total.unpriced.length > 0) {
    paragraph(say`Not ready to be signed`, "semibold");
    paragraph(say`${total.unpriced.length} firm lines have no price: ${shortened(total.unpriced)}.`);
    if (invented.size > 0)
      paragraph(say`Invented models cannot be ordered: ${shortened([...invented])}. Choose real ones.`);
  } else marks.push(...signatures({ left, right, y: uprightFrame.bottom - titleBlockSize[1] - 12, speak }));
  return {
    name: "quote",
    title: `${title("").job}: ${speak(say`Quote`)}`,
    width: uprightSize[0],
    height: uprightSize[1],
    marks: [...marks, ...uprightFrameMarks({ ...title(say`Quote`), page, pages }, undefined)],
  };
}

const percent = (share: number): number => Math.round(share * 10_000) / 100;
const overheadWords = (share: number | undefined): Said =>
  share === undefined ? say`Overhead, not entered` : say`Overhead ${percent(share)} %`;
const taxWords = (share: number | undefined): Said =>
  share === undefined ? say`Tax, not entered` : say`Tax ${percent(share)} %`;

function shortened(names: readonly string[]): Said {
  const items = names.map(itemWords);
  return items.length > 4
    ? say`${joined(items.slice(0, 4), ", ")} and ${items.length - 4} more`
    : joined(items, ", ");
}

/** Two lines to sign on. */
const signatures = ({
  left,
  right,
  y,
  speak,
}: {
  readonly left: Millimetres;
  readonly right: Millimetres;
  readonly y: Millimetres;
  readonly speak: Speak;
}): readonly Mark[] => {
  const middle = (left + right) / 2;
  return [
    line([left, y], [middle - 6, y], { width: 0.25, colour: ink }),
    words([left, y + 4], speak(say`Offered: place, date, signature`), { colour: muted }),
    line([middle + 6, y], [right, y], { width: 0.25, colour: ink }),
    words([middle + 6, y + 4], speak(say`Accepted: place, date, signature`), { colour: muted }),
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
  const last = (text: Words, amount: number): readonly Words[] => [
    say`total`,
    text,
    "",
    "",
    "",
    "",
    figured(amount.toFixed(2)),
  ];
  return tableSheets({
    name: "variation",
    heading: say`Variation to the accepted quote`,
    title: title(say`Variation`),
    table: {
      columns: [
        column("", 20),
        column(say`Item`, 62),
        column(say`Unit`, 14),
        column(say`Accepted`, 20, "end"),
        column(say`Now`, 18, "end"),
        column(say`Price`, 22, "end"),
        column(say`Difference`, 24, "end"),
      ],
      rows:
        lines.length === 0
          ? [["", say`nothing has changed`, "", "", "", "", figured("0.00")]]
          : [
              ...lines.map(({ kind, item, unit, accepted, now, price, amount }) => [
                kindWords[kind],
                itemWords(item),
                unitWords[unit],
                figured(String(accepted)),
                figured(String(now)),
                money(price),
                money(amount),
              ]),
              last(overheadWords(list.overhead), overhead),
              last(taxWords(list.tax), tax),
              last(say`Total`, Math.round((net + overhead + tax) * 100) / 100),
            ],
    },
    notes: [
      joined(
        [
          say`At the accepted prices where there are any, otherwise at those of now.`,
          ...(open > 0 ? [say`${open} lines have no price and are in no sum.`] : []),
        ],
        " ",
      ),
      joined([say`Accepted: place, date, signature`, "……………………………………………………………………"], " "),
    ],
  });
}

export const variationCsv = (lines: readonly VariationLine[], speak: Speak): string =>
  csvOf(
    [
      [say`kind`, say`item`, say`unit`, say`accepted`, say`now`, say`price`, say`difference`],
      ...lines.map(({ kind, item, unit, accepted, now, price, amount }) => [
        kindWords[kind],
        itemWords(item),
        unitWords[unit],
        accepted,
        now,
        price ?? "",
        amount ?? "",
      ]),
    ],
    speak,
  );
