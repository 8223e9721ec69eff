import AxeBuilder from "@axe-core/playwright";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type BuiltServer, sizes, startBrowser, startBuiltServer } from "./browser.ts";

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

/** Findings of the accessibility checker that keep somebody out. */
async function barriers(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(" ")).join(", ")}`);
}

/** Parts of the page wider than the window, which one would have to scroll for. */
const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe.each([
  ["laptop", "light"],
  ["laptop", "dark"],
  ["tablet", "light"],
  ["tablet", "dark"],
  ["phone", "light"],
  ["phone", "dark"],
] as const)("%s, %s", (size, colorScheme) => {
  test("start page, plan, findings and the choice of models have no barrier and fit the window", async () => {
    const context = await browser.newContext({ viewport: sizes[size], colorScheme, reducedMotion: "reduce" });
    const page = await context.newPage();
    page.setDefaultTimeout(60_000);
    await page.goto(server.entrance);
    await page.getByRole("button", { name: "Open the demo job" }).waitFor();
    expect(await barriers(page)).toEqual([]);
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    await page.getByRole("button", { name: "Open the demo job" }).click();
    await page.getByRole("button", { name: /Place detectors in/ }).waitFor();
    expect(await barriers(page)).toEqual([]);
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    await page.getByRole("button", { name: /Place detectors in/ }).click();
    await page.getByRole("button", { name: "Place detectors", exact: true }).waitFor();
    expect(await barriers(page)).toEqual([]);
    await page.getByRole("button", { name: "Close" }).first().click();
    await page.getByRole("button", { name: /open findings?, show the list/ }).click();
    await page.getByRole("heading", { name: "What needs attention" }).waitFor();
    expect(await barriers(page)).toEqual([]);
    await context.close();
  });
});
