import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { type Browser, chromium, type Locator, type Page } from "playwright-core";
import { root } from "../architecture/source-files.ts";

/** Sizes at which every screen must hold. */
export const sizes = {
  laptop: { width: 1366, height: 768 },
  tablet: { width: 820, height: 1180 },
  phone: { width: 390, height: 844 },
} as const;

/**
 * A page that keeps nothing for working without a network: otherwise each test's new browser profile fetches
 * and stores the whole app, 19 MB, beside what is tested (2.7 of 7.5 s of the processor for opening the demo).
 */
export const withoutOffline = { serviceWorkers: "block" } as const;

/**
 * Starts Chromium without anything that would look for a network.
 *
 * @param more - Further switches.
 */
export const startBrowser = (more: readonly string[] = []): Promise<Browser> =>
  chromium.launch({
    executablePath: process.env.ROOMWAKE_CHROMIUM ?? "/usr/bin/chromium",
    args: [
      "--headless",
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      ...more,
    ],
  });

export interface BuiltServer {
  /** Address with the token of this start. */
  readonly entrance: string;
  readonly folder: string;
  readonly stop: () => Promise<void>;
}

/** Starts the built server on a free port, or on the one given, with jobs in a folder that is removed at the end. */
export async function startBuiltServer(
  again: { readonly folder?: string; readonly port?: number; readonly flags?: readonly string[] } = {},
): Promise<BuiltServer> {
  const folder = again.folder ?? mkdtempSync(join(tmpdir(), "roomwake-end-to-end-"));
  const server = spawn(
    process.execPath,
    [
      ...[join(root, "dist/cli/main.mjs"), "start", "--port", String(again.port ?? 0), "--data", folder],
      ...(again.flags ?? []),
    ],
    { stdio: ["ignore", "pipe", "pipe"] },
  );
  const entrance = await printedAddress(server);
  return {
    entrance,
    folder,
    stop: async () => {
      await ended(server);
      if (again.folder === undefined) rmSync(folder, { recursive: true, force: true });
    },
  };
}

function printedAddress(server: ChildProcess): Promise<string> {
  return new Promise((found, failed) => {
    let text = "";
    const listen = (part: Buffer): void => {
      text += part.toString();
      const address = /http:\/\/\S+/.exec(text)?.[0];
      if (address !== undefined && text.includes("\n", text.indexOf(address))) found(address);
    };
    server.stdout?.on("data", listen);
    server.stderr?.on("data", listen);
    server.on("exit", (code) => failed(new Error(`The server ended with ${code}: ${text}`)));
  });
}

function ended(server: ChildProcess): Promise<void> {
  if (server.exitCode !== null) return Promise.resolve();
  return new Promise((done) => {
    server.once("exit", () => done());
    server.kill("SIGTERM");
  });
}

/** Where an element lies once it rests: what is calculated meanwhile may move it. */
export async function restingBox(element: Locator): Promise<Box> {
  let before = await boxNow(element);
  for (let same = 0; same < 5; ) {
    await element.page().waitForTimeout(100);
    const now = await boxNow(element);
    same = JSON.stringify(now) === JSON.stringify(before) ? same + 1 : 0;
    before = now;
  }
  return before;
}

type Box = NonNullable<Awaited<ReturnType<Locator["boundingBox"]>>>;

async function boxNow(element: Locator): Promise<Box> {
  const box = await element.boundingBox();
  if (!box) throw new Error("The element is not on the page.");
  return box;
}

/** Most script that may load before the plan shows, compressed. [byte] */
export const mostScript = 300_000;

/**
 * Script that the page itself has loaded so far, compressed; workers calculate beside it, and what they load does not hold it up.
 *
 * @param below - Path at which the built page is served.
 * @returns The sum. [byte]
 */
export async function scriptLoaded(page: Page, below: string): Promise<number> {
  const paths = await page.evaluate(() =>
    performance
      .getEntriesByType("resource")
      .map(({ name }) => new URL(name).pathname)
      .filter((path) => path.endsWith(".js") && !path.includes("-worker-") && !path.endsWith("/sw.js")),
  );
  if (paths.length === 0) throw new Error("The page has loaded no script.");
  return [...new Set(paths)]
    .map((path) => gzipSync(readFileSync(join(root, "dist/web", path.slice(below.length)))).length)
    .reduce((sum, size) => sum + size, 0);
}
