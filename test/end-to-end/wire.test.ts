import type { Browser, BrowserContext, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoJob, type JobFile, jobText } from "#job";
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

async function opened(size: keyof typeof sizes): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({
    ...withoutOffline,
    viewport: sizes[size],
    hasTouch: size !== "laptop",
    reducedMotion: "reduce",
  });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(server.entrance);
  return { context, page };
}

const button = (page: Page | Locator, name: string | RegExp): Locator =>
  page.getByRole("button", { name, exact: typeof name === "string" });
const stages = (page: Page): Locator => page.getByRole("navigation", { name: "Stages of the job" });
const row = (page: Page, name: string): Locator => button(page, new RegExp(`^${name} `));
const select = (page: Page, name: RegExp): Promise<void> =>
  page
    .getByRole("listbox", { name: "Things on this storey" })
    .getByRole("option", { name })
    .first()
    .dispatchEvent("click");

/** Opens the wiring; the count is that of what must or should be looked at. */
async function toWire(page: Page): Promise<void> {
  await button(stages(page), "Wire").click();
  await page.getByText(/230 V kills/).waitFor();
}
const openCount = (page: Page): Promise<string | null> =>
  stages(page)
    .locator(".stage-item", { has: page.getByRole("button", { name: "Wire", exact: true }) })
    .locator(".stage-count")
    .textContent();

