import { readFileSync } from "node:fs";
import { parse } from "@formatjs/icu-messageformat-parser";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { saidWritten } from "./scripts/said-written.ts";
import { isPlain } from "./src/web/texts/plain.ts";

/**
 * The schema library carries its printer of JSON Schema into every page, some 6 kB compressed, since each schema has a method for it.
 * Pages read jobs and never print their schema (`src/job/print-schema.ts` does, on the command line): the printer's names stay, its code goes.
 */
const withoutSchemaPrinting: Plugin = {
  name: "without-schema-printing",
  enforce: "pre",
  apply: "build",
  load(id) {
    if (!/zod[/\\]v4[/\\]core[/\\](to-json-schema|json-schema-processors)\.js$/.test(id)) return undefined;
    const source = readFileSync(id, "utf8");
    const names = [...source.matchAll(/^export (?:const|function|class) (\w+)/gm)].map((found) => found[1]);
    return names.map((name) => `export const ${name} = () => undefined;`).join("\n");
  },
};

/**
 * The sentences of the screen are read when the page is built: a page carries what they came to, and not the reader (some 8 kB compressed).
 * Sentences without {names} stay as they are written; the screen shows them without asking the formatter.
 */
const sentencesRead: Plugin = {
  name: "sentences-read",
  enforce: "pre",
  apply: "build",
  config: () => ({
    resolve: {
      alias: { "@formatjs/icu-messageformat-parser": "@formatjs/icu-messageformat-parser/no-parser.js" },
    },
  }),
  load(id) {
    if (!/[/\\]src[/\\]web[/\\]texts[/\\](?:[\w-]+[/\\])?(?!problems\.)[\w-]+\.json$/.test(id))
      return undefined;
    const sentences = Object.entries(JSON.parse(readFileSync(id, "utf8")) as Record<string, string>);
    const ready = sentences.map(([key, text]) => [
      key,
      isPlain(text) ? text : parse(text, { captureLocation: false }),
    ]);
    return JSON.stringify(Object.fromEntries(ready));
  },
};

/** Tables of sentences which a page does not use stay out of it: as tagged texts they would be calls, which a bundler keeps. */
const withSaidWritten: Plugin = {
  name: "said-written",
  apply: "build",
  transform(code) {
    const written = code.includes("say`") ? saidWritten(code, this.parse(code)) : undefined;
    return written === undefined ? undefined : { code: written, map: null };
  },
};

/** Relative addresses: the build runs from any static host, also below a sub-path. */
export default defineConfig({
  base: "./",
  publicDir: "public",
  plugins: [
    withoutSchemaPrinting,
    sentencesRead,
    withSaidWritten,
    react(),
    VitePWA({
      registerType: "prompt",
      injectRegister: false,
      includeAssets: ["icon.svg", "icon-192.png", "icon-512.png"],
      manifest: {
        name: "Roomwake",
        short_name: "Roomwake",
        description: "Plan ceiling presence and motion detectors: the fewest that miss nobody.",
        start_url: "./",
        scope: "./",
        display: "standalone",
        background_color: "#fbfaf7",
        theme_color: "#fbfaf7",
        icons: [
          { src: "icon-192.png", sizes: "192x192", type: "image/png" },
          { src: "icon-512.png", sizes: "512x512", type: "image/png" },
          { src: "icon-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
          { src: "icon.svg", sizes: "any", type: "image/svg+xml" },
        ],
      },
      workbox: {
        // Everything, lazily loaded parts as well: the basement has no signal.
        globPatterns: ["**/*.{js,css,html,svg,png,ttf,wasm,json,webmanifest}"],
        maximumFileSizeToCacheInBytes: 24 * 1024 * 1024,
        cleanupOutdatedCaches: true,
        clientsClaim: true,
      },
    }),
  ],
  worker: { format: "es", plugins: () => [withSaidWritten] },
  build: {
    outDir: "dist/web",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 2048,
    chunkSizeWarningLimit: 4000,
    rolldownOptions: {
      // The rooms below the screen do nothing when they are loaded: what a chunk does not use stays out of it.
      treeshake: {
        moduleSideEffects: [{ test: /[/]src[/](engine|job|exchange|output|solver)[/]/, sideEffects: false }],
      },
    },
  },
  server: { host: "127.0.0.1" },
});
