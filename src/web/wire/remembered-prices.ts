import type { JobDetails } from "#job";

type PriceFile = NonNullable<JobDetails["priceList"]>;

const storageKey = "roomwake-price-list";

/** The price list that was taken last in this browser, for the next job; undefined where none was. */
export function rememberedPrices(): PriceFile | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(storageKey) ?? "null");
    if (typeof kept !== "object" || kept === null) return undefined;
    const { file, text } = kept as Partial<PriceFile>;
    return typeof file === "string" && typeof text === "string" ? { file, text } : undefined;
  } catch {
    return undefined;
  }
}

/** Keeps a price list for the next job. */
export function rememberPrices({ file, text }: PriceFile): void {
  try {
    localStorage.setItem(storageKey, JSON.stringify({ file, text }));
  } catch {
    // No storage in this window, or no room in it: the list stays in this job alone.
  }
}
