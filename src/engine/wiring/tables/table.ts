import type { SourceId } from "../../source/index.ts";

/** A table of a standard as data: its rows, where they come from, and whether they were seen or remembered. */
export interface Table<Row> {
  readonly source: SourceId;
  /** seen: in a public text, when this was compiled · from-memory: shown as "verify" · derived: computed here. */
  readonly certainty: "seen" | "from-memory" | "derived" | "common-practice";
  readonly rows: Row;
}
