import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type BuiltServer, sizes, startBrowser, startBuiltServer } from "./browser.ts";
import { holds } from "./screens-hold.ts";

let server: BuiltServer;
let browser: Browser;
let phone: BrowserContext;
let address: string;
const folder = mkdtempSync(join(tmpdir(), "roomwake-walk-test-"));

beforeAll(async () => {
  server = await startBuiltServer({ folder });
  browser = await startBrowser();
  phone = await browser.newContext({
    viewport: sizes.phone,
    hasTouch: true,
    reducedMotion: "reduce",
    // A fresh page must find all that is needed on the device.
    serviceWorkers: "allow",
  });
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
});

const patient = { timeout: 40_000 };

/** The meeting room's walk test on a phone, in a tab of its own. */
async function tab(at: string, context = phone): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(40_000);
  await page.goto(at);
  return page;
}

async function openRoom(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Test", exact: true }).last().click();
  await page
    .getByRole("button", { name: /^G\.11 Meeting room.*stations/ })
    .first()
    .click();
  await page.getByRole("region", { name: /^Station \d+ of \d+/ }).waitFor();
}

const station = (page: Page) => page.getByRole("region", { name: /^Station \d+ of \d+/ });
const passed = (page: Page) => page.getByText(/^\d+ of \d+ stations passed/);

/** Enters what should be seen at the station that is open, with a distance where one is asked for. */
async function asExpected(page: Page): Promise<void> {
  const before = await station(page).getAttribute("aria-label");
  const more = page.getByRole("button", { name: "10 cm more" });
  if ((await more.count()) > 0) await more.click();
  await page.locator(".test-answer").first().click();
  // The last station of all stays open.
  await expect
    .poll(
      async () =>
        (await station(page).getAttribute("aria-label")) !== before ||
        /^(\d+) of \1 /.test((await passed(page).textContent()) ?? ""),
      patient,
    )
    .toBe(true);
}

interface Kept {
  readonly name: string;
  readonly testEntries: readonly { readonly part: string; readonly outcome: string; readonly by?: string }[];
}
async function kept(page: Page): Promise<Kept> {
  const { origin, hash } = new URL(address);
  const id = hash.replace("#/job/", "").split("/")[0]!;
  return (await page.request.get(`${origin}/api/jobs/${id}`)).json() as Promise<Kept>;
}

test("a room is tested on a phone without signal, the tab is killed in the middle, somebody else changes the job meanwhile: nothing is lost, nothing doubled", async () => {
  const first = await tab(server.entrance);
  await first.getByRole("button", { name: "Open the demo job" }).click();
  await first.getByRole("listbox", { name: "Things on this storey" }).waitFor({ state: "attached" });
  address = first.url();
  // All that works offline is on the device once the page has said so to its worker.
  await first.evaluate(() => navigator.serviceWorker.ready);
  await expect
    .poll(() => first.evaluate(async () => (await caches.keys()).length), { timeout: 60_000 })
    .toBeGreaterThan(0);
  await first.reload();
  await first.getByRole("button", { name: "Test", exact: true }).click();
  await first.getByLabel("Who tests").fill("A. Fitter");
  await first.getByRole("textbox", { name: "Role" }).fill("electrician");
  await first.keyboard.press("Tab");
  await first.getByRole("button", { name: /^G\.11 Meeting room.*stations/ }).waitFor();

  const desk = await browser.newContext({ viewport: sizes.laptop });
  const office = await tab(server.entrance, desk);
  await office.goto(address);
  await office.getByRole("listbox", { name: "Things on this storey" }).waitFor({ state: "attached" });

  // The network is gone for both: nobody answers any more.
  const { port } = new URL(address);
  await server.stop();
  await openRoom(first);
  const count = Number(/of (\d+)/.exec((await station(first).getAttribute("aria-label")) ?? "")?.[1]);
  expect(count).toBeGreaterThanOrEqual(4);
  expect(count).toBeLessThanOrEqual(8);
  for (let i = 0; i < 2; i++) await asExpected(first);
  await first.close();

  const second = await tab(address);
  await openRoom(second);
  await expect.poll(() => passed(second).textContent(), patient).toMatch(new RegExp(`^2 of ${count} `));
  // Meanwhile in the office: another person, another device.
  await office
    .getByRole("option", { name: /B1\.01/ })
    .first()
    .dispatchEvent("click");
  await office.locator(".plan").focus();
  await office.keyboard.press("Delete");
  await expect.poll(() => office.getByRole("option", { name: /B1\.01/ }).count(), patient).toBe(0);

  for (let i = 2; i < count; i++) await asExpected(second);
  await expect
    .poll(() => passed(second).textContent(), patient)
    .toMatch(new RegExp(`^${count} of ${count} `));

  server = await startBuiltServer({ folder, port: Number(port) });
  for (const page of [office, second]) {
    // A server that starts anew lets in who has its new address.
    await page.goto(server.entrance);
    await page.waitForURL(({ searchParams }) => !searchParams.has("token"));
    await page.goto(address);
  }
  await expect.poll(async () => (await kept(office)).testEntries.length, { timeout: 60_000 }).toBe(count);
  const { testEntries } = await kept(office);
  expect(new Set(testEntries.map(({ part }) => part)).size).toBe(count);
  expect(new Set(testEntries.map(({ by }) => by))).toEqual(new Set(["A. Fitter"]));
  // What was done in the office has come to the phone.
  await expect.poll(() => second.getByRole("option", { name: /B1\.01/ }).count(), patient).toBe(0);
  await second.close();
  await desk.close();
});

