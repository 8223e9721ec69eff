import { catalogue, english, type ProblemCode, type Tongue, type Words, worded } from "#engine";
import { german } from "./de.ts";
import { spanish } from "./es.ts";
import { french } from "./fr.ts";
import type { PaperLanguage, PaperWords } from "./paper-words.ts";

/** Puts what is said into the words of a paper's language. */
export type Speak = (said: Words) => string;

const others: Readonly<Record<Exclude<PaperLanguage, "en">, PaperWords>> = {
  de: german,
  fr: french,
  es: spanish,
};

/** What a language says, the problems under their English sentences like everything else. */
function tongueOf({ problems, ...tongue }: PaperWords): Tongue {
  const all: Record<string, string> = { ...tongue.sentences };
  for (const [code, { message, remedy }] of Object.entries(catalogue)) {
    const own = problems[code as ProblemCode];
    if (!own) continue;
    all[message] = own.message;
    all[remedy] = own.remedy;
  }
  return { ...tongue, sentences: all };
}

/** Speaks a language. */
export function speakIn(language: PaperLanguage): Speak {
  if (language === "en") return english;
  const tongue = tongueOf(others[language]);
  return (said) => worded(said, tongue);
}
