import { execFileSync, spawn, spawnSync } from "node:child_process";
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { root } from "../architecture/source-files.ts";
import { writtenBuilding } from "../exchange/written-building.ts";
import { writtenLitRoom } from "../exchange/written-lit-room.ts";

// The package as somebody gets it: packed, unpacked in a folder of its own, beside it nothing but the packages that it says it needs.

interface Packed {
  readonly filename: string;
  readonly files: readonly { readonly path: string; readonly mode: number }[];
}

const folder = mkdtempSync(join(tmpdir(), "roomwake-package-"));
const home = join(folder, "package");
let packed: Packed;

beforeAll(() => {
  // Up to date first, as npm pack itself would make it; that would also look for packages to install, amid a run.
  const prepare = "import { build } from './scripts/prepare.mjs'; build();";
  execFileSync(process.execPath, ["--input-type=module", "-e", prepare], { cwd: root, stdio: "pipe" });
  const told = execFileSync(
    "npm",
    ["pack", "--ignore-scripts", "--offline", "--json", "--pack-destination", folder],
    { cwd: root, encoding: "utf8", stdio: "pipe", shell: process.platform === "win32" },
  );
  // One package in a list, or by its name, after the age of npm.
  packed = Object.values(JSON.parse(told) as Record<string, Packed>)[0]!;
  execFileSync("tar", ["-xzf", join(folder, packed.filename), "-C", folder]);
  const { dependencies } = JSON.parse(readFileSync(join(home, "package.json"), "utf8"));
  for (const name of Object.keys(dependencies)) {
    const link = join(folder, "node_modules", name);
    mkdirSync(dirname(link), { recursive: true });
    symlinkSync(join(root, "node_modules", name), link, "junction");
  }
  writeFileSync(join(folder, "house.ifc"), writtenBuilding({ schema: "IFC4", unit: "metre" }));
  writeFileSync(join(folder, "lit.dxf"), writtenLitRoom());
}, 180_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const program = (): string => {
  const { bin } = JSON.parse(readFileSync(join(home, "package.json"), "utf8"));
  return join(home, bin.roomwake);
};

/** Runs the packed command line, and reads what it answers. */
function roomwake(...words: readonly string[]) {
  const done = spawnSync(process.execPath, [program(), ...words, "--json"], {
    cwd: folder,
    encoding: "utf8",
  });
  expect(done.stderr).toBe("");
  return { exit: done.status, json: JSON.parse(done.stdout) };
}

test("the package holds the program, the web app, the demo and the papers, and nothing that only its makers need", () => {
  const paths = packed.files.map((file) => file.path);
  const folders = new Set(paths.map((path) => path.split("/").slice(0, 2).join("/")));
  expect([...folders].sort()).toEqual([
    "CHANGELOG.md",
    "LICENSE",
    "README.md",
    "dist/cli",
    "dist/exchange",
    "dist/job",
    "dist/server",
    "dist/web",
    "docs/detector-model.schema.json",
    "docs/job.schema.json",
    "docs/labels.md",
    "docs/rooms-from-plans.md",
    "docs/rule-pack.schema.json",
    "docs/screen.png",
    "examples/saltmarsh-corrected.job.json",
    "examples/saltmarsh.job.json",
    "package.json",
  ]);
  expect(paths.filter((path) => /\.(map|tsx?)$|\.test\.|\.fixture|(^|\/)bench\//.test(path))).toEqual([]);
  for (const kind of [/\.wasm$/, /\.ttf$/, /place-worker-.*\.js$/, /index\.html$/, /sw\.js$/])
    expect(paths.filter((path) => path.startsWith("dist/web/") && kind.test(path)).length).toBeGreaterThan(0);
  const { mode } = packed.files.find((file) => file.path === "dist/cli/main.mjs")!;
  expect(mode & 0o111).toBe(0o111);
});

test("the packed command line reads a building model", () => {
  const { exit, json } = roomwake("import", "house.ifc", "-o", "house.job.json");
  expect(exit).toBe(0);
  expect(json.rooms.map((room: { name: string }) => room.name).sort()).toEqual(["Office", "Store"]);
});

test("the packed command line reads a plan", () => {
  const { exit, json } = roomwake("import", "lit.dxf", "-o", "lit.job.json");
  expect([exit, json.rooms.length]).toEqual([0, 1]);
});

test("the packed command line places, checks, shows a zone and packs sheets", () => {
  const demo = join(home, "examples", "saltmarsh.job.json");
  const placed = roomwake("place", demo, "--room", "G.09", "--seconds", "10", "-o", "placed.job.json");
  const [room] = placed.json.rooms;
  expect([placed.exit, room.devices.length, room.gaps]).toEqual([0, 1, []]);
  const checked = roomwake("check", "placed.job.json");
  // The other rooms of the demo have hardly a detector yet.
  expect(checked.exit).toBe(1);
  const store = checked.json.rooms.find((one: { id: string }) => one.id === room.id);
  expect(store.covered.walk).toBeCloseTo(store.demand.walk, 2);
  const zone = roomwake("zone", "placed.job.json", "--device", room.devices[0].id, "--kind", "towards");
  expect(zone.exit).toBe(0);
  expect(zone.json.area).toBeGreaterThan(1);
  const pack = roomwake("pack", "placed.job.json", "-o", "sheets");
  expect(pack.exit).toBe(1);
  expect(readdirSync(join(folder, "sheets")).sort()).toEqual([...pack.json.files].sort());
  const sheet = pack.json.files.find((file: string) => file.endsWith(".pdf"));
  // The lettering lies in the sheet: it was found.
  expect(readFileSync(join(folder, "sheets", sheet), "latin1")).toMatch(/\/BaseFont \/\w+\+Inter/);
}, 120_000);

test("the packed server serves the packed page with all that it names, and the demo", async () => {
  const server = spawn(process.execPath, [program(), "start", "--port", "0", "--data", "jobs", "--json"], {
    cwd: folder,
    stdio: ["ignore", "pipe", "inherit"],
  });
  try {
    const said = await new Promise<string>((found, failed) => {
      server.stdout.once("data", (part: Buffer) => found(part.toString()));
      server.once("exit", (code) => failed(new Error(`The server ended with ${code}`)));
    });
    const entrance = new URL(JSON.parse(said).address);
    const entered = await fetch(entrance, { redirect: "manual" });
    const cookie = entered.headers.get("set-cookie")!.split(";")[0]!;
    const get = (path: string) => fetch(new URL(path, entrance), { headers: { cookie } });
    const page = await (await get("/")).text();
    const named = [...page.matchAll(/(?:src|href)="\.\/([^"]+)"/g)].map((match) => match[1]!);
    expect(named.length).toBeGreaterThan(2);
    for (const path of named) expect([path, (await get(path)).status]).toEqual([path, 200]);
    const jobs = await (await get("/api/jobs")).json();
    expect(jobs.map((job: { id: string }) => job.id)).toEqual(["saltmarsh"]);
  } finally {
    const ended = new Promise((done) => server.once("exit", done));
    if (server.exitCode === null) {
      server.kill("SIGTERM");
      await ended;
    }
  }
}, 60_000);