test("what was not seen fails its station and the room, and another entry later counts instead; distances may be pointed at", async () => {
  const page = await tab(address);
  await openRoom(page);
  await page
    .getByRole("button", { name: /In through the door/ })
    .first()
    .click();
  const label = await station(page).getAttribute("aria-label");
  const number = Number(/Station (\d+)/.exec(label ?? "")?.[1]);
  const line = page.locator(".test-list li").nth(number - 1);
  await page.locator(".test-answer").nth(1).click();
  await expect.poll(() => line.textContent(), patient).toContain("failed");
  await expect.poll(() => page.locator(".test-verdict").textContent(), patient).toContain("failed");
  await line.getByRole("button").click();
  await page.getByRole("button", { name: "Point on the plan" }).click();
  const plan = (await page.locator(".plan").boundingBox())!;
  await page.touchscreen.tap(plan.x + plan.width / 2, plan.y + 150);
  const field = page.getByRole("textbox", { name: /from the (door|detector)/ });
  await expect.poll(() => field.inputValue(), patient).not.toBe("");
  await field.fill("0.8");
  await field.press("Enter");
  await page.locator(".test-answer").first().click();
  await expect.poll(() => line.textContent(), patient).toContain("passed");
  await holds(page);
  await page.setViewportSize({ width: 360, height: 740 });
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(wide).toBeLessThanOrEqual(360);
  // One hand, gloves: whatever is pressed here is large enough.
  const small = await page
    .locator(".test button")
    .evaluateAll((all) =>
      all
        .filter((one) => one.getClientRects().length > 0)
        .flatMap((one) => (one.getBoundingClientRect().height < 48 ? [one.textContent] : [])),
    );
  expect(small).toEqual([]);
});

test("work on a circuit goes step by step: power is refused while a link is in, dead work while nothing is proved dead, and what was done is kept", async () => {
  const page = await tab(address);
  await page.getByRole("button", { name: "Test", exact: true }).click();
  await page
    .getByRole("button", { name: /^Lighting .* steps/ })
    .first()
    .click();
  await page.getByText("Not proved dead: treat as live").waitFor();
  const done = page.getByRole("button", { name: "Done", exact: true });
  expect(await page.getByRole("region", { name: "Disconnect" }).isVisible()).toBe(true);
  await done.click();
  await expect
    .poll(() => page.locator(".test-step-line", { hasText: "Disconnect" }).first().textContent(), patient)
    .toContain("done");
  await page
    .getByRole("button", { name: /^Power on/ })
    .first()
    .click();
  await page
    .getByText(/^No power: the test link at detector/)
    .first()
    .waitFor();
  expect(await done.isDisabled()).toBe(true);
  await page
    .getByRole("button", { name: /^Insulation resistance/ })
    .first()
    .click();
  await page.getByRole("textbox", { name: "Reading" }).fill("0.02");
  await page.getByText("Beyond the limit").waitFor();
  await page.getByText(/0\.02 MΩ is unusual/).waitFor();
  expect(await page.getByRole("button", { name: "Enter", exact: true }).isDisabled()).toBe(true);
  await holds(page);

  // A complaint is followed to its cause, and what is to be done stands among the open points.
  await page.getByRole("button", { name: "Back", exact: true }).click();
  await openRoom(page);
  await page.getByRole("button", { name: "Something is wrong" }).click();
  await page.getByRole("button", { name: "The light stays on." }).click();
  await page.locator(".fault-outcomes button").first().click();
  await page.getByRole("button", { name: "Why, and what mends it" }).first().click();
  await holds(page);
  await page.getByRole("button", { name: "Record as open point" }).first().click();
  await page.getByRole("button", { name: "All rooms" }).click();
  await page.getByRole("heading", { name: "Open points (1)" }).waitFor();
});
