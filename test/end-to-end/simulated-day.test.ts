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

/** The simulated day of the meeting room, with the demo job just opened. */
async function meetingRoom(size: keyof typeof sizes): Promise<Page> {
  const context = await browser.newContext({
    ...withoutOffline,
    viewport: sizes[size],
    hasTouch: size === "phone",
    reducedMotion: "reduce",
  });
  const page = await context.newPage();
  page.setDefaultTimeout(40_000);
  await page.goto(server.entrance);
  await page.getByRole("button", { name: "Open the demo job" }).click();
  await page
    .getByRole("listbox", { name: "Things on this storey" })
    .getByRole("option", { name: /^(Room )?G\.11/ })
    .first()
    .dispatchEvent("click");
  await button(page, "Simulate a day").dispatchEvent("click");
  await page.getByRole("heading", { name: "Simulated day" }).waitFor();
  await page.getByText(/^Lit for /).waitFor();
  return page;
}

const button = (page: Page | Locator, name: string | RegExp): Locator =>
  page.getByRole("button", { name, exact: typeof name === "string" });

/** Types into a field and leaves it. */
async function enter(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press("Enter");
}

/** Somebody drawn from one share of the day to another, by dragging in the row. */
async function draw(page: Page, from: number, to: number): Promise<void> {
  const row = page.getByRole("group", { name: "Who is in view of B1.03" });
  await row.scrollIntoViewIfNeeded();
  const box = await restingBox(row);
  const y = box.y + box.height / 2;
  await page.mouse.move(box.x + box.width * from, y);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * ((from + to) / 2), y);
  await page.mouse.move(box.x + box.width * to, y);
  await page.mouse.up();
}

const fault = (page: Page): Locator => page.getByText(/^Switched off while somebody is there/);

interface KeptJob {
  readonly detectors: readonly { readonly tag: string; readonly settings?: { readonly offDelay?: number } }[];
}

/** Delay of a detector as the server keeps it. */
async function keptDelay(page: Page, tag: string): Promise<number | undefined> {
  const address = new URL(page.url());
  const id = address.hash.replace(/^#\/job\//, "").split("/")[0]!;
  const answer = await page.request.get(`${address.origin}/api/jobs/${id}`);
  const job = (await answer.json()) as KeptJob;
  return job.detectors.find((one) => one.tag === tag)?.settings?.offDelay;
}

test("presence is drawn, a short delay leaves somebody in the dark, a longer one does not, and is taken into the job", async () => {
  const page = await meetingRoom("laptop");
  await button(page, "Nobody").click();
  await page.getByText("Nobody is there all day.").waitFor();
  await draw(page, 9 / 24, 12 / 24);
  await button(page, "Somebody from 09:00 to 12:00").waitFor();
  await enter(page, "Off delay to try", "2");
  await fault(page).waitFor();
  // A press on the flag goes there, and looks closer.
  const first = page.getByText(/^\d\d:\d\d: dark for .+ with somebody there \(B1\.03\)$/).first();
  const time = (await first.textContent())!.slice(0, 5);
  await first.click();
  await page.getByRole("slider", { name: "Time of the day" }).waitFor();
  expect(await page.getByRole("slider", { name: "Time of the day" }).getAttribute("aria-valuetext")).toBe(
    `${time}, light off`,
  );
  await enter(page, "Off delay to try", "20");
  await page.getByText(/^Nothing stands out/).waitFor();
  expect(await fault(page).count()).toBe(0);
  await button(page, /^Use 20 min for B1\.03/).click();
  await page.getByText("Now 20 min, as chosen.").waitFor();
  await expect.poll(() => keptDelay(page, "B1.03"), { timeout: 20_000 }).toBe(1200);
  await button(page, "Undo").click();
  await page.getByText(/^Now 15 min/).waitFor();
  await page.context().close();
});

test("by keys alone: a stay is moved, stretched and taken away, and the time goes on by the hour", async () => {
  const page = await meetingRoom("laptop");
  await button(page, "Nobody").click();
  await button(page, "Put somebody there from 9 to 12").click();
  const stay = button(page, /^Somebody from /);
  await stay.focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Shift+ArrowRight");
  await button(page, "Somebody from 09:05 to 12:10").waitFor();
  await page.getByLabel("From", { exact: true }).fill("10:00");
  await button(page, "Somebody from 10:00 to 12:10").waitFor();
  await page.getByRole("combobox", { name: "What" }).selectOption("Only movement, nobody");
  await page.getByText(/^On while nobody is there/).waitFor();
  const clock = page.getByRole("slider", { name: "Time of the day" });
  await clock.focus();
  await page.keyboard.press("Home");
  for (let i = 0; i < 11; i++) await page.keyboard.press("PageUp");
  expect(await clock.getAttribute("aria-valuetext")).toBe("11:00, light on");
  await page.getByText("Movement in view").waitFor();
  await button(page, /^Only movement, nobody there, from /).focus();
  await page.keyboard.press("Delete");
  await page.getByText("Nobody is there all day.").waitFor();
  await page.context().close();
});

test("a log that is dropped is shown day by day, and one that is none is refused with its line", async () => {
  const page = await meetingRoom("laptop");
  const rows = ["30", "31"].flatMap((date) =>
    Array.from({ length: 24 * 12 }, (_, i) => {
      const there = i >= 8 * 12 && i < (date === "30" ? 9 : 11) * 12;
      const clock = `${String(Math.floor(i / 12)).padStart(2, "0")}:${String((i % 12) * 5).padStart(2, "0")}:00`;
      return `2026-03-${date} ${clock},${there ? 1 : 0}`;
    }),
  );
  const drop = (name: string, text: string): Promise<void> =>
    page.getByRole("group", { name: "Who is there" }).evaluate(
      (place, file) => {
        const given = new DataTransfer();
        given.items.add(new File([file.text], file.name, { type: "text/csv" }));
        place.dispatchEvent(new DragEvent("drop", { dataTransfer: given, bubbles: true, cancelable: true }));
      },
      { name, text },
    );
  await drop("bad.csv", `time,occupied\n${rows[0]}\nyesterday,1\n`);
  await page.getByText("“yesterday” in line 3 is no time.").waitFor();
  await drop("office.csv", `time,occupied\n${rows.join("\n")}\n`);
  await page.getByText("Day 1 of 2").waitFor();
  await button(page, "Somebody from 08:00 to 09:00").waitFor();
  await button(page, "Day after").click();
  await button(page, "Somebody from 08:00 to 11:00").waitFor();
  // The whole log is replayed: four hours there, and two switch-offs after the delay.
  await button(page, "Try 10 min").waitFor();
  await button(page, "By chance").click();
  await page.getByText(/closed form/).waitFor();
  await holds(page);
  await page.context().close();
});

test.each([["laptop"], ["phone"]] as const)("the simulated day holds in the window of a %s", async (size) => {
  const page = await meetingRoom(size);
  await button(page, "Try 1 min").waitFor();
  await button(page, "Try 1 min").click();
  await fault(page).waitFor();
  await button(page, "The day as a table").click();
  await page.getByRole("columnheader", { name: "Who" }).waitFor();
  if (size === "laptop") await holds(page);
  else await fits(page);
  await page.context().close();
});
