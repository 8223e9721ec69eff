import type { Tongue, Wording } from "#engine";

/** All that papers and the engine say in a language, and the sentences of the problems by their codes. */
export interface PaperWords extends Tongue {
  readonly problems: Wording;
}

/** Languages that papers speak, English first: the others are kept under it. */
export const paperLanguages = ["en", "de", "fr", "es"] as const;

export type PaperLanguage = (typeof paperLanguages)[number];
