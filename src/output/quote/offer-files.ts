import { emptyPriceList, type PriceList, type QuoteItem, type Site, variation, type Words } from "#engine";
import type { SheetTitle } from "../drawing/title-block.ts";
import { materialsCsv, materialsXlsx, priceListCsv } from "../materials/materials-tables.ts";
import { needsOf } from "../materials/needs.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import type { WiringPlan } from "../wiring/plan.ts";
import { quoteCsv, quoteItems } from "./quote-items.ts";
import { quoteSheets, variationCsv, variationSheets } from "./quote-sheets.ts";

/** Materials list, price list to fill in, quote, and the variation against an accepted one. */
export async function offerFiles(input: {
  readonly site: Site;
  readonly plan: WiringPlan | undefined;
  readonly list: PriceList | undefined;
  readonly accepted: readonly QuoteItem[] | undefined;
  readonly title: (sheet: Words) => Omit<SheetTitle, "page" | "pages">;
}): Promise<{
  readonly documents: readonly { readonly name: string; readonly sheets: readonly UnnumberedSheet[] }[];
  readonly tables: readonly { readonly name: string; readonly content: string | Uint8Array }[];
}> {
  const { title, accepted, list = emptyPriceList } = input;
  const { speak } = title("");
  const needs = needsOf(input.site, input.plan);
  const items = quoteItems(needs, list);
  const changed = accepted && variation(accepted, items);
  return {
    documents: [
      { name: "quote", sheets: quoteSheets({ items, list, title, invented: needs.invented }) },
      ...(changed ? [{ name: "variation", sheets: variationSheets({ lines: changed, list, title }) }] : []),
    ],
    tables: [
      { name: "materials.csv", content: materialsCsv(needs, list, speak) },
      { name: "materials.xlsx", content: await materialsXlsx(needs, list, speak) },
      { name: "price-list.csv", content: priceListCsv(needs, list) },
      { name: "quote.csv", content: quoteCsv(items) },
      ...(changed ? [{ name: "variation.csv", content: variationCsv(changed, speak) }] : []),
    ],
  };
}
