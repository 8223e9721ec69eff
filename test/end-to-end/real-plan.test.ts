import { existsSync } from "node:fs";
import type { Browser, Locator } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { realFiles } from "../real-files.ts";
import { type BuiltServer, sizes, startBrowser, startBuiltServer, withoutOffline } from "./browser.ts";
import { fits } from "./screens-hold.ts";

const folder = realFiles("dxf");
const name = "hackerspace-danish-room-text-r2007.dxf";
/** Of the twelve that were counted by eye. */
const leastRooms = 10;
const file = `${folder}/${name}`;

let server: BuiltServer;
let browser: Browser;

describe.skipIf(!folder || !existsSync(file))("a real DXF, from the file to placed detectors", () => {
  beforeAll(async () => {
    server = await startBuiltServer();
    browser = await startBrowser();
  });
  afterAll(async () => {
    await browser.close();
    await server.stop();
  });

  test.each([
    ["laptop", "mouse"],
    ["tablet", "touch"],
  ] as const)(
    "on a %s, with %s",
    async (size, hand) => {
      const context = await browser.newContext({
        ...withoutOffline,
        viewport: sizes[size],
        hasTouch: hand === "touch",
      });
      const page = await context.newPage();
      page.setDefaultTimeout(90_000);
      const press = (there: Locator): Promise<void> => (hand === "touch" ? there.tap() : there.click());
      const button = (word: string | RegExp): Locator =>
        page.getByRole("button", { name: word, exact: typeof word === "string" }).last();
      const things = page.getByRole("listbox", { name: "Things on this storey" }).getByRole("option");

      const rooms = async (): Promise<number> => {
        const address = new URL(page.url());
        const id = address.hash.replace(/^#\/job\//, "").split("/")[0];
        const answer = await page.request.get(`${address.origin}/api/jobs/${id}`);
        return ((await answer.json()) as { rooms: readonly unknown[] }).rooms.length;
      };
      await page.goto(server.entrance);
      const [chooser] = await Promise.all([page.waitForEvent("filechooser"), press(button("Choose a file"))]);
      await chooser.setFiles(file);
      await page.getByText(`Read from ${name}`).waitFor();
      await fits(page);
      await press(button("Open as a job"));
      await things.first().waitFor({ state: "attached" });
      await expect.poll(rooms, { timeout: 30_000 }).toBeGreaterThanOrEqual(leastRooms);
      await press(button(/^Place detectors in/));
      await page
        .getByRole("heading", { name: /^Place detectors/ })
        .first()
        .waitFor();
      await press(button("Place detectors"));
      const take = button(/Take (the|this) layout/);
      await take.waitFor({ timeout: 150_000 });
      await fits(page);
      await press(take);
      await expect
        .poll(() => things.filter({ hasText: /^Detector B1\.\d\d/ }).count(), { timeout: 60_000 })
        .toBeGreaterThan(0);
      await context.close();
    },
    400_000,
  );
});
