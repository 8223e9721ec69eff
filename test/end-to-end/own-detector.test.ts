import { readFileSync } from "node:fs";
import { deflateSync } from "node:zlib";
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
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
/** The demo job under a mouse on a laptop, and under a finger on a phone. */
let pages: { readonly mouse: Page; readonly finger: Page };

beforeAll(async () => {
  server = await startBuiltServer();
  browser = await startBrowser();
  pages = { mouse: await demo("mouse"), finger: await demo("finger") };
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

const patient = { timeout: 30_000 };
const button = (page: Page, name: string): Locator => page.getByRole("button", { name, exact: true });
const detector = (page: Page, tag: string): Locator =>
  page
    .getByRole("listbox", { name: "Things on this storey" })
    .getByRole("option", { name: `Detector ${tag}` });

/** The demo job in a browser of its own, which begins with an empty list of the firm's; with a finger or with a mouse. */
async function demo(hand: "mouse" | "finger"): Promise<Page> {
  const context = await browser.newContext({
    ...withoutOffline,
    viewport: hand === "finger" ? sizes.phone : sizes.laptop,
    hasTouch: hand === "finger",
    isMobile: hand === "finger",
    reducedMotion: "reduce",
  });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(server.entrance);
  await button(page, "Open the demo job").click();
  await page.getByRole("button", { name: /Place detectors in/ }).waitFor();
  return page;
}

async function models(page: Page): Promise<void> {
  await page.locator(".bar-job").click();
  await page.getByRole("menuitem", { name: "Detector models" }).click();
  await button(page, "Add a detector of your own").waitFor();
}

/** A grey picture as PNG: it is traced by where one presses, not by what is on it. */
function picture(width: number, height: number): Buffer {
  const rows = Buffer.alloc((width + 1) * height, 200);
  for (let row = 0; row < height; row += 1) rows[row * (width + 1)] = 0;
  const size = Buffer.alloc(13);
  size.writeUInt32BE(width, 0);
  size.writeUInt32BE(height, 4);
  size.set([8, 0, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", size),
    chunk("IDAT", deflateSync(rows)),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(data.length, 0);
  framed.set(body, 4);
  framed.writeUInt32BE(checksum(body), body.length + 4);
  return framed;
}

/** CRC-32 as PNG asks for it. */
function checksum(bytes: Buffer): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}

const pictureSize = { width: 900, height: 700 };

/** Presses a place of the picture, given in its own pixels. */
async function press(page: Page, hand: "mouse" | "finger", [x, y]: readonly [number, number]): Promise<void> {
  const board = page.locator(".outline-board");
  await board.scrollIntoViewIfNeeded();
  const box = (await board.boundingBox())!;
  const scale = Math.min(box.width / pictureSize.width, box.height / pictureSize.height);
  const at = [
    box.x + box.width / 2 + (x - pictureSize.width / 2) * scale,
    box.y + box.height / 2 + (y - pictureSize.height / 2) * scale,
  ] as const;
  if (hand === "mouse") await page.mouse.click(...at);
  else await page.touchscreen.tap(...at);
}

test("no order list is made while invented models hang in the job, and the refusal comes into view", async () => {
  const page = pages.mouse;
  await models(page);
  await button(page, "Save an order list").click();
  const refusal = page.getByRole("alert");
  await refusal.waitFor();
  expect(await refusal.textContent()).toContain("Corridor-shaped, 20 m long at 2.5 m");
  const [box, card] = [(await refusal.boundingBox())!, (await page.locator(".card").boundingBox())!];
  expect(box.y + box.height).toBeLessThanOrEqual(card.y + card.height + 1);
  await button(page, "Close").first().click();
});

test.each(["mouse", "finger"] as const)(
  "a mask is drawn into the eye by dragging with a %s, changed by figures, removed and taken back",
  async (hand) => {
    const page = pages[hand];
    await detector(page, "B1.03").dispatchEvent("click");
    await button(page, "See what it sees").click();
    const disc = page.locator(".eye-disc");
    // What the masks lead to is told once it is calculated, and moves the disc where the card is short.
    await page
      .getByText(/out of sight/)
      .first()
      .waitFor();
    await disc.scrollIntoViewIfNeeded();
    const box = await restingBox(disc);
    const radius = Math.min(box.width, box.height) / 2.24;
    const middle = [box.x + box.width / 2, box.y + box.height / 2] as const;
    // From 30° off straight down to the right, to 60° off straight down upwards.
    const from = { x: middle[0] + radius / 3, y: middle[1] };
    const to = { x: middle[0], y: middle[1] - (radius * 2) / 3 };
    const between = Array.from({ length: 5 }, (_, index) => ({
      x: from.x + ((to.x - from.x) * (index + 1)) / 5,
      y: from.y + ((to.y - from.y) * (index + 1)) / 5,
    }));
    if (hand === "mouse") {
      await page.mouse.move(from.x, from.y);
      await page.mouse.down();
      for (const { x, y } of between) await page.mouse.move(x, y);
      await page.mouse.up();
    } else {
      const touch = await page.context().newCDPSession(page);
      const send = (type: "touchStart" | "touchMove" | "touchEnd", points: { x: number; y: number }[]) =>
        touch.send("Input.dispatchTouchEvent", { type, touchPoints: points });
      await send("touchStart", [from]);
      for (const point of between) await send("touchMove", [point]);
      await send("touchEnd", []);
    }
    const figure = async (label: string): Promise<number> =>
      Number(await page.getByRole("textbox", { name: label, exact: true }).inputValue());
    const masks = page.locator(".eye-masks li");
    await expect.poll(() => masks.count(), patient).toBe(1);
    for (const [label, degrees] of [
      ["From the notch", 0],
      ["To", 90],
      ["Inner edge", 30],
      ["Outer edge", 60],
    ] as const)
      expect(Math.abs((await figure(label)) - degrees)).toBeLessThanOrEqual(1);

    await page.getByLabel("Outer edge").fill("90");
    await page.keyboard.press("Tab");
    await expect.poll(() => masks.first().textContent(), patient).toContain("to 90° off straight down");
    await button(page, "Remove the mask").click();
    await expect.poll(() => masks.count(), patient).toBe(0);
    await button(page, "Undo").click();
    await expect.poll(() => masks.count(), patient).toBe(1);
    for (const left of ["to 60°", undefined]) {
      await button(page, "Undo").click();
      if (left === undefined) await expect.poll(() => masks.count(), patient).toBe(0);
      else await expect.poll(() => masks.first().textContent(), patient).toMatch(/to (59|60|61)° off/);
    }
    await button(page, "Close").first().click();
  },
);

test("what the detector sees next door is masked at a press, the loss is told, and the template is made for the printer", async () => {
  const page = pages.mouse;
  await detector(page, "B1.03").dispatchEvent("click");
  await button(page, "See what it sees").click();
  const targets = page.getByRole("region", { name: "Mask what it should not see" });
  await targets.getByRole("button", { name: /Corridor/ }).click(patient);
  const masks = page.locator(".eye-masks li");
  await expect.poll(() => masks.count(), patient).toBeGreaterThan(0);
  await targets.getByText("It sees nothing outside its rooms").waitFor(patient);
  await page.getByText(/^The masks (also )?took/).waitFor(patient);
  await button(page, "Print the template").click();
  const paper = page.frameLocator(".print-frame").last();
  await paper
    .locator(".upright svg")
    .first()
    .waitFor({ state: "attached", ...patient });
  expect(await paper.locator("body").textContent()).toContain("Mask template B1.03");
  await button(page, "Undo").click();
  await expect.poll(() => masks.count(), patient).toBe(0);
  await button(page, "Close").first().click();
});

test("a distance is measured by dragging, and the same one by pressing its two ends", async () => {
  const page = pages.mouse;
  const plan = (await page.locator(".plan").boundingBox())!;
  const [left, right] = [plan.x + 200, plan.x + 560];
  const level = plan.y + 120;
  await button(page, "Measure").click();
  await page.getByText(/^Drag, or press both ends/).waitFor();
  await page.mouse.move(left, level);
  await page.mouse.down();
  await page.mouse.move(right, level, { steps: 4 });
  await page.mouse.up();
  const told = page.locator(".tool-now");
  await expect.poll(() => told.textContent(), patient).toMatch(/^\d+\.\d\d m\. /);
  const dragged = await told.textContent();
  await page.mouse.click(left, level);
  await expect.poll(() => told.textContent(), patient).toMatch(/^Drag, or press both ends/);
  await page.mouse.click(right, level);
  await expect.poll(() => told.textContent(), patient).toBe(dragged);
  await button(page, "Done").click();
  await button(page, "Add").waitFor();
});

test("by the keyboard alone a detector is walked to, nudged, turned, doubled, removed and brought back", async () => {
  const page = pages.mouse;
  await page.locator(".plan").focus();
  const spoken = async (): Promise<string> => (await detector(page, "B1.01").textContent()) ?? "";
  const place = async (): Promise<readonly number[]> => {
    const [, across, up] = /([\d.]+) m across, ([\d.]+) m up/.exec(await spoken()) ?? [];
    return [Number(across), Number(up)];
  };
  await page.keyboard.press("Escape");
  await page.getByRole("heading", { name: "Ground floor" }).waitFor();
  await page.keyboard.press("n");
  await page.getByRole("heading", { name: "Detector B1.01" }).waitFor();
  const [x, y] = (await place()) as [number, number];
  for (const [key, at] of [
    ["ArrowRight", [x + 0.1, y]],
    ["Shift+ArrowUp", [x + 0.1, y + 0.5]],
    ["Alt+ArrowDown", [x + 0.1, y + 0.49]],
  ] as const) {
    await page.keyboard.press(key);
    await expect
      .poll(async () => (await place()).map((figure) => figure.toFixed(2)), patient)
      .toEqual(at.map((figure) => figure.toFixed(2)));
  }
  const turn = page.getByLabel("Turn").first();
  expect(await turn.inputValue()).toBe("0");
  await page.keyboard.press("r");
  await expect.poll(() => turn.inputValue(), patient).toBe("15");

  await page.keyboard.press("Enter");
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.closest(".card") !== null), patient)
    .toBe(true);
  await page.keyboard.press("Escape");
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.classList.contains("plan")), patient)
    .toBe(true);

  await page.keyboard.press("d");
  await page.getByRole("heading", { name: "Detector B1.04" }).waitFor();
  await page.keyboard.press("Delete");
  await expect.poll(() => detector(page, "B1.04").count(), patient).toBe(0);
  await page.keyboard.press("Control+z");
  await expect.poll(() => detector(page, "B1.04").count(), patient).toBe(1);
  await page.keyboard.press("Control+y");
  await expect.poll(() => detector(page, "B1.04").count(), patient).toBe(0);
  for (let step = 0; step < 6; step += 1) await page.keyboard.press("Control+z");
  await expect.poll(place, patient).toEqual([x, y]);
});

