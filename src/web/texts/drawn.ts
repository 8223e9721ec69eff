import sentences from "./en/drawn.json" with { type: "json" };
import { type Catalogue, type Language, spokenLanguage, spokenSentence } from "./language.ts";
import type { Message } from "./plain.ts";

/** Key of a sentence that is written into the plan. */
type DrawnKey = keyof typeof sentences;

/** Of what a sentence is made once a built page has read it: letters, or a {name}. */
interface Piece {
  readonly type: number;
  readonly value: string;
}

const letters = 0;

/**
 * The sentence of a key with its {names} filled. What is written into the plan is short and has nothing but names to fill:
 * the formatter of whole messages, some 12 kB, stays out of the worker that paints.
 */
export function t(key: DrawnKey, values: Readonly<Record<string, string>> = {}): string {
  const written = spokenSentence(key) ?? (sentences[key] as Message);
  if (typeof written === "string")
    return written.replace(/\{(\w+)\}/g, (whole, name: string) => values[name] ?? whole);
  return (written as readonly Piece[])
    .map(({ type, value }) => (type === letters ? value : (values[value] ?? `{${value}}`)))
    .join("");
}

/** What the worker that paints must know of the language that is spoken. */
export interface DrawnSpoken {
  readonly language: Language;
  readonly sentences: Catalogue;
}

/** The sentences that are written into the plan, in the language that is spoken; undefined where that is English. */
export function drawnSpoken(): DrawnSpoken | undefined {
  const language = spokenLanguage();
  if (language === "en") return undefined;
  return {
    language,
    sentences: Object.fromEntries(
      Object.keys(sentences).flatMap((key) => {
        const spoken = spokenSentence(key);
        return spoken === undefined ? [] : [[key, spoken]];
      }),
    ),
  };
}
