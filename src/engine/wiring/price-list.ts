import type { LabourKind, MaterialNeed, QuoteLine } from "./materials.ts";

/** Lines of a quote beside materials and hours, by the names that a price list calls them. */
export const quoteExtras = [
  "access equipment",
  "night work",
  "making good",
  "blanking old switches",
  "waste disposal",
  "second visit",
] as const;
export type QuoteExtra = (typeof quoteExtras)[number];

/** What a firm charges; what it did not enter is absent and stays unpriced. Money in the firm's currency. */
export interface PriceList {
  readonly currency?: string;
  /** Price of a piece or a metre by the name of the item. */
  readonly prices: ReadonlyMap<string, number>;
  /** Minutes for each kind of work, where they replace the estimates. */
  readonly minutes: Readonly<Partial<Record<LabourKind, number>>>;
  readonly hour?: number;
  /** Shares. */
  readonly overhead?: number;
  readonly tax?: number;
  readonly validity?: number;
  readonly extras: ReadonlyMap<
    QuoteExtra,
    { readonly price: number; readonly standing?: QuoteLine["standing"] }
  >;
}

export const emptyPriceList: PriceList = { prices: new Map(), minutes: {}, extras: new Map() };

/** Terms that a job sets for itself. */
export type QuoteTerms = Pick<PriceList, "hour" | "overhead" | "tax" | "validity">;

/** A price list with the terms of a job before its own. @param list - Of the firm. @param terms - Of the job. @returns The list that the job is priced by. @example Tax 0.19 in the list, 0 in the job: 0 */
export const withTerms = (list: PriceList, terms: QuoteTerms): PriceList => ({ ...list, ...terms });

/** One line of a quote with what it is counted by, so that a later one can be held against it. */
export interface QuoteItem {
  readonly kind: "material" | "labour" | "extra";
  readonly item: string;
  readonly unit: MaterialNeed["unit"] | "hour" | "sum";
  readonly quantity: number;
  readonly price: number | undefined;
  readonly amount: number | undefined;
  readonly standing: QuoteLine["standing"];
}

/** What changed in a line between the accepted quote and the plan of now. */
export interface VariationLine {
  readonly kind: QuoteItem["kind"];
  readonly item: string;
  readonly unit: QuoteItem["unit"];
  readonly accepted: number;
  readonly now: number;
  /** The accepted price where there is one: what was agreed stays agreed. */
  readonly price: number | undefined;
  readonly amount: number | undefined;
}

/**
 * A variation: what the plan of now needs more or less than the accepted quote, at the accepted prices.
 *
 * Only firm lines count on either side; a line that the accepted quote had without a price takes the price of now.
 *
 * @param accepted - Lines of the accepted quote. @param now - Lines of the plan of now.
 * @returns Lines whose quantity differs, in the order of the accepted quote, new ones last. amount = (now − accepted) · price
 * @source COMMON-PRACTICE
 * @example 4 detectors at 60 accepted, 5 now: one line, +60
 */
export function variation(
  accepted: readonly QuoteItem[],
  now: readonly QuoteItem[],
): readonly VariationLine[] {
  const firm = (items: readonly QuoteItem[]): ReadonlyMap<string, QuoteItem> =>
    new Map(
      items
        .filter(({ standing }) => standing === "firm")
        .map((item) => [`${item.kind} ${item.unit} ${item.item}`, item]),
    );
  const [before, after] = [firm(accepted), firm(now)];
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((key): readonly VariationLine[] => {
    const [old, next] = [before.get(key), after.get(key)];
    const { kind, item, unit } = (old ?? next) as QuoteItem;
    const [from, to] = [old?.quantity ?? 0, next?.quantity ?? 0];
    // A millionth: hours come back from a file rounded.
    if (Math.abs(to - from) < 1e-6) return [];
    const price = old?.price ?? next?.price;
    return [
      {
        kind,
        item,
        unit,
        accepted: from,
        now: to,
        price,
        amount: price === undefined ? undefined : Math.round((to - from) * price * 100) / 100,
      },
    ];
  });
}
