// `npm test`: sets itself up, then types, lint, unit + property + reference tests, and the end-to-end suite in Chromium.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { build, install, requireNode, root } from "./prepare.mjs";

requireNode();
install();
build();

const tool = (name) =>
  join(root, "node_modules", ".bin", process.platform === "win32" ? `${name}.cmd` : name);
const counts = { passed: 0, failed: 0, skipped: 0 };
const notes = [];

function step(title, program, args, environment = {}) {
  console.log(`\n— ${title}`);
  const began = Date.now();
  const done = spawnSync(program, args, {
    cwd: root,
    stdio: "inherit",
    shell: process.platform === "win32",
    env: { ...process.env, ...environment },
  });
  console.log(
    `— ${title}: ${done.status === 0 ? "good" : "FAILED"} (${Math.round((Date.now() - began) / 1000)} s)`,
  );
  if (done.status !== 0) notes.push(`${title} failed`);
  return done.status === 0;
}

/** Runs one Vitest configuration and adds its counts; a run that wrote no report counts as failed. */
function suite(title, config, environment) {
  const report = join(root, "node_modules", ".cache", `report-${config}.json`);
  mkdirSync(join(root, "node_modules", ".cache"), { recursive: true });
  rmSync(report, { force: true }); // a report of an earlier run must not count
  const good = step(
    title,
    tool("vitest"),
    ["run", "--config", config, "--reporter=default", "--reporter=json", `--outputFile.json=${report}`],
    environment,
  );
  if (!existsSync(report)) {
    counts.failed += 1;
    return;
  }
  const result = JSON.parse(readFileSync(report, "utf8"));
  counts.passed += result.numPassedTests;
  counts.failed += result.numFailedTests + (good || result.numFailedTests > 0 ? 0 : 1);
  counts.skipped += result.numPendingTests + result.numTodoTests;
}

function chromium() {
  const places = [
    process.env.ROOMWAKE_CHROMIUM,
    "/usr/bin/chromium",
    "/usr/bin/chromium-browser",
    "/usr/bin/google-chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  ];
  return places.find((place) => place && existsSync(place));
}

for (const [title, args] of [
  ["types", ["-p", "tsconfig.json", "--noEmit"]],
  ["types of the engine (no platform)", ["-p", "tsconfig.engine.json", "--noEmit"]],
]) {
  // The command "tsc" is that of whichever compiler was linked last; this one is the project's own, and ten times faster.
  const compiler = join(root, "node_modules", "typescript", "bin", "tsc");
  counts[step(title, process.execPath, [compiler, ...args]) ? "passed" : "failed"] += 1;
}
counts[step("lint", tool("biome"), ["check", "."]) ? "passed" : "failed"] += 1;
suite("unit, property and reference tests", "vitest.config.ts");

const browser = chromium();
if (browser) {
  suite("end to end in Chromium", "vitest.end-to-end.config.ts", { ROOMWAKE_CHROMIUM: browser });
} else if (process.env.CI) {
  counts.failed += 1;
  notes.push("No Chromium was found: the end-to-end suite could not run.");
} else {
  notes.push(
    "No Chromium was found, so the end-to-end suite did not run. Get one (Debian and Ubuntu: apt-get install chromium), or name yours in ROOMWAKE_CHROMIUM, and run npm test again.",
  );
}

for (const note of notes) console.log(`\n${note}`);
console.log(`\n${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`);
process.exit(counts.failed > 0 ? 1 : 0);
