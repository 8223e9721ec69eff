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

async function setStageAt(size: keyof typeof sizes): Promise<Page> {
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
  await page.getByRole("button", { name: "Set", exact: true }).click();
  await page.getByRole("heading", { name: "Settings" }).waitFor();
  return page;
}

const device = (page: Page, tag: string) => page.locator(".set-device", { hasText: tag });
const row = (page: Page, name: string) =>
  page.locator(".set-setting").filter({ has: page.getByRole("button", { name: new RegExp(`^${name}`) }) });

test("a derived delay says its reason; another one is chosen, shown as chosen, undone, and chosen again", async () => {
  const page = await setStageAt("laptop");
  await device(page, "B1.03").click();
  const delay = row(page, "Off delay");
  await delay.getByText("People who sit still must not be left in the dark: 15 min.").waitFor();
  expect(await delay.locator(".set-mark").textContent()).toBe("derived");
  await delay.getByRole("button", { name: /^Off delay/ }).click();
  await delay.getByLabel("Minutes").fill("20");
  await delay.getByLabel("Minutes").press("Enter");
  await expect.poll(() => delay.locator(".set-mark").textContent()).toBe("chosen");
  expect(await delay.locator(".set-value").textContent()).toBe("20 min");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect.poll(() => delay.locator(".set-value").textContent()).toBe("15 min");
  expect(await delay.locator(".set-mark").textContent()).toBe("derived");
  await delay.getByLabel("Minutes").fill("20");
  await delay.getByLabel("Minutes").press("Enter");
  await page.getByRole("button", { name: "Back to derived: 15 min" }).click();
  await expect.poll(() => delay.locator(".set-mark").textContent()).toBe("derived");
  await page.context().close();
});

test("a bad choice becomes a finding, counted at the stage and flagged; its remedy mends it", async () => {
  const page = await setStageAt("laptop");
  await device(page, "B1.01").waitFor();
  const open = async (): Promise<number> =>
    Number(await page.getByRole("button", { name: /^Show .* looked at$/ }).count());
  expect(await open()).toBe(1);
  await device(page, "B1.03").click();
  await row(page, "Test mode").getByRole("button").first().click();
  await row(page, "Test mode").getByText("on", { exact: true }).click();
  await page.getByText("Detector B1.03 in room G.11 Meeting room is left in test mode").waitFor();
  await page.getByRole("button", { name: "All settings" }).click();
  await page.getByRole("button", { name: "Show the 2 things that must be looked at" }).click();
  const finding = page.locator(".finding", { hasText: "left in test mode" });
  await finding.getByRole("button", { name: "Switch test mode off" }).click();
  await expect.poll(() => page.locator(".finding", { hasText: "left in test mode" }).count()).toBe(0);
  await page.context().close();
});

test("readings on site give a threshold with its reason, and readings in the sun are refused with a sentence", async () => {
  const page = await setStageAt("laptop");
  await device(page, "B1.03").click();
  const threshold = row(page, "Brightness threshold");
  await threshold.getByRole("button").first().click();
  await threshold.getByRole("button", { name: "From readings on site" }).click();
  const fill = async (label: string, at: number, value: string): Promise<void> => {
    const field = threshold.getByLabel(label, { exact: true }).nth(at);
    await field.fill(value);
    await field.press("Enter");
  };
  await fill("Wanted on the work plane", 0, "500");
  await fill("At the detector", 0, "96");
  await fill("On the work plane", 0, "320");
  await fill("At the detector", 1, "217");
  await fill("On the work plane", 1, "870");
  await threshold.getByRole("button", { name: "Work out the threshold" }).click();
  await threshold.getByText("Light comes on below 150 lx at the detector.").waitFor();
  await threshold.getByText("Light goes off above 271 lx at the detector.").waitFor();
  await expect.poll(() => threshold.locator(".set-value").textContent()).toBe("150 lx");
  await threshold.getByText("From ceiling and work-plane readings.").waitFor();
  await threshold.getByText("The sun shone on floor or desk in view of the detector").click();
  await threshold.getByRole("button", { name: "Work out the threshold" }).click();
  await threshold.getByText(/readings cannot carry a threshold/).waitFor();
  await expect.poll(() => threshold.locator(".set-value").textContent()).toBe("off");
  await threshold.getByRole("button", { name: "Forget the readings" }).click();
  await threshold.getByText("Nothing was read yet: until then presence alone decides.").waitFor();
  await page.context().close();
});

test("a pack of rules is switched on by hand, and every room shows what it says with its evidence", async () => {
  const page = await setStageAt("laptop");
  await page.getByRole("button", { name: "Packs of rules" }).click();
  await page.getByText("Energy standard for buildings, automatic full off").click();
  const room = page.locator(".set-rules .set-setting", { hasText: "G.14 Corridor" });
  await room.getByRole("button").first().click();
  const result = room.locator(".set-result", { hasText: "Light off within 20 min of vacancy" });
  expect(await result.locator(".set-verdict").textContent()).toBe("holds");
  await result.getByRole("button", { name: "Why" }).click();
  await result.getByText(/local amendments come first/).waitFor({ state: "visible" });
  const own = {
    format: "roomwake-rules",
    version: 1,
    code: "house",
    title: "House rules",
    jurisdiction: "Here",
  };
  const short = {
    code: "short",
    clause: "2",
    title: "Off within 1 min",
    when: {},
    limit: { measure: "off-delay", most: 60 },
  };
  const choose = async (content: object): Promise<void> => {
    const [chooser] = await Promise.all([
      page.waitForEvent("filechooser"),
      page.getByRole("button", { name: "Add a pack of your own" }).click(),
    ]);
    await chooser.setFiles({
      name: "house.json",
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify(content)),
    });
  };
  await choose(own);
  await page.getByText(/The rule pack is wrong at edition/).waitFor();
  await choose({ ...own, edition: "1", rules: [short] });
  await room
    .locator(".set-result", { hasText: "Off within 1 min" })
    .getByText("House rules")
    .first()
    .waitFor();
  expect(
    await room.locator(".set-result", { hasText: "Off within 1 min" }).locator(".set-verdict").textContent(),
  ).toBe("does not hold");
  await page.getByRole("button", { name: "Take it out of the job" }).click();
  await expect.poll(() => room.locator(".set-result", { hasText: "Off within 1 min" }).count()).toBe(0);
  await page.context().close();
});

test.each(["laptop", "tablet", "phone"] as const)(
  "the settings and the card of a device hold in the window of a %s, light and dark",
  async (size) => {
    const page = await setStageAt(size);
    const held = size === "laptop" ? holds : fits;
    await device(page, "B1.01").waitFor();
    await held(page);
    await device(page, "B1.01").click();
    await row(page, "Off delay").getByRole("button").first().click();
    await page.getByLabel("Minutes").waitFor();
    await held(page);
    await page.context().close();
  },
);
