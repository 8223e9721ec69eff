import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { writtenBuilding } from "../exchange/written-building.ts";
import { type BuiltServer, sizes, startBrowser, startBuiltServer } from "./browser.ts";

let server: BuiltServer;
let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  server = await startBuiltServer();
  browser = await startBrowser();
  context = await browser.newContext({ viewport: sizes.laptop, acceptDownloads: true });
  page = await context.newPage();
  page.setDefaultTimeout(60_000);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

/** Long enough for a busy machine. */
const patient = { timeout: 60_000 };

const chosen = () => page.getByRole("listbox", { name: "Things on this storey" });
/** Where on the screen a thing lies: the first place near the middle of the plan at which a click selects it. */
async function pixelOf(name: string): Promise<readonly [number, number]> {
  const heading = page.getByRole("heading", { level: 2 });
  const start = { x: 572, y: 260 };
  for (let ring = 0; ring <= 4; ring++)
    for (let i = -ring; i <= ring; i++)
      for (let j = -ring; j <= ring; j++) {
        if (Math.max(Math.abs(i), Math.abs(j)) !== ring) continue;
        const [x, y] = [start.x + 16 * i, start.y + 16 * j];
        await page.mouse.click(x, y);
        // Two frames: the first takes the click, the second shows the card.
        await page.evaluate(
          () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
        );
        if ((await heading.filter({ hasText: name }).count()) > 0) return [x, y];
      }
  throw new Error(`${name} was not found on the plan.`);
}

test("the printed address opens the start page with its three starts", async () => {
  await page.goto(server.entrance);
  await page.getByRole("heading", { name: "One room by its sizes" }).waitFor();
  await page.getByRole("heading", { name: "From a building model" }).waitFor();
  await page.getByRole("button", { name: "Open the demo job" }).waitFor();
  expect(page.url()).not.toContain("token");
});

test("a typed room is answered at once", async () => {
  await page
    .getByText(/Fewest possible|Lowest cost possible|at least/i)
    .first()
    .waitFor();
  await expect.poll(() => page.getByText(/from the left wall/).count()).toBeGreaterThan(0);
});

test("a building model is read, reported and opened as a job", async () => {
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Choose a file" }).click(),
  ]);
  await chooser.setFiles({
    name: "two rooms.ifc",
    mimeType: "application/x-step",
    buffer: Buffer.from(writtenBuilding({ schema: "IFC4", unit: "metre" })),
  });
  await page.getByText("Read from two rooms.ifc").waitFor();
  await page.locator(".home-model").getByRole("button", { name: "Open as a job" }).click();
  await page.getByRole("button", { name: "two rooms" }).waitFor();
  expect(
    await chosen()
      .getByRole("option", { name: /Office|Store/ })
      .count(),
  ).toBeGreaterThanOrEqual(2);
});

test("a file that is no building model is refused in words, and nothing is lost", async () => {
  const other = await context.newPage();
  await other.goto(new URL(page.url()).origin);
  const [chooser] = await Promise.all([
    other.waitForEvent("filechooser"),
    other.getByRole("button", { name: "Choose a file" }).click(),
  ]);
  await chooser.setFiles({ name: "broken.ifc", mimeType: "text/plain", buffer: Buffer.from("no model") });
  await other.getByText("broken.ifc could not be read.").waitFor();
  await other.close();
});

const placed = (): Promise<number> =>
  chosen()
    .getByRole("option", { name: /Detector B/ })
    .count();

test("detectors are placed in all rooms, and taken in one step", async () => {
  await page.getByRole("button", { name: /Place detectors in/ }).click();
  await page.getByRole("button", { name: "Place detectors", exact: true }).click();
  await page.getByRole("button", { name: /Take the layout|Take this layout/ }).click({ timeout: 120_000 });
  await expect.poll(placed, patient).toBeGreaterThan(0);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect.poll(placed, patient).toBe(0);
  await page.getByRole("button", { name: "Redo" }).click();
  await expect.poll(placed, patient).toBeGreaterThan(0);
});

test("a dragged detector takes its zones and gaps along, and undo brings them back", async () => {
  await page.goto(`${new URL(page.url()).origin}/#/`);
  await page.getByRole("button", { name: "Open the demo job" }).click();
  const place = async (): Promise<string> =>
    (await chosen()
      .getByRole("option", { name: /B1\.03/ })
      .textContent()) ?? "";
  await chosen()
    .getByRole("option", { name: /B1\.03/ })
    .waitFor({ state: "attached" });
  const before = await place();
  expect(before).toContain("Meeting room");
  const [x, y] = await pixelOf("Detector B1.03");
  const figures = (): Promise<string> =>
    page
      .locator(".card .figures")
      .first()
      .textContent()
      .then((text) => text ?? "");
  await expect.poll(figures, patient).toMatch(/Seated\s*\d/);
  const seen = await figures();
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 10; i++) await page.mouse.move(x - 6 * i, y + 2 * i);
  // The figures follow while the hand still holds the detector.
  await expect.poll(figures, patient).not.toBe(seen);
  await page.mouse.up();
  await expect.poll(place, patient).not.toBe(before);
  // They stay when the hand lets go, and when the calculation of the changed job is done.
  expect(await figures()).not.toBe(seen);
  await expect.poll(() => page.getByText("Calculating …").count(), patient).toBe(0);
  expect(await figures()).not.toBe(seen);
  await page.keyboard.press("Control+z");
  await expect.poll(place, patient).toBe(before);
  await expect.poll(figures, patient).toBe(seen);
});

test("the job opens again without network, and what was changed there reaches the server later", async () => {
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await expect
    .poll(() => page.evaluate(async () => (await caches.keys()).length), { timeout: 60_000 })
    .toBeGreaterThan(0);
  await page.reload();
  await chosen()
    .getByRole("option", { name: /B1\.03/ })
    .waitFor({ state: "attached" });
  const address = new URL(page.url());
  const id = decodeURIComponent(address.hash.replace("#/job/", ""));
  const kept = async (): Promise<number> => {
    const answer = await page.request.get(`${address.origin}/api/jobs/${encodeURIComponent(id)}`);
    const job = (await answer.json()) as { detectors: { tag: string; at: [number, number] }[] };
    return job.detectors.find(({ tag }) => tag === "B1.03")?.at[0] ?? Number.NaN;
  };
  const before = await kept();
  expect(before).toBeGreaterThan(0);
  await context.setOffline(true);
  await page.reload();
  await page.getByText("The server is away. Changes are kept on this device.").waitFor();
  const option = chosen().getByRole("option", { name: /B1\.03/ });
  await option.waitFor({ state: "attached" });
  const place = await option.textContent();
  await option.dispatchEvent("click");
  await page.locator(".plan").focus();
  await page.keyboard.press("ArrowRight");
  await expect.poll(() => option.textContent(), patient).not.toBe(place);
  expect(await kept()).toBe(before);
  await context.setOffline(false);
  await expect.poll(kept, { timeout: 60_000 }).toBeGreaterThan(before);
});

test("the sheets of a storey are made for the printer", async () => {
  await page.evaluate(() => {
    // A headless browser has no printer: the frame is looked at instead.
    HTMLIFrameElement.prototype.focus = () => undefined;
  });
  await page.getByRole("button", { name: "Print" }).click();
  const frame = page.frameLocator(".print-frame");
  await frame.locator(".sheet svg").first().waitFor({ state: "attached" });
  await expect.poll(() => frame.locator(".sheet svg").count()).toBeGreaterThan(0);
  expect(await frame.locator("body").textContent()).toContain("Planned, not yet tested on site");
});
