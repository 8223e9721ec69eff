import { type ChildProcess, spawn } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { afterAll, beforeAll, expect, test } from "vitest";
import { parseJob } from "#job";
import { handWritten } from "./jobs.fixture.ts";

// The command line as it is shipped: bundled, with its worker beside it, run by Node as a process of its own.

const root = fileURLToPath(new URL("../..", import.meta.url));
let bundle: string;
let folder: string;

beforeAll(async () => {
  // Inside the repository, so that installed packages are found from it.
  bundle = await mkdtemp(join(root, "node_modules", ".roomwake-cli-"));
  await build({
    absWorkingDir: root,
    entryPoints: ["src/cli/main.ts", "src/cli/place-worker.ts"],
    outdir: bundle,
    outbase: "src",
    outExtension: { ".js": ".mjs" },
    bundle: true,
    format: "esm",
    platform: "node",
    target: "node20.19",
    packages: "external",
    logLevel: "error",
  });
  folder = await mkdtemp(join(tmpdir(), "roomwake-built-"));
  await writeFile(join(folder, "annex.job.json"), JSON.stringify(handWritten));
}, 120_000);
afterAll(async () => {
  await rm(bundle, { recursive: true, force: true });
  await rm(folder, { recursive: true, force: true });
});

const roomwake = (...words: readonly string[]): ChildProcess =>
  spawn(process.execPath, [join(bundle, "cli/main.mjs"), ...words], { cwd: folder });

async function ended(child: ChildProcess) {
  let out = "";
  let notes = "";
  child.stdout!.on("data", (chunk: Buffer) => {
    out += chunk.toString();
  });
  child.stderr!.on("data", (chunk: Buffer) => {
    notes += chunk.toString();
  });
  const exit = await new Promise<number | null>((resolve) => child.on("close", resolve));
  return { exit, out, notes };
}

test("place runs rooms in threads; JSON alone on standard output, nothing on the other in a pipe", async () => {
  const { exit, out, notes } = await ended(
    roomwake("place", "annex.job.json", "-o", "out.job.json", "--seconds", "5", "--json"),
  );
  expect([exit, notes]).toEqual([0, ""]);
  expect(JSON.parse(out).rooms.map((room: { id: string }) => room.id)).toEqual(["hall", "store"]);
  expect(parseJob(await readFile(join(folder, "out.job.json"), "utf8")).job!.detectors.length).toBe(2);
}, 60_000);

test("SIGINT while placing: exit 130, one JSON value, and the best so far in a whole job file", async () => {
  // A hall that takes longer than anybody waits.
  const hall = {
    ...handWritten,
    rooms: [
      {
        ...handWritten.rooms[0],
        outline: [
          [0, 0],
          [60, 0],
          [60, 40],
          [0, 40],
        ],
      },
    ],
    openings: [handWritten.openings[0]],
  };
  await writeFile(join(folder, "hall.job.json"), JSON.stringify(hall));
  const child = roomwake("place", "hall.job.json", "-o", "best.job.json", "--seconds", "300", "--json");
  const end = ended(child);
  // Long enough for a busy machine to load the program and get into the search; nothing tells from outside when it has.
  await sleep(12_000);
  // Twice, as one Ctrl+C under npm arrives: from the terminal and from npm.
  child.kill("SIGINT");
  child.kill("SIGINT");
  const { exit, out } = await end;
  expect(exit).toBe(130);
  const answer = JSON.parse(out);
  expect(answer.cancelled).toBe(true);
  const [best] = answer.rooms;
  expect([best.id, best.cancelled, best.fewest]).toEqual(["hall", true, false]);
  // More than hung there before: the best so far is in the answer, and in the file.
  expect(best.devices.length).toBeGreaterThan(1);
  const { problems, job } = parseJob(await readFile(join(folder, "best.job.json"), "utf8"));
  expect(problems).toBeUndefined();
  expect(job!.detectors.map((one) => one.id)).toEqual(best.devices.map((one: { id: string }) => one.id));
}, 120_000);

test("A reader that goes away, as in a pipe to head, stops neither the work nor its exit code", async () => {
  // The store has no detector: something is left to mend.
  const child = roomwake("check", "annex.job.json", "--json");
  child.stdout!.destroy();
  expect((await ended(child)).exit).toBe(1);
  const placing = roomwake("place", "annex.job.json", "-o", "unread.job.json", "--seconds", "5", "--json");
  placing.stdout!.destroy();
  const { exit, notes } = await ended(placing);
  expect([exit, notes]).toEqual([0, ""]);
  expect(parseJob(await readFile(join(folder, "unread.job.json"), "utf8")).job!.detectors.length).toBe(2);
}, 60_000);

test("start serves until it is told to stop, by either signal, and then ends as a program that did its work", async () => {
  for (const signal of ["SIGINT", "SIGTERM"] as const) {
    const child = roomwake("start", "--port", "0", "--data", "jobs");
    await new Promise((said) => child.stdout!.once("data", said));
    const end = ended(child);
    child.kill(signal);
    child.kill(signal);
    expect((await end).exit).toBe(0);
  }
}, 60_000);

test("Bad input is exit 2 with the problem as JSON", async () => {
  const { exit, out } = await ended(roomwake("check", "nowhere.job.json", "--json"));
  expect(exit).toBe(2);
  expect(JSON.parse(out).problems[0].code).toBe("file-unreadable");
}, 60_000);
