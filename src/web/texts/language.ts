import type { Tongue, Wording } from "#engine";
import type { Message } from "./plain.ts";

/** Languages that the screens speak, English first: it is what the others are held against. */
export const languages = ["en", "de", "fr", "es"] as const;

export type Language = (typeof languages)[number];

/** What each language calls itself. */
export const languageNames: Readonly<Record<Language, string>> = {
  en: "English",
  de: "Deutsch",
  fr: "Français",
  es: "Español",
};

/** Sentences by their keys. */
export type Catalogue = Readonly<Record<string, Message>>;

/** A language as it is loaded: the sentences of all screens, what the engine and the papers say, and the problems. */
export interface Spoken {
  readonly sentences: Catalogue;
  readonly said?: Tongue;
  readonly problems: Wording;
}

/** What is spoken; undefined: English. Set before the first paint and not again until the page is loaded anew. */
let now: ({ readonly language: Language } & Spoken) | undefined;

/** Speaks this language from now on; undefined: English. */
export function take(spoken: ({ readonly language: Language } & Spoken) | undefined): void {
  now = spoken;
}

/** The language that is spoken. */
export const spokenLanguage = (): Language => now?.language ?? "en";

/** The sentence of a key in the language that is spoken; undefined where that is English. */
export const spokenSentence = (key: string): Message | undefined => now?.sentences[key];

/** What the engine and the papers say in the language that is spoken; undefined where that is English. */
export const spokenTongue = (): Tongue | undefined => now?.said;

/** Sentences of the problems in the language that is spoken; undefined where that is English. */
export const spokenProblems = (): Wording | undefined => now?.problems;

/**
 * The first of a person's languages that the screens speak.
 *
 * @param wanted - Tags of languages, dearest first. @example languageOf(["nds", "de-AT", "en"]) = "de"
 */
export const languageOf = (wanted: readonly string[]): Language =>
  wanted
    .map((tag) => tag.toLowerCase().split("-")[0])
    .map((tag) => languages.find((language) => language === tag))
    .find((language) => language !== undefined) ?? "en";

/** Words that begin with a capital, as they stand within a sentence: German keeps the capitals of its nouns. */
export const withinSentence = (words: string): string =>
  spokenLanguage() === "de" ? words : words.toLowerCase();
