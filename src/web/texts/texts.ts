import { IntlMessageFormat } from "intl-messageformat";
import drawn from "./en/drawn.json" with { type: "json" };
import pages from "./en.json" with { type: "json" };
import { type Catalogue, spokenLanguage, spokenSentence } from "./language.ts";
import { isPlain, type Message } from "./plain.ts";

/** Sentences of every page; what is written into the plan has its own part, so that the worker that paints needs no more. */
const common = { ...pages, ...drawn };

/** Key of a sentence of the common catalogue, or of a part of it that loads with its screen. */
export type KeyOf<Part> = keyof typeof common | (keyof Part & string);

/** Key of a sentence that every screen has; the compiler knows them all. */
export type TextKey = keyof typeof common;

/** What fills the {names} of a sentence. Numbers that carry a unit are given as text from measures.ts. */
export type TextValues = Readonly<Record<string, string | number>>;

/**
 * Sentences of the common catalogue and of one part, which is in the page only where a screen asks for it.
 *
 * @returns The sentence of a key in the language that is spoken, with its {names} filled: ICU plural, select and number. A name that is missing throws.
 */
export function sentencesOf<Part extends Catalogue>(part: Part) {
  const catalogue: Catalogue = { ...common, ...part };
  const read = new Map<Message, IntlMessageFormat>();
  return (key: KeyOf<Part>, values?: TextValues): string => {
    const written = spokenSentence(key) ?? catalogue[key]!;
    if (isPlain(written)) return written;
    let message = read.get(written);
    if (message === undefined) {
      message = new IntlMessageFormat(written, spokenLanguage());
      read.set(written, message);
    }
    return String(message.format(values as Record<string, string | number> | undefined));
  };
}

/** The sentence of the common catalogue with its {names} filled. */
export const t = sentencesOf({});
