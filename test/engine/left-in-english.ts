import { readFileSync } from "node:fs";
import { type SourceId, shortSourceTitle, sources, sourceTitle } from "#engine";

const demo = new URL("../../examples/saltmarsh.job.json", import.meta.url);

/** Fields of a job that somebody filled in freely. Kinds, states and the like are the program's words, and so are the names of the fields. */
const freelyFilled: ReadonlySet<string> = new Set([
  ...["name", "title", "tag", "number", "text", "caption", "reason", "remark", "group"],
  ...["client", "site", "drawnBy", "checkedBy", "declaredBy", "revision", "date"],
  // Luminaires and circuits go by a type and a name; devices of residual current by their own; a model says in words how it behaves and what its sign shows.
  ...["type", "circuit", "rcdName", "sign", "meaning", "deliveryState"],
]);

function filledIn(value: unknown, field = ""): readonly string[] {
  if (typeof value === "string") return freelyFilled.has(field) && value !== "" ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((one) => filledIn(one, field));
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([name, one]) => filledIn(one, name));
}

/** What somebody named in the demo job: the same in every language. */
export const names: ReadonlySet<string> = new Set(filledIn(JSON.parse(readFileSync(demo, "utf8"))));

/** Words of four letters at least. */
const wordsOf = (text: string): readonly string[] => text.match(/\p{L}{4,}/gu) ?? [];

/** A name begins small inside a sentence. */
const begunSmall = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);
const wordsOfNames: ReadonlySet<string> = new Set(
  [...names].flatMap((name) => wordsOf(`${name} ${begunSmall(name)}`)),
);

/** Titles of standards and papers with edition and clause, as they are printed, the longest first, since one may begin another. Titles of the program's own are not among them. */
const titles: readonly string[] = (Object.keys(sources) as SourceId[])
  .flatMap((id) => {
    const title = sourceTitle(id);
    const { edition, clause } = sources[id];
    const own = [edition, clause].filter((part) => part !== undefined);
    if (typeof title !== "string") return own;
    const short = shortSourceTitle(id);
    return [[title, ...own].join(", "), title, ...own, ...(typeof short === "string" ? [short] : [])];
  })
  .toSorted((one, other) => other.length - one.length);

/** A line of a title that a narrow column broke: its end, or three words at least. Single words of titles are ordinary ones. */
const isLineOfTitle = (text: string): boolean =>
  titles.some(
    (title) =>
      title.endsWith(` ${text}`) || (text.split(" ").length >= 3 && ` ${title} `.includes(` ${text} `)),
  );

const withoutTitles = (text: string): string =>
  titles.reduce((rest, title) => rest.replaceAll(title, ""), text);

/** Names of gaps and of the forms of a plural, which stand in sentences but are not read. */
const unread = /\{\w+(?:, (?:plural|select|selectordinal),)?|\b(?:zero|one|two|few|many|other)(?= ?\{)/g;

/** Every word that a language's own sentences use: a text that has no other reads the same in it. */
export const vocabularyOf = (sentences: Iterable<string>): ReadonlySet<string> =>
  new Set(
    [...sentences].flatMap((sentence) =>
      wordsOf(sentence.replace(unread, "")).flatMap((word) => [word, word.toLowerCase()]),
    ),
  );

/** Texts that stand in English and in another language alike, with a word in them that is in no name and that the language does not use. Words are compared whole, as they are written and small. */
export function leftInEnglish(
  texts: Iterable<string>,
  {
    english,
    vocabulary,
  }: { readonly english: ReadonlySet<string>; readonly vocabulary: ReadonlySet<string> },
): readonly string[] {
  const known = (word: string): boolean => wordsOfNames.has(word) || vocabulary.has(word);
  const isLeft = (text: string): boolean =>
    !isLineOfTitle(text) &&
    wordsOf(withoutTitles(text)).some((word) => !known(word) && !known(word.toLowerCase()));
  return [...new Set(texts)].filter((text) => english.has(text) && isLeft(text));
}
