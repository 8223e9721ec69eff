import type { DxfRecord, RecordPlace, RecordReader } from "./record.ts";
import { textOf } from "./record.ts";
import { DxfTrouble } from "./trouble.ts";

/** Where the parts of a drawing lie, after one walk from end to end that checked its framing. */
export interface Sections {
  /** Places of the first record behind each section's head, by the section's name. A name may come more than once. */
  readonly places: ReadonlyMap<string, readonly RecordPlace[]>;
  readonly header: HeaderVariables;
  readonly records: number;
  /** The file ends with its end mark. */
  readonly ended: boolean;
}

/** Variables of the header: groups by code, each a text as written. */
export type HeaderVariables = ReadonlyMap<string, ReadonlyMap<number, HeaderValue>>;

export interface HeaderValue {
  readonly text: string;
  readonly number: number;
}

/**
 * Walks through all records once and notes where the sections are.
 *
 * A section that never ends, or a file that ends before its entities came, is cut off; a file whose sections are all whole and
 * that only lacks the end mark is read.
 */
export function sectionsOf(reader: RecordReader, progress: () => void): Sections {
  const places = new Map<string, RecordPlace[]>();
  let header: HeaderVariables = new Map();
  let inside = "";
  let records = 0;
  let ended = false;
  for (let record = reader.next(); record; record = reader.next()) {
    records++;
    if (records % 100_000 === 0) progress();
    if (record.type === "SECTION") {
      inside = textOf(record, 2).trim().toUpperCase() || "?";
      if (inside === "HEADER") header = headerOf(record);
      places.set(inside, [...(places.get(inside) ?? []), reader.place()]);
    } else if (record.type === "ENDSEC") inside = "";
    else if (record.type === "EOF") {
      ended = true;
      break;
    }
  }
  const whole = ended ? inside === "" || places.has("ENTITIES") : inside === "" && places.has("ENTITIES");
  if (records > 0 && !whole)
    throw new DxfTrouble({ code: "dxf-truncated", values: { place: reader.where() } });
  return { places, header, records, ended };
}

/** The header is one long record: 9 and the name of a variable, then its groups. */
const headerOf = (record: DxfRecord): HeaderVariables => {
  const variables = new Map<string, Map<number, HeaderValue>>();
  let current: Map<number, HeaderValue> | undefined;
  for (let i = 0; i < record.count; i++) {
    const code = record.code(i);
    if (code === 9) {
      current = new Map();
      variables.set(record.text(i).trim().toUpperCase(), current);
    } else current?.set(code, { text: record.text(i).trim(), number: record.number(i) });
  }
  return variables;
};
