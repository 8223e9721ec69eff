import { readFile } from "node:fs/promises";
import type { Browser, BrowserContext, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoJob, readJobFile, siteOf } from "#job";
import { picked } from "../../src/web/plan/pick.ts";
import { boundsOf, fitted, toPixel } from "../../src/web/plan/view.ts";
import { type BuiltServer, sizes, startBrowser, startBuiltServer, withoutOffline } from "./browser.ts";
import { holds } from "./screens-hold.ts";

let server: BuiltServer;
let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  server = await startBuiltServer();
  browser = await startBrowser();
  context = await browser.newContext({ ...withoutOffline, viewport: sizes.laptop });
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  page = await context.newPage();
  page.setDefaultTimeout(30_000);
  await page.goto(server.entrance);
  await page.getByRole("button", { name: "Open the demo job" }).click();
  await option(page, /Meeting room$/).waitFor({ state: "attached" });
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

const patient = { timeout: 30_000 };
const plan = (on: Page): Locator => on.locator(".plan");
const options = (on: Page, name: RegExp): Locator =>
  on.getByRole("listbox", { name: "Things on this storey" }).getByRole("option", { name });
const option = (on: Page, name: RegExp): Locator => options(on, name).first();
const button = (on: Page, name: string): Locator => on.getByRole("button", { name, exact: true });
const heading = (): Locator => page.getByRole("heading", { level: 2 });

/** Chooses a thing by its name, as the keyboard's list does. */
async function choose(on: Page, name: RegExp): Promise<void> {
  await option(on, name).dispatchEvent("click");
  await on.getByRole("heading", { level: 2 }).filter({ hasText: name }).waitFor();
}

const area = async (name: RegExp): Promise<string> => {
  await choose(page, name);
  return (await page.locator(".card .figures").first().textContent()) ?? "";
};

const demo = siteOf(demoJob()).site;

/** Chooses two rooms of the demo: one by its name, the other with Shift on its bare floor, where no flag stands. */
async function chooseBoth(first: RegExp, second: string): Promise<void> {
  const view = { scale: 30, x: 15, y: 7, width: 1000, height: 600 };
  const [left, bottom] = demo.rooms.find(({ id }) => id === second)!.outline[0]!;
  const places = Array.from({ length: 100 }, (_, i) => [
    left + 0.5 + 0.4 * (i % 10),
    bottom + 0.5 + 0.4 * Math.floor(i / 10),
  ]).filter(([x, y]) => {
    const [hit] = picked(demo, "ground", { view, pixel: toPixel(view, [x!, y!]), reach: 16 });
    return hit?.kind === "rooms" && hit.id === second;
  });
  for (const [x, y] of places) {
    await choose(page, first);
    const pixel = await pixelAt(x!, y!);
    await page.keyboard.down("Shift");
    await page.mouse.click(...pixel);
    await page.keyboard.up("Shift");
    await page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
    );
    if ((await heading().filter({ hasText: "2 things" }).count()) > 0) return;
  }
  throw new Error(`${second} has no bare floor.`);
}

/** Where a place of the demo's ground floor lies on the screen while everything is shown. */
async function pixelAt(x: number, y: number): Promise<readonly [number, number]> {
  await button(page, "Show everything").click();
  const box = (await plan(page).boundingBox())!;
  const card = (await page.locator(".card").boundingBox())!;
  const outlines = demo.rooms.filter(({ storey }) => storey === "ground").flatMap(({ outline }) => outline);
  const bounds = boundsOf(outlines)!;
  const view = fitted(
    { scale: 1, x: 0, y: 0, width: box.width, height: box.height },
    {
      left: bounds.left - 0.8,
      right: bounds.right + 0.8,
      bottom: bounds.bottom - 0.8,
      top: bounds.top + 0.8,
    },
    { left: 0, right: card.width + 32, top: 52, bottom: 52 },
  );
  const { px, py } = toPixel(view, [x, y]);
  return [box.x + px, box.y + py];
}

test("a dragged side takes the room behind the wall along, and one undo brings both back", async () => {
  const [west, east] = [/Changing room, west$/, /Changing room, east$/];
  await expect.poll(() => area(east), patient).toContain("26.3 m²");
  await expect.poll(() => area(west), patient).toContain("26.3 m²");
  // The grip of the side lies in its middle; the wall is 12 cm thick.
  const from = await pixelAt(9.6, 2.94);
  const to = await pixelAt(9.1, 2.94);
  await page.mouse.move(...from);
  await page.mouse.down();
  await page.mouse.move((from[0] + to[0]) / 2, to[1], { steps: 3 });
  await page.mouse.move(...to, { steps: 3 });
  await page.mouse.up();
  await expect.poll(() => area(west), patient).toMatch(/23\.[345] m²/);
  await expect.poll(() => area(east), patient).toMatch(/29\.[234] m²/);
  await button(page, "Undo").click();
  await expect.poll(() => area(west), patient).toContain("26.3 m²");
  await expect.poll(() => area(east), patient).toContain("26.3 m²");
});

test("a typed size moves the wall of a rectangular room", async () => {
  await choose(page, /Crew rest room$/);
  const field = page.getByLabel("Size across");
  expect(await field.inputValue()).toBe("7.48");
  await field.fill("23 ft");
  await field.press("Enter");
  await expect.poll(() => field.inputValue(), patient).toBe("7.01");
  await button(page, "Undo").click();
  await expect.poll(() => field.inputValue(), patient).toBe("7.48");
});

