import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoJob, siteOf } from "#job";
import { boundsOf, fitted, toPixel, type View } from "../../src/web/plan/view.ts";
import {
  type BuiltServer,
  restingBox,
  sizes,
  startBrowser,
  startBuiltServer,
  withoutOffline,
} from "./browser.ts";
import { holds } from "./screens-hold.ts";

/** A room of 4 × 3 m at 1 : 100 in black lines, and a table in it in red ones. */
const plan = `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="80mm" viewBox="0 0 120 80">
<g fill="none" stroke="black" stroke-width="0.3"><path d="M10 10 H50 V40 H10 Z M8 8 H52 V42 H8 Z"/></g>
<path fill="none" stroke="red" stroke-width="0.2" d="M20 15 h8 v6 h-8 z"/>
</svg>`;

let server: BuiltServer;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  server = await startBuiltServer();
  browser = await startBrowser();
  const context = await browser.newContext({
    ...withoutOffline,
    viewport: sizes.laptop,
    reducedMotion: "reduce",
  });
  page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(server.entrance);
  await page.getByRole("button", { name: "Open the demo job" }).click();
  await page.getByRole("button", { name: /Place detectors in/ }).waitFor();
  await page.getByText("Survey", { exact: true }).first().click();
  await page.getByRole("button", { name: "Drawings", exact: true }).click();
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

const button = (name: string): Locator => page.getByRole("button", { name, exact: true });
const nothing = (): Locator => page.getByText("No drawing or picture lies under the plan.");

async function choose(file: { name: string; mimeType: string; buffer: Buffer }): Promise<void> {
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), button("Choose a file").click()]);
  await chooser.setFiles(file);
}

/** A photograph of 1200 × 800 pixels, made by the browser itself. */
async function photograph(): Promise<Buffer> {
  const text = await page.evaluate(() => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [1200, 800];
    const brush = canvas.getContext("2d") as CanvasRenderingContext2D;
    brush.fillStyle = "#fff";
    brush.fillRect(0, 0, 1200, 800);
    brush.strokeRect(200, 200, 800, 400);
    return canvas.toDataURL("image/png");
  });
  return Buffer.from(text.slice(text.indexOf(",") + 1), "base64");
}

/** The room that the written plan comes to lie in. */
const through = "entrance";

/** What is read twice the same, half a second apart. */
async function settled(read: () => Promise<string>): Promise<string> {
  for (let before = await read(); ; ) {
    await page.waitForTimeout(500);
    const now = await read();
    if (now === before) return now;
    before = now;
  }
}

const picture = (): Locator => page.locator(".plan-pictures img");

const demo = siteOf(demoJob()).site;

/** The view of the demo's ground floor when everything is shown and nothing reaches beyond its rooms. */
async function wholeView(): Promise<View> {
  await button("Show everything").click();
  const box = (await page.locator(".plan").boundingBox())!;
  const card = (await page.locator(".card").boundingBox())!;
  const outlines = demo.rooms.filter(({ storey }) => storey === "ground").flatMap(({ outline }) => outline);
  const bounds = boundsOf(outlines)!;
  return fitted(
    { scale: 1, x: 0, y: 0, width: box.width, height: box.height },
    {
      left: bounds.left - 0.8,
      right: bounds.right + 0.8,
      bottom: bounds.bottom - 0.8,
      top: bounds.top + 0.8,
    },
    { left: 0, right: card.width + 32, top: 52, bottom: 52 },
  );
}

test("a plan is put onto the storey of an open job, its layers are switched one by one, and each is one step to take back", async () => {
  await choose({ name: "store.svg", mimeType: "image/svg+xml", buffer: Buffer.from(plan) });
  await page.getByText("Read from store.svg").waitFor();
  await holds(page);
  await button("Put it onto Ground floor").click();
  const drawing = page.getByRole("region", { name: "store.svg" });
  await drawing.getByText(/^(\d+) of \1 layers shown$/).click();
  const layers = drawing.locator(".home-plan-layers").getByRole("checkbox");
  const count = await layers.count();
  expect(count).toBeGreaterThanOrEqual(2);
  await holds(page);

  await layers.nth(1).press("Space");
  await drawing.getByText(`${count - 1} of ${count} layers shown`).waitFor();
  expect(await layers.nth(1).isChecked()).toBe(false);
  expect(await layers.nth(0).isChecked()).toBe(true);

  await button("Undo").click();
  await drawing.getByText(`${count} of ${count} layers shown`).waitFor();
  await button("Undo").click();
  await nothing().waitFor();
  expect(await button("Undo").isDisabled()).toBe(true);
  await button("Redo").click();
  await drawing.waitFor();
});

