import { readdirSync, readFileSync } from "node:fs";
import { parse, TYPE } from "@formatjs/icu-messageformat-parser";
import { describe, expect, test } from "vitest";
import { catalogue, type ProblemCode } from "#engine";
import { languages } from "./language.ts";

type Sentences = Readonly<Record<string, string>>;
type Elements = ReturnType<typeof parse>;

const read = (path: string): Sentences =>
  JSON.parse(readFileSync(new URL(path, import.meta.url), "utf8")) as Sentences;

const others = languages.filter((language) => language !== "en");
const parts = readdirSync(new URL("en/", import.meta.url));
const partsOf = (
  language: string,
): readonly (readonly [name: string, english: Sentences, own: Sentences])[] => [
  ["common.json", read("en.json"), read(`${language}/common.json`)],
  ...parts.map((part) => [part, read(`en/${part}`), read(`${language}/${part}`)] as const),
];

/** {names} that a message asks for, those within plurals and choices as well, and the choices that it tells apart. */
function asked(elements: Elements): readonly string[] {
  return elements.flatMap((element): readonly string[] => {
    switch (element.type) {
      case TYPE.literal:
      case TYPE.pound:
        return [];
      case TYPE.select:
        return [
          `${element.value}: ${Object.keys(element.options).sort().join()}`,
          ...Object.values(element.options).flatMap(({ value }) => asked(value)),
        ];
      case TYPE.plural:
        return [element.value, ...Object.values(element.options).flatMap(({ value }) => asked(value))];
      case TYPE.tag:
        return asked(element.children);
      default:
        return [element.value];
    }
  });
}

const askedIn = (message: string): readonly string[] => [...new Set(asked(parse(message)))].sort();
const gapsIn = (template: string): readonly string[] =>
  [...new Set([...template.matchAll(/\{(\w+)\}/g)].map(([gap]) => gap))].sort();

describe.each(others)("the catalogue in the language %s", (language) => {
  test("has the sentences of every part, and no others", () => {
    for (const [part, english, own] of partsOf(language))
      expect(Object.keys(own).sort(), part).toEqual(Object.keys(english).sort());
  });

  test("asks for the same values as the English sentence, and tells the same choices apart", () => {
    for (const [part, english, own] of partsOf(language))
      for (const [key, sentence] of Object.entries(own))
        expect(askedIn(sentence), `${part} ${key}`).toEqual(askedIn(english[key]!));
  });

  test("has no sentence that is empty, ends in a blank, or was left in English", () => {
    for (const [part, english, own] of partsOf(language))
      for (const [key, sentence] of Object.entries(own)) {
        expect(sentence.trim() !== "" && sentence.trim() === sentence, `${part} ${key}`).toBe(true);
        const words = english[key]!.replace(/\{[^}]*\}/g, "").match(/[A-Za-z]{3,}/g) ?? [];
        if (words.length >= 4) expect(sentence, `${part} ${key}`).not.toBe(english[key]);
      }
  });

  test("says every problem and its remedy, with the same gaps to fill", () => {
    const own = JSON.parse(
      readFileSync(new URL(`../../output/words/${language}/problems.json`, import.meta.url), "utf8"),
    ) as Readonly<Record<string, { readonly message: string; readonly remedy: string }>>;
    expect(Object.keys(own).sort()).toEqual(Object.keys(catalogue).sort());
    for (const [code, entry] of Object.entries(own)) {
      const english = catalogue[code as ProblemCode];
      expect(gapsIn(entry.message), code).toEqual(gapsIn(english.message));
      expect(gapsIn(entry.remedy), code).toEqual(gapsIn(english.remedy));
      // A word of the trade may read the same, a whole sentence not.
      if ((english.message.replace(/\{\w+\}/g, "").match(/[A-Za-z]{3,}/g) ?? []).length >= 4)
        expect(entry.message, code).not.toBe(english.message);
    }
  });
});
