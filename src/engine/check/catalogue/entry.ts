/** The only three severities anywhere. */
export type Severity = "must" | "should" | "note";

/** One permanent entry of the problem catalogue. {names} are filled from the problem's values. */
export interface CatalogueEntry {
  readonly severity: Severity;
  readonly message: string;
  readonly remedy: string;
}
