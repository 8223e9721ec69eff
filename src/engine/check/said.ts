/**
 * Something that is said to a person, as data: what programs and papers speak is chosen where it is read, not where it was found.
 * The English text is what catalogues of other languages are kept under.
 */
export interface Said {
  /** English, with {0}, {1} … or {names} where the values stand. */
  readonly text: string;
  readonly values: readonly SaidValue[] | Readonly<Record<string, SaidValue>>;
}

/** Something said, or words that are the same in every language: names, figures. */
export type Words = Said | string;

/**
 * A name that somebody gave, which stays as it is; a number; something said in turn; text that is a figure, or a day as YYYY-MM-DD;
 * something that stands inside the sentence, and begins small there where the language does so; something that the sentence begins with.
 */
export type SaidValue =
  | string
  | number
  | Said
  | { readonly figure: string }
  | { readonly day: string }
  | { readonly inside: Words }
  | { readonly first: Words };

/** A language: its sentences by the English ones, the sign between whole and parts of a figure, and whether its nouns are written large. */
export interface Tongue {
  readonly sentences: Readonly<Record<string, string>>;
  readonly decimal: "." | ",";
  readonly nouns: "large" | "small";
  /** What stands before ; : ! ? where the language asks for it; said for what joins texts, since catalogues hold their own. */
  readonly beforeSigns?: string;
  /** How a day is written: $1 year, $2 month, $3 day of the month; as YYYY-MM-DD if absent. */
  readonly days?: string;
}

/**
 * The tag of everything that is said: words stay in the text, values fill its gaps.
 * A value is never a piece of English of its own: such a piece is said as well.
 *
 * @example say`${3} devices see ${"Store"}` = { text: "{0} devices see {1}", values: [3, "Store"] }
 */
export const say = (words: TemplateStringsArray, ...values: readonly SaidValue[]): Said => ({
  text: words.reduce((text, piece, i) => `${text}{${i - 1}}${piece}`),
  values,
});

/** A figure as it was rounded, with or without a unit: languages write it with their own decimal sign. @example figured("2.50 lm/W") in German: "2,50 lm/W" */
export const figured = (figure: string): Said => ({ text: "{0}", values: [{ figure }] });

/** A day as YYYY-MM-DD: languages write it in their own order; any other text stays as it is. @example day("2026-03-02") in German: "02.03.2026" */
export const day = (text: string): Said => ({ text: "{0}", values: [{ day: text }] });

/** What begins large by itself, inside a sentence. @example inside(say`Voltage drop`) reads "voltage drop", in German "Spannungsfall" */
export const inside = (said: Words): Said => ({ text: "{0}", values: [{ inside: said }] });

/** What begins small by itself, at the beginning of a sentence. @example first(say`area of the room`) reads "Area of the room" */
export const first = (said: Words): Said => ({ text: "{0}", values: [{ first: said }] });

/** Several things said one after the other. @example joined([say`No`, say`Yes`], "; ") reads "No; Yes" */
export const joined = (parts: readonly SaidValue[], between: string): Said => ({
  text: parts.map((_, i) => `{${i}}`).join(between),
  values: parts,
});

/** A text that has words in it; gaps and punctuation alone read the same in every language. */
export const hasWords = (text: string): boolean => /\p{L}/u.test(text.replace(/\{\w+\}/g, ""));

/**
 * What is said, in a language, English without one, and for a sentence that the language lacks. A gap without a value stays.
 *
 * @example worded(say`${2.5} m`, { sentences: {}, decimal: "," }) = "2,5 m"
 */
export function worded(said: Words, tongue?: Tongue): string {
  if (typeof said === "string") return said;
  const values = said.values as Readonly<Record<string, SaidValue>>;
  const text = tongue?.sentences[said.text] ?? spaced(said.text, tongue?.beforeSigns);
  return text.replace(/\{(\w+)\}/g, (gap, name: string) =>
    Object.hasOwn(values, name) ? wordedValue(values[name]!, tongue) : gap,
  );
}

/** Signs between values, with what the language writes before them. */
const spaced = (text: string, space = ""): string =>
  space === "" || hasWords(text) ? text : text.replace(/[ \u00a0]?([;:!?])(?= |$)/g, `${space}$1`);

/** One value in a language: figures take its decimal sign, days its order, names stay as they are. */
function wordedValue(value: SaidValue, tongue?: Tongue): string {
  if (typeof value === "string") return value;
  if (typeof value === "number") return figureIn(String(value), tongue);
  if ("text" in value) return worded(value, tongue);
  if ("inside" in value) return begunSmall(worded(value.inside, tongue), tongue);
  if ("first" in value) return begunLarge(worded(value.first, tongue));
  return "day" in value ? dayIn(value.day, tongue) : figureIn(value.figure, tongue);
}

const figureIn = (text: string, tongue: Tongue | undefined): string =>
  tongue?.decimal === "," ? text.replace(/(\d)\.(\d)/g, "$1,$2") : text;

const dayIn = (text: string, tongue: Tongue | undefined): string =>
  tongue?.days === undefined ? text : text.replace(/^(\d{4})-(\d\d)-(\d\d)$/, tongue.days);

/** Abbreviations keep their capitals. */
const begunSmall = (text: string, tongue: Tongue | undefined): string =>
  tongue?.nouns === "large" || !/^\p{Lu}\p{Ll}/u.test(text)
    ? text
    : text.charAt(0).toLowerCase() + text.slice(1);

const begunLarge = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The English of what is said. */
export const english = (said: SaidValue): string => wordedValue(said);

/** Each thing once that is said, in the order in which it first comes. */
export function distinct<Some extends Words>(several: readonly Some[]): readonly Some[] {
  const seen = new Set<string>();
  return several.filter((said) => {
    const words = english(said);
    const first = !seen.has(words);
    seen.add(words);
    return first;
  });
}
