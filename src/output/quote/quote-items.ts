import {
  english,
  HARD_TO_REACH,
  labourDefaults,
  type PriceList,
  type QuoteExtra,
  type QuoteItem,
  type QuoteTotal,
  quoteExtras,
  quoteTotal,
} from "#engine";
import { csvOf } from "../csv/csv.ts";
import { labourName, materialLines } from "../materials/materials-tables.ts";
import type { PlanNeeds } from "../materials/needs.ts";

/** Lines of a quote: materials, hours, and whatever else a job takes, each firm, provisional or excluded. */
export function quoteItems(needs: PlanNeeds, list: PriceList): readonly QuoteItem[] {
  return [
    ...materialLines(needs, list).map(
      ({ item, unit, bought, price, total }): QuoteItem => ({
        kind: "material",
        item,
        unit,
        quantity: bought,
        price,
        amount: total,
        standing: "firm",
      }),
    ),
    ...(needs.unmeasured > 0
      ? [
          {
            kind: "material",
            item: `cables without a length, to be measured: ${needs.unmeasured}`,
            unit: "sum",
            quantity: 1,
            price: undefined,
            amount: undefined,
            standing: "firm",
          } as const,
        ]
      : []),
    ...labourItems(needs, list),
    ...quoteExtras.map((extra) => extraItem(extra, needs, list)),
  ];
}

function labourItems(needs: PlanNeeds, list: PriceList): readonly QuoteItem[] {
  return needs.work.map(({ kind, number, reach }): QuoteItem => {
    const minutes = list.minutes[kind] ?? labourDefaults[kind] / 60;
    const hours = Math.round(((number * minutes * (reach === "hard" ? HARD_TO_REACH : 1)) / 60) * 100) / 100;
    return {
      kind: "labour",
      item: `${labourName(kind)}${reach === "hard" ? ", above 3 m or on stairs" : ""}`,
      unit: "hour",
      quantity: hours,
      price: list.hour,
      amount: list.hour === undefined ? undefined : Math.round(hours * list.hour * 100) / 100,
      standing: "firm",
    };
  });
}

/** What the plan asks for is firm; what nobody can know before is provisional; the rest is excluded until it is priced. */
function extraItem(extra: QuoteExtra, needs: PlanNeeds, list: PriceList): QuoteItem {
  const known = list.extras.get(extra);
  const quantity = extra === "blanking old switches" ? needs.removed : 1;
  const asked: QuoteItem["standing"] =
    extra === "access equipment"
      ? needs.hard > 0
        ? "firm"
        : "excluded"
      : extra === "blanking old switches"
        ? needs.removed > 0
          ? "firm"
          : "excluded"
        : extra === "night work"
          ? "excluded"
          : "provisional";
  const standing =
    known?.standing ?? (asked === "excluded" && known !== undefined && quantity > 0 ? "firm" : asked);
  return {
    kind: "extra",
    item: extra,
    unit: "sum",
    quantity,
    price: known?.price,
    amount: known === undefined ? undefined : Math.round(known.price * quantity * 100) / 100,
    standing,
  };
}

/** Sums of a quote at a firm's rates; overhead and tax that nobody entered are nought, and the quote says so. */
export const totalOf = (items: readonly QuoteItem[], list: PriceList): QuoteTotal =>
  quoteTotal(
    items.map(({ item, amount, standing }) => ({ text: item, amount, standing })),
    { overhead: list.overhead ?? 0, tax: list.tax ?? 0 },
  );

/** The lines for a spreadsheet, and for holding a later plan against: `pack --accepted` takes it back. */
export const quoteCsv = (items: readonly QuoteItem[]): string =>
  csvOf(
    [
      ["kind", "item", "unit", "quantity", "price", "amount", "standing"],
      ...items.map(({ kind, item, unit, quantity, price, amount, standing }) => [
        kind,
        item,
        unit,
        quantity,
        price ?? "",
        amount ?? "",
        standing,
      ]),
    ],
    english,
  );
