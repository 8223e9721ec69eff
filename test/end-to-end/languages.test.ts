import { readdirSync, readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { french, german, spanish } from "#output";
import { languageNames } from "../../src/web/texts/language.ts";
import { leftInEnglish, names, vocabularyOf } from "../engine/left-in-english.ts";
import { type BuiltServer, sizes, startBrowser, startBuiltServer, withoutOffline } from "./browser.ts";

let server: BuiltServer;
let browser: Browser;
let english: ReadonlySet<string>;

beforeAll(async () => {
  server = await startBuiltServer();
  browser = await startBrowser();
  english = await saidIn("en-GB");
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

/** Lines that one reads on the page now, and names of what one can touch. */
const lines = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const read: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const { parentElement, nodeValue } = walker.currentNode;
      if (parentElement && !/^(SCRIPT|STYLE|NOSCRIPT)$/.test(parentElement.tagName))
        read.push(nodeValue ?? "");
    }
    const named = [...document.querySelectorAll("[aria-label], [placeholder], [title]")].flatMap((part) =>
      ["aria-label", "placeholder", "title"].map((name) => part.getAttribute(name) ?? ""),
    );
    return [...read, ...named].map((line) => line.trim()).filter((line) => line !== "");
  });

/** Opens all that is folded on the page, and what is folded within it. */
async function unfold(page: Page): Promise<void> {
  for (let round = 0; round < 3; round++) {
    const folded = page.locator('.card-body button[aria-expanded="false"]:not([aria-haspopup])');
    const count = Math.min(await folded.count(), 60);
    if (count === 0) return;
    for (let i = count - 1; i >= 0; i--) await folded.nth(i).dispatchEvent("click");
    await page.waitForTimeout(200);
  }
}

const demo: Readonly<Record<string, string>> = {
  en: "Open the demo job",
  de: "Demoprojekt öffnen",
  fr: "Ouvrir la démonstration",
  es: "Abrir la demostración",
};

/** All that the stages of the demo job say, and the cards of its first things. */
async function saidIn(locale: string): Promise<ReadonlySet<string>> {
  const context = await browser.newContext({
    ...withoutOffline,
    viewport: sizes.laptop,
    locale,
    reducedMotion: "reduce",
  });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  const said = new Set<string>();
  const take = async (): Promise<void> => {
    await unfold(page);
    for (const line of await lines(page)) said.add(line);
  };
  await page.goto(server.entrance);
  await take();
  await page.getByRole("button", { name: demo[locale.slice(0, 2)]! }).click();
  await page.locator(".plan canvas").first().waitFor();
  await page.getByRole("listbox").first().waitFor({ state: "attached" });
  await page.waitForTimeout(3000);
  const stages = page.locator(".stages .stage-word");
  for (let i = 0; i < (await stages.count()); i++) {
    await stages.nth(i).click();
    await page.waitForTimeout(1500);
    await take();
  }
  const things = page.getByRole("listbox").first().getByRole("option");
  const count = await things.count();
  for (let i = 0; i < count; i += Math.max(1, Math.floor(count / 12))) {
    await things.nth(i).dispatchEvent("click");
    await page.waitForTimeout(150);
    await take();
  }
  await context.close();
  return said;
}

type Sentences = Readonly<Record<string, string>>;

const sentencesOf = (part: string): Sentences =>
  JSON.parse(readFileSync(new URL(`../../src/web/texts/${part}`, import.meta.url), "utf8")) as Sentences;

/** Words of a language, of the engine, the papers and the screens. */
function vocabularyIn(language: string, { sentences }: typeof german): ReadonlySet<string> {
  const parts = readdirSync(new URL(`../../src/web/texts/${language}`, import.meta.url)).filter((part) =>
    part.endsWith(".json"),
  );
  const screens = parts.flatMap((part) => Object.values(sentencesOf(`${language}/${part}`)));
  return vocabularyOf([...Object.values(sentences), ...screens, ...Object.values(languageNames)]);
}

test.each([
  ["de-DE", german],
  ["fr-FR", french],
  ["es-ES", spanish],
] as const)("nothing on the screens of the demo is left in English in %s", async (locale, words) => {
  const vocabulary = vocabularyIn(locale.slice(0, 2), words);
  const said = [...(await saidIn(locale))];
  expect(said.length).toBeGreaterThan(500);
  expect(leftInEnglish(said, { english, vocabulary })).toEqual([]);
  // What stood in both would be told, also where a field of the job or a kind is called so.
  for (const text of ["Ceiling height", "Door", "3 doors", "Widths"])
    expect(leftInEnglish([text], { english: new Set([text]), vocabulary })).toEqual([text]);
  // Days are written as the language writes them; those that somebody typed stay.
  expect(said.filter((text) => /\b\d{4}-\d{2}-\d{2}\b/.test(text) && !names.has(text))).toEqual([]);
});
