import {
  emptyPriceList,
  type PriceList,
  type Problem,
  type QuoteItem,
  type QuoteTerms,
  withTerms,
} from "#engine";
import { readAcceptedQuote } from "./read-accepted-quote.ts";
import { readPriceList } from "./read-price-list.ts";

/** A file as it was read, with its name for the sentences. */
export interface OfferFile {
  readonly file: string;
  readonly text: string;
}

/** What a job is priced by; nothing of it where nobody gave a list, a quote or terms. */
export interface Offer {
  readonly prices?: PriceList;
  /** Lines of the accepted quote. */
  readonly accepted?: readonly QuoteItem[];
}

/**
 * Reads what a job is priced by: the firm's list, the terms of the job before those of the list, and the quote that was accepted.
 *
 * @returns The offer, or everything that is wrong with the two files.
 * @example Terms alone: an empty list with these terms
 */
export function readOffer(from: {
  readonly priceList?: OfferFile | undefined;
  readonly acceptedQuote?: OfferFile | undefined;
  readonly quoteTerms?: QuoteTerms | undefined;
}): Offer | { readonly problems: readonly Problem[] } {
  const { priceList, acceptedQuote, quoteTerms } = from;
  if (!priceList && !acceptedQuote && !quoteTerms) return {};
  const list = priceList ? readPriceList(priceList.text, priceList.file) : { list: emptyPriceList };
  const quote = acceptedQuote && readAcceptedQuote(acceptedQuote.text, acceptedQuote.file);
  if ("problems" in list || (quote && "problems" in quote))
    return {
      problems: [
        ...("problems" in list ? list.problems : []),
        ...(quote && "problems" in quote ? quote.problems : []),
      ],
    };
  return {
    prices: withTerms(list.list, quoteTerms ?? {}),
    ...(quote ? { accepted: quote.items } : {}),
  };
}