/** The job of the page as the server keeps it. */
async function kept(page: Page): Promise<JobFile> {
  const address = new URL(page.url());
  const id = address.hash.replace(/^#\/job\//, "").split("/")[0]!;
  return (await (await page.request.get(`${address.origin}/api/jobs/${id}`)).json()) as JobFile;
}

test("a must of the demo is seen, its evidence read, mended where it is, and brought back by undo", async () => {
  const { context, page } = await opened("laptop");
  await button(page, "Open the demo job").click();
  await toWire(page);
  const second = row(page, "Lighting 2");
  await second.waitFor();
  const before = Number(await openCount(page));
  expect(before).toBeGreaterThan(0);
  await second.getByText("does not hold").waitFor();

  await second.click();
  const fault = /fed from another line or circuit than the detector/;
  await button(page, /Voltage drop from the origin/).click();
  await page
    .getByText(/IEC 60364-5-52/)
    .first()
    .waitFor();
  await page.getByText("verify", { exact: true }).first().waitFor();
  await holds(page);
  await button(page, fault).click();

  const finding = page.getByRole("listitem").filter({ hasText: fault });
  await finding.getByText("Must", { exact: true }).waitFor();
  await button(finding, "Why").click();
  await finding.getByText("Source", { exact: true }).waitFor();
  await button(finding, /Change it/).click();
  const circuit = page.getByLabel("On the circuit");
  expect(await circuit.locator("option:checked").textContent()).toBe("Lighting 1");
  await circuit.selectOption("Lighting 2");
  await expect.poll(() => openCount(page)).toBe(String(before - 1));
  await expect
    .poll(async () => (await kept(page)).switches.find(({ id }) => id === "meeting-button")?.circuit)
    .toBe("Lighting 2");

  await page.locator(".plan").press("Escape");
  await row(page, "Lighting 2").waitFor();
  expect(await button(page, fault).count()).toBe(0);
  await button(page, "Undo").click();
  await button(page, fault).waitFor();
  expect(await openCount(page)).toBe(String(before));
  await context.close();
});

test("a longer cable is seen in the drop, and what is entered for the luminaires of a circuit holds for all of them; weak contacts share their load", async () => {
  const { context, page } = await opened("laptop");
  await button(page, "Open the demo job").click();
  await toWire(page);
  await row(page, "Lighting 4").click();
  /** Voltage drop of the circuit, as its row says it. [%] */
  const drop = async (): Promise<number> =>
    Number(/([\d.]+) % drop/.exec((await row(page, "Lighting 4").textContent()) ?? "")?.[1]);
  const before = await drop();
  expect(before).toBeGreaterThan(0);
  const length = page.getByLabel("Length to the last luminaire");
  await length.fill(String(2 * Number(await length.inputValue())));
  await length.press("Enter");
  await expect.poll(drop).toBeGreaterThan(before);
  await button(page, "Undo").click();
  await expect.poll(drop).toBe(before);

  await button(page, /Select its 12 luminaires/).click();
  await page.getByLabel("Power", { exact: true }).fill("40");
  await page.getByLabel("Power", { exact: true }).press("Enter");
  await expect
    .poll(async () =>
      (await kept(page)).luminaires
        .filter(({ circuit }) => circuit === "Lighting 4")
        .map(({ power }) => power),
    )
    .toEqual(Array.from({ length: 12 }, () => 40));
  await holds(page);
  await page.getByLabel("Circuit of 12 luminaires").selectOption("Lighting 5");
  await page.locator(".plan").press("Escape");
  await row(page, "Lighting 4").getByText("no luminaire").waitFor();
  await button(page, "Undo").click();
  await row(page, "Lighting 4").getByText("12 luminaires").waitFor();

  await select(page, /Detector B1\.01/);
  await page.getByText("Switches the luminaires of the rooms that it controls.").waitFor();
  // Two contacts that are each too weak for all eight panels of the corridor share them.
  const open = Number(await openCount(page));
  await button(page, /^Share them: B1\.01: 4, B1\.02: 4/).click();
  await page.getByText("Switches 4 chosen luminaires.").waitFor();
  await expect.poll(async () => Number(await openCount(page))).toBeLessThan(open);
  await button(page, "Undo").click();
  await expect.poll(async () => Number(await openCount(page))).toBe(open);
  await context.close();
});

test("a job without circuits gets a proposal with a first answer, all of it to be verified, on the phone", async () => {
  const { context, page } = await opened("phone");
  const { id: _, ...demo } = demoJob();
  const bare: JobFile = {
    ...demo,
    name: "Without circuits",
    boards: [],
    circuits: [],
    luminaires: demo.luminaires.map(({ circuit: __, emergency: ___, ...one }) => one),
    switches: [],
  };
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    button(page, "Choose a file").click(),
  ]);
  await chooser.setFiles({
    name: "bare.job.json",
    mimeType: "application/json",
    buffer: Buffer.from(jobText(bare)),
  });
  await page.waitForURL(/#\/job\//);
  await toWire(page);
  await fits(page);
  await button(page, /Propose circuits for them/).tap();
  await row(page, "Lighting 1").waitFor();
  await row(page, "Lighting 1").getByText("verify").waitFor();
  // Nobody has looked at anything: nothing passes.
  expect(await page.locator(".wire-word-pass").count()).toBe(0);
  await expect
    .poll(async () => (await kept(page)).circuits.every(({ readings }) => readings === "assumed"))
    .toBe(true);
  expect((await kept(page)).luminaires.every(({ circuit }) => circuit !== undefined)).toBe(true);
  await fits(page);
  const heights = await page
    .locator(".wire")
    .getByRole("button")
    .evaluateAll((all) =>
      all.map((one) => one.getBoundingClientRect().height).filter((height) => height > 0),
    );
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);

  await button(page, "Board and supply").first().tap();
  await button(page, "Put it on the plan").first().tap();
  await page.getByText("Touch the plan where the board is.").waitFor();
  const plan = (await page.locator(".plan").boundingBox())!;
  await page.touchscreen.tap(plan.x + plan.width / 2, plan.y + 140);
  await button(page, "Move it on the plan").waitFor();
  await expect.poll(async () => (await kept(page)).boards[0]?.at?.length).toBe(2);

  await button(page, "Undo").tap();
  await button(page, "Undo").tap();
  await button(page, /Propose circuits for them/).waitFor();
  await expect.poll(async () => (await kept(page)).circuits.length).toBe(0);
  await context.close();
});

test("the wiring holds in the window of a tablet, light and dark", async () => {
  const { context, page } = await opened("tablet");
  await button(page, "Open the demo job").click();
  await toWire(page);
  await row(page, "Lighting 5").click();
  await holds(page);
  await context.close();
});
