import { type Problem, type QuoteItem, say, type Words } from "#engine";
import { numberOf, type TableRow, tableOf } from "./table.ts";

const kinds = ["material", "labour", "extra"] as const;
const units = ["piece", "metre", "hour", "sum"] as const;
const standings = ["firm", "provisional", "excluded"] as const;

/**
 * The lines of a quote that was accepted, from the quote.csv of a pack.
 *
 * @param file - Name for the sentences.
 */
export function readAcceptedQuote(
  text: string,
  file: string,
): { readonly items: readonly QuoteItem[] } | { readonly problems: readonly Problem[] } {
  const table = tableOf(text, file, ["kind", "item", "unit", "quantity", "price", "amount", "standing"]);
  if ("problems" in table) return table;
  const problems: Problem[] = [];
  const oneOf = <Word extends string>(
    row: TableRow,
    column: string,
    words: readonly Word[],
  ): Word | undefined => {
    const found = words.find((word) => word === row.cell(column).toLowerCase());
    if (found === undefined) wrong(row, column, say`one of ${words.join(", ")}`);
    return found;
  };
  const wrong = (row: TableRow, column: string, what: Words): void => {
    problems.push({
      code: "price-list-value-wrong",
      values: { file, line: row.line, column, text: row.cell(column), what },
    });
  };
  const amountOf = (row: TableRow, column: string): number | undefined => {
    const written = row.cell(column);
    if (written === "") return undefined;
    const amount = numberOf(written);
    if (amount === undefined) wrong(row, column, say`a number`);
    return amount;
  };
  const items = table.rows.flatMap((row): readonly QuoteItem[] => {
    const kind = oneOf(row, "kind", kinds);
    const unit = oneOf(row, "unit", units);
    const standing = oneOf(row, "standing", standings);
    const quantity = amountOf(row, "quantity");
    if (quantity === undefined && row.cell("quantity") === "") wrong(row, "quantity", say`a number`);
    const [price, amount] = [amountOf(row, "price"), amountOf(row, "amount")];
    if (kind === undefined || unit === undefined || standing === undefined || quantity === undefined)
      return [];
    return [{ kind, item: row.cell("item"), unit, quantity, price, amount, standing }];
  });
  return problems.length > 0 ? { problems } : { items };
}
