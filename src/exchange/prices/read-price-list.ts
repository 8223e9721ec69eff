import {
  type LabourKind,
  labourDefaults,
  type PriceList,
  type Problem,
  type QuoteExtra,
  quoteExtras,
  say,
  type Words,
} from "#engine";
import { numberOf, type TableRow, tableOf } from "./table.ts";

const units = ["piece", "metre", "hour", "minute", "sum", "%", "day", "text"] as const;
type Unit = (typeof units)[number];
const standings = ["firm", "provisional", "excluded"] as const;

export type PriceListResult = { readonly list: PriceList } | { readonly problems: readonly Problem[] };

/** Names of the work that minutes stand for, as a price list writes them. @example "fit detector" is "fit-detector" */
export const labourOf = (words: string): LabourKind | undefined => {
  const kind = words.trim().toLowerCase().replaceAll(" ", "-");
  return kind in labourDefaults ? (kind as LabourKind) : undefined;
};

/**
 * A firm's price list from CSV: columns item, unit, price, and if it likes standing (firm, provisional, excluded).
 *
 * Units: piece and metre for materials, hour for "working hour", minute for kinds of work, sum for the other lines of a quote, % for
 * "overhead" and "tax", day for "validity", text for "currency". An empty price is one that nobody knows yet.
 *
 * @param file - Name for the sentences.
 */
export function readPriceList(text: string, file: string): PriceListResult {
  const table = tableOf(text, file, ["item", "unit", "price"]);
  if ("problems" in table) return table;
  const problems: Problem[] = [];
  const first = new Map<string, number>();
  const prices = new Map<string, number>();
  const extras = new Map<QuoteExtra, { price: number; standing?: (typeof standings)[number] }>();
  const minutes: Partial<Record<LabourKind, number>> = {};
  let single: Pick<PriceList, "currency" | "hour" | "overhead" | "tax" | "validity"> = {};
  const wrong = (row: TableRow, column: string, what: Words): void => {
    problems.push({
      code: "price-list-value-wrong",
      values: { file, line: row.line, column, text: row.cell(column), what },
    });
  };
  for (const row of table.rows) {
    const item = row.cell("item");
    const unit = row.cell("unit").toLowerCase() as Unit;
    if (item === "") {
      wrong(row, "item", say`the name of an item`);
      continue;
    }
    if (!units.includes(unit)) {
      wrong(row, "unit", say`one of ${units.join(", ")}`);
      continue;
    }
    const key = `${unit} ${item.toLowerCase()}`;
    const before = first.get(key);
    if (before !== undefined) {
      problems.push({
        code: "price-list-item-twice",
        values: { file, line: row.line, column: "item", item, first: before },
      });
      continue;
    }
    first.set(key, row.line);
    const written = row.cell("price");
    if (written === "") continue;
    if (unit === "text") {
      if (item.toLowerCase() === "currency") single = { ...single, currency: written };
      else wrong(row, "item", "“currency”");
      continue;
    }
    const price = numberOf(written);
    if (price === undefined || price < 0) {
      wrong(row, "price", say`a number from nought up`);
      continue;
    }
    const name = item.toLowerCase();
    switch (unit) {
      case "piece":
      case "metre":
        prices.set(item, price);
        break;
      case "hour":
        if (name === "working hour") single = { ...single, hour: price };
        else wrong(row, "item", "“working hour”");
        break;
      case "minute": {
        const kind = labourOf(item);
        if (kind) minutes[kind] = price;
        else wrong(row, "item", say`one of ${Object.keys(labourDefaults).join(", ").replaceAll("-", " ")}`);
        break;
      }
      case "sum": {
        const extra = quoteExtras.find((one) => one === name);
        const standing = row.cell("standing").toLowerCase();
        if (!extra) wrong(row, "item", say`one of ${quoteExtras.join(", ")}`);
        else if (standing !== "" && !standings.some((one) => one === standing))
          wrong(row, "standing", say`one of ${standings.join(", ")}`);
        else
          extras.set(extra, {
            price,
            ...(standing === "" ? {} : { standing: standing as (typeof standings)[number] }),
          });
        break;
      }
      case "%":
        if (name === "overhead" || name === "tax") single = { ...single, [name]: price / 100 };
        else wrong(row, "item", say`“overhead” or “tax”`);
        break;
      case "day":
        if (name === "validity") single = { ...single, validity: price };
        else wrong(row, "item", "“validity”");
        break;
    }
  }
  return problems.length > 0 ? { problems } : { list: { ...single, prices, minutes, extras } };
}
