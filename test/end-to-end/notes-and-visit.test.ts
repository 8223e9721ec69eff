import type { Browser, BrowserContext, Locator, Page } from "playwright-core";
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

interface KeptJob {
  readonly notes: readonly {
    readonly text: string;
    readonly at: readonly [number, number];
    readonly photos: readonly string[];
    readonly room?: string;
  }[];
  readonly photos: readonly {
    readonly id: string;
    readonly caption?: string;
    readonly of?: string;
    readonly width: number;
    readonly height: number;
    readonly data: string;
  }[];
  readonly rooms: readonly { readonly id: string; readonly name: string }[];
  readonly visit: { readonly complaint?: string; readonly yearBuilt?: number };
}

/** The job of the page as the server keeps it. */
async function kept(page: Page): Promise<KeptJob> {
  const address = new URL(page.url());
  const id = address.hash.replace(/^#\/job\//, "").split("/")[0]!;
  const answer = await page.request.get(`${address.origin}/api/jobs/${id}`);
  return (await answer.json()) as KeptJob;
}

async function opened(size: keyof typeof sizes): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({
    ...withoutOffline,
    viewport: sizes[size],
    hasTouch: size === "phone",
    reducedMotion: "reduce",
  });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(server.entrance);
  return { context, page };
}

const button = (page: Page | Locator, name: string | RegExp): Locator =>
  page.getByRole("button", { name, exact: typeof name === "string" });

/** A photograph, made by the browser itself: larger than a job takes it. */
async function photograph(page: Page): Promise<{ name: string; mimeType: string; buffer: Buffer }> {
  const text = await page.evaluate(() => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [3000, 2000];
    const brush = canvas.getContext("2d") as CanvasRenderingContext2D;
    brush.fillStyle = "#ccd";
    brush.fillRect(0, 0, 3000, 2000);
    brush.fillStyle = "#543";
    brush.fillRect(1200, 700, 600, 600);
    return canvas.toDataURL("image/jpeg");
  });
  return {
    name: "board.jpg",
    mimeType: "image/jpeg",
    buffer: Buffer.from(text.slice(text.indexOf(",") + 1), "base64"),
  };
}

async function addPhoto(page: Page, within: Locator): Promise<void> {
  const photo = await photograph(page);
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    button(within, "Add photos").click(),
  ]);
  await chooser.setFiles(photo);
}

test("a note is pinned to a place, gets a photograph with a caption, is moved, taken back step by step, and is there after a reload", async () => {
  const { context, page } = await opened("laptop");
  await button(page, "Open the demo job").click();
  await button(page, /Place detectors in/).waitFor();
  await page.getByText("Survey", { exact: true }).first().click();
  await button(page, "Notes and photos").click();
  await button(page, "Add a note").click();
  const plan = (await page.locator(".plan").boundingBox())!;
  const [x, y] = [plan.x + plan.width * 0.3, plan.y + plan.height * 0.5];
  await page.mouse.click(x, y);
  const pin = page.locator(".note-pin");
  const note = page.getByRole("region", { name: "Note 1" });
  const pinned = async (): Promise<readonly [number, number]> => {
    const box = (await pin.boundingBox())!;
    return [box.x + box.width / 2, box.y + box.height / 2];
  };
  const away = async (at: readonly [number, number]): Promise<number> => {
    const now = await pinned();
    return Math.hypot(now[0] - at[0], now[1] - at[1]);
  };
  // The pin's point may stand above the place, its middle no more than its own size away.
  await expect.poll(() => away([x, y])).toBeLessThan(44);
  const first = await pinned();

  const words = note.getByLabel("Note 1");
  await words.fill("Ceiling opened here, cable in the void");
  await words.blur();
  await addPhoto(page, note);
  await button(note, "Photo 1").click();
  const caption = note.getByLabel("What it shows");
  await caption.fill("Board behind the door");
  await caption.press("Tab");
  await holds(page);
  await button(note, "Board behind the door").click();
  await note.getByText("Board behind the door").waitFor();
  await holds(page);

  await button(note, "Move it").click();
  await page.mouse.click(x + 120, y + 60);
  await expect.poll(async () => Math.round((await pinned())[0] - first[0])).toBe(120);
  await expect.poll(async () => Math.round((await pinned())[1] - first[1])).toBe(60);
  const moved = await pinned();
  await button(page, "Undo").click();
  await expect.poll(() => away(first)).toBeLessThan(1);
  await button(page, "Undo").click();
  await button(note, "Photo 1").waitFor();
  await button(page, "Undo").click();
  await button(note, "Photo 1").waitFor({ state: "detached" });
  for (let i = 0; i < 3; i++) await button(page, "Redo").click();
  await button(note, "Board behind the door").waitFor();
  await expect.poll(() => away(moved)).toBeLessThan(1);

  await expect
    .poll(async () => (await kept(page)).photos.map((photo) => photo.caption))
    .toEqual(["Board behind the door"]);
  const job = await kept(page);
  const [photo] = job.photos;
  expect([photo!.width, photo!.height]).toEqual([2400, 1600]);
  expect(job.notes).toHaveLength(1);
  expect(job.notes[0]).toMatchObject({ text: "Ceiling opened here, cable in the void", photos: [photo!.id] });

  await page.reload();
  await pin.click();
  await button(note, "Board behind the door").waitFor();
  expect(await note.getByLabel("Note 1").inputValue()).toBe("Ceiling opened here, cable in the void");
  await context.close();
});

test("a telephone call becomes a job on the phone: a room as told, the complaint, the year, a photograph", async () => {
  const { context, page } = await opened("phone");
  await button(page, "From a telephone call").click();
  const room = page.getByRole("region", { name: "Rooms, as told" });
  await room.getByLabel("Name").fill("Toilet");
  await room.getByLabel("Length").fill("2.4");
  await room.getByLabel("Width").fill("1.8");
  await fits(page);
  await button(room, "Add this room").tap();
  await room.getByText(/1 room on this storey/).waitFor();
  expect(await room.getByLabel("Name").inputValue()).toBe("");

  const call = page.getByRole("region", { name: "The call" });
  await call.getByLabel("What is wrong, what is wished").fill("Light stays off");
  await call.getByLabel("Year built").fill("1968");
  await call.getByLabel("Year built").press("Tab");
  await addPhoto(page, call);
  await button(call, "Photo 1").tap();
  await call.getByLabel("What it shows").fill("Old switch");
  await call.getByLabel("What it shows").press("Tab");
  await holds(page);
  // What is touched with a thumb is large enough for one.
  const sizesOf = await call
    .getByRole("button")
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height));
  expect(sizesOf.length).toBeGreaterThanOrEqual(3);
  expect(Math.min(...sizesOf)).toBeGreaterThanOrEqual(44);

  await expect
    .poll(async () => {
      const { visit, photos, rooms } = await kept(page);
      return [visit.complaint, visit.yearBuilt, photos[0]?.caption, photos[0]?.of, rooms[0]?.name];
    })
    .toEqual(["Light stays off", 1968, "Old switch", "visit", "Toilet"]);
  await page.reload();
  await page
    .getByRole("listbox", { name: "Things on this storey" })
    .getByRole("option", { name: /Toilet/ })
    .waitFor({ state: "attached" });
  await context.close();
});
