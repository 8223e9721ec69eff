import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { french, german, spanish } from "#output";
import { leftInEnglish, names, vocabularyOf } from "../../test/engine/left-in-english.ts";
import { runHere } from "./run-here.fixture.ts";

const demo = new URL("../../examples/saltmarsh.job.json", import.meta.url);

let folder: string;
const texts = new Map<string, readonly string[]>();

/** Every piece of text of a document, in its order. */
async function textsOf(file: string): Promise<readonly string[]> {
  const pdf = await getDocument({ data: new Uint8Array(await readFile(file)) }).promise;
  const pages = await Promise.all(
    Array.from({ length: pdf.numPages }, async (_, i) => {
      const { items } = await (await pdf.getPage(i + 1)).getTextContent();
      return items.flatMap((item) => ("str" in item && item.str.trim() !== "" ? [item.str.trim()] : []));
    }),
  );
  await pdf.destroy();
  return pages.flat();
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "roomwake-languages-"));
  for (const language of ["en", "de", "fr", "es"]) {
    const { exit } = await runHere(folder, [
      ...["pack", demo.pathname, "-o", language, "--language", language],
      ...["--only", "handover.pdf,quote.pdf,labels.pdf,room-cards.pdf"],
    ]);
    expect(exit, language).toBeLessThan(2);
    const files = ["handover", "quote", "labels", "room-cards"];
    const all = await Promise.all(files.map((name) => textsOf(join(folder, language, `${name}.pdf`))));
    texts.set(language, all.flat());
  }
}, 300_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

const vocabulary = {
  de: vocabularyOf(Object.values(german.sentences)),
  fr: vocabularyOf(Object.values(french.sentences)),
  es: vocabularyOf(Object.values(spanish.sentences)),
};

test.each(["de", "fr", "es"] as const)(
  "no sentence of the papers is left in English in the language %s",
  (language) => {
    const english = new Set(texts.get("en"));
    const both = { english, vocabulary: vocabulary[language] };
    expect(leftInEnglish(texts.get(language)!, both)).toEqual([]);
    // What stood in both would be told, also where a field of the job or a kind is called so.
    for (const text of ["Ceiling height", "Door", "3 doors", "Widths"])
      expect(leftInEnglish([text], { ...both, english: new Set([text]) })).toEqual([text]);
  },
);

const isEndOfName = (text: string): boolean => [...names].some((name) => name.endsWith(` ${text}`));

test("figures have the decimal sign of the language", () => {
  const figure = /^-?\d+([.,])\d+ (?:m|m²|A|s|Ω|%|lx)$/;
  const figures = (language: string): readonly (readonly [text: string, sign: string])[] =>
    texts.get(language)!.flatMap((text) => {
      const sign = figure.exec(text)?.[1];
      // The end of a model's title, where a line was broken, is a name.
      return sign === undefined || isEndOfName(text) ? [] : [[text, sign] as const];
    });
  expect(figures("en").length).toBeGreaterThan(100);
  expect(figures("en").filter(([, sign]) => sign !== ".")).toEqual([]);
  for (const language of ["de", "fr", "es"])
    expect(
      figures(language).filter(([, sign]) => sign !== ","),
      language,
    ).toEqual([]);
});

test("days are written as the language writes them", () => {
  const days = (language: string, form: RegExp): number =>
    texts.get(language)!.filter((text) => form.test(text)).length;
  const iso = /\b\d{4}-\d{2}-\d{2}\b/;
  expect(days("en", iso)).toBeGreaterThan(40);
  for (const language of ["de", "fr", "es"]) expect(days(language, iso), language).toBe(0);
  expect(days("de", /\b02\.03\.2026\b/)).toBeGreaterThan(40);
  expect(days("fr", /\b02\/03\/2026\b/)).toBeGreaterThan(40);
});
