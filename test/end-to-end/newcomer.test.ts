import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type BuiltServer, sizes, startBrowser, startBuiltServer, withoutOffline } from "./browser.ts";

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

/** Sides of an L-shaped store, with the way that each goes where it is not a turn to the left. [m] */
const sides = [
  ["12", undefined],
  ["3.42", undefined],
  ["5", undefined],
  ["2.58", "Upwards"],
  ["7", undefined],
] as const;
const bounds = { wide: 12 };

type Place = readonly [number, number];

/** A newcomer's hands: every press, drag and button counts as one gesture, every typed figure as one value. */
function handsOn(page: Page, how: "touch" | "mouse") {
  const count = { gestures: 0, values: 0 };
  const touched = async (there: Locator): Promise<void> => {
    count.gestures += 1;
    if (how === "touch") await there.tap();
    else await there.click();
  };
  const press = async ([x, y]: Place): Promise<void> => {
    count.gestures += 1;
    if (how === "touch") await page.touchscreen.tap(x, y);
    else await page.mouse.click(x, y);
  };
  return {
    count,
    press,
    button: (name: string | RegExp, role: "button" | "menuitem" = "button") =>
      touched(page.getByRole(role, { name, exact: typeof name === "string" }).first()),
    tick: (words: string) => touched(page.locator("label.tick", { hasText: words })),
    typed: async (figure: string): Promise<void> => {
      count.values += 1;
      const field = page.getByRole("textbox", { name: "Length" });
      await field.focus();
      await page.keyboard.type(figure);
      await page.keyboard.press("Enter");
    },
    line: async (from: Place, to: Place): Promise<void> => {
      if (how === "touch") {
        await press(from);
        await press(to);
        return;
      }
      count.gestures += 1;
      await page.mouse.move(...from);
      await page.mouse.down();
      await page.mouse.move((from[0] + to[0]) / 2, to[1], { steps: 3 });
      await page.mouse.move(...to, { steps: 3 });
      await page.mouse.up();
    },
  };
}

/** Where the room lies on the screen once it is painted and rests: the box of all that the bottom canvas shows in the colour of walls. */
async function roomOnScreen(page: Page): ReturnType<typeof wallsOnScreen> {
  let before = await wallsOnScreen(page);
  let same = 0;
  return expect
    .poll(
      async () => {
        const now = await wallsOnScreen(page);
        same = now.right > now.left && JSON.stringify(now) === JSON.stringify(before) ? same + 1 : 0;
        before = now;
        return same;
      },
      { timeout: 30_000, interval: 300 },
    )
    .toBeGreaterThanOrEqual(4)
    .then(() => before);
}

const wallsOnScreen = (page: Page) =>
  page.evaluate(() => {
    const canvas = document.querySelector(".plan canvas") as HTMLCanvasElement;
    const area = canvas.getBoundingClientRect();
    const copy = new OffscreenCanvas(canvas.width, canvas.height);
    const brush = copy.getContext("2d") as OffscreenCanvasRenderingContext2D;
    brush.drawImage(canvas, 0, 0);
    const { data, width, height } = brush.getImageData(0, 0, canvas.width, canvas.height);
    let [left, right, top, bottom] = [width, 0, height, 0];
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        const i = 4 * (y * width + x);
        if ((data[i + 3] ?? 0) < 200 || (data[i] ?? 255) > 90) continue;
        // The scale bar is thin and lies at the bottom left.
        if (y > height - 120 * (height / area.height)) continue;
        [left, right] = [Math.min(left, x), Math.max(right, x)];
        [top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
      }
    const k = area.width / width;
    return {
      left: area.left + left * k,
      right: area.left + right * k,
      top: area.top + top * k,
      bottom: area.top + bottom * k,
    };
  });

/** What must stand in the list of things once it is drawn. */
const drawn = [
  [/Rack/, 2],
  [/Door/, 1],
  [/Heater/, 1],
  [/Room without a name/, 1],
] as const;

/** Draws, plans and prints the store; ends with what it took. */
async function planned(page: Page, how: "touch" | "mouse") {
  const hand = handsOn(page, how);
  await page.goto(server.entrance);
  await hand.button("Draw from nothing");
  await page.getByRole("textbox", { name: "Length" }).waitFor();
  const plan = (await page.locator(".plan").boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
  await hand.press([plan.x + plan.width * 0.15, plan.y + plan.height * 0.4]);
  for (const [length, way] of sides) {
    if (way !== undefined) await hand.button(way);
    await hand.typed(length);
  }
  await hand.button("Close the room");
  await page.getByText(/^59\.1\sm²$/).waitFor();
  const room = await roomOnScreen(page);
  const scale = (room.right - room.left) / bounds.wide;
  const at = (x: number, y: number): Place => [room.left + x * scale, room.bottom - y * scale];

  await hand.button("Add");
  await hand.button("Row of racks", "menuitem");
  await hand.tick("Draw several");
  await hand.line(at(1.5, 1.6), at(5.5, 1.6));
  await hand.line(at(1.5, 3.6), at(5.5, 3.6));
  await hand.button("Cancel");
  await hand.button("Add");
  await hand.button("Door", "menuitem");
  await hand.press(at(9, 0));
  await hand.button("Add");
  await hand.button("Heater", "menuitem");
  await hand.press(at(11.5, 3));
  const things = page.getByRole("listbox", { name: "Things on this storey" }).getByRole("option");
  const missing = async (): Promise<readonly string[]> => {
    const names = await things.allTextContents();
    return drawn
      .filter(([what, many]) => names.filter((name) => what.test(name)).length < many)
      .map(([what]) => `${what} in ${names.join(" | ")}`);
  };
  await expect.poll(missing, { timeout: 30_000 }).toEqual([]);

  await hand.button("Place");
  await hand.press(at(8.5, 1.5));
  await hand.button("Place detectors");
  await page.getByRole("heading", { name: "Place detectors" }).waitFor();
  await hand.button("Place detectors");
  await page
    .getByRole("button", { name: /Take (the|this) layout/ })
    .first()
    .waitFor({ timeout: 120_000 });
  await hand.button(/Take (the|this) layout/);
  await page.evaluate(() => {
    // A headless browser has no printer: the frame is looked at instead.
    HTMLIFrameElement.prototype.focus = () => undefined;
  });
  await hand.button("Print");
  const sheet = page.frameLocator(".print-frame").locator(".sheet svg").first();
  await sheet.waitFor({ state: "attached" });
  return {
    count: hand.count,
    sheet: (await page.frameLocator(".print-frame").locator("body").textContent()) ?? "",
  };
}

test.each([
  ["laptop", "mouse", sizes.laptop],
  ["tablet", "touch", sizes.tablet],
] as const)(
  "on a %s, with %s: an L-shaped store with two racks, a door and a heater, drawn from nothing, planned and printed in at most 25 gestures and 12 typed values",
  async (_, how, viewport) => {
    const context = await browser.newContext({ ...withoutOffline, viewport, hasTouch: how === "touch" });
    const page = await context.newPage();
    page.setDefaultTimeout(90_000);
    const { count, sheet } = await planned(page, how);
    expect(count.gestures).toBeLessThanOrEqual(25);
    expect(count.values).toBeLessThanOrEqual(12);
    expect(sheet).toContain("Planned, not yet tested on site");
    expect(sheet).toContain("B1.01");
    await context.close();
  },
);
