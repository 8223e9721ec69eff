import { readFile } from "node:fs/promises";
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { addRoom, documentOfRead, historyOf, readJobFile, writeJobArchive } from "#job";
import { type BuiltServer, sizes, startBrowser, startBuiltServer, withoutOffline } from "./browser.ts";
import { holds } from "./screens-hold.ts";

const demo = "Saltmarsh Ferry Terminal, Staff Wing";

let server: BuiltServer;
let browser: Browser;
let page: Page;
/** The job as it was saved, packed. */
let saved: Uint8Array;

beforeAll(async () => {
  server = await startBuiltServer();
  browser = await startBrowser();
  const context = await browser.newContext({
    ...withoutOffline,
    viewport: sizes.laptop,
    reducedMotion: "reduce",
  });
  page = await context.newPage();
  page.setDefaultTimeout(60_000);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

const row = (name: string): Locator =>
  page.getByRole("listitem").filter({ has: page.getByRole("button", { name: `What to do with ${name}` }) });
const choose = async (name: string, word: string | RegExp): Promise<void> => {
  await page.getByRole("button", { name: `What to do with ${name}`, exact: true }).click();
  await page.getByRole("menuitem", { name: word }).click();
};
const giveFile = async (name: string, bytes: Uint8Array): Promise<void> => {
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Choose a file" }).click(),
  ]);
  await chooser.setFiles({ name, mimeType: "application/zip", buffer: Buffer.from(bytes) });
};
/** The start page as it is, on a laptop and on a phone. */
const holdsEverywhere = async (): Promise<void> => {
  for (const size of ["laptop", "phone"] as const) {
    await page.setViewportSize(sizes[size]);
    await holds(page);
  }
  await page.setViewportSize(sizes.laptop);
};

test("the list shows each plan as it is, and what the browser keeps", async () => {
  await page.goto(server.entrance);
  // What is on the server only has no picture yet, and says so.
  await row(demo).getByText("On the server only").waitFor();
  await page.getByRole("button", { name: "Open the demo job" }).click();
  await page.getByRole("button", { name: /Place detectors in/ }).waitFor();
  await page.goto(new URL("/", server.entrance).href);
  await page.getByRole("img", { name: new RegExp(`Plan of ${demo}: \\d+ rooms`) }).waitFor();
  await page.getByText(/ of about .* used\. The browser/).waitFor();
  await holdsEverywhere();
});

test("a job is duplicated, put aside, and brought back", async () => {
  await choose(demo, "Duplicate");
  const copy = `${demo} (copy)`;
  await page.getByRole("img", { name: new RegExp(`Plan of ${demo} \\(copy\\)`) }).waitFor();
  await choose(copy, "Archive");
  await row(copy).waitFor({ state: "hidden" });
  await page.getByRole("button", { name: "1 archived job" }).click();
  await row(copy).getByRole("img").waitFor();
  await holdsEverywhere();
  await choose(copy, "Bring back");
  await page.getByRole("button", { name: "1 archived job" }).waitFor({ state: "hidden" });
  await row(copy).waitFor();
});

test("a job is deleted only after a question, and comes back by one press", async () => {
  const copy = `${demo} (copy)`;
  await choose(copy, "Delete");
  await page.getByText(`Delete ${copy}?`).waitFor();
  await page.getByRole("button", { name: "Keep it" }).click();
  await choose(copy, "Delete");
  await page.getByRole("button", { name: "Delete", exact: true }).click();
  await page.getByText(`${copy} was deleted.`).waitFor();
  await expect.poll(() => row(copy).count()).toBe(0);
  await page.getByRole("button", { name: "Bring it back" }).click();
  await row(copy).getByRole("img").waitFor();
  await choose(copy, "Delete");
  await page.getByRole("button", { name: "Delete", exact: true }).click();
  await page.getByText(`${copy} was deleted.`).waitFor();
});

test("a job is saved packed: plan, pictures and history in one file", async () => {
  const [download] = await Promise.all([page.waitForEvent("download"), choose(demo, /Save as ZIP/)]);
  expect(download.suggestedFilename()).toBe(`${demo}.job.zip`);
  saved = new Uint8Array(await readFile(await download.path()));
  const read = readJobFile(saved);
  expect([read.job?.name, read.job && read.history !== undefined]).toEqual([demo, true]);
});

test("the copy that was changed elsewhere is merged into the job that was changed here", async () => {
  await choose(demo, "Rename");
  await page.getByRole("textbox", { name: "New name" }).fill("Saltmarsh, measured");
  await page.keyboard.press("Enter");
  await row("Saltmarsh, measured").waitFor();

  const read = readJobFile(saved);
  if (!read.job) throw new Error("The saved job could not be read.");
  const elsewhere = documentOfRead(read, { newId: () => "boat-shed" });
  const outline: [number, number][] = [
    [60, 0],
    [64, 0],
    [64, 3],
    [60, 3],
  ];
  elsewhere.run(addRoom({ name: "Boat shed", outline }));
  await giveFile("back.job.zip", writeJobArchive({ history: historyOf(elsewhere), id: "saltmarsh" }));
  await page.getByText(/Saltmarsh, measured is here already/).waitFor();
  // One thing waits to be opened: the room by its sizes steps back.
  await expect.poll(() => page.getByRole("button", { name: "Open as a job" }).count()).toBe(0);
  await holdsEverywhere();
  await page.getByRole("button", { name: "Merge into the job" }).click();
  await page.getByText("back.job.zip was merged into Saltmarsh, measured.").waitFor();
  await page.getByText("1 thing added").waitFor();
  await holdsEverywhere();
  await page.getByRole("button", { name: "Open the job" }).click();
  const things = page.getByRole("listbox", { name: "Things on this storey" });
  await things
    .getByRole("option", { name: /Boat shed/ })
    .first()
    .waitFor({ state: "attached" });
  await page.getByRole("button", { name: "Saltmarsh, measured" }).waitFor();
});

test("the picture is made again after the merge, and the same copy brings nothing more", async () => {
  const rooms = async (): Promise<number> =>
    Number(
      /: (\d+) rooms/.exec(
        (await page.getByRole("img", { name: /Plan of Saltmarsh, measured/ }).getAttribute("aria-label")) ??
          "",
      )?.[1],
    );
  await page.goto(new URL("/", server.entrance).href);
  await page.getByRole("img", { name: /Plan of Saltmarsh, measured/ }).waitFor();
  const read = readJobFile(saved);
  expect(await rooms()).toBe((read.job?.rooms.length ?? 0) + 1);
  await giveFile("again.job.zip", saved);
  await page.getByRole("button", { name: "Merge into the job" }).click();
  await page.getByText("It brought nothing that was not here already.").waitFor();
});

test("a damaged file is refused in a sentence, and the jobs stay as they were", async () => {
  await giveFile("torn.job.zip", saved.subarray(0, saved.length / 2));
  await page.getByText("torn.job.zip could not be read.").waitFor();
  await page.getByText(/This packed job is damaged/).waitFor();
  await row("Saltmarsh, measured").waitFor();
});