test.each(["mouse", "finger"] as const)(
  "an outline is traced over a picture by %s, kept in the firm's list and passed on as one file",
  async (hand) => {
    const page = pages[hand];
    await models(page);
    await button(page, "Add a detector of your own").click();
    await button(page, "Save the model").click();
    await page.getByText("Give it a title.").waitFor();
    await page.getByLabel("Title").fill("Long one");
    await page.getByLabel("Seated, diameter").fill("4");
    await page.getByLabel("Cost of one, placed").fill("95");
    await page.getByText("It also hears").click();
    await page.getByRole("button", { name: "More", exact: true }).click();
    await button(page, "Draw an outline: Towards").click();

    const [chooser] = await Promise.all([
      page.waitForEvent("filechooser"),
      button(page, "Trace over a picture").click(),
    ]);
    await chooser.setFiles({
      name: "sheet.png",
      mimeType: "image/png",
      buffer: picture(pictureSize.width, pictureSize.height),
    });
    await page.getByText("Press the detector’s centre in the picture.").waitFor();
    await press(page, hand, [450, 350]);
    await page.getByText("Press a place whose distance from the centre you know.").waitFor();
    await press(page, hand, [750, 350]);
    await page.getByText(/^Press around the edge of the zone/).waitFor();
    await page.getByLabel("Distance to it").fill("6");
    await page.keyboard.press("Tab");
    for (const at of [
      [750, 350],
      [450, 250],
      [150, 350],
      [450, 450],
    ] as const)
      await press(page, hand, at);
    await expect.poll(() => page.locator(".outline-row").count()).toBe(4);
    if (hand === "mouse") await holds(page);
    await button(page, "Use this outline").click();
    await button(page, "Save the model").click();

    await page.getByRole("button", { name: /^The firm’s list \(1\)$/ }).click();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      button(page, "Save the list").click(),
    ]);
    const file = await download.path();
    const list = JSON.parse(readFileSync(file, "utf8")) as {
      models: {
        title: string;
        cost: number;
        zones: Record<string, { outline?: number[][]; radius?: number }[]>;
      }[];
    };
    const [own] = list.models;
    expect(own).toMatchObject({ title: "Long one", cost: 95 });
    expect(own?.zones.seated?.[0]?.radius).toBe(2);
    // Hearing reaches as far as seeing one who sits, until it is entered.
    expect(own?.zones.sound?.[0]?.radius).toBe(2);
    const outline = own?.zones.towards?.[0]?.outline ?? [];
    const meant = [
      [0, 6],
      [90, 2],
      [180, 6],
      [270, 2],
    ];
    expect(outline).toHaveLength(meant.length);
    // A press lands on a whole pixel of the screen: some 5 cm and 1° of this picture on a phone.
    for (const [index, [angle, radius]] of meant.entries()) {
      const turned = ((outline[index]![0]! - angle! + 540) % 360) - 180;
      expect(Math.abs(turned)).toBeLessThan(2);
      expect(outline[index]![1]).toBeCloseTo(radius!, 0);
    }

    await page.getByRole("button", { name: "Take Long one off the firm’s list" }).click();
    await page.getByRole("button", { name: /^The firm’s list \(0\)$/ }).waitFor();
    const [again] = await Promise.all([
      page.waitForEvent("filechooser"),
      button(page, "Open a list").click(),
    ]);
    await again.setFiles(file);
    await page.getByText("1 model was taken into the list.").waitFor();

    // A new job of this browser begins with the firm's models.
    await page.goto(new URL("/", server.entrance).href);
    await button(page, "Draw from nothing").click();
    await page.locator(".plan").waitFor();
    await models(page);
    await expect
      .poll(() => page.locator(".models-open .models-name").allTextContents(), patient)
      .toEqual([expect.stringMatching(/^Long one/)]);
  },
);
