import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { demoJob, jobText } from "#job";
import { root } from "../test/architecture/source-files.ts";
import { sizes, startBrowser, startBuiltServer } from "../test/end-to-end/browser.ts";
import type { BenchRow } from "./bench.ts";
import { denseJob } from "./dense-linework.ts";
import { type FrameTimes, framesDuring } from "./frames.ts";

const chromium = process.env.ROOMWAKE_CHROMIUM ?? "/usr/bin/chromium";
const command = join(root, "dist/cli/main.mjs");
const lineCount = 200_000;

/** Work of the main thread while one drags a detector, pans and zooms, in Chromium without a graphics card; nothing without Chromium. */
export async function rows(): Promise<readonly BenchRow[]> {
  if (!existsSync(chromium) || !existsSync(command)) return [];
  const folder = mkdtempSync(join(tmpdir(), "roomwake-bench-"));
  const server = await startBuiltServer();
  const browser = await startBrowser();
  try {
    const context = await browser.newContext({ viewport: sizes.laptop, serviceWorkers: "block" });
    const page = await context.newPage();
    page.setDefaultTimeout(60_000);
    await page.goto(server.entrance);
    const during = (act: () => Promise<void>): Promise<FrameTimes> =>
      framesDuring({ browser, page, file: join(folder, "trace.json") }, act);

    await opened(page, placedDemo(folder));
    const at = await firstDetector(page);
    const dragging = await during(() => dragged(page, at));

    const dense = join(folder, "dense.job.json");
    writeFileSync(dense, jobText(denseJob(lineCount)));
    await page.goto(`${new URL(page.url()).origin}/#/`);
    await opened(page, dense);
    const panning = await during(() => panned(page));
    const zooming = await during(() => zoomed(page));
    const memory = await pageMemory(browser);
    return [
      row("Drag of a detector among those placed in the demo", dragging),
      row(`Pan over ${lineCount} lines under the plan`, panning),
      row(`Zoom over ${lineCount} lines under the plan`, zooming),
      {
        what: `Memory of the page with its workers, after panning and zooming over ${lineCount} lines`,
        ours: memory,
        other: "–",
        ratio: "–",
        goal: "–",
      },
    ];
  } finally {
    await browser.close();
    await server.stop();
    rmSync(folder, { recursive: true });
  }
}

/** What the processes of the open pages hold in memory, where the system tells it. */
async function pageMemory(browser: Browser): Promise<string> {
  const devtools = await browser.newBrowserCDPSession();
  const { processInfo } = (await devtools.send("SystemInfo.getProcessInfo")) as {
    processInfo: readonly { readonly type: string; readonly id: number }[];
  };
  const kilobytes = processInfo.flatMap(({ type, id }) => {
    const status = `/proc/${id}/status`;
    if (type !== "renderer" || !existsSync(status)) return [];
    return [Number(/VmRSS:\s*(\d+)/.exec(readFileSync(status, "utf8"))?.[1] ?? 0)];
  });
  return kilobytes.length === 0
    ? "not told"
    : `${Math.round(kilobytes.reduce((sum, one) => sum + one, 0) / 1000)} MB`;
}

const row = (what: string, { frames, half, most, longest }: FrameTimes): BenchRow => ({
  what: `${what}: main thread a frame, half of them / 95 %, longest task`,
  ours: `${half.toFixed(1)} / ${most.toFixed(1)} ms, ${longest.toFixed(0)} ms`,
  other: `${frames} frames, ${sizes.laptop.width} × ${sizes.laptop.height}, no graphics card`,
  ratio: `load ${(loadavg()[0] as number).toFixed(1)}`,
  goal: "95 % within 8 ms, no task over 50 ms",
});

/** The demo job with detectors in all of its rooms. */
function placedDemo(folder: string): string {
  const job = join(folder, "demo.job.json");
  const placed = join(folder, "placed.job.json");
  writeFileSync(job, jobText(demoJob()));
  const run = spawnSync(process.execPath, [command, "place", job, "-o", placed, "--seconds", "2"]);
  if (run.error) throw run.error;
  if (!existsSync(placed)) throw new Error(`The demo was not placed: ${run.stderr}`);
  return placed;
}

async function opened(page: Page, file: string): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Choose a file" }).click(),
  ]);
  await chooser.setFiles(file);
  // A copy of a job that is here already is asked about; here it stays apart.
  const plan = page.locator(".plan canvas").first();
  const apart = page.getByRole("button", { name: "Open as a separate copy" });
  await plan.or(apart).first().waitFor();
  if (await apart.isVisible()) await apart.click();
  await plan.waitFor();
  await page.waitForTimeout(1000);
  await page.waitForFunction(() => document.querySelector(".working") === null, null, { timeout: 120_000 });
  await page.waitForTimeout(2000);
}

/** A place of the screen at which a click selects a detector. */
async function firstDetector(page: Page): Promise<readonly [number, number]> {
  const heading = page.getByRole("heading", { level: 2 }).filter({ hasText: "Detector" });
  for (let y = 180; y < 600; y += 14)
    for (let x = 520; x < 660; x += 14) {
      await page.mouse.click(x, y);
      await page.waitForTimeout(60);
      if ((await heading.count()) > 0) return [x, y];
    }
  throw new Error("No detector was found on the plan.");
}

/** Moves come sixty times a second, as a hand's do, whether the page is ready or not. */
async function everyFrame(
  page: Page,
  event: (i: number) => { readonly type: "mouseMoved" | "mouseWheel"; readonly [key: string]: unknown },
): Promise<void> {
  const devtools = await page.context().newCDPSession(page);
  for (let i = 1; i <= 300; i++) {
    void devtools.send("Input.dispatchMouseEvent", { x: 0, y: 0, ...event(i) }).catch(() => {});
    await new Promise((next) => setTimeout(next, 16));
  }
}

async function dragged(page: Page, [x, y]: readonly [number, number]): Promise<void> {
  await page.mouse.move(x, y);
  await page.mouse.down();
  await everyFrame(page, (i) => ({
    type: "mouseMoved",
    x: x + 50 * Math.sin(i / 12),
    y: y + 40 * Math.sin(i / 7),
    button: "left",
    buttons: 1,
  }));
  await page.mouse.up();
}

async function panned(page: Page): Promise<void> {
  const [x, y] = [500, 400];
  await page.mouse.move(x, y);
  await page.mouse.down({ button: "middle" });
  await everyFrame(page, (i) => ({
    type: "mouseMoved",
    x: x + 300 * Math.sin(i / 25),
    y: y + 150 * Math.sin(i / 17),
    button: "middle",
    buttons: 4,
  }));
  await page.mouse.up({ button: "middle" });
}

/** In and out again about one place, as with two fingers on a touch pad. */
const zoomed = (page: Page): Promise<void> =>
  everyFrame(page, (i) => ({
    type: "mouseWheel",
    x: 500,
    y: 400,
    deltaX: 0,
    deltaY: -6 * Math.cos(i / 24),
    modifiers: 2,
  }));
