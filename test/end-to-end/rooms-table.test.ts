import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type BuiltServer, sizes, startBrowser, startBuiltServer, withoutOffline } from "./browser.ts";

let server: BuiltServer;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  server = await startBuiltServer();
  browser = await startBrowser();
  const context = await browser.newContext({ ...withoutOffline, viewport: sizes.laptop });
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  page = await context.newPage();
  page.setDefaultTimeout(60_000);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

/** Goes with the Tab key until something with this role and name has the keyboard. */
async function tabTo(name: RegExp, most = 60): Promise<void> {
  for (let i = 0; i < most; i += 1) {
    await page.keyboard.press("Tab");
    const found = await page.evaluate(() => {
      const element = document.activeElement;
      return element?.getAttribute("aria-label") ?? element?.textContent ?? "";
    });
    if (name.test(found)) return;
  }
  throw new Error(`The keyboard reaches nothing called ${name} in ${most} steps.`);
}

/** What the active cell of the table holds. */
const activeCell = (): Promise<string> =>
  page.evaluate(() => {
    const id = document.activeElement?.getAttribute("aria-activedescendant");
    return (id && document.getElementById(id)?.textContent) || "";
  });
const column = async (index: number): Promise<string[]> =>
  page.locator(`.rooms-body [role=row] [role=gridcell]:nth-child(${index})`).allTextContents();
const press = async (...keys: readonly string[]): Promise<void> => {
  for (const key of keys) await page.keyboard.press(key);
};

const list = [
  "No\tName\tLength\tWidth\tHeight",
  ...Array.from(
    { length: 500 },
    (_, i) => `${i + 1}\tOffice ${i + 1}\t${(3 + (i % 7) / 10).toFixed(2)}\t4.10\t2.70`,
  ),
  "501\tHall\t0.05\t4.10\t2.70",
].join("\n");

test("rooms pasted out of a spreadsheet are shown with what was not understood, and laid out in one step", async () => {
  await page.goto(server.entrance);
  await page.getByRole("button", { name: "From a telephone call" }).press("Enter");
  await page.getByRole("heading", { name: "What is there" }).waitFor();
  await page.getByRole("button", { name: "Close", exact: true }).press("Enter");
  await page.getByRole("button", { name: "Rooms as a table" }).press("Enter");
  await page.getByRole("button", { name: "Rooms from a list of sizes" }).press("Enter");
  await page.evaluate((text) => navigator.clipboard.writeText(text), list);
  await page.getByLabel("One room a line: number, name, length, width, ceiling").press("Control+v");
  await page.getByText("Line 502: “0.05” is no length of a room’s side.").waitFor();
  await page.getByRole("button", { name: "Lay out 500 rooms" }).press("Enter");
  const grid = page.getByRole("grid", { name: "Rooms" });
  await grid.waitFor();
  expect(await grid.getAttribute("aria-rowcount")).toBe("501");
  const things = page.getByRole("listbox", { name: "Things on this storey" });
  await expect.poll(() => things.getByRole("option").count()).toBe(500);
});

test("with the keyboard alone cells are gone to, typed into, taken back, and filled down", async () => {
  await tabTo(/^Rooms$/);
  await press("Control+Home");
  expect(await activeCell()).toBe("1");
  await press("ArrowRight");
  await page.keyboard.type("Store");
  await press("Enter");
  await expect.poll(async () => (await column(2))[0]).toBe("Store");
  expect(await activeCell()).toBe("Office 2");

  await press("F2");
  await page.keyboard.type(" left open");
  await press("Escape");
  expect(await activeCell()).toBe("Office 2");

  await press("ArrowUp", "Tab");
  await page.keyboard.type("st");
  await press("Tab");
  await expect.poll(async () => (await column(3))[0]).toBe("Stair");
  await page.keyboard.type("250 cm");
  // After a run of Tabs Enter goes on below where the run began, as in a spreadsheet.
  await press("Enter", "ArrowUp");
  expect(await activeCell()).toBe("Store");
  await press("ArrowRight", "ArrowRight");
  expect(await activeCell()).toBe("2.50");

  await press("Shift+ArrowDown", "Shift+ArrowDown", "Shift+ArrowDown", "Control+d");
  await expect
    .poll(async () => (await column(4)).slice(0, 5))
    .toEqual(["2.50", "2.50", "2.50", "2.50", "2.70"]);
  await press("Control+z");
  await expect.poll(async () => (await column(4)).slice(0, 3)).toEqual(["2.50", "2.70", "2.70"]);
});

