// Builds dist/: the web app by Vite; server, command line and their workers by esbuild, each entry one self-contained file.
import { chmodSync, existsSync } from "node:fs";
import { join } from "node:path";
import { build as bundle } from "esbuild";
import { build as buildWeb } from "vite";
import { root } from "./prepare.mjs";

const entries = [
  "src/cli/main.ts",
  "src/cli/place-worker.ts",
  "src/server/index.ts",
  "src/job/index.ts",
  "src/exchange/ifc/reader-worker.ts",
  "src/exchange/linework/plan-worker.ts",
  "src/exchange/plan/pdf/scan-worker.ts",
].filter((entry) => existsSync(join(root, entry)));

// These are bundled, since they are needed at run time but not installed with the package.
const bundled = new Set(["clipper2-ts", "robust-predicates", "flatbush", "qrcode-generator"]);

await bundle({
  absWorkingDir: root,
  entryPoints: entries,
  outdir: "dist",
  outbase: "src",
  outExtension: { ".js": ".mjs" },
  bundle: true,
  format: "esm",
  platform: "node",
  target: "node20.19",
  logLevel: "warning",
  plugins: [
    {
      name: "keep-installed-packages-outside",
      setup(build) {
        // What a command asks for when it runs is an entry of its own, so that the others do not load its packages.
        build.onResolve({ filter: /^#(server|job)$/ }, (args) =>
          args.kind === "dynamic-import"
            ? { path: `../${args.path.slice(1)}/index.mjs`, external: true }
            : undefined,
        );
        build.onResolve({ filter: /^[^.#/]/ }, (args) => {
          const name = args.path.startsWith("@")
            ? args.path.split("/").slice(0, 2).join("/")
            : args.path.split("/")[0];
          // What a bundled package needs is installed nowhere either: it comes along.
          const neededByBundled = /[/\\]node_modules[/\\]/.test(args.importer);
          return args.kind === "entry-point" || bundled.has(name) || neededByBundled
            ? undefined
            : { path: args.path, external: true };
        });
      },
    },
  ],
});
if (existsSync(join(root, "dist/cli/main.mjs"))) chmodSync(join(root, "dist/cli/main.mjs"), 0o755);
if (existsSync(join(root, "vite.config.ts"))) await buildWeb({ root, logLevel: "warn" });
