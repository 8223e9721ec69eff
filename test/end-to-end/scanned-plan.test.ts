import { zlibSync } from "fflate";
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { writtenPdf } from "../exchange/written-pdf.ts";
import { chunk } from "../exchange/written-picture.ts";
import {
  type BuiltServer,
  restingBox,
  sizes,
  startBrowser,
  startBuiltServer,
  withoutOffline,
} from "./browser.ts";
import { holds } from "./screens-hold.ts";

let server: BuiltServer;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  server = await startBuiltServer();
  browser = await startBrowser();
  page = await (
    await browser.newContext({ ...withoutOffline, viewport: sizes.tablet, hasTouch: true })
  ).newPage();
  page.setDefaultTimeout(30_000);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

const button = (name: string | RegExp): Locator =>
  page.getByRole("button", { name, ...(typeof name === "string" ? { exact: true } : {}) }).first();

/** Size of the scan, and the wall on it: a black ring. [px] */
const [wide, high] = [1200, 800];
const wall = { left: 200, top: 100, right: 1000, bottom: 600, thick: 16 };

/** A grey scan of one room, as a PNG picture. */
function scanned(): Buffer {
  const rows = new Uint8Array((wide + 1) * high).fill(240);
  for (let y = 0; y < high; y++) {
    rows[y * (wide + 1)] = 0;
    for (let x = 0; x < wide; x++) {
      const inside = (by: number): boolean =>
        x >= wall.left + by && x < wall.right - by && y >= wall.top + by && y < wall.bottom - by;
      if (inside(0) && !inside(wall.thick)) rows[y * (wide + 1) + 1 + x] = 10;
    }
  }
  const long = (value: number): number[] => [
    value >>> 24,
    (value >>> 16) & 255,
    (value >>> 8) & 255,
    value & 255,
  ];
  return Buffer.from([
    ...[0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
    ...chunk("IHDR", [...long(wide), ...long(high), 8, 0, 0, 0, 0]),
    ...chunk("IDAT", [...zlibSync(rows)]),
    ...chunk("IEND", []),
  ]);
}

/** Pages with a scan each, and a stamp of a few lines over it where it says so. */
const scan = (pages: number, stamp?: "stamped"): Promise<Uint8Array> =>
  writtenPdf((pen) => {
    for (let i = 0; i < pages; i++) {
      if (i > 0) pen.addPage();
      pen.image(scanned(), 0, 0, { width: 600, height: 400 });
      if (stamp) pen.rect(480, 340, 100, 40).moveTo(480, 360).lineTo(580, 360).stroke();
    }
  });

async function give(name: string, bytes: Uint8Array): Promise<void> {
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), button("Choose a file").tap()]);
  await chooser.setFiles({ name, mimeType: "application/pdf", buffer: Buffer.from(bytes) });
}

/** Sets the two upper corners of the room, which lie eight metres apart. */
async function scaled(word: string | RegExp): Promise<void> {
  const sheet = page.locator(".picture-sheet");
  await sheet.scrollIntoViewIfNeeded();
  for (const x of [wall.left, wall.right]) {
    expect(await button(word).isDisabled()).toBe(true);
    const box = await restingBox(sheet);
    await page.touchscreen.tap(box.x + (x / wide) * box.width, box.y + (wall.top / high) * box.height);
  }
  await page.getByLabel("Distance from 1 to 2").fill("8");
  await page.getByLabel("Distance from 1 to 2").press("Tab");
  await holds(page);
  await button(word).tap();
}

/** The pictures under the plan, as the server keeps them. */
async function kept() {
  const address = new URL(page.url());
  const answer = await page.request.get(
    `${address.origin}/api/jobs/${address.hash.replace(/^#\/job\//, "").split("/")[0]}`,
  );
  const { underlays } = (await answer.json()) as {
    underlays: { name: string; picture?: { map: number[]; width: number; height: number } }[];
  };
  return underlays.flatMap(({ name, picture }) => (picture ? [{ name, ...picture }] : []));
}

test("a scanned PDF page on the start page becomes a picture with its scale, and a job to draw over it", async () => {
  await page.goto(server.entrance);
  await give("club house.pdf", await scan(1));
  await page.getByText("Page 1 holds a picture and no lines: the plan was scanned.").waitFor();
  await holds(page);
  await button("Take page 1 as a picture").tap();
  await scaled("Draw over it");
  await page.locator(".plan-pictures img").waitFor({ state: "attached" });
  await expect.poll(async () => (await kept()).length).toBe(1);
  const [picture] = await kept();
  expect([picture?.name, picture?.width, picture?.height]).toEqual(["club house.pdf", wide, high]);
  // 800 pixels are 8 m; a touch meets a whole pixel of the screen, some two of the picture.
  expect(Math.hypot(picture!.map[0]!, picture!.map[3]!)).toBeCloseTo(0.01, 4);
  await page.getByRole("textbox", { name: "Length" }).waitFor();
});

test("inside a job a page with a scan and a stamp of lines over it is laid under the storey as a picture all the same", async () => {
  // The first room would be drawn now.
  await button("Cancel").tap();
  await button("Drawings").tap();
  await give("both floors.pdf", await scan(2, "stamped"));
  await page.getByText("Page 1 holds pictures beside its lines; they were left out.").waitFor();
  await holds(page);
  await button("Take page 1 as a picture").tap();
  await scaled(/^Put it onto/);
  await expect.poll(async () => (await kept()).length).toBe(2);
});

test("a page whose picture cannot be read is refused in a sentence, and the job stays as it was", async () => {
  const text = new TextDecoder("latin1")
    .decode(await scan(1))
    .replace(/\/BitsPerComponent 8/, "/BitsPerComponent 7");
  await give(
    "torn.pdf",
    Uint8Array.from(text, (letter) => letter.charCodeAt(0)),
  );
  await button("Take page 1 as a picture").tap();
  await page.getByText(/cannot be laid under the plan/).waitFor();
  expect(await kept()).toHaveLength(2);
});