test("what is chosen in the table is chosen on the plan", async () => {
  await press("Control+Home", "ArrowDown");
  const things = page.getByRole("listbox", { name: "Things on this storey" });
  await expect
    .poll(() => things.getByRole("option", { selected: true }).allTextContents())
    .toEqual([expect.stringContaining("Office 2")]);
});

test("a value that cannot be is named, the cell stays open, and the job as it was", async () => {
  await press("Control+Home", "ArrowRight", "ArrowRight", "ArrowRight");
  await page.keyboard.type("250");
  await press("Enter");
  await page.getByText("1 Store, Ceiling, “250”: Not a ceiling height between 1.80 m and 20.00 m.").waitFor();
  await press("Escape");
  expect(await activeCell()).toBe("2.50");
});

test("a block goes in as one step, and one bad cell keeps all of it out", async () => {
  await press("Control+Home", "ArrowDown", "ArrowRight");
  await page.evaluate(() => navigator.clipboard.writeText("Archive\tstore\t2.4\nPlant\tsleeping\t2.4"));
  await press("Control+v");
  await page.getByText("3 Office 3, Use, “sleeping”: No use has this name.").waitFor();
  await expect.poll(async () => (await column(2)).slice(1, 3)).toEqual(["Office 2", "Office 3"]);
  await page.evaluate(() => navigator.clipboard.writeText("Archive\tstore\t2.4\nBoilers\tplant\t2.4"));
  await press("Control+v");
  await expect.poll(async () => (await column(2)).slice(1, 3)).toEqual(["Archive", "Boilers"]);
  await expect.poll(async () => (await column(3)).slice(1, 3)).toEqual(["Store, moving about", "Plant room"]);
  await press("Shift+ArrowDown", "Control+c");
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe("Archive\nBoilers");
  await press("Control+z");
  await expect.poll(async () => (await column(2)).slice(1, 3)).toEqual(["Office 2", "Office 3"]);
});

test("headings are reached with the arrows and sort the rows, not the job", async () => {
  await press("Escape", "Control+Home", "ArrowUp");
  expect(await activeCell()).toBe("Number");
  await press("Enter", "Enter");
  await expect.poll(async () => (await column(1))[0]).toBe("500");
  await press("Enter");
  await expect.poll(async () => (await column(1))[0]).toBe("1");
});

test("500 rooms are gone through with few of them in the page at any time", async () => {
  await press("Control+Home");
  const grid = page.getByRole("grid", { name: "Rooms" });
  for (let i = 0; i < 40; i += 1) {
    await grid.evaluate((element, top) => {
      element.scrollTop = top;
    }, i * 500);
    await page.waitForTimeout(16);
    expect(await page.locator(".rooms-body [role=row]").count()).toBeLessThan(60);
  }
  await press("Control+End");
  await expect.poll(() => column(1)).toContain("500");
});

test("Tab at the end of a row and Escape lead out of the table", async () => {
  await press("Home");
  const role = () => page.evaluate(() => document.activeElement?.getAttribute("role"));
  for (let i = 0; i < 7; i += 1) await press("Tab");
  await expect.poll(role).not.toBe("grid");
  await press("Shift+Tab");
  await expect.poll(role).toBe("grid");
  await press("Escape");
  await page.getByRole("grid", { name: "Rooms" }).waitFor({ state: "detached" });
});
