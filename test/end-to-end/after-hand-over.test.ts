import { readFile } from "node:fs/promises";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { Browser, BrowserContext, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type BuiltServer, sizes, startBrowser, startBuiltServer, withoutOffline } from "./browser.ts";
import { fits, holds } from "./screens-hold.ts";

let server: BuiltServer;
let browser: Browser;
let context: BrowserContext;
let page: Page;

const patient = { timeout: 60_000 };

beforeAll(async () => {
  server = await startBuiltServer();
  browser = await startBrowser();
  context = await browser.newContext({ ...withoutOffline, viewport: sizes.laptop, reducedMotion: "reduce" });
  page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(server.entrance);
  await button("Open the demo job").click();
  await page.getByRole("listbox", { name: "Things on this storey" }).waitFor({ state: "attached" });
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

const button = (name: string | RegExp, within: Page | Locator = page): Locator =>
  within.getByRole("button", { name, exact: typeof name === "string" });
const region = (name: string): Locator => page.getByRole("region", { name, exact: true });

/** A text for a pattern: its signs stand for themselves. */
const literally = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|]/g, "\\$&");

interface Kept {
  readonly detectors: readonly { readonly id: string; readonly tag: string; readonly fitted?: string }[];
  readonly revisions: readonly { readonly letter: string; readonly reason?: string }[];
  readonly swaps: readonly { readonly tag: string; readonly serial?: string; readonly reason: string }[];
  readonly openPoints: readonly { readonly text: string; readonly origin?: string }[];
  readonly testEntries: readonly {
    readonly part: string;
    readonly outcome: string;
    readonly occasion?: string;
  }[];
}

