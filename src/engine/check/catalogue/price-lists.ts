import type { CatalogueEntry } from "./entry.ts";

/** What can be wrong with a price list or an accepted quote. */
export const priceListProblems = {
  "price-list-column-missing": {
    severity: "must",
    message: "{file} has no column “{column}”; its header in line {line} has {found}.",
    remedy: "Write the header as the pack's own file has it.",
  },
  "price-list-value-wrong": {
    severity: "must",
    message: "{file}, line {line}, column “{column}”: “{text}” is not {what}.",
    remedy: "Mend the cell; leave a price empty where it is not known yet.",
  },
  "price-list-item-twice": {
    severity: "must",
    message: "{file}, line {line}, column “{column}”: {item} stands in line {first} already.",
    remedy: "Keep one of the two lines.",
  },
  "price-list-quote-open": {
    severity: "must",
    message: "{file}: a quote that opens in line {line} never closes.",
    remedy: "Close the quote.",
  },
  "price-list-row-width": {
    severity: "must",
    message: "{file}, line {line} has {found} cells; the header has {expected}.",
    remedy: "Put a cell that holds the separator in quotes.",
  },
} as const satisfies Record<string, CatalogueEntry>;
