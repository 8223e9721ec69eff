// What `npm start`, `npm test` and `npm pack` have in common: a supported Node, installed packages, an up-to-date build.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = dirname(dirname(fileURLToPath(import.meta.url)));
const npm = process.platform === "win32" ? "npm.cmd" : "npm";

/** Ends the program with a clear sentence where Node is too old. */
export function requireNode() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  console.error(
    `Roomwake needs Node 20.19 or newer; this is ${process.versions.node}. Install a newer Node and try again.`,
  );
  process.exit(2);
}

/** Standard output belongs to what was asked for, as in `npm pack --json`; what preparing says goes to the other stream. */
const aside = { stdio: ["inherit", 2, "inherit"] };

/** Runs a program with the terminal's streams; ends this one with its exit code if it fails. */
export function run(program, args, options = {}) {
  const done = spawnSync(program, args, {
    cwd: root,
    stdio: "inherit",
    shell: process.platform === "win32",
    ...options,
  });
  if (done.status !== 0) process.exit(done.status ?? 3);
}

/** Installs the packages of the lock file, once for each state of it. */
export function install() {
  const lock = createHash("sha256")
    .update(readFileSync(join(root, "package-lock.json")))
    .digest("hex");
  const mark = join(root, "node_modules", ".installed-lock");
  if (existsSync(mark) && readFileSync(mark, "utf8") === lock) return;
  console.error("Installing packages (first start only) …");
  // Said outright, since npm hands the flags of an outer `npm pack --dry-run` on to this one.
  const whole = ["--include=dev", "--dry-run=false", "--ignore-scripts=false"];
  run(npm, ["ci", ...whole, "--no-audit", "--no-fund", "--loglevel=error"], aside);
  writeFileSync(mark, lock);
}

/** Hash of everything that the build reads. */
function sourceHash() {
  const hash = createHash("sha256");
  const visit = (path) => {
    if (statSync(path).isDirectory()) {
      for (const name of readdirSync(path).sort()) visit(join(path, name));
    } else if (!path.endsWith(".test.ts") && !path.endsWith(".test.tsx")) {
      hash.update(path.slice(root.length)).update(readFileSync(path));
    }
  };
  for (const name of [
    "src",
    "public",
    "index.html",
    "vite.config.ts",
    "tsconfig.json",
    "package.json",
    "package-lock.json",
    "scripts",
    "examples",
  ]) {
    if (existsSync(join(root, name))) visit(join(root, name));
  }
  return hash.digest("hex");
}

/** Builds the web app, the server and the command line, unless the last build saw the same sources. */
export function build() {
  const hash = sourceHash();
  const mark = join(root, "dist", ".source-hash");
  if (existsSync(mark) && readFileSync(mark, "utf8") === hash) return;
  console.error("Building …");
  rmSync(join(root, "dist"), { recursive: true, force: true });
  run(process.execPath, [join(root, "scripts", "build.mjs")], aside);
  mkdirSync(join(root, "dist"), { recursive: true });
  writeFileSync(mark, hash);
}
