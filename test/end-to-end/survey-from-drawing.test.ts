import type { Browser, BrowserContext, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { boundsOf, fitted, toPixel, type View } from "../../src/web/plan/view.ts";
import { writtenLitRoom } from "../exchange/written-lit-room.ts";
import { writtenPlan } from "../exchange/written-plan.ts";
import {
  type BuiltServer,
  restingBox,
  sizes,
  startBrowser,
  startBuiltServer,
  withoutOffline,
} from "./browser.ts";
import { holds } from "./screens-hold.ts";

let server: BuiltServer;
let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  server = await startBuiltServer();
  browser = await startBrowser();
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

const button = (name: string | RegExp): Locator =>
  page.getByRole("button", { name, exact: typeof name === "string" });
const things = (name: RegExp): Locator =>
  page.getByRole("listbox", { name: "Things on this storey" }).getByRole("option", { name });

/** A new job of one plan, with its rooms found. */
async function jobOf(file: { name: string; mimeType: string; text: string }, rooms: RegExp): Promise<void> {
  context = await browser.newContext({ ...withoutOffline, viewport: sizes.laptop, reducedMotion: "reduce" });
  page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(server.entrance);
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), button("Choose a file").click()]);
  await chooser.setFiles({ name: file.name, mimeType: file.mimeType, buffer: Buffer.from(file.text) });
  await page.getByText(`Read from ${file.name}`).waitFor();
  await button("Open as a job").last().click();
  await button(rooms).waitFor();
}

async function drawings(): Promise<void> {
  await page.getByText("Survey", { exact: true }).first().click();
  await button("Drawings").click();
}

test("a person says once which block is a luminaire: they come into their room in one step, and are not doubled", async () => {
  await jobOf({ name: "lit.dxf", mimeType: "application/dxf", text: writtenLitRoom() }, /Place detectors in/);
  await drawings();
  await button("Luminaires in this drawing").click();
  const blocks = page.getByRole("list", { name: "Luminaires in this drawing" });
  await blocks.getByText(/4 × 1\.2.* by 0\.3/).waitFor();
  const tick = blocks.getByRole("checkbox", { name: /^Lamp/ });
  await tick.press("Space");
  await page.getByLabel("Type on the label").fill("Linear");
  await page.getByLabel("Power of each").fill("36");
  await page.getByLabel("Power of each").press("Tab");
  await page.getByText("1 lies in no room of this storey and is left out.").waitFor();
  await holds(page);
  await button("Take 2 luminaires").click();
  await blocks.getByText(/2 taken/).waitFor();
  await expect.poll(() => things(/^Luminaire/).count()).toBe(2);
  await expect.poll(() => button(/^Take \d/).count()).toBe(0);

  await button("Undo").click();
  await expect.poll(() => things(/^Luminaire/).count()).toBe(0);
  await button("Redo").click();
  await expect.poll(() => things(/^Luminaire/).count()).toBe(2);
  await page.getByLabel("Power of each").fill("40");
  await page.getByLabel("Power of each").press("Tab");
  await button("Write it on those taken").click();
  await things(/^Luminaire/)
    .first()
    .dispatchEvent("click");
  await expect.poll(() => page.getByLabel("Power", { exact: true }).inputValue()).toBe("40");
  await context.close();
});

