import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type BuiltServer, sizes, startBrowser, startBuiltServer, withoutOffline } from "./browser.ts";
import { holds } from "./screens-hold.ts";

let server: BuiltServer;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  server = await startBuiltServer();
  browser = await startBrowser();
  page = await (await browser.newContext({ ...withoutOffline, viewport: sizes.laptop })).newPage();
  page.setDefaultTimeout(30_000);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

const button = (name: string): Locator => page.getByRole("button", { name, exact: true });
const figures = (): Locator => page.locator(".card .figures").first();
const racks = (): Locator =>
  page.getByRole("listbox", { name: "Things on this storey" }).getByRole("option", { name: /Furniture/ });

/** Box of all that the canvas of selection and of what is not done yet shows, and how many of its pixels are painted. */
const seenNow = () =>
  page.evaluate(async () => {
    await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    const canvas = document.querySelector<HTMLCanvasElement>(".plan .plan-signs");
    if (!canvas) throw new Error("The plan has no canvas.");
    const { width, height } = canvas;
    const brush = new OffscreenCanvas(width, height).getContext("2d");
    if (!brush) throw new Error("There is nothing to copy the canvas to.");
    brush.drawImage(canvas, 0, 0);
    const { data } = brush.getImageData(0, 0, width, height);
    let [left, right, painted] = [width, 0, 0];
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        if ((data[4 * (y * width + x) + 3] ?? 0) === 0) continue;
        painted += 1;
        [left, right] = [Math.min(left, x), Math.max(right, x)];
      }
    return { wide: Math.max(0, right - left), painted };
  });
/** The same once it has come to rest: a worker paints, and the page shows it when it comes. */
async function drawn() {
  for (let before = await seenNow(); ; ) {
    await page.waitForTimeout(400);
    const now = await seenNow();
    if (now.painted === before.painted && now.wide === before.wide) return now;
    before = now;
  }
}
const painted = async (): Promise<number> => (await drawn()).painted;

/** Sides of an L-shaped store, with the way that each goes where it is not a turn to the left. [m] */
const sides = [
  ["12", undefined],
  ["3.42", undefined],
  ["5", undefined],
  ["2.58", "Upwards"],
  ["7", undefined],
] as const;

test("a side shows on the plan as long as it is typed, before Enter sets it down", async () => {
  await page.goto(server.entrance);
  await button("Draw from nothing").click();
  const field = page.getByRole("textbox", { name: "Length", exact: true });
  await field.waitFor();
  const plan = (await page.locator(".plan").boundingBox())!;
  await page.mouse.click(plan.x + plan.width * 0.15, plan.y + plan.height * 0.4);
  await field.fill("6");
  await expect.poll(async () => (await drawn()).painted, { timeout: 15_000 }).toBeGreaterThan(0);
  const short = await drawn();
  await field.fill("12");
  await expect.poll(async () => (await drawn()).wide / short.wide, { timeout: 15_000 }).toBeGreaterThan(1.7);
  await page.getByText("1 corner", { exact: false }).waitFor();
  for (const [length, way] of sides) {
    if (way !== undefined) await button(way).click();
    await field.fill(length);
    await field.press("Enter");
  }
  await button("Close the room").click();
  await expect.poll(() => figures().textContent()).toContain("59.1 m²");
});

test("the length of a side of an L-shaped room is typed: it shows on the plan, Enter moves the wall, one undo brings it back", async () => {
  const chosen = page.getByLabel(/^Side/);
  const words = await chosen.locator("option").allTextContents();
  expect(words).toContain("1: lower, 12.00 m");
  await chosen.selectOption({ label: "1: lower, 12.00 m" });
  const field = page.getByLabel("Length of side 1");
  const before = await painted();
  await field.fill("13");
  await expect.poll(painted, { timeout: 15_000 }).toBeGreaterThan(1.2 * before);
  expect(await figures().textContent()).toContain("59.1 m²");
  await field.press("Escape");
  await expect.poll(painted, { timeout: 15_000 }).toBe(before);
  await field.fill("13");
  await field.press("Enter");
  // The wall of 3.42 m moved by a metre.
  await expect.poll(() => figures().textContent()).toContain("62.5 m²");
  await holds(page);
  await button("Undo").click();
  await expect.poll(() => figures().textContent()).toContain("59.1 m²");
  expect(await field.inputValue()).toBe("12.00");
});

test("a length too short for a wall is answered in a sentence, and the room stays as it was", async () => {
  await page.getByLabel(/^Side/).selectOption({ label: "6: left, 6.00 m" });
  const left = page.getByLabel("Length of side 6");
  await left.fill("0.05");
  await left.press("Enter");
  await page.getByText("At least 0.10 m").waitFor();
  await expect.poll(() => figures().textContent()).toContain("59.1 m²");
  await left.press("Escape");
});

test("a row shows its copies before it is made; Enter makes them all, and one undo takes them back", async () => {
  await page.keyboard.press("Escape");
  await button("Add").click();
  await page.getByRole("menuitem", { name: "Other furniture" }).click();
  const plan = (await page.locator(".plan").boundingBox())!;
  const [x, y] = [plan.x + plan.width * 0.3, plan.y + plan.height * 0.35];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 40, y - 20, { steps: 3 });
  await page.mouse.move(x + 80, y - 40, { steps: 3 });
  await page.mouse.up();
  await expect.poll(() => racks().count()).toBe(1);
  await button("Arrange").click();
  const bare = await painted();
  await page.getByLabel("Copies").fill("2");
  await expect.poll(painted, { timeout: 15_000 }).toBeGreaterThan(bare);
  const two = await painted();
  await page.getByLabel("Copies").fill("4");
  await expect.poll(painted, { timeout: 15_000 }).toBeGreaterThan(two);
  expect(await racks().count()).toBe(1);
  await holds(page);
  await page.getByLabel("Copies").press("Enter");
  await expect.poll(() => racks().count()).toBe(5);
  await button("Undo").click();
  await expect.poll(() => racks().count()).toBe(1);
});
