import type { Browser } from "playwright-core";
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
import { holds } from "./screens-hold.ts";

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

test("little script loads before the plan of the demo shows, also where there is a server", async () => {
  const page = await browser.newPage({ viewport: sizes.laptop });
  page.setDefaultTimeout(60_000);
  await page.goto(server.entrance);
  await page.getByRole("button", { name: "Open the demo job" }).click();
  await page.locator(".plan canvas").first().waitFor();
  expect(await scriptLoaded(page, "/")).toBeLessThan(mostScript);
  await page.close();
});