/** The view of a storey whose drawing is so large, when everything is shown beside the card. [m] */
async function viewOf(bounds: { left: number; right: number; bottom: number; top: number }): Promise<View> {
  await button("Show everything").click();
  const box = (await page.locator(".plan").boundingBox())!;
  const card = (await page.locator(".card").boundingBox())!;
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

interface Kept {
  readonly rooms: readonly { readonly name: string; readonly outline: readonly [number, number][] }[];
  readonly openings: readonly { readonly rooms: readonly (string | null)[] }[];
}

/** The job of the page as the server keeps it. */
async function kept(): Promise<Kept> {
  const address = new URL(page.url());
  const answer = await page.request.get(
    `${address.origin}/api/jobs/${address.hash.replace(/^#\/job\//, "").split("/")[0]}`,
  );
  return (await answer.json()) as Kept;
}

test("rooms are taken from the drawing by a touch inside each, the doorway between them once", async () => {
  await jobOf({ name: "store.svg", mimeType: "image/svg+xml", text: writtenPlan }, /in 2 rooms/);
  await expect.poll(async () => (await kept()).rooms.length).toBe(2);
  const before = await kept();
  const middles = before.rooms.map(({ outline }) => {
    const { left, right, bottom, top } = boundsOf(outline)!;
    return [(left + right) / 2, (bottom + top) / 2] as const;
  });
  for (const name of [/Store/, /Archive/]) {
    await things(name).first().dispatchEvent("click");
    await page.locator(".plan").press("Delete");
    await things(name).first().waitFor({ state: "detached" });
  }
  await button("Take rooms from the drawing").click();
  await button("Show everything").click();
  // The drawing's outer walls lie 0.3 m outside of its rooms.
  const all = boundsOf(before.rooms.flatMap(({ outline }) => outline))!;
  const view = await viewOf({
    left: all.left - 0.3,
    right: all.right + 0.3,
    bottom: all.bottom - 0.3,
    top: all.top + 0.3,
  });
  const plan = (await page.locator(".plan").boundingBox())!;
  for (const [index, middle] of middles.entries()) {
    const { px, py } = toPixel(view, middle);
    await page.mouse.click(plan.x + px, plan.y + py);
    await expect.poll(async () => (await kept()).rooms.length, { timeout: 30_000 }).toBe(index + 1);
  }
  const after = await kept();
  for (const { outline } of after.rooms) {
    const { left, right, bottom, top } = boundsOf(outline)!;
    expect((right - left) * (top - bottom)).toBeCloseTo(12, 1);
  }
  expect(after.openings.filter(({ rooms }) => !rooms.includes(null))).toHaveLength(1);
  expect(after.openings).toHaveLength(before.openings.length);
  await context.close();
});

test("a slanted picture is made straight by the corners of a rectangle with known sides", async () => {
  await jobOf({ name: "store.svg", mimeType: "image/svg+xml", text: writtenPlan }, /in 2 rooms/);
  await drawings();
  const text = await page.evaluate(() => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [1200, 800];
    const brush = canvas.getContext("2d") as CanvasRenderingContext2D;
    brush.fillStyle = "#fff";
    brush.fillRect(0, 0, 1200, 800);
    brush.fillStyle = "#36c";
    // A door seen from below: a rectangle that grows narrower upwards.
    brush.beginPath();
    for (const [x, y] of [
      [400, 200],
      [800, 200],
      [1000, 700],
      [200, 700],
    ] as const)
      brush.lineTo(x, y);
    brush.fill();
    return canvas.toDataURL("image/png");
  });
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), button("Choose a file").click()]);
  await chooser.setFiles({
    name: "photo.png",
    mimeType: "image/png",
    buffer: Buffer.from(text.slice(text.indexOf(",") + 1), "base64"),
  });
  await page.locator("label", { hasText: "At an angle: a photo" }).click();
  const sheet = page.locator(".picture-sheet");
  await sheet.scrollIntoViewIfNeeded();
  const put = button(/^Put it onto/);
  const corners = [
    [400, 200],
    [800, 200],
    [1000, 700],
    [200, 700],
  ] as const;
  for (const [x, y] of corners) {
    expect(await put.isDisabled()).toBe(true);
    const box = await restingBox(sheet);
    await page.mouse.click(box.x + (x / 1200) * box.width, box.y + (y / 800) * box.height);
  }
  await page.getByLabel("From 1 to 2").fill("4");
  await page.getByLabel("From 2 to 3").fill("3");
  await page.getByLabel("From 2 to 3").press("Tab");
  await holds(page);
  await put.click();
  await page.locator(".plan-pictures img").waitFor({ state: "attached" });
  const address = new URL(page.url());
  const read = async () => {
    const answer = await page.request.get(
      `${address.origin}/api/jobs/${address.hash.replace(/^#\/job\//, "").split("/")[0]}`,
    );
    const { underlays } = (await answer.json()) as {
      underlays: { picture?: { map: number[]; width: number } }[];
    };
    return underlays.find(({ picture }) => picture)?.picture;
  };
  await expect.poll(async () => (await read())?.width).toBe(1200);
  const { map } = (await read())!;
  const onPlan = (x: number, y: number): readonly [number, number] => {
    const w = map[6]! * x + map[7]! * y + map[8]!;
    return [(map[0]! * x + map[1]! * y + map[2]!) / w, (map[3]! * x + map[4]! * y + map[5]!) / w];
  };
  // A press meets a whole pixel of the screen, some four of the picture; far up the slant one is worth most.
  const slack = 0.15;
  const rectangle = [
    [0, 3],
    [4, 3],
    [4, 0],
    [0, 0],
  ] as const;
  corners.forEach(([x, y], index) => {
    const [u, v] = onPlan(x, y);
    expect(Math.hypot(u - rectangle[index]![0], v - rectangle[index]![1])).toBeLessThan(slack);
  });
  await context.close();
});

test("a drawing that cannot be painted is said so in one sentence, and the rooms stand", async () => {
  context = await browser.newContext({
    viewport: sizes.laptop,
    reducedMotion: "reduce",
    serviceWorkers: "block",
  });
  // A page that never gets the painter of linework: an old cache, a filter in between.
  await context.route(/underlay-worker/, (route) => route.abort());
  page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(server.entrance);
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), button("Choose a file").click()]);
  await chooser.setFiles({ name: "store.svg", mimeType: "image/svg+xml", buffer: Buffer.from(writtenPlan) });
  await page.getByText("Read from store.svg").waitFor();
  await button("Open as a job").last().click();
  await page.getByText(/The drawing under the plan cannot be shown/).waitFor();
  await expect.poll(() => page.getByText(/The drawing under the plan cannot be shown/).count()).toBe(1);
  await expect.poll(() => things(/^Store/).count()).toBeGreaterThan(0);
  await context.close();
});
