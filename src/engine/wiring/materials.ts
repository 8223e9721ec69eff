import type { Seconds } from "../quantity/index.ts";

/** One kind of thing that is bought, by a neutral name. */
export interface MaterialNeed {
  readonly item: string;
  readonly unit: "piece" | "metre";
  readonly quantity: number;
}

export interface MaterialLine extends MaterialNeed {
  /** With spare and waste: whole pieces, whole metres. */
  readonly bought: number;
  readonly price: number | undefined;
  readonly total: number | undefined;
}

/** Shares in addition to what is needed; editable estimates of the trade. */
export const spareShares: Readonly<Record<MaterialNeed["unit"], number>> = { piece: 0.05, metre: 0.1 };

/**
 * Materials list: equal items together, spare and waste added, prices looked up.
 *
 * @param needs - What the plan needs. @param prices - Price by item in the job's currency. @param spare - Shares by unit.
 * @returns One line for each item, in order of first need; a missing price stays unknown.
 * @source COMMON-PRACTICE
 * @example 21 boxes with 5 % spare: 22.05, so 23 are bought
 */
export function materialsList(
  needs: readonly MaterialNeed[],
  prices: ReadonlyMap<string, number>,
  spare: Readonly<Record<MaterialNeed["unit"], number>> = spareShares,
): readonly MaterialLine[] {
  const sums = new Map<string, MaterialNeed>();
  for (const need of needs) {
    const key = `${need.unit} ${need.item}`;
    sums.set(key, { ...need, quantity: (sums.get(key)?.quantity ?? 0) + need.quantity });
  }
  return [...sums.values()].map((need) => {
    // A billionth: 20 · 1.05 is 21 and not a hair more.
    const bought = Math.ceil(need.quantity * (1 + spare[need.unit]) - 1e-9);
    const price = prices.get(need.item);
    return { ...need, bought, price, total: price === undefined ? undefined : cents(bought * price) };
  });
}

/** Work that takes time, with its number. */
export type LabourKind =
  | "fit-detector"
  | "set-detector"
  | "test-detector"
  | "surface-cable"
  | "test-circuit"
  | "branch-box";

/** Estimates in seconds per item or metre; a firm replaces them with its own. */
export const labourDefaults: Readonly<Record<LabourKind, Seconds>> = {
  "fit-detector": 25 * 60,
  "set-detector": 5 * 60,
  "test-detector": 15 * 60,
  "surface-cable": 4 * 60,
  "test-circuit": 30 * 60,
  "branch-box": 15 * 60,
};

/** Work above 3 m or on stairs takes this many times as long. */
export const HARD_TO_REACH = 1.5;

/**
 * Working time.
 *
 * @param work - Kind, number of items or metres, and whether above 3 m or on stairs. @param per - Seconds for each kind.
 * @returns Time. [s]
 * @source LABOUR-MINUTES
 * @example One detector fitted, set and tested: 45 min; above 3 m 67.5 min
 */
export const labourTime = (
  work: readonly { readonly kind: LabourKind; readonly number: number; readonly reach?: "easy" | "hard" }[],
  per: Readonly<Record<LabourKind, Seconds>> = labourDefaults,
): Seconds =>
  work.reduce(
    (sum, { kind, number, reach }) => sum + per[kind] * number * (reach === "hard" ? HARD_TO_REACH : 1),
    0,
  );

/** Line of a quote. Provisional items are priced, and left out of the sum that is signed. */
export interface QuoteLine {
  readonly text: string;
  readonly amount: number | undefined;
  readonly standing: "firm" | "provisional" | "excluded";
}

export interface QuoteTotal {
  readonly firm: number;
  readonly overhead: number;
  readonly net: number;
  readonly tax: number;
  readonly gross: number;
  readonly provisional: number;
  /** Firm lines without a price: the quote cannot be signed while there are any. */
  readonly unpriced: readonly string[];
}

/**
 * Sum of a quote: overhead on the firm lines, tax on the net sum, each rounded to cents once.
 *
 * @param lines - Of the quote. @param rates - Overhead and tax as shares.
 * @returns Sums in the job's currency.
 * @source COMMON-PRACTICE
 * @example 1000 with 10 % overhead and 20 % tax: 1100 net, 1320 gross
 */
export function quoteTotal(
  lines: readonly QuoteLine[],
  rates: { readonly overhead: number; readonly tax: number },
): QuoteTotal {
  const sum = (standing: QuoteLine["standing"]): number =>
    cents(
      lines.filter((line) => line.standing === standing).reduce((all, line) => all + (line.amount ?? 0), 0),
    );
  const firm = sum("firm");
  const overhead = cents(firm * rates.overhead);
  const net = cents(firm + overhead);
  const tax = cents(net * rates.tax);
  return {
    firm,
    overhead,
    net,
    tax,
    gross: cents(net + tax),
    provisional: sum("provisional"),
    unpriced: lines
      .filter(({ standing, amount }) => standing === "firm" && amount === undefined)
      .map(({ text }) => text),
  };
}

const cents = (amount: number): number => Math.round(amount * 100 + 1e-7) / 100;
