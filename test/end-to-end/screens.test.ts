import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import {
  type BuiltServer,
  mostScript,
  scriptLoaded,
  sizes,
  startBrowser,
  startBuiltServer,
  withoutOffline,
} from "./browser.ts";
import { fits, holds } from "./screens-hold.ts";

let server: BuiltServer;
let browser: Browser;

beforeAll(async () => {
  server = await startBuiltServer();
  browser = await startBrowser();
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

test.each(["laptop", "tablet", "phone"] as const)(
  "start page, plan, models to choose from and findings have no barrier and fit the window of a %s, light and dark",
  async (size) => {
    const context = await browser.newContext({
      ...withoutOffline,
      viewport: sizes[size],
      colorScheme: "light",
      reducedMotion: "reduce",
    });
    const page = await context.newPage();
    page.setDefaultTimeout(60_000);
    await page.goto(server.entrance);
    await page.getByRole("button", { name: "Open the demo job" }).waitFor();
    await holds(page);
    await page.getByRole("button", { name: "Open the demo job" }).click();
    await page.getByRole("button", { name: /Place detectors in/ }).waitFor();
    await holds(page);
    await page.getByRole("button", { name: /Place detectors in/ }).click();
    await page.getByRole("button", { name: "Place detectors", exact: true }).waitFor();
    await holds(page);
    await page.getByRole("button", { name: "Close" }).first().click();
    await page
      .getByRole("button", { name: /open findings?, show the list/ })
      .first()
      .click();
    await page.getByRole("heading", { name: "What needs attention" }).waitFor();
    await holds(page);
    await context.close();
  },
);

test.each(["laptop", "tablet", "phone"] as const)(
  "in German every stage fits the window of a %s, and no word runs out of its button",
  async (size) => {
    const context = await browser.newContext({
      ...withoutOffline,
      viewport: sizes[size],
      locale: "de-AT",
      reducedMotion: "reduce",
    });
    const page = await context.newPage();
    page.setDefaultTimeout(60_000);
    await page.goto(server.entrance);
    await page.getByRole("button", { name: "Demoprojekt öffnen" }).click();
    await page.locator(".plan canvas").first().waitFor();
    expect(await page.locator("html").getAttribute("lang")).toBe("de");
    for (const stage of ["Aufmaß", "Platzieren", "Verdrahten", "Einstellen", "Prüfen", "Übergabe"]) {
      await page.getByRole("button", { name: stage, exact: true }).click();
      await page.waitForTimeout(300);
      await fits(page);
      expect(await cutWords(page)).toEqual([]);
    }
    await context.close();
  },
);

/** Words in the bars and on buttons that run over the end of what holds them, and are not cut with an ellipsis on purpose. */
const cutWords = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll(".bar-word, .stage-word, .button")].flatMap((holder) => {
      const own = holder.getBoundingClientRect();
      const inner = [...holder.querySelectorAll("*"), holder].filter((part) =>
        [...part.childNodes].some(({ nodeType }) => nodeType === Node.TEXT_NODE),
      );
      return inner.flatMap((part) => {
        const style = getComputedStyle(part);
        if (own.width === 0 || style.textOverflow === "ellipsis" || style.clipPath !== "none") return [];
        const range = document.createRange();
        range.selectNodeContents(part);
        const words = range.getBoundingClientRect();
        return words.width > 0 && (words.left < own.left - 1 || words.right > own.right + 1)
          ? [holder.textContent ?? ""]
          : [];
      });
    }),
  );

test("little script loads before the plan of the demo shows, also where there is a server", async () => {
  const page = await browser.newPage({ viewport: sizes.laptop });
  page.setDefaultTimeout(60_000);
  await page.goto(server.entrance);
  await page.getByRole("button", { name: "Open the demo job" }).click();
  await page.locator(".plan canvas").first().waitFor();
  expect(await scriptLoaded(page, "/")).toBeLessThan(mostScript);
  await page.close();
});
