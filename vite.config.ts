import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { VitePWA } from "vite-plugin-pwa";

/** Relative addresses: the build runs from any static host, also below a sub-path. */
export default defineConfig({
  base: "./",
  publicDir: "public",
  plugins: [
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
  worker: { format: "es" },
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