test("a drawing under the plan shows through the floor of a room", async () => {
  const tick = page.getByRole("checkbox", { name: "store.svg" });
  const view = await wholeView();
  const plan = (await page.locator(".plan").boundingBox())!;
  const { outline } = demo.rooms.find(({ id }) => id === through)!;
  const { left, right, bottom, top } = boundsOf(outline)!;
  const [start, end] = [toPixel(view, [left, top]), toPixel(view, [right, bottom])];
  const clip = {
    x: plan.x + start.px + 2,
    y: plan.y + start.py + 2,
    width: end.px - start.px - 4,
    height: end.py - start.py - 4,
  };
  const floor = async (): Promise<string> =>
    (await page.screenshot({ clip, animations: "disabled" })).toString("base64");
  const shown = await settled(floor);
  await tick.press("Space");
  expect(await tick.isChecked()).toBe(false);
  await expect.poll(floor, { timeout: 30_000 }).not.toBe(shown);
  await tick.press("Space");
  await expect.poll(floor, { timeout: 30_000 }).toBe(shown);
  for (let i = 0; i < 3; i++) await button("Undo").click();
  await nothing().waitFor();
});

test("a picture is scaled by two places with the keyboard alone, and lies under the plan in its size", async () => {
  await choose({ name: "wall.png", mimeType: "image/png", buffer: await photograph() });
  const put = button("Put it onto Ground floor");
  await put.waitFor();
  expect(await put.isDisabled()).toBe(true);
  await button("Set 1 in the middle").press("Enter");
  await button("Set 2 in the middle").press("Enter");
  const [first, second] = [1, 2].map((number) =>
    page.getByRole("button", { name: `Place ${number}: arrow keys move it` }),
  ) as [Locator, Locator];
  for (let i = 0; i < 5; i++) await second.press("Shift+ArrowRight");
  await first.press("ArrowLeft");
  await holds(page);
  const sheet = (await page.locator(".picture-sheet").boundingBox())!;
  const middle = async (place: Locator): Promise<readonly [number, number]> => {
    const box = (await place.boundingBox())!;
    return [box.x + box.width / 2, box.y + box.height / 2];
  };
  const [a, b] = [await middle(first), await middle(second)];
  const share = Math.hypot(a[0] - b[0], a[1] - b[1]) / sheet.width;
  expect(share).toBeGreaterThan(0.2);

  const length = page.getByLabel("Distance from 1 to 2");
  await length.fill(`8' 2"`);
  await length.press("Tab");
  await put.press("Enter");
  await picture().waitFor({ state: "attached" });
  const { scale } = await wholeView();
  const metres = (8 * 0.3048 + 2 * 0.0254) / share;
  // Places are read from the screen to half a pixel.
  const slack = 0.01;
  await expect
    .poll(async () => ((await picture().boundingBox())?.width ?? 0) / scale / metres)
    .toSatisfy((ratio: number) => Math.abs(ratio - 1) < slack);
  const { width, height } = (await picture().boundingBox())!;
  expect(Math.abs(width / height - 1.5)).toBeLessThan(slack);

  await page.getByRole("checkbox", { name: "wall.png" }).press("Space");
  await picture().waitFor({ state: "detached" });
  await button("Undo").click();
  await picture().waitFor({ state: "attached" });
  await button("Undo").click();
  await nothing().waitFor();
  await expect.poll(() => picture().count()).toBe(0);
});

test("a plan is read again at the scale that two places with a known length tell", async () => {
  await choose({ name: "store.svg", mimeType: "image/svg+xml", buffer: Buffer.from(plan) });
  await page.getByText("Read from store.svg").waitFor();
  const scale = page.getByLabel("Scale, 1 :");
  expect(await scale.inputValue()).toBe("100");
  await button("Scale from a length you know").click();
  const sheet = page.locator(".picture-sheet");
  await sheet.scrollIntoViewIfNeeded();
  // The outer rectangle is 44 × 34 mm of paper: from its left side to its right one.
  const box = await restingBox(sheet);
  const edge = (12 / 2000) * box.width;
  for (const x of [box.x + edge, box.x + box.width - edge])
    await page.mouse.click(x, box.y + box.height * 0.3);
  await holds(page);
  const length = page.getByLabel("Distance from 1 to 2");
  await length.fill("8.8 m");
  await length.press("Tab");
  await button("Read again at this scale").click();
  // 44 mm that are 8.8 m make 1 : 200; a press of the mouse meets a whole pixel.
  await expect
    .poll(async () => Number(await scale.inputValue()), { timeout: 30_000 })
    .toSatisfy((value: number) => Math.abs(value - 200) < 200 * (2 / box.width));
  await page.getByRole("button", { name: "Leave it" }).click();
  await nothing().waitFor();
});