test("two rooms that were chosen are joined across their wall; rooms that lie apart are refused in a sentence", async () => {
  await chooseBoth(/Changing room, west$/, "changing-east");
  await button(page, "Join into one room").click();
  await heading()
    .filter({ hasText: /Changing room, west/ })
    .waitFor();
  expect(await page.locator(".card .figures").first().textContent()).toContain("53.4 m²");
  await expect.poll(() => options(page, /Changing room, east$/).count()).toBe(0);
  await button(page, "Undo").click();
  await expect.poll(() => options(page, /Changing room, east$/).count(), patient).toBe(1);

  await chooseBoth(/Changing room, west$/, "rest");
  await button(page, "Join into one room").click();
  await page.getByText("These rooms have no wall between them").waitFor();
  await holds(page);
  await page.locator(".notice").getByRole("button", { name: "Close" }).click();
});

test("a room mirrored twice is as it was, with what hangs in it", async () => {
  const place = async (): Promise<string> => (await option(page, /B1\.03/).textContent()) ?? "";
  expect(await place()).toContain("17.02 m");
  await choose(page, /Meeting room$/);
  await button(page, "Arrange").click();
  await holds(page);
  await button(page, "Mirror across").click();
  await expect.poll(place, patient).toContain("16.80 m");
  await button(page, "Mirror across").click();
  await expect.poll(place, patient).toContain("17.02 m");
});

test("a storey is copied with everything on it, named, and taken back in one step", async () => {
  const things = await page
    .getByRole("listbox", { name: "Things on this storey" })
    .getByRole("option")
    .count();
  await plan(page).focus();
  await page.keyboard.press("Escape");
  await button(page, "Storey").click();
  await holds(page);
  await button(page, "Copy storey").click();
  await page.getByRole("button", { name: "Storey Ground floor, copy" }).waitFor();
  await button(page, "Storey").click();
  expect(await page.getByLabel("Floor level").inputValue()).toBe("6.80");
  await expect
    .poll(
      () => page.getByRole("listbox", { name: "Things on this storey" }).getByRole("option").count(),
      patient,
    )
    .toBe(things);
  await option(page, /Detector B3\.01/).waitFor({ state: "attached" });
  await page.getByLabel("Name").fill("Second floor");
  await page.getByLabel("Name").press("Enter");
  await page.getByRole("button", { name: "Storey Second floor" }).waitFor();
  await button(page, "Undo").click();
  await button(page, "Undo").click();
  await page.getByRole("button", { name: /Storey Ground floor$/ }).waitFor();
  await option(page, /Detector B1\.03/).waitFor({ state: "attached" });
});

test("what is copied in one job is pasted in another one in another tab, with the models that it needs", async () => {
  await choose(page, /Meeting room$/);
  await plan(page).focus();
  await page.keyboard.press("Control+c");
  const other = await context.newPage();
  other.setDefaultTimeout(30_000);
  await other.goto(new URL("/", server.entrance).href);
  await other.getByRole("button", { name: "Draw from nothing" }).click();
  await plan(other).waitFor();
  await plan(other).focus();
  await other.keyboard.press("Control+v");
  await option(other, /Meeting room$/).waitFor({ state: "attached" });
  await choose(other, /Detector B1\.01/);
  expect(await other.getByLabel("Model").locator("option:checked").textContent()).toBe(
    demo.models.find(({ id }) => id === "demo-round-10-desk")?.title,
  );

  await plan(other).focus();
  await other.keyboard.press("Control+x");
  await expect.poll(() => options(other, /Detector/).count(), patient).toBe(0);
  await other.keyboard.press("Control+v");
  await expect.poll(() => options(other, /Detector/).count(), patient).toBe(1);

  await other.evaluate(() => navigator.clipboard.writeText("hello"));
  await plan(other).focus();
  await other.keyboard.press("Control+v");
  await other.getByText("The clipboard holds nothing that was copied from a plan.").waitFor();
  await other.close();
});

test("everything on a storey is chosen with one key, and a row is made of what is chosen in one step", async () => {
  await plan(page).focus();
  await page.keyboard.press("Control+a");
  await heading()
    .filter({ hasText: /^\d{3} things$/ })
    .waitFor();
  await choose(page, /Detector B1\.03/);
  await button(page, "Arrange").click();
  await page.getByLabel("Copies").fill("2");
  await button(page, "Make 2 copies").click();
  await expect.poll(() => options(page, /Detector B1/).count(), patient).toBe(5);
  await button(page, "Undo").click();
  await expect.poll(() => options(page, /Detector B1/).count(), patient).toBe(3);
});

test("the open job is saved packed, with its history and what was done last", async () => {
  await choose(page, /Meeting room$/);
  await page.getByLabel("Name").fill("Chart room");
  await page.getByLabel("Name").press("Enter");
  await page.getByRole("button", { name: /^Saltmarsh/ }).click();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("menuitem", { name: /^Save as ZIP/ }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^Saltmarsh.*\.job\.zip$/);
  const read = readJobFile(new Uint8Array(await readFile(await download.path())));
  expect(read.job?.rooms.map(({ name }) => name)).toContain("Chart room");
  expect(read.job && (read.history?.length ?? 0)).toBeGreaterThan(0);
  await button(page, "Undo").click();
});
