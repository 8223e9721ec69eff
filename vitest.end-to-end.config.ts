import { defineConfig } from "vitest/config";

/** The end-to-end suite drives the built app in Chromium. Two files at a time, each with a server and a browser of its own: they wait as much as they work. */
export default defineConfig({
  test: {
    // What a deed changes on the screen is waited for as long as a busy machine may take.
    expect: { poll: { timeout: 15_000, interval: 50 } },
    include: ["test/end-to-end/**/*.test.ts"],
    testTimeout: 180_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    isolate: false,
  },
});
