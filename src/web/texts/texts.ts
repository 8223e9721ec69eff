import { IntlMessageFormat } from "intl-messageformat";
import catalogue from "./en.json" with { type: "json" };

/** Key of a sentence on the screen; the compiler knows them all. */
export type TextKey = keyof typeof catalogue;

/** What fills the {names} of a sentence. Numbers that carry a unit are given as text from measures.ts. */
export type TextValues = Readonly<Record<string, string | number>>;

const read = new Map<TextKey, IntlMessageFormat>();

/** The sentence of the catalogue with its {names} filled: ICU plural, select and number. A name that is missing throws. */
export function t(key: TextKey, values?: TextValues): string {
  let message = read.get(key);
  if (message === undefined) {
    message = new IntlMessageFormat(catalogue[key], "en");
    read.set(key, message);
  }
  return String(message.format(values as Record<string, string | number> | undefined));
}
