import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type BuiltServer, sizes, startBrowser, startBuiltServer, withoutOffline } from "./browser.ts";
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

async function demoAt(size: keyof typeof sizes): Promise<Page> {
  const context = await browser.newContext({
    ...withoutOffline,
    viewport: sizes[size],
    colorScheme: "light",
    reducedMotion: "reduce",
  });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  await page.goto(server.entrance);
  await page.getByRole("button", { name: "Open the demo job" }).click();
  await page.getByRole("button", { name: /Place detectors in/ }).waitFor();
  return page;
}

const select = (page: Page, name: RegExp): Promise<void> =>
  page
    .getByRole("listbox", { name: "Things on this storey" })
    .getByRole("option", { name })
    .first()
    .dispatchEvent("click");

const fromMenu = async (page: Page, item: string): Promise<void> => {
  await page.locator(".bar-job").click();
  await page.getByRole("menuitem", { name: item }).click();
};

/** At phone size the same panels are looked at for what runs out of the window; their contents are those of the laptop. */
test.each([
  ["laptop", holds],
  ["phone", fits],
] as const)(
  "the eye, a room, the models, a data sheet and the settings hold in the window of a %s",
  async (size, held) => {
    const page = await demoAt(size);
    await select(page, /Detector B1\.03/);
    await page.getByRole("button", { name: "See what it sees" }).click();
    await page.getByRole("heading", { name: "What B1.03 sees" }).waitFor();
    await held(page);
    await page.getByRole("button", { name: "Close" }).first().click();
    await select(page, /^(Room )?G\.08/);
    await page.getByRole("heading", { name: "G.08 Luggage store" }).waitFor();
    await held(page);
    await fromMenu(page, "Detector models");
    await page.getByRole("heading", { name: "Detector models" }).last().waitFor();
    await held(page);
    await page.getByRole("button", { name: "Add a detector of your own" }).click();
    await page.getByRole("button", { name: "Save the model" }).waitFor();
    await held(page);
    await fromMenu(page, "Job details and planning numbers");
    await page.getByRole("button", { name: "Close" }).first().waitFor();
    await held(page);
    await page.context().close();
  },
);

test("what placing came to, and the layouts to choose from, have no barrier and fit the window, light and dark", async () => {
  const page = await demoAt("laptop");
  await select(page, /^(Room )?G\.08/);
  const place = page.getByRole("button", { name: "Place detectors", exact: true }).first();
  await place.click();
  await page.getByText("Models that may be used").waitFor();
  await place.click();
  await page.getByRole("button", { name: "Take this layout" }).waitFor();
  const layouts = page.getByRole("radio", { name: /^Layout / });
  await expect.poll(() => layouts.count()).toBeGreaterThan(1);
  await holds(page);
  await page.setViewportSize(sizes.phone);
  await fits(page);
  await page.getByText("Layout B", { exact: true }).click();
  expect(await layouts.nth(1).isChecked()).toBe(true);
  await page.getByRole("button", { name: "Take this layout" }).click();
  await page.getByRole("heading", { name: "G.08 Luggage store" }).waitFor();
  await page.context().close();
});
