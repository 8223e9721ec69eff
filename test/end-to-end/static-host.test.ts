import { readFileSync, statSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join } from "node:path";
import { unzipSync } from "fflate";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { root } from "../architecture/source-files.ts";
import { mostScript, scriptLoaded, sizes, startBrowser } from "./browser.ts";

const kinds: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".wasm": "application/wasm",
  ".svg": "image/svg+xml",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
};

let host: Server;
let address: string;
let browser: Browser;

beforeAll(async () => {
  const web = join(root, "dist/web");
  host = createServer((request, answer) => {
    const path = new URL(request.url ?? "/", "http://host").pathname;
    const file = join(web, path.startsWith("/plans/app/") ? path.slice("/plans/app/".length) : "none");
    const name = path.endsWith("/") ? join(file, "index.html") : file;
    try {
      if (!statSync(name).isFile()) throw new Error("no file");
      answer.writeHead(200, { "Content-Type": kinds[extname(name)] ?? "application/octet-stream" });
      answer.end(readFileSync(name));
    } catch {
      answer.writeHead(404);
      answer.end();
    }
  });
  await new Promise<void>((done) => host.listen(0, "127.0.0.1", done));
  address = `http://127.0.0.1:${(host.address() as AddressInfo).port}/plans/app/`;
  browser = await startBrowser();
});
afterAll(async () => {
  await browser.close();
  host.closeAllConnections();
  await new Promise((done) => host.close(done));
});

test("any static host will do, below any path: the demo opens, and little script loads before its plan", async () => {
  const page = await browser.newPage({ viewport: sizes.laptop });
  page.setDefaultTimeout(60_000);
  await page.goto(address);
  await page.getByRole("button", { name: "Open the demo job" }).click();
  await page.getByRole("listbox", { name: "Things on this storey" }).waitFor({ state: "attached" });
  await page.locator(".plan canvas").first().waitFor();
  expect(await scriptLoaded(page, "/plans/app/")).toBeLessThan(mostScript);
  await page.close();
});

test("papers are made on the device with the network cut: cards as one PDF, plans as an archive; the pack can be stopped", async () => {
  const context = await browser.newContext({ viewport: sizes.tablet, reducedMotion: "reduce" });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  await page.goto(address);
  await page.getByRole("button", { name: "Open the demo job" }).click();
  await page.locator(".plan canvas").first().waitFor();
  // The parts that are loaded later must be kept before the network goes.
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await context.setOffline(true);
  await page.getByRole("button", { name: "Hand over", exact: true }).click();
  await page.getByRole("heading", { name: "Hand over" }).waitFor();
  const made = async (button: string): Promise<{ readonly name: string; readonly bytes: Buffer }> => {
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: button }).click(),
    ]);
    return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
  };
  const cards = await made("Room cards (PDF)");
  expect(cards.name).toBe("room-cards.pdf");
  expect(cards.bytes.subarray(0, 5).toString("latin1")).toBe("%PDF-");
  const plans = await made("Plans (PDF, SVG, DXF)");
  const entries = Object.keys(unzipSync(plans.bytes));
  expect(plans.name).toMatch(/^saltmarsh-.*-papers\.zip$/);
  expect(entries.filter((name) => name.endsWith(".dxf")).length).toBeGreaterThan(0);
  expect(entries.every((name) => name.startsWith("plan-"))).toBe(true);
  await page.getByRole("button", { name: "Make the pack" }).click();
  await page.getByRole("progressbar").waitFor();
  await page.getByRole("button", { name: "Stop" }).click();
  await page.getByRole("button", { name: "Make the pack" }).waitFor();
  await context.close();
});