/** The job of the page as the server keeps it. */
async function kept(): Promise<Kept> {
  const { origin, hash } = new URL(page.url());
  const id = hash.replace(/^#\/job\//, "").split("/")[0]!;
  return (await (await page.request.get(`${origin}/api/jobs/${id}`)).json()) as Kept;
}

const openStage = (name: string): Promise<void> => page.getByText(name, { exact: true }).last().click();

test("the first hand-over becomes revision A, and the visits stand with their days", async () => {
  await openStage("Hand over");
  const revisions = region("Revisions");
  await revisions.getByText("Nothing was handed over yet.", { exact: false }).waitFor();
  await page.getByText("once revision A is handed over", { exact: false }).waitFor();
  await button("Hand over as revision A", revisions).click(patient);
  await revisions.getByText("Nothing was changed since revision A.").waitFor();
  for (const visit of ["Trim visit, after four weeks", "Trim visit, first summer", /^Yearly check \d{4}/])
    await button(typeof visit === "string" ? new RegExp(`^${visit}`) : visit)
      .first()
      .waitFor();
  const inspection = page.getByText(/^Periodic inspection due \d{4}-\d\d-\d\d/);
  const dueIn = async (): Promise<number> =>
    Number(/\d{4}/.exec((await inspection.textContent()) ?? "")?.[0]);
  const usual = await dueIn();
  await page.getByText("The interval is from memory", { exact: false }).waitFor();
  await button("Another interval").click();
  await page.getByLabel("From one inspection to the next").fill("6");
  await page.keyboard.press("Tab");
  await expect.poll(dueIn, patient).toBe(usual + 2);
  expect(await page.getByText("The interval is from memory", { exact: false }).count()).toBe(0);
  await expect.poll(async () => (await kept()).revisions.map(({ letter }) => letter), patient).toEqual(["A"]);
  await holds(page);
});

test("a device is swapped: its tag stays, what hung there is told, the difference to the revision stands in the list, and revision B takes it", async () => {
  await button("Swap a device").click();
  await page.getByLabel("Which detector").selectOption({ label: "B1.01 · G.14 Corridor" });
  const form = region("New device");
  await form.getByText(/^Hangs there: /).waitFor();
  await form.getByText("230 V kills", { exact: false }).first().waitFor();
  await form.getByLabel("Serial number").fill("77-1204");
  await form.getByLabel("Why").fill("cracked lens");
  await button("B1.01 is swapped", form).click();
  await page
    .getByRole("region", { name: "Devices before" })
    .getByText(/cracked lens · 77-1204/)
    .waitFor();
  // What was tested with the old device counts no more: the steps and stations of the new one are open.
  await button(/ to be done again$/).waitFor();
  await holds(page);
  await expect
    .poll(async () => (await kept()).swaps, patient)
    .toMatchObject([{ tag: "B1.01", serial: "77-1204", reason: "cracked lens" }]);
  expect((await kept()).detectors.find(({ tag }) => tag === "B1.01")?.fitted).toBeDefined();

  await button("Back").click();
  await openStage("Hand over");
  const revisions = region("Revisions");
  await revisions.getByText("1 change since revision A").waitFor();
  await revisions.getByText("device exchanged").waitFor();
  await revisions.getByLabel("Reason").fill("B1.01 exchanged");
  await button("Issue revision B", revisions).click();
  await revisions.getByText("Nothing was changed since revision B.").waitFor();
  await expect
    .poll(async () => (await kept()).revisions.map(({ letter, reason }) => [letter, reason]), patient)
    .toEqual([
      ["A", "First handed over"],
      ["B", "B1.01 exchanged"],
    ]);
});

test("on a visit a room is looked at point by point on a phone; what is not as it was becomes an open point", async () => {
  await page.setViewportSize(sizes.phone);
  await button(/^Trim visit, after four weeks/).click();
  await button(/^G\.11 Meeting room/).click();
  const points = page.locator(".test-step-line");
  const count = await points.count();
  expect(count).toBeGreaterThan(2);
  const card = page.locator("section.test-station");
  let failed = "";
  for (let i = 0; i < count; i++) {
    await card.waitFor();
    const title = (await card.getAttribute("aria-label")) ?? "";
    const reading = card.getByRole("textbox", { name: "Reading" });
    if ((await reading.count()) > 0) {
      await reading.fill("1");
      await button("Enter", card).click();
    } else if (failed === "") {
      failed = title;
      await button("Add a remark", card).click();
      await card.getByRole("textbox", { name: "Remark" }).fill("dust");
      await button("No", card).click();
    } else await button("Yes", card).click();
    // The next point has taken its place, or all were looked at.
    await expect
      .poll(async () => ((await card.count()) > 0 ? await card.getAttribute("aria-label") : ""), patient)
      .not.toBe(title);
  }
  await page.getByText("Everything here was looked at.").waitFor();
  await fits(page);
  await holds(page);
  await expect
    .poll(async () => (await kept()).openPoints.map(({ text }) => text), patient)
    .toContainEqual(
      expect.stringMatching(
        new RegExp(`^Trim visit, after four weeks: ${literally(failed)}.*: no\\..* dust`),
      ),
    );
  const entries = (await kept()).testEntries.filter(({ occasion }) => occasion !== undefined);
  expect(entries.length).toBe(count);
  await button("All rooms").click();
  await button(/^G\.11 Meeting room.*failed/i).waitFor();
  await button("Back").click();
  await page.setViewportSize(sizes.laptop);
});

test("somebody calls: five questions at most, the causes are ranked, and the call is kept as an open point", async () => {
  await openStage("Hand over");
  await button("Call-back").click();
  await button(/^G\.11 Meeting room/).click();
  await button("The light goes off while somebody is there.").click();
  for (let asked = 2; asked <= 5; asked++) {
    const question = page.getByText(`Question ${asked} of at most 5`);
    const over = page.getByText("No further question on the telephone", { exact: false });
    await question.or(over).first().waitFor();
    if ((await over.count()) > 0) break;
    await page.locator(".test-answers button, .test-answer").first().click();
  }
  await page.getByText("Likely causes").waitFor();
  await page.getByText("they prove nothing", { exact: false }).waitFor();
  await holds(page);
  await page.getByLabel("Who called").fill("Reception");
  await button("Keep as open point").click();
  await expect
    .poll(async () => (await kept()).openPoints.find(({ origin }) => origin === "call-back")?.text, patient)
    .toMatch(/^Call-back: The light goes off while somebody is there\. Likely: .*Called: Reception\.$/);
});

test("papers speak another language than the screen when that is picked", async () => {
  await openStage("Hand over");
  await page.getByLabel("Language of the papers").selectOption({ label: "Deutsch" });
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 180_000 }),
    button("Room cards (PDF)").click(),
  ]);
  const paper = await readFile(await download.path());
  expect(paper.toString("latin1")).toMatch(/\/Lang \(de\)/);
  const pdf = await getDocument({ data: new Uint8Array(paper) }).promise;
  const { items } = await (await pdf.getPage(1)).getTextContent();
  await pdf.destroy();
  const words = items.map((item) => ("str" in item ? item.str : "")).join(" ");
  expect(words).toMatch(/\bMelder\b/);
  expect(words).not.toMatch(/\bdetectors?\b/i);
  await button("Make the pack").waitFor();
});
