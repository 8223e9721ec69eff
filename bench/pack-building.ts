import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { handoverOf } from "#engine";
import { handOverOf, siteOf } from "#job";
import { packFiles } from "#output";
import type { BenchRow } from "./bench.ts";
import { building } from "./wiring.bench-part.ts";

/** The whole pack of a building that is placed, wired and set. */
async function packed(): Promise<BenchRow> {
  const job = building();
  const { site } = siteOf(job);
  const { resolve } = createRequire(import.meta.url);
  const font = (file: string): Uint8Array => readFileSync(resolve(`@expo-google-fonts/inter/${file}.ttf`));
  const begun = performance.now();
  const { input, printed } = handOverOf(job);
  const handover = handoverOf(site, { ...input, notes: [] });
  const files = await packFiles({
    ...printed,
    handover,
    fonts: { regular: font("400Regular/Inter_400Regular"), semibold: font("600SemiBold/Inter_600SemiBold") },
  });
  const seconds = (performance.now() - begun) / 1000;
  const { user, system } = process.cpuUsage();
  const whole = files.find(({ name }) => name === "handover.pdf")!;
  const megabytes = files.reduce((sum, { content }) => sum + content.length, 0) / 1e6;
  return {
    what: `Pack of ${site.rooms.length} rooms, ${site.detectors.length} detectors, ${job.circuits.length} circuits, placed, wired and set`,
    ours: `${seconds.toFixed(1)} s, ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`,
    other: `${files.length} files, ${megabytes.toFixed(1)} MB; ${whole.sheets.length} pages in one PDF of ${(whole.content.length / 1e6).toFixed(1)} MB`,
    ratio: `${((user + system) / 1e6).toFixed(1)} s of processor`,
    goal: "under 30 s and 1000 MB",
  };
}

process.stdout.write(JSON.stringify(await packed()));
