import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { writtenPlan } from "../exchange/written-plan.ts";
import { type BuiltServer, sizes, startBrowser, startBuiltServer, withoutOffline } from "./browser.ts";

let server: BuiltServer;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  server = await startBuiltServer();
  browser = await startBrowser();
  const context = await browser.newContext({ ...withoutOffline, viewport: sizes.laptop });
  page = await context.newPage();
  page.setDefaultTimeout(60_000);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

test("a plan is read with its assumption, read again at the scale that a person knows, and becomes a job", async () => {
  await page.goto(server.entrance);
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Choose a file" }).click(),
  ]);
  await chooser.setFiles({ name: "store.svg", mimeType: "image/svg+xml", buffer: Buffer.from(writtenPlan) });
  await page.getByText("Read from store.svg").waitFor();
  const again = page.getByRole("button", { name: "Read again with these" });
  expect(await again.isDisabled()).toBe(true);

  const scale = page.getByLabel("Scale, 1 :");
  expect(await scale.inputValue()).toBe("100");
  await scale.fill("120");
  await scale.press("Tab");
  await again.click();
  await page.getByText("Each room").click();
  await page.getByRole("cell", { name: "Store" }).waitFor();
  await expect.poll(() => page.getByRole("cell", { name: "17.3 m²" }).count()).toBe(2);

  await page.getByLabel("Scale, 1 :").fill("100");
  await page.getByLabel("Scale, 1 :").press("Tab");
  await page.getByRole("button", { name: "Read again with these" }).click();
  await page.getByText("Each room").click();
  await page
    .getByRole("cell", { name: /^12(\.0+)? m²$/ })
    .first()
    .waitFor();
  await page.getByRole("button", { name: "Open as a job" }).last().click();
  await page.getByRole("button", { name: /Place detectors in 2 rooms/ }).waitFor();
});

test("its rooms are on the plan and can be placed", async () => {
  const things = page.getByRole("listbox", { name: "Things on this storey" });
  await expect.poll(() => things.getByRole("option", { name: /Store/ }).count()).toBeGreaterThan(0);
  await expect.poll(() => things.getByRole("option", { name: /Archive/ }).count()).toBeGreaterThan(0);
  await page.getByRole("button", { name: /Place detectors in 2 rooms/ }).click();
  await page.getByRole("button", { name: "Place detectors", exact: true }).click();
  await page.getByRole("button", { name: /Take the layout|Take this layout/ }).click();
  await expect
    .poll(() => things.getByRole("option", { name: /Detector B/ }).count(), { timeout: 60_000 })
    .toBeGreaterThan(1);
});

test("a file that is no plan is refused in a sentence, and the start page stays as it was", async () => {
  await page.goto(server.entrance);
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Choose a file" }).click(),
  ]);
  await chooser.setFiles({ name: "plan.pdf", mimeType: "application/pdf", buffer: Buffer.from("hello") });
  await page.getByText("plan.pdf could not be read.").waitFor();
  await page.getByText(/This is no PDF file/).waitFor();
  await page.getByRole("button", { name: "Choose a file" }).waitFor();
});
